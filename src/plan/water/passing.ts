import { type Rig, type Tilt, type WaterPath, type WaterSpot, waterPaths } from '../../rig';
import type { StationId } from '../../terms';

/**
 * How a way of water becomes a chance that it gets there: most of what comes in goes the easiest way, and the farther and
 * the harder the way, the less of it arrives. The figures are ours, tried on invented leaks; no measurement stands behind them.
 */
type Running = {
  /** Chance of arriving where the way begins: even there a meter can miss it. [1] */
  readonly at_once: number;
  /** Effort over which the chance falls to 1/e. [m] */
  readonly reach_m: number;
};
const RUNNING: Readonly<Record<WaterPath['when'], Running>> = {
  parked: { at_once: 0.85, reach_m: 1.2 },
  driving: { at_once: 0.75, reach_m: 1.6 },
};
/** Below this nothing is said to lead there. [1] */
export const LEAST_PASS = 0.01;

const passOf = (path: WaterPath): number => {
  const { at_once, reach_m } = RUNNING[path.when];
  return at_once * Math.exp(-path.effort_m / reach_m);
};

/** From one source: for each place the chance of arriving, and the easiest way, parked and driving. */
export type Passing = {
  readonly source: StationId;
  readonly parked: readonly Arrival[];
  readonly driving: readonly Arrival[];
};
/** Undefined way: water does not get there. */
export type Arrival = { readonly chance: number; readonly way?: WaterPath };

const LEVEL: Tilt = { nose_up_rad: 0, curb_up_rad: 0 };

const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / Math.max(1, list.length);

/** How often it stood like this in the rain is not known: each tilt counts alike. The easiest way stands for all. */
const arrival = (found: readonly (WaterPath | undefined)[]): Arrival => {
  const chance = mean(found.map((p) => (p === undefined ? 0 : passOf(p))));
  const [way] = found.flatMap((p) => p ?? []).toSorted((a, b) => a.effort_m - b.effort_m);
  return way === undefined ? { chance } : { chance, way };
};

/**
 * Chances of arriving from every source that leads to any of the places.
 *
 * @param tilts  how the rig stood while it rained; each counts alike; none: taken as level
 * @returns      sources in the order of their ids
 */
export const passingOf = (rig: Rig, spots: readonly WaterSpot[], tilts: readonly Tilt[]): readonly Passing[] => {
  if (spots.length === 0) return [];
  const kept = known.get(rig) ?? new Map<string, readonly Passing[]>();
  known.set(rig, kept);
  const question = JSON.stringify([spots, tilts]);
  const answer = kept.get(question) ?? passingAnew(rig, spots, tilts);
  // The latest question is put last, so that the first is the one that was not asked for longest.
  kept.delete(question);
  kept.set(question, answer);
  for (const oldest of kept.keys()) {
    if (kept.size <= MOST_KEPT) break;
    kept.delete(oldest);
  }
  return answer;
};

/** What was asked lately of each rig: a new grade or test changes no way of water. */
const known = new WeakMap<Rig, Map<string, readonly Passing[]>>();
const MOST_KEPT = 12;

const passingAnew = (rig: Rig, spots: readonly WaterSpot[], tilts: readonly Tilt[]): readonly Passing[] => {
  const key = (source: StationId, spot: string): string => `${source}\n${spot}`;
  const byKey = (paths: readonly WaterPath[]): ReadonlyMap<string, WaterPath> => new Map(paths.map((p) => [key(p.source, p.spot), p]));
  const parked = (tilts.length > 0 ? tilts : [LEVEL]).map((tilt) => byKey(waterPaths(rig, spots, tilt, 'parked')));
  const driving = [byKey(waterPaths(rig, spots, LEVEL, 'driving'))];
  const sources = [...new Set([...parked, ...driving].flatMap((m) => [...m.values()].map((p) => p.source)))].toSorted();
  const arrivals = (maps: readonly ReadonlyMap<string, WaterPath>[], source: StationId): readonly Arrival[] => spots.map((s) => arrival(maps.map((m) => m.get(key(source, s.id)))));
  return sources.map((source) => ({ source, parked: arrivals(parked, source), driving: arrivals(driving, source) }));
};
