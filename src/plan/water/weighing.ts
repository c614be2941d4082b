import { type WaterPath, type WaterSpot, waterSources } from '../../rig';
import type { Station } from '../../terms';
import { leftByClues } from './clues';
import type { LeakEvidence } from './evidence';
import { exposureOf } from './exposure';
import { type Arrival, LEAST_PASS, type Passing, passingOf } from './passing';
import { type Prior, priorOf } from './priors';
import { likelihoodOf, type TestDone } from './water-tests';

/** Whether it was driven in rain is not recorded: taken as even. [1] */
const DRIVEN_UNKNOWN = 0.5;
/** Water seen to come in where no way was thought of gets to what is wet so often; ours. [1] */
const SEEN_TO_PASS = 0.5;
/** Readings within a stud bay's width of each other are one piece of evidence, not several: water that got to one got to the other. [m] */
const SIDE_BY_SIDE_M = 0.4;
/** More places than this are thinned out further: they tell no more, and time grows with them. */
const MOST_PLACES = 12;
/** A place that water got to reads wet so often: it runs in a streak, may pass a hand beside it, and may have dried since; ours. [1] */
export const READ_WET = 0.6;
/** A seam longer than this leaks at one stretch of it, not all along. [m] */
const LONG_SEAM_M = 1.5;
/** So much of a seam to either side of where its water would have to come in counts with it; ours. [m] */
const STRETCH_M = 0.5;

/** A source with all that is known of it before the places are weighed together. */
export type Weighed = {
  readonly station: Station;
  readonly prior: Prior;
  /** How readily rain gets to it, and of a long seam how much of it lies where the water would have to come in. [1] */
  readonly share: number;
  /** For each wet place that its water gets there; then for each dry one that it gets there and would be read. */
  readonly pass: readonly number[];
  /** The likeliest way to each of them, where there is one. */
  readonly ways: readonly (WaterPath | undefined)[];
  readonly tests: readonly TestDone[];
};

const byPlace = (a: WaterSpot, b: WaterSpot): number =>
  a.face.localeCompare(b.face, 'en') || a.side.localeCompare(b.side, 'en') || a.point_m[0] - b.point_m[0] || a.point_m[1] - b.point_m[1] || (a.id < b.id ? -1 : 1);

const apart = (a: WaterSpot, b: WaterSpot): number =>
  a.face === b.face && a.side === b.side ? Math.hypot(a.point_m[0] - b.point_m[0], a.point_m[1] - b.point_m[1]) : Number.POSITIVE_INFINITY;

/** One of each group of places that lie side by side, in an order that does not depend on how they were given. */
export const thinned = (spots: readonly WaterSpot[], within = SIDE_BY_SIDE_M): readonly WaterSpot[] => {
  const kept: WaterSpot[] = [];
  for (const s of spots.toSorted(byPlace)) if (!kept.some((k) => apart(k, s) < within)) kept.push(s);
  return kept.length > MOST_PLACES ? thinned(kept, within * 1.5) : kept;
};

const eitherOf = (a: number, b: number): number => 1 - (1 - a) * (1 - b);

/** Whether it was driven in rain: as recorded, or as a clue says; otherwise as likely as not. [1] */
const drivenIn = (evidence: LeakEvidence): number => {
  if (evidence.clues.some((c) => c.id === 'only-driving-rain')) return 1;
  return evidence.driven_in_rain === undefined ? DRIVEN_UNKNOWN : evidence.driven_in_rain ? 1 : 0;
};

/**
 * Chance that water in a gap here wets each place, parked or on the road, and the likelier way of the two. How much rain
 * gets to the gap at all is told apart, because it is one chance for all places together.
 */
