import { EDGE_RISE_M, EFFORT, effortDriving, effortParked, type Move } from './effort';
import { isWall, type Lattice, passesEdge } from './lattice';
import { OVER_EDGE, PLAIN, THROUGH_FLOOR } from './mesh';
import type { Surface } from './surfaces';
import type { Tilt } from './types';

export type When = 'parked' | 'driving';

/** Height of every point as the rig stood, and the effort of every move towards the point that owns the slot. */
export type Weighed = {
  readonly when: When;
  readonly height: Float64Array;
  readonly nose: number;
  readonly curb: number;
  /** Effort from the neighbour in a slot to the point that owns the slot. [m] */
  readonly towards: Float64Array;
};

const LEVEL_ROAD: Tilt = { nose_up_rad: 0, curb_up_rad: 0 };

export const effortOf = (when: When, move: Move, lift = 0): number => (when === 'driving' ? effortDriving(move, lift) : effortParked(move, lift));

/** Height with the tilt counted in: nose up lowers what lies aft, curb side up raises what lies there. [m] */
export const heightOf = (w: Pick<Weighed, 'nose' | 'curb'>, aft: number, across: number, up: number): number => up - aft * w.nose + across * w.curb;

/** Steepest slope of a face with the tilt counted in. [1] */
export const steepestOf = (w: Pick<Weighed, 'nose' | 'curb'>, s: Surface, slope: readonly [number, number]): number =>
  isWall(s) ? 1 : Math.hypot(slope[0] - w.nose, slope[1] + w.curb);

const overEdge = (lattice: Lattice, when: When, from: number, to: number, drop: number): number => {
  if (drop < -EDGE_RISE_M || !passesEdge(lattice, from, to)) return Number.POSITIVE_INFINITY;
  const [s, t] = [lattice.surfaces[lattice.on[from] ?? 0], lattice.surfaces[lattice.on[to] ?? 0]];
  if (when === 'driving') return t?.faces_wind ? Number.POSITIVE_INFINITY : EFFORT.edge;
  return s?.kind === 'wall' && t?.kind === 'roof' ? Number.POSITIVE_INFINITY : EFFORT.edge;
};

const kept = new WeakMap<Lattice, Map<string, Weighed>>();
/** Tilts that are kept weighed: as many as are usually asked for together; ours. */
const MOST_KEPT = 6;

/** Weighs every move for one tilt. While driving the road counts as level: how the rig stood when parked says nothing then. */
export const weigh = (lattice: Lattice, tilt: Tilt, when: When): Weighed => {
  const { nose_up_rad, curb_up_rad } = when === 'driving' ? LEVEL_ROAD : tilt;
  const known = kept.get(lattice) ?? new Map<string, Weighed>();
  kept.set(lattice, known);
  const key = `${when} ${nose_up_rad} ${curb_up_rad}`;
  const was = known.get(key);
  if (was) return was;
  const made = weighed(lattice, { nose: Math.tan(nose_up_rad), curb: Math.tan(curb_up_rad) }, when);
  const oldest = known.keys().next().value;
  if (known.size >= MOST_KEPT && oldest !== undefined) known.delete(oldest);
  known.set(key, made);
  return made;
};

const weighed = (lattice: Lattice, lean: { readonly nose: number; readonly curb: number }, when: When): Weighed => {
  const height = Float64Array.from(lattice.up, (up, i) => heightOf(lean, lattice.aft[i] ?? 0, lattice.across[i] ?? 0, up));
  const towards = new Float64Array(lattice.to.length);
  for (let point = 0; point < lattice.size; point++) {
    const surface = lattice.surfaces[lattice.on[point] ?? 0] as Surface;
    const wall = isWall(surface);
    for (let slot = lattice.first[point] ?? 0; slot < (lattice.first[point + 1] ?? 0); slot++) {
      const from = lattice.to[slot] ?? 0;
      const by = lattice.by[slot] ?? PLAIN;
      const drop = (height[from] ?? 0) - (height[point] ?? 0);
      if (by === OVER_EDGE) towards[slot] = overEdge(lattice, when, from, point, drop);
      else if (by === THROUGH_FLOOR) towards[slot] = surface.kind === 'underside' ? EFFORT.floor : Number.POSITIVE_INFINITY;
      else
        towards[slot] = effortOf(when, {
          length_m: lattice.length[slot] ?? 0,
          drop_m: drop,
          aft_m: (lattice.aft[point] ?? 0) - (lattice.aft[from] ?? 0),
          drop_across_m: drop + ((lattice.slope_aft[slot] ?? 0) - lean.nose) * ((lattice.aft[point] ?? 0) - (lattice.aft[from] ?? 0)),
          steepest: wall ? 1 : Math.hypot((lattice.slope_aft[slot] ?? 0) - lean.nose, (lattice.slope_across[slot] ?? 0) + lean.curb),
          wall,
          fore_and_aft: surface.fore_and_aft,
          channel: by >= 0,
        });
    }
  }
  return { when, height, ...lean, towards };
};

/** Where each point's water goes next on its easiest way to the spot, and the effort left from there. */
export type Spread = {
  readonly effort: Float64Array;
  /** Next point, or -1: on to the spot itself. */
  readonly next: Int32Array;
  /** Slot of that move. */
  readonly slot: Int32Array;
};

/** Backward from a spot over the whole rig: one run serves every source. */
export const spreadTo = (lattice: Lattice, w: Weighed, seeds: ReadonlyMap<number, number>): Spread => {
  const effort = new Float64Array(lattice.size).fill(Number.POSITIVE_INFINITY);
  const next = new Int32Array(lattice.size).fill(-1);
  const slotOf = new Int32Array(lattice.size).fill(-1);
  // A binary heap in two columns; an entry that was bettered since is skipped when it comes up.
  const keys: number[] = [];
  const ids: number[] = [];
  const push = (k: number, id: number): void => {
    let i = keys.length;
    keys.push(k);
    ids.push(id);
    while (i > 0) {
      const up = (i - 1) >> 1;
      if ((keys[up] as number) <= k) break;
      keys[i] = keys[up] as number;
      ids[i] = ids[up] as number;
      i = up;
    }
    keys[i] = k;
    ids[i] = id;
  };
  const pop = (): number => {
    const top = ids[0] as number;
    const k = keys.pop() as number;
    const id = ids.pop() as number;
    const n = keys.length;
    if (n === 0) return top;
    let i = 0;
    for (;;) {
      let down = 2 * i + 1;
      if (down >= n) break;
      if (down + 1 < n && (keys[down + 1] as number) < (keys[down] as number)) down++;
      if ((keys[down] as number) >= k) break;
      keys[i] = keys[down] as number;
      ids[i] = ids[down] as number;
      i = down;
    }
    keys[i] = k;
    ids[i] = id;
    return top;
  };
  for (const [id, e] of seeds)
    if (e < (effort[id] as number)) {
      effort[id] = e;
      push(e, id);
    }
  while (keys.length > 0) {
    const k = keys[0] as number;
    const point = pop();
    if (k > (effort[point] as number)) continue;
    const end = lattice.first[point + 1] as number;
    for (let slot = lattice.first[point] as number; slot < end; slot++) {
      const e = k + (w.towards[slot] as number);
      const from = lattice.to[slot] as number;
      if (!(e < (effort[from] as number))) continue;
      effort[from] = e;
      next[from] = point;
      slotOf[from] = slot;
      push(e, from);
    }
  }
  return { effort, next, slot: slotOf };
};
