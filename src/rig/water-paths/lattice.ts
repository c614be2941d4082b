import type { FacePoint, StationId } from '../../terms';
import { pointInside } from '../outline';
import type { Rig } from '../rig';
import type { Box } from '../shapes';
import { key, type Mesh, meshOn, OVER_EDGE, PLAIN, paired, STEP_M, sampled, THROUGH_FLOOR } from './mesh';
import { type Space, type Surface, surfacesOf } from './surfaces';
import { channels, type Gap, gaps, type WayIn, waysIn } from './ways-in';

/** Points of two faces nearer than this are the same edge: the drawing's rounded corners are cut off. [m] */
const SAME_EDGE_M = 0.13;
const FLOOR_LINE = 'floor line';

/** The unfolded rig as points and the short moves between them. Numbers in columns: it is walked thousands of times. */
export type Lattice = {
  readonly surfaces: readonly Surface[];
  readonly gaps: readonly Gap[];
  readonly channels: readonly string[];
  readonly size: number;
  /** Surface of each point, and the point on its face and in space. */
  readonly on: Int16Array;
  readonly face_x: Float64Array;
  readonly face_y: Float64Array;
  readonly aft: Float64Array;
  readonly across: Float64Array;
  readonly up: Float64Array;
  /** Moves of point i: slots first[i] … first[i + 1]. */
  readonly first: Int32Array;
  readonly to: Int32Array;
  /** Channel number, or PLAIN, OVER_EDGE, THROUGH_FLOOR. */
  readonly by: Int16Array;
  readonly length: Float64Array;
  /** Slope of a level face at the move, aft and across. [1] */
  readonly slope_aft: Float64Array;
  readonly slope_across: Float64Array;
  /** Points at which each source lets water in. */
  readonly entries: ReadonlyMap<StationId, Entries>;
  /** Points near a place on a surface. */
  readonly near: (surface: number, point: FacePoint) => readonly number[];
};

export type Entries = { readonly all: readonly number[] /** Those that face the wind while driving. */; readonly windward: readonly number[] };

const strictlyIn = ([x, y]: FacePoint, b: Box): boolean => x > b.x0 + 1e-6 && x < b.x1 - 1e-6 && y > b.y0 + 1e-6 && y < b.y1 - 1e-6;

const ring = (b: Box): readonly FacePoint[] => [
  [b.x0, b.y0],
  [b.x1, b.y0],
  [b.x1, b.y1],
  [b.x0, b.y1],
  [b.x0, b.y0],
];

/** Whether water passes from one kind of face to another where their edges meet. Onto the roof from a wall only by wind. */
const passes = (from: Surface, to: Surface): boolean => {
  if (from.kind === 'roof') return to.kind === 'wall' && to.slide === undefined;
  if (from.kind === 'slide-roof') return to.kind === 'wall';
  if (from.kind !== 'wall') return false;
  return to.kind !== 'roof' || from.faces_wind;
};

/** The points on the lines of the lattice, within the face and off what is cut away. */
const fill = (b: Mesh, on: number, holes: readonly Box[]): void => {
  const s = b.surfaces[on] as Surface;
  const xs = s.outline_m.map((p) => p[0]);
  const ys = s.outline_m.map((p) => p[1]);
  const [ox, oy] = s.origin_m;
  const lines = (all: readonly number[], o: number): readonly number[] => {
    const from = Math.ceil((Math.min(...all) - o) / STEP_M - 1e-9);
    const to = Math.floor((Math.max(...all) - o) / STEP_M + 1e-9);
    return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => o + (from + i) * STEP_M);
  };
  for (const x of lines(xs, ox))
    for (const y of lines(ys, oy)) {
      const at: FacePoint = [x, y];
      if (pointInside(at, s.outline_m, 0) && !holes.some((h) => strictlyIn(at, h))) b.point(on, at, false);
    }
};

