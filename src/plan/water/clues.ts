import type { leakClue } from '../../entries';
import type { Rig } from '../../rig';
import type { BodyOf, EntryId, Station } from '../../terms';
import type { Because } from '../finding';
import { isA, sourceOf } from '../trade';
import { looksTo } from './exposure';

export type ClueId = BodyOf<(typeof leakClue)['fields']>['when'][number];

/** When it gets wet, as people noticed, and the entry that says so. */
export type Clue = { readonly id: ClueId; readonly entry: EntryId };

/** What is left of a source's chances when a clue holds: factors for rain on the parked rig and for rain on the road. */
type Left = { readonly parked: number; readonly driving: number };

/** A clue is somebody's impression: what speaks against it is made less, not ruled out. Ours. */
const HARDLY = 0.2;
const NOT_THEN = 0.05;
const BOTH: Left = { parked: 1, driving: 1 };

type Meaning = {
  readonly id: ClueId;
  readonly text: string;
  /** Clues of one group are alternatives of one question: what any of them leaves stays. */
  readonly group: 'when' | 'wind' | 'cause' | 'melt';
  readonly left: (station: Station, rig: Rig) => Left;
  /** By how much the odds of something that is not on the list change. */
  readonly elsewhere: number;
};

const wind = (from: 'front' | 'rear' | 'road' | 'curb', words: string): Meaning => ({
  id: `wind-from-${from}`,
  group: 'wind',
  text: `It gets wet with wind ${words}: openings and seams on that side count more, those on the other sides less.`,
  left: (station, rig) => {
    const { way, side } = looksTo(rig, station.face);
    const parked = side === from ? 1 : way === 'roof' ? 0.6 : HARDLY;
    return { parked, driving: from === 'front' ? 1 : parked };
  },
  elsewhere: 1,
});

const notRain = (station: Station, kinds: readonly string[]): Left => (kinds.some((k) => isA(station.looks, k)) ? BOTH : { parked: HARDLY, driving: HARDLY });

const MEANINGS: readonly Meaning[] = [
  {
    id: 'only-parked-rain',
    group: 'when',
    text: 'It gets wet in rain while parked, not on the road: only ways that water takes on the parked rig count.',
    left: () => ({ parked: 1, driving: NOT_THEN }),
    elsewhere: 1,
  },
  {
    id: 'only-driving-rain',
    group: 'when',
    text: 'It gets wet in rain on the road, not while parked: what the wind of the road presses in and drives aft counts.',
    left: () => ({ parked: NOT_THEN, driving: 1 }),
    elsewhere: 1,
  },
  wind('front', 'from the front'),
  wind('rear', 'from the rear'),
  wind('road', 'on the road side'),
  wind('curb', 'on the curb side'),
  {
    id: 'pump-on',
    group: 'cause',
    text: 'It gets wet with the pump on or mains water connected: plumbing comes first, and the seals count less.',
    left: (station) => notRain(station, ['inlet-water', 'water-heater']),
    elsewhere: 4,
  },
  {
    id: 'air-conditioner-on',
    group: 'cause',
    text: 'It gets wet while the air conditioner runs: its pan and gasket come first, and the other seals count less.',
    left: (station) => notRain(station, ['aircon-roof']),
    elsewhere: 3,
  },
  {
    id: 'dry-weather',
    group: 'cause',
    text: 'It gets wet in dry weather as well: that speaks against rain, and for plumbing or condensation.',
    left: (station) => notRain(station, ['inlet-water', 'water-heater']),
    elsewhere: 4,
  },
  {
    id: 'snow-melt',
    group: 'melt',
    text: 'It gets wet when snow melts: what lies flat or under the roof’s edge counts more than the walls.',
    left: (station, rig) => {
      const flat = looksTo(rig, station.face).way === 'roof' || isA(station.looks, 'roof-edge') || isA(station.looks, 'cap-seam');
      return { parked: flat ? 1 : 0.4, driving: NOT_THEN };
    },
    elsewhere: 1,
  },
];

const SOURCE = sourceOf('MOISTLK', 'note whether it leaks only with wind, on the road, or with the plumbing on; how much a clue counts is our judgement');

const heard = (clues: readonly Clue[]): readonly { readonly meaning: Meaning; readonly entries: readonly EntryId[] }[] =>
  MEANINGS.flatMap((meaning) => {
    const entries = clues.filter((c) => c.id === meaning.id).map((c) => c.entry);
    return entries.length > 0 ? [{ meaning, entries: [...new Set(entries)].toSorted() }] : [];
  });

/** Each clue with what it changes, once however often it was noticed. */
export const clueWords = (clues: readonly Clue[]): readonly Because[] => heard(clues).map(({ meaning, entries }) => ({ text: meaning.text, entries, source: SOURCE }));

/** Clues about the same question are alternatives; different questions narrow one another down. */
export const leftByClues = (clues: readonly Clue[], station: Station, rig: Rig): Left => {
  const groups = new Map<string, readonly Left[]>();
  for (const { meaning } of heard(clues)) groups.set(meaning.group, [...(groups.get(meaning.group) ?? []), meaning.left(station, rig)]);
  return [...groups.values()].reduce<Left>(
    (left, alternatives) => ({
      parked: left.parked * Math.max(...alternatives.map((a) => a.parked)),
      driving: left.driving * Math.max(...alternatives.map((a) => a.driving)),
    }),
    BOTH,
  );
};

/** By how much clues change the odds of something that is not on the list. */
export const elsewhereByClues = (clues: readonly Clue[]): number => heard(clues).reduce((odds, { meaning }) => Math.max(odds, meaning.elsewhere), 1);
