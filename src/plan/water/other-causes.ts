import type { leakClue, otherCause } from '../../entries';
import type { Standing } from '../../logbook';
import { pointOf, type Rig } from '../../rig';
import type { BodyOf } from '../../terms';
import { showDay } from '../../units';
import type { Because } from '../finding';
import { RULED_OUT_FIRST } from './sources';
import { apart, type Metered } from './spots';
import type { OtherCause } from './water-types';
import type { Weighed } from './yardsticks';

type Cause = OtherCause['cause'];
type Answer = BodyOf<(typeof otherCause)['fields']>;
type Clue = BodyOf<(typeof leakClue)['fields']>;

const HOW: Readonly<Record<Cause, string>> = {
  condensation: 'Measure air and surface together at the wet place, on a cold morning: a surface colder than the dew point of the air sweats.',
  plumbing: 'Pump on, every tap shut: a pump that starts by itself has a leak behind it. Leaks in dry weather are plumbing until shown otherwise.',
  'air-conditioner': 'Run the air conditioner for an hour in dry weather and look at its ceiling frame: a blocked drain pan drips inside.',
  'weep-holes': 'Water running out of the holes under a window is as it should be: look whether they are clear, and whether it runs out there only.',
};
const WORD: Readonly<Record<Cause, string>> = { condensation: 'condensation', plumbing: 'the plumbing', 'air-conditioner': 'the air conditioner', 'weep-holes': 'the weep holes' };
const CAUSES = Object.keys(HOW) as readonly Cause[];

/** Clues that point at a cause other than rain; they ask for a look and decide nothing. */
const POINTS_AT: Readonly<Partial<Record<string, Cause>>> = { 'pump-on': 'plumbing', 'dry-weather': 'plumbing', 'air-conditioner-on': 'air-conditioner' };

/** Entries made this near speak of a wet place; those of the whole rig speak of all (ours). [m] */
const NEAR = 1.5;

export const speaksOf = (s: Standing, spots: readonly Pick<Metered, 'face' | 'point_m'>[], rig: Rig): boolean => {
  if (s.place.at === 'rig') return true;
  const at = pointOf(rig, s.place);
  return at !== undefined && spots.some((spot) => spot.face === at.face && apart(spot.point_m, at.point) <= NEAR);
};

/**
 * What else than rain could have wetted these places, each looked into or not.
 *
 * @param first   the entry that first showed the wet: what nobody has looked into rests on it
 * @param weighed readings of the wet places, with the air beside them
 */
export const otherCauses = (
  rig: Rig,
  spots: readonly Pick<Metered, 'face' | 'point_m'>[],
  first: string,
  weighed: readonly Weighed[],
  answers: readonly Standing[],
  clues: readonly Standing[],
): readonly OtherCause[] => {
  const mine = answers.filter((s) => speaksOf(s, spots, rig));
  const hints = clues.filter((s) => speaksOf(s, spots, rig));
  return CAUSES.map((cause): OtherCause => {
    const how = HOW[cause];
    const said = mine.findLast((s) => (s.body as Answer).cause === cause);
    if (said) {
      const body = said.body as Answer;
      const because: Because = {
        text: `${body.answer === 'ruled-out' ? 'Ruled out' : 'Found to be the cause'} on ${showDay(said.day)} by ${said.entry.by}${body.how === undefined ? '' : `: ${body.how}`}.`.replace(
          /\.\.$/,
          '.',
        ),
        entries: [said.entry.id],
        source: RULED_OUT_FIRST,
      };
      return { cause, state: body.answer === 'ruled-out' ? 'ruled-out' : 'it-is-this', because, how };
    }
    const sweat = cause === 'condensation' ? sweatLine(weighed) : undefined;
    if (sweat) return { cause, state: SWEAT_SAYS[sweat.skin], because: sweat.because, how };
    const hint = hints.findLast((s) => (s.body as Clue).when.some((w) => POINTS_AT[w] === cause));
    if (hint)
      return {
        cause,
        state: 'not-looked-at',
        noticed: true,
        because: { text: `What was noticed on ${showDay(hint.day)} points at ${WORD[cause]}: look there first.`, entries: [hint.entry.id], source: RULED_OUT_FIRST },
        how,
      };
    return { cause, state: 'not-looked-at', because: { text: `Nobody has written down whether it is ${WORD[cause]}.`, entries: [first], source: RULED_OUT_FIRST }, how };
  });
};

const SWEAT_SAYS = { sweats: 'it-is-this', 'too-close': 'not-looked-at', dry: 'ruled-out' } as const;

/** Dry skin beside a wet reading rules condensation out; a reading that sweat explains is not counted as wet at all. */
const sweatLine = (weighed: readonly Weighed[]): Weighed['sweat'] => {
  const beside = weighed.flatMap((w) => (w.sweat ? [{ w, sweat: w.sweat }] : []));
  const wet = beside.findLast(({ w }) => w.state === 'wet' || w.state === 'damp');
  if (wet) return wet.sweat;
  return weighed.every((w) => w.state === 'condensation') ? beside.at(-1)?.sweat : undefined;
};

/**
 * What has to be looked into before an opening is tested, in words: a hose on sound seals finds nothing where it is a pipe that leaks.
 *
 * @returns  undefined where no clue points at anything but rain, or all of it was looked into
 */
export const lookFirst = (causes: readonly OtherCause[]): { readonly sentence: string; readonly apart: string } | undefined => {
  const first = causes.filter((c) => c.noticed === true && c.state === 'not-looked-at');
  if (first.length === 0) return undefined;
  return {
    sentence: `What was noticed points at ${first.map((c) => WORD[c.cause]).join(' and at ')} first: no opening is tested before that was looked into.`,
    apart: first.map((c) => c.how).join(' '),
  };
};

/** The cause that was found to explain it, if one was. */
export const explainedBy = (causes: readonly OtherCause[]): OtherCause | undefined => causes.find((c) => c.state === 'it-is-this');