const joinEdges = (b: Mesh): void => {
  const cells = new Map<number, number[]>();
  const cut = (v: number): number => Math.floor(v / SAME_EDGE_M);
  const cell = ([x, y, z]: Space, i: number, j: number, k: number): number => paired(cut(x) + i, cut(y) + j) * 1e3 + cut(z) + k + 10;
  for (const id of b.edge) {
    const k = cell((b.points[id] as { space: Space }).space, 0, 0, 0);
    const there = cells.get(k);
    if (there) there.push(id);
    else cells.set(k, [id]);
  }
  const steps = [-1, 0, 1];
  for (const id of b.edge) {
    const p = b.points[id] as (typeof b.points)[number];
    for (const i of steps)
      for (const j of steps)
        for (const k of steps)
          for (const other of cells.get(cell(p.space, i, j, k)) ?? []) {
            const q = b.points[other] as (typeof b.points)[number];
            if (other <= id || q.on === p.on) continue;
            if (Math.hypot(p.space[0] - q.space[0], p.space[1] - q.space[1], p.space[2] - q.space[2]) > SAME_EDGE_M) continue;
            const [sp, sq] = [b.surfaces[p.on] as Surface, b.surfaces[q.on] as Surface];
            if (passes(sp, sq) || passes(sq, sp)) b.link(id, other, OVER_EDGE);
          }
  }
};

/** Whether water may pass from the first of two points over an edge to the second. */
export const passesEdge = (lattice: Lattice, from: number, to: number): boolean =>
  passes(lattice.surfaces[lattice.on[from] ?? 0] as Surface, lattice.surfaces[lattice.on[to] ?? 0] as Surface);

/** Share of a line's length that must lie across the wind; ours. [1] */
const ACROSS = 0.45;

/** A line that runs more up or across than fore and aft has the wind against it; at the very rear it stands in the lee. Ours. */
const facesWind = (s: Surface, way: WayIn, a: FacePoint, b: FacePoint): boolean => {
  if (!s.fore_and_aft) return s.faces_wind;
  if (Math.abs(b[1] - a[1]) < ACROSS * Math.hypot(b[0] - a[0], b[1] - a[1])) return false;
  const middle = (a[0] + b[0]) / 2;
  const xs = way.round ? way.line_m.map((p) => p[0]) : [];
  if (way.round) return middle < (Math.min(...xs) + Math.max(...xs)) / 2 - 1e-6;
  return middle < Math.max(...s.outline_m.map((p) => p[0])) - SAME_EDGE_M;
};

const LEVEL_KINDS: readonly string[] = ['roof', 'slide-roof', 'floor', 'underside'];
export const isWall = (s: Surface): boolean => !LEVEL_KINDS.includes(s.kind);

const PROBE_M = 0.02;

const build = (rig: Rig): Lattice => {
  const surfaces = surfacesOf(rig);
  const b = meshOn(surfaces);
  const named = channels(rig);
  const open = gaps(rig);
  const names = [...named.map((c) => c.name), FLOOR_LINE];
  // Channels, frames and ways in lie on the outer surface of a face; the floor is reached by its edges alone.
  const surfaceOf = (face: string): number => surfaces.findIndex((s) => s.face === face && s.kind !== 'floor');

  for (const [on, s] of surfaces.entries()) {
    fill(b, on, [...s.cut_away, ...open.filter((g) => g.face === s.face && s.kind !== 'floor')]);
    const first = s.outline_m[0];
    const edges = [...(first ? [[...s.outline_m, first]] : []), ...s.cut_away.map(ring)];
    for (const line of edges) for (const id of b.line(on, line, PLAIN)) b.edge.add(id);
  }
  for (const [i, c] of named.entries()) {
    const on = surfaceOf(c.face);
    if (on >= 0) b.line(on, c.line_m, i);
  }
  const floorLine = names.length - 1;
  for (const [on, s] of surfaces.entries()) {
    if (s.kind !== 'wall' || s.slide !== undefined) continue;
    const y = rig.levels.floor_m;
    const [x0, x1] = [Math.min(...s.outline_m.map((p) => p[0])), Math.max(...s.outline_m.map((p) => p[0]))];
    const clear = sampled(
      [
        [x0, y],
        [x1, y],
      ],
      s.origin_m,
    ).map((p) => (pointInside(p, s.outline_m, 1e-6) && !s.cut_away.some((h) => strictlyIn(p, h)) && !open.some((g) => g.face === s.face && strictlyIn(p, g)) ? p : undefined));
    for (const [i, p] of clear.entries()) {
      if (!p) continue;
      const id = b.point(on, p, true);
      b.edge.add(id);
      const before = clear[i - 1];
      if (before) b.link(b.point(on, before, true), id, floorLine);
    }
  }

  const entries = new Map<StationId, { all: Set<number>; windward: Set<number> }>();
  for (const way of waysIn(rig)) {
    const on = surfaceOf(way.face);
    const s = surfaces[on];
    if (!s) continue;
    const of = entries.get(way.station) ?? { all: new Set(), windward: new Set() };
    entries.set(way.station, of);
    for (let i = 1; i < way.line_m.length; i++) {
      const [p, q] = [way.line_m[i - 1], way.line_m[i]];
      if (!p || !q) continue;
      const ids = b.line(on, [p, q], PLAIN);
      const windward = facesWind(s, way, p, q);
      for (const id of ids) {
        of.all.add(id);
        if (windward) of.windward.add(id);
      }
    }
  }

  for (const id of b.points.keys()) {
    const p = b.points[id] as (typeof b.points)[number];
    const mine = b.extra.has(id);
    for (const other of b.near(p.on, p.at)) if (mine ? !b.extra.has(other) || other < id : !b.extra.has(other) && other < id) b.link(id, other, PLAIN);
  }
  joinEdges(b);
  const floor = surfaces.findIndex((s) => s.kind === 'floor');
  const under = surfaces.findIndex((s) => s.kind === 'underside');
  if (floor >= 0 && under >= 0) {
    const below = new Map([...b.points.entries()].filter(([, p]) => p.on === under).map(([id, p]) => [key(p.at[0], p.at[1]), id]));
    for (const [id, p] of b.points.entries()) {
      const to = p.on === floor ? below.get(key(p.at[0], p.at[1])) : undefined;
      if (to !== undefined) b.link(id, to, THROUGH_FLOOR);
    }
  }
  return columns(b, names, open, entries);
};

