import type { FacePoint, StationId } from '../../terms';
import type { Rig } from '../rig';
import { EFFORT, type Move, SOAKS_M, WIND_LIFT_M } from './effort';
import { isWall, type Lattice, latticeOf, slopeAt } from './lattice';
import { legsOf, type Step, straight } from './legs';
import { PLAIN } from './mesh';
import { effortOf, heightOf, type Spread, spreadTo, steepestOf, type Weighed, type When, weigh } from './spread';
import { type Surface, surfaceFor } from './surfaces';
import type { Tilt, WaterPath, WaterSpot } from './types';

/** A place given by the caller, put on the lattice. */
type Target = {
  readonly surface: number;
  readonly point: FacePoint;
  readonly height: number;
  readonly aft: number;
  /** Frame of the opening it lies in. */
  readonly frame?: readonly number[];
};

const pointAt = (lattice: Lattice, id: number): FacePoint => [lattice.face_x[id] ?? 0, lattice.face_y[id] ?? 0];

const targetOf = (lattice: Lattice, w: Weighed, spot: WaterSpot): Target | undefined => {
  const surface = surfaceFor(lattice.surfaces, spot.face, spot.side);
  const s = lattice.surfaces[surface];
  if (!s) return undefined;
  const [x, y] = spot.point_m;
  const [aft, across, up] = s.at(x, y);
  const gap = s.kind === 'floor' ? undefined : lattice.gaps.find((g) => g.face === s.face && x > g.x0 && x < g.x1 && y > g.y0 && y < g.y1);
  const target = { surface, point: spot.point_m, height: heightOf(w, aft, across, up), aft };
  if (!gap) return target;
  const onFrame = (id: number): boolean => {
    const [px, py] = pointAt(lattice, id);
    return px >= gap.x0 - 1e-6 && px <= gap.x1 + 1e-6 && py >= gap.y0 - 1e-6 && py <= gap.y1 + 1e-6;
  };
  const frame = [...lattice.on.keys()].filter((id) => lattice.on[id] === surface && onFrame(id));
  return { ...target, frame };
};

const FLAT = [0, 0] as const;

const moveTo = (lattice: Lattice, w: Weighed, from: number, to: Target): Move => {
  const s = lattice.surfaces[to.surface] as Surface;
  const at = pointAt(lattice, from);
  const wall = isWall(s);
  const slope = wall ? FLAT : slopeAt(s, at, to.point);
  const [drop_m, aft_m] = [(w.height[from] ?? 0) - to.height, to.aft - (lattice.aft[from] ?? 0)];
  return {
    length_m: Math.hypot(at[0] - to.point[0], at[1] - to.point[1]),
    drop_m,
    aft_m,
    drop_across_m: drop_m + (slope[0] - w.nose) * aft_m,
    steepest: steepestOf(w, s, slope),
    wall,
    fore_and_aft: s.fore_and_aft,
    channel: false,
  };
};

/** The last move of a way: from the points round a spot to the spot. A spot on an opening is wet when its frame is. */
const seedsOf = (lattice: Lattice, w: Weighed, to: Target): ReadonlyMap<number, number> => {
  if (to.frame) return new Map(to.frame.map((id) => [id, EFFORT.channel * moveTo(lattice, w, id, to).length_m]));
  const near = lattice.near(to.surface, to.point);
  return new Map(near.map((id) => [id, effortOf(w.when, moveTo(lattice, w, id, to))]));
};

type Best = {
  readonly effort: number;
  readonly entry: number;
  /** First move of a way that begins with a lift, or straight to the spot. */
  readonly then: 'way' | 'straight' | number;
};

/** The easiest way from one source: by the lattice, by a first move that the wind lifts, or straight across a plain wall. */
const bestFrom = (lattice: Lattice, w: Weighed, spread: Spread, to: Target, entries: readonly number[]): Best | undefined => {
  let best: Best | undefined;
  const take = (effort: number, entry: number, then: Best['then']): void => {
    if (effort < (best?.effort ?? Number.POSITIVE_INFINITY) - 1e-12) best = { effort, entry, then };
  };
  for (const entry of entries) take(spread.effort[entry] ?? Number.POSITIVE_INFINITY, entry, 'way');
  for (const entry of entries) {
    const on = lattice.on[entry] ?? 0;
    const s = lattice.surfaces[on] as Surface;
    const wall = isWall(s);
    for (let slot = lattice.first[entry] ?? 0; wall && slot < (lattice.first[entry + 1] ?? 0); slot++) {
      const first = lattice.to[slot] ?? 0;
      const rise = (w.height[first] ?? 0) - (w.height[entry] ?? 0);
      if (rise <= 0 || rise > WIND_LIFT_M || lattice.by[slot] !== PLAIN || !((spread.effort[first] ?? Number.POSITIVE_INFINITY) < (best?.effort ?? Number.POSITIVE_INFINITY)))
        continue;
      const aft = (lattice.aft[first] ?? 0) - (lattice.aft[entry] ?? 0);
      const move = { length_m: lattice.length[slot] ?? 0, drop_m: -rise, aft_m: aft, drop_across_m: -rise, steepest: 1, wall: true, fore_and_aft: s.fore_and_aft, channel: false };
      take(effortOf(w.when, move, WIND_LIFT_M) + (spread.effort[first] ?? 0), entry, first);
    }
    if (on !== to.surface || to.frame) continue;
    const move = moveTo(lattice, w, entry, to);
    if (!wall && move.length_m > SOAKS_M) continue;
    const direct = effortOf(w.when, move, WIND_LIFT_M);
    if (direct < (best?.effort ?? Number.POSITIVE_INFINITY) - 1e-9 && straight(lattice, on, pointAt(lattice, entry), to.point)) take(direct, entry, 'straight');
  }
  return best && Number.isFinite(best.effort) ? best : undefined;
};

