import type { FacePoint } from '../../terms';
import type { Space, Surface } from './surfaces';

/** Width of the lattice. On a plain face effort does not depend on it; round edges and openings it is how finely a way is known. [m] */
export const STEP_M = 0.2;

/** How two points are joined. */
export const PLAIN = -1;
export const OVER_EDGE = -2;
export const THROUGH_FLOOR = -3;

/** Whole numbers as one, for looking up; good to a million either way. */
export const paired = (i: number, j: number): number => (i + 1e6) * 4e6 + (j + 1e6);
/** To the millimetre: nothing on a rig is drawn finer. */
export const key = (x: number, y: number): number => paired(Math.round(x * 1000), Math.round(y * 1000));

/** Its corners and where it crosses the lines of the lattice: no two neighbours are farther apart than one cell's diagonal. */
export const sampled = (line: readonly FacePoint[], [ox, oy]: FacePoint): readonly FacePoint[] => {
  const out: FacePoint[] = [];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    if (!a || !b) continue;
    const ts = [0];
    for (const [p, q, o] of [
      [a[0], b[0], ox],
      [a[1], b[1], oy],
    ] as const) {
      const [lo, hi] = [Math.min(p, q), Math.max(p, q)];
      for (let k = Math.ceil((lo - o) / STEP_M + 1e-9); o + k * STEP_M < hi - 1e-9; k++) ts.push((o + k * STEP_M - p) / (q - p));
    }
    for (const t of ts.sort((x, y) => x - y)) out.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
  }
  const last = line.at(-1);
  return last ? [...out, last] : out;
};

type Point = { readonly on: number; readonly at: FacePoint; readonly space: Space };
type Link = { readonly a: number; readonly b: number; readonly by: number; readonly length: number };

/** Points and moves while they are put together. */
export type Mesh = {
  readonly surfaces: readonly Surface[];
  readonly points: readonly Point[];
  readonly links: readonly Link[];
  /** Points on the edge of their face, where it meets others; points beside the lattice's own. */
  readonly edge: Set<number>;
  readonly extra: ReadonlySet<number>;
  /** The point there, made if it is new; never two within a millimetre. */
  readonly point: (on: number, at: FacePoint, extra: boolean) => number;
  /** Points no farther than one step along either axis. */
  readonly near: (on: number, at: FacePoint) => readonly number[];
  readonly link: (a: number, b: number, by: number) => void;
  /** A line of points; led along by a channel, or only the face's edge. */
  readonly line: (on: number, line: readonly FacePoint[], by: number) => readonly number[];
};

export const meshOn = (surfaces: readonly Surface[]): Mesh => {
  const points: Point[] = [];
  const links: Link[] = [];
  const extras = new Set<number>();
  const ids = surfaces.map(() => new Map<number, number>());
  const cells = surfaces.map(() => new Map<number, number[]>());

  const cell = (on: number, [x, y]: FacePoint, i: number, j: number): number => {
    const [ox, oy] = surfaces[on]?.origin_m ?? [0, 0];
    return paired(Math.floor((x - ox) / STEP_M + 1e-6) + i, Math.floor((y - oy) / STEP_M + 1e-6) + j);
  };
  const point: Mesh['point'] = (on, at, extra) => {
    const known = ids[on]?.get(key(at[0], at[1]));
    if (known !== undefined) return known;
    const id = points.length;
    points.push({ on, at, space: (surfaces[on] as Surface).at(at[0], at[1]) });
    ids[on]?.set(key(at[0], at[1]), id);
    const there = cells[on]?.get(cell(on, at, 0, 0));
    if (there) there.push(id);
    else cells[on]?.set(cell(on, at, 0, 0), [id]);
    if (extra) extras.add(id);
    return id;
  };
  const near: Mesh['near'] = (on, at) => {
    const found: number[] = [];
    for (let i = -1; i <= 1; i++)
      for (let j = -1; j <= 1; j++)
        for (const id of cells[on]?.get(cell(on, at, i, j)) ?? []) {
          const p = points[id]?.at ?? at;
          if (Math.abs(p[0] - at[0]) <= STEP_M + 1e-6 && Math.abs(p[1] - at[1]) <= STEP_M + 1e-6) found.push(id);
        }
    return found;
  };
  const link: Mesh['link'] = (a, b, by) => {
    const [p, q] = [points[a], points[b]];
    if (!p || !q || a === b) return;
    const length = by === OVER_EDGE || by === THROUGH_FLOOR ? 0 : Math.hypot(p.at[0] - q.at[0], p.at[1] - q.at[1]);
    links.push({ a, b, by, length });
  };
  const line: Mesh['line'] = (on, run, by) => {
    const along = sampled(run, surfaces[on]?.origin_m ?? [0, 0]).map((p) => point(on, p, true));
    if (by >= 0) for (let i = 1; i < along.length; i++) link(along[i - 1] as number, along[i] as number, by);
    return along;
  };
  return { surfaces, points, links, edge: new Set(), extra: extras, point, near, link, line };
};