const columns = (b: Mesh, names: readonly string[], open: readonly Gap[], entries: ReadonlyMap<StationId, { all: Set<number>; windward: Set<number> }>): Lattice => {
  const size = b.points.length;
  const first = new Int32Array(size + 1);
  for (const { a, b: c } of b.links) {
    first[a + 1] = (first[a + 1] ?? 0) + 1;
    first[c + 1] = (first[c + 1] ?? 0) + 1;
  }
  for (let i = 0; i < size; i++) first[i + 1] = (first[i + 1] ?? 0) + (first[i] ?? 0);
  const slots = first[size] ?? 0;
  const next = first.slice(0, size);
  const to = new Int32Array(slots);
  const by = new Int16Array(slots);
  const length = new Float64Array(slots);
  const slope_aft = new Float64Array(slots);
  const slope_across = new Float64Array(slots);
  for (const link of b.links) {
    const s = b.surfaces[b.points[link.a]?.on ?? 0] as Surface;
    const [zx, zy] = isWall(s) || link.by < PLAIN ? [0, 0] : slopeAt(s, b.points[link.a]?.at ?? [0, 0], b.points[link.b]?.at ?? [0, 0]);
    for (const [from, other] of [
      [link.a, link.b],
      [link.b, link.a],
    ] as const) {
      const slot = next[from] ?? 0;
      next[from] = slot + 1;
      to[slot] = other;
      by[slot] = link.by;
      length[slot] = link.length;
      slope_aft[slot] = zx;
      slope_across[slot] = zy;
    }
  }
  return {
    surfaces: b.surfaces,
    gaps: open,
    channels: names,
    size,
    on: Int16Array.from(b.points, (p) => p.on),
    face_x: Float64Array.from(b.points, (p) => p.at[0]),
    face_y: Float64Array.from(b.points, (p) => p.at[1]),
    aft: Float64Array.from(b.points, (p) => p.space[0]),
    across: Float64Array.from(b.points, (p) => p.space[1]),
    up: Float64Array.from(b.points, (p) => p.space[2]),
    first,
    to,
    by,
    length,
    slope_aft,
    slope_across,
    entries: new Map([...entries].map(([id, e]) => [id, { all: [...e.all], windward: [...e.windward] }])),
    near: (surface, point) => b.near(surface, point),
  };
};

/** Slope of a level face half way along a move, aft and across. [1] */
export const slopeAt = (s: Surface, a: FacePoint, b: FacePoint): readonly [number, number] => {
  const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const [lo, hi] = [s.at(x - PROBE_M, y), s.at(x + PROBE_M, y)];
  const [out, far] = [s.at(x, y - PROBE_M), s.at(x, y + PROBE_M)];
  return [(hi[2] - lo[2]) / (2 * PROBE_M), (far[2] - out[2]) / (far[1] - out[1])];
};

const kept = new WeakMap<Rig, Lattice>();

/** The lattice of a rig, built once. */
export const latticeOf = (rig: Rig): Lattice => {
  const known = kept.get(rig);
  if (known) return known;
  const made = build(rig);
  kept.set(rig, made);
  return made;
};