const arrivals = (evidence: LeakEvidence, station: Station, passing: Passing): Pick<Weighed, 'pass' | 'ways'> & { readonly rained: number } => {
  const open = exposureOf(evidence.rig, station.face);
  const left = leftByClues(evidence.clues, station, evidence.rig);
  const [parked, road] = [open.parked * left.parked, open.driving * left.driving * drivenIn(evidence)];
  const rained = Math.max(parked, road);
  if (rained === 0) return { pass: passing.parked.map(() => 0), ways: passing.parked.map(() => undefined), rained };
  const both = passing.parked.map((standing, j) => {
    const driving: Arrival = passing.driving[j] ?? { chance: 0 };
    const [p, d] = [(parked / rained) * standing.chance, (road / rained) * driving.chance];
    return { pass: eitherOf(p, d), way: p >= d ? (standing.way ?? driving.way) : (driving.way ?? standing.way) };
  });
  return { pass: both.map((b) => b.pass), ways: both.map((b) => b.way), rained };
};

type Entry = WaterPath['from'];
const entriesApart = (a: Entry, b: Entry): number => (a.face === b.face ? Math.hypot(a.point_m[0] - b.point_m[0], a.point_m[1] - b.point_m[1]) : Number.POSITIVE_INFINITY);

/** Of a long seam only the stretch counts from which water gets to the wet places; dry places under the rest of it say nothing. */
const onStretch = (station: Station, { pass, ways }: Pick<Weighed, 'pass' | 'ways'>, wet: number): Pick<Weighed, 'pass' | 'ways' | 'share'> => {
  if (station.group !== 'seam' || station.outline_m <= LONG_SEAM_M) return { pass, ways, share: 1 };
  const from = ways.slice(0, wet).flatMap((w, j) => (w !== undefined && (pass[j] ?? 0) >= LEAST_PASS ? [w.from] : []));
  const span = Math.max(0, ...from.flatMap((a) => from.map((b) => entriesApart(a, b)).filter(Number.isFinite)));
  const counts = (j: number): boolean => {
    const way = ways[j];
    return j < wet || (way !== undefined && from.some((f) => entriesApart(f, way.from) <= STRETCH_M));
  };
  return { pass: pass.map((p, j) => (counts(j) ? p : 0)), ways, share: Math.min(1, (span + 2 * STRETCH_M) / station.outline_m) };
};

/** Every opening and seam from which water gets to a wet place, or through which it was seen to come; wet places first in `spots`. */
export const weighed = (evidence: LeakEvidence, spots: readonly WaterSpot[], wet: number): readonly Weighed[] => {
  const passing = new Map(passingOf(evidence.rig, spots, evidence.tilts).map((p) => [p.source, p]));
  return waterSources(evidence.rig).flatMap((station): readonly Weighed[] => {
    const tests = evidence.tests.filter((t) => t.station === station.id);
    const known = passing.get(station.id);
    const found = known === undefined ? { pass: spots.map(() => 0), ways: spots.map(() => undefined), rained: 1 } : arrivals(evidence, station, known);
    const { pass, ways, share: stretch } = onStretch(station, found, wet);
    const share = stretch * found.rained;
    const leads = pass.some((p, j) => j < wet && p >= LEAST_PASS);
    // Water was seen to come in here although no way from here was thought of: then there is one.
    const seen = tests.some((t) => t.how === 'hose' && t.came_in);
    if (!leads && !seen) return [];
    const passed = pass.map((p, j) => (j >= wet ? p * READ_WET : leads ? p : SEEN_TO_PASS));
    return [{ station, prior: priorOf(evidence.rig, station, evidence.seals.get(station.id), evidence.on), share, pass: passed, ways, tests }];
  });
};

/** That it leaks where it matters, before any place was looked at. [1] */
export const before = (w: Weighed): number => w.prior.chance * w.share;

/** What decides who is weighed together when there are too many: odds, tests, and the best way to a wet place. */
export const weightOf = (w: Weighed, wet: number): number => {
  const odds = before(w) / (1 - before(w));
  return w.tests.map(likelihoodOf).reduce((all, t) => (all * t.if_leaks) / t.if_not, odds) * Math.max(...w.pass.slice(0, wet));
};