const stepsOf = (lattice: Lattice, w: Weighed, spread: Spread, to: Target, best: Best): readonly Step[] => {
  const steps: Step[] = [];
  const step = (from: number, next: number, by: number, slope: readonly [number, number]): void => {
    const surface = lattice.on[next] ?? 0;
    const s = lattice.surfaces[surface] as Surface;
    steps.push({
      surface,
      from: pointAt(lattice, from),
      to: pointAt(lattice, next),
      by,
      drop_m: (w.height[from] ?? 0) - (w.height[next] ?? 0),
      steepest: steepestOf(w, s, slope),
      aft_m: (lattice.aft[next] ?? 0) - (lattice.aft[from] ?? 0),
    });
  };
  let at = best.entry;
  if (typeof best.then === 'number') {
    step(at, best.then, PLAIN, FLAT);
    at = best.then;
  }
  while (best.then !== 'straight' && (spread.next[at] ?? -1) >= 0) {
    const next = spread.next[at] ?? 0;
    const slot = spread.slot[at] ?? 0;
    step(at, next, lattice.by[slot] ?? PLAIN, [lattice.slope_aft[slot] ?? 0, lattice.slope_across[slot] ?? 0]);
    at = next;
  }
  const last = moveTo(lattice, w, at, to);
  steps.push({ surface: to.surface, from: pointAt(lattice, at), to: to.point, by: PLAIN, drop_m: last.drop_m, steepest: last.steepest, aft_m: last.aft_m });
  return steps;
};

const pathOf = (lattice: Lattice, w: Weighed, spread: Spread, to: Target, source: StationId, spot: string, best: Best): WaterPath => {
  const face = lattice.surfaces[lattice.on[best.entry] ?? 0]?.face ?? '';
  const point_m = pointAt(lattice, best.entry);
  const legs = [{ how: 'in' as const, face, points_m: [point_m], length_m: 0 }, ...legsOf(lattice, stepsOf(lattice, w, spread, to, best), w.when === 'driving')];
  return { source, from: { face, point_m }, spot, when: w.when, legs, length_m: legs.reduce((sum, l) => sum + l.length_m, 0), effort_m: best.effort };
};

/**
 * The ways on which water can get from every opening and seam to every spot: down-slope and down-wall as the rig stood,
 * along mouldings, rails, frames and the floor line, over the edges between faces; while driving, in at what faces the
 * wind and aft. The most readily taken way of each source to each spot, and none where water does not get there.
 *
 * @param spots  where water showed or did not show; the inside of a face shares its coordinates
 * @param tilt   how the rig stood while it rained; counts for nothing while driving. [rad]
 * @param when   parked: gravity leads. driving: rain is pressed in at forward-facing seams and runs aft
 * @returns      ways with their legs; effort is a length weighed by `EFFORT`, our own judgement. [m]
 * @assumes      faces are flat, roofs slope evenly to both edges, slide-outs stand out, nothing hidden leads water: wire chases and unknown joints are not known
 * @source       order of the weights: how water travels, general statements of a club magazine and of building guidance; figures ours
 */
export const waterPaths = (rig: Rig, spots: readonly WaterSpot[], tilt: Tilt, when: When): readonly WaterPath[] => {
  const lattice = latticeOf(rig);
  const w = weigh(lattice, tilt, when);
  return spots.flatMap((spot): readonly WaterPath[] => {
    const to = targetOf(lattice, w, spot);
    if (!to) return [];
    const spread = spreadTo(lattice, w, seedsOf(lattice, w, to));
    return [...lattice.entries].flatMap(([source, e]): readonly WaterPath[] => {
      const best = bestFrom(lattice, w, spread, to, when === 'driving' ? e.windward : e.all);
      return best ? [pathOf(lattice, w, spread, to, source, spot.id, best)] : [];
    });
  });
};
