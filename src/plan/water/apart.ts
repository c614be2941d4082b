import { box, type WaterSpot } from '../../rig';
import type { FacePoint, Station } from '../../terms';
import type { LeakEvidence } from './evidence';
import { nameOf } from './ranking-words';
import type { Candidate } from './water-types';

/** A place this near was read already. [m] */
const READ_M = 0.3;
/** Where water from an opening shows first: just below its lower edge. [m] */
const BELOW_M = 0.05;
/** A candidate this far behind the first is not worth telling from it. */
const WORTH = 0.25;

/** Just below an opening in a wall, where its water shows first. */
const belowOf = (station: Station): FacePoint | undefined => {
  if (station.group === 'seam' || station.face === 'roof' || station.face === 'under' || station.face.endsWith('-top')) return undefined;
  const b = box(station.shape);
  return [(b.x0 + b.x1) / 2, b.y0 - BELOW_M];
};

const isRead = (spots: readonly WaterSpot[], face: string, [x, y]: FacePoint): boolean =>
  spots.some((s) => s.face === face && Math.hypot(s.point_m[0] - x, s.point_m[1] - y) <= READ_M);

/** Whether water gets from it to what is wet on the road only, or parked only. */
const whenOf = (c: Candidate): 'parked' | 'driving' | undefined => {
  const whens = new Set(c.paths.map((p) => p.when));
  return whens.size === 1 ? [...whens][0] : undefined;
};

/**
 * What would tell the first candidates apart: a place below one of them that nobody has read, whether it leaks parked or
 * on the road, or a water test; undefined where there are no two worth telling apart.
 */
export const apartWords = (evidence: LeakEvidence, candidates: readonly Candidate[]): string | undefined => {
  const [a, b] = candidates;
  if (a === undefined || b === undefined || b.probability < WORTH * a.probability) return undefined;
  const { rig } = evidence;
  const spots = [...evidence.wet, ...evidence.dry];
  const unread = [a, b].flatMap((c) => {
    const station = rig.stations.find((s) => s.id === c.station);
    const below = station && belowOf(station);
    return station && below && !isRead(spots, station.face, below) ? [nameOf(rig, station.id)] : [];
  });
  const [one, other] = unread;
  const [name, second] = [nameOf(rig, a.station), nameOf(rig, b.station)];
  if (one !== undefined)
    return `A meter reading inside, just below ${other === undefined ? one : `${one}, and another below ${other}`}, would help to tell which: ${name}, or ${second}.`;
  const [whenA, whenB] = [whenOf(a), whenOf(b)];
  if (whenA !== undefined && whenB !== undefined && whenA !== whenB && evidence.clues.length === 0)
    return `Whether it gets wet in rain while parked or only on the road would tell which: ${name}, or ${second}.`;
  return `A water test, the lower one first, would tell which: ${name}, or ${second}.`;
};
