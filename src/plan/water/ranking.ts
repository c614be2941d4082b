import type { Rig, WaterSpot } from '../../rig';
import type { StationId } from '../../terms';
import type { CivilDay } from '../../units';
import { type Wet, waterSpot } from './clusters';
import { rankEntryPoints } from './entry-points';
import { leakEvidence } from './evidence';
import { nextTest, noneWorthTesting } from './next-test';
import type { WaterRecord } from './record';
import { apart } from './spots';
import type { Leak, Spot } from './water-types';

/** Where a leak may come in, as it is told: the likeliest first, in one sentence, and what to try next. */
export type Ranking = Pick<Leak, 'candidates' | 'unknown_source' | 'sentence' | 'assumes' | 'apart' | 'clues' | 'next_test'> & { readonly confirmed?: StationId };

/** Places within a hand's width are one, whatever they were read with. [m] */
const ONE_PLACE = 0.1;
/** Dry places nearest to what is wet tell most; more than this tell no more. */
const MOST_DRY = 24;

const onePlaceEach = (spots: readonly WaterSpot[]): readonly WaterSpot[] =>
  spots.filter((s, i) => !spots.slice(0, i).some((k) => k.face === s.face && k.side === s.side && apart(k.point_m, s.point_m) <= ONE_PLACE));

/** From a dry place to the nearest wet one; on another face it comes after all on the same. */
const awayFrom = (wet: readonly WaterSpot[], dry: WaterSpot): number => Math.min(...wet.map((w) => (w.face === dry.face ? 0 : 1000) + apart(w.point_m, dry.point_m)));

const nearest = (wet: readonly WaterSpot[], dry: readonly Spot[]): readonly WaterSpot[] =>
  onePlaceEach(dry.map(waterSpot))
    .toSorted((a, b) => awayFrom(wet, a) - awayFrom(wet, b) || (a.id < b.id ? -1 : 1))
    .slice(0, MOST_DRY);

const OFF_FACE = 'What is wet lies outside its face as that is drawn: correct its place, or the face, and the ways in can be ranked.';

const ELSEWHERE = 'No opening is worth testing yet: look at plumbing and tanks, and for gaps, screw holes and cracks that are not listed.';

/** Where the list explains nothing, what it would take to tell its openings apart helps nobody. */
const sentenceWith = (ranking: Pick<Ranking, 'candidates' | 'sentence' | 'unknown_source'>): string => {
  const [first] = ranking.candidates;
  const known = first === undefined || ranking.unknown_source > first.probability;
  return `${known ? ranking.sentence : 'No opening or seam explains it well.'} ${ELSEWHERE}`;
};

/** Ranks the ways in for the wet places of one leak; readings that lie off their face lead nowhere and are left out. */
export const rankWaysIn = (rig: Rig, record: WaterRecord, on: CivilDay, wet: Wet, dry: readonly Spot[], since: CivilDay): Ranking => {
  const drawn = wet.metered.filter((m) => m.weighed.every((w) => w.reading.off_panel !== true));
  const spots = onePlaceEach([...drawn, ...wet.shown].map(waterSpot));
  const evidence = leakEvidence(rig, record, on, spots, nearest(spots, dry), since);
  const ranking = rankEntryPoints(evidence);
  const next_test = nextTest(evidence, ranking);
  const { candidates, unknown_source, assumes, clues, confirmed } = ranking;
  const explained = evidence.other_causes?.some((c) => c.answer === 'it-is-this');
  const none = spots.length > 0 && !explained && noneWorthTesting(ranking);
  const sentence = none ? sentenceWith(ranking) : ranking.sentence;
  const separate = none ? undefined : ranking.apart;
  return {
    candidates,
    unknown_source,
    sentence: spots.length === 0 && wet.metered.length > 0 ? OFF_FACE : sentence,
    assumes,
    clues,
    ...(separate === undefined ? {} : { apart: separate }),
    ...(confirmed === undefined ? {} : { confirmed }),
    ...(next_test ? { next_test } : {}),
  };
};
