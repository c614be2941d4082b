import type { Point } from '../path';

/** Values at equal steps, row by row from `y0_m` upward; undefined where nothing is known. */
export type Grid = {
  readonly x0_m: number;
  readonly y0_m: number;
  readonly step_m: number;
  readonly columns: number;
  readonly rows: number;
  readonly values: readonly (number | undefined)[];
};

export type Node = { readonly at: Point; readonly value: number };

/** A field cut into small convex pieces, none of them over its edge or over a hole. */
export type Mesh = readonly (readonly Node[])[];

/** Points nearer than this are one. [m] */
const SAME_M = 1e-7;

/** One text for one point, so that neighbouring pieces know their common corners. */
export const pointKey = ([x, y]: Point): string => `${Math.round(x / SAME_M)} ${Math.round(y / SAME_M)}`;

/** Inside a closed outline, by counting the crossings of a ray. */
export const isInside = ([x, y]: Point, outline: readonly Point[]): boolean => {
  let inside = false;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    if (a[1] > y !== b[1] > y && x < a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])) inside = !inside;
  });
  return inside;
};

/** Rings of unknown nodes that are filled from their neighbours, so that a contour reaches the edge of its field. */
const RINGS = 2;

/** Unknown nodes beside known ones take the mean of these. What is drawn is cut at the field's edge: nothing of it is seen beyond. */
const filledOut = ({ columns, rows, values }: Grid): readonly (number | undefined)[] => {
  let now = [...values];
  for (let ring = 0; ring < RINGS && now.some((v) => v === undefined); ring += 1) {
    const before = now;
    now = before.map((v, i) => {
      if (v !== undefined) return v;
      const [c, r] = [i % columns, Math.floor(i / columns)];
      const near = [
        c > 0 ? before[i - 1] : undefined,
        c < columns - 1 ? before[i + 1] : undefined,
        r > 0 ? before[i - columns] : undefined,
        r < rows - 1 ? before[i + columns] : undefined,
      ].filter((n) => n !== undefined);
      return near.length === 0 ? undefined : near.reduce((s, n) => s + n, 0) / near.length;
    });
  }
  return now;
};

/** How far beyond its outermost nodes a grid still speaks. [steps] */
const BEYOND = 1.01;

/** Between four nodes by their distances; up to a step beyond the outermost node the value there. */
const valueAt = (grid: Grid, values: readonly (number | undefined)[], [x, y]: Point): number | undefined => {
  const { columns, rows, step_m, x0_m, y0_m } = grid;
  const [far, up] = [(x - x0_m) / step_m, (y - y0_m) / step_m];
  if (far < -BEYOND || far > columns - 1 + BEYOND || up < -BEYOND || up > rows - 1 + BEYOND) return undefined;
  const u = Math.min(Math.max(far, 0), columns - 1);
  const v = Math.min(Math.max(up, 0), rows - 1);
  const [c, r] = [Math.min(Math.floor(u), Math.max(0, columns - 2)), Math.min(Math.floor(v), Math.max(0, rows - 2))];
  const [s, t] = [u - c, v - r];
  const corner = (dc: number, dr: number): number | undefined => values[Math.min(r + dr, rows - 1) * columns + Math.min(c + dc, columns - 1)];
  const weighed: readonly (readonly [number, number | undefined])[] = [
    [(1 - s) * (1 - t), corner(0, 0)],
    [s * (1 - t), corner(1, 0)],
    [(1 - s) * t, corner(0, 1)],
    [s * t, corner(1, 1)],
  ];
  let sum = 0;
  for (const [w, value] of weighed) {
    if (w === 0) continue;
    if (value === undefined) return undefined;
    sum += w * value;
  }
  return sum;
};

/** Where the mesh is cut: at every node of the grid and at every corner of the outlines. */
const cuts = (from: number, step: number, count: number, corners: readonly number[]): readonly number[] => {
  const [low, high] = [Math.min(...corners), Math.max(...corners)];
  const all = [...Array.from({ length: count }, (_, i) => from + i * step).filter((v) => v > low && v < high), ...corners].sort((a, b) => a - b);
  return all.filter((v, i) => i === 0 || v - (all[i - 1] ?? v) > SAME_M * 10);
};

type Edge = readonly [Point, Point];

const edgesOf = (rings: readonly (readonly Point[])[]): readonly Edge[] =>
  rings.flatMap((ring) => ring.map((a, i): Edge => [a, ring[(i + 1) % ring.length] ?? a]).filter(([a, b]) => pointKey(a) !== pointKey(b)));

const sideOf = ([a, b]: Edge, p: Point): number => {
  const d = ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / Math.hypot(b[0] - a[0], b[1] - a[1]);
  return Math.abs(d) < SAME_M ? 0 : d;
};

/** Where an edge meets the side of a cell; the same for both cells that share it. */
const crossing = (edge: Edge, p: Point, q: Point): Point => {
  const [a, b] = p[0] < q[0] || (p[0] === q[0] && p[1] < q[1]) ? [p, q] : [q, p];
  const [da, db] = [sideOf(edge, a), sideOf(edge, b)];
  const t = da / (da - db);
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
};

/** A convex piece cut in two by a line. */
const split = (piece: readonly Point[], edge: Edge): readonly (readonly Point[])[] => {
  const sides = piece.map((p) => sideOf(edge, p));
  if (!sides.some((s) => s > 0) || !sides.some((s) => s < 0)) return [piece];
  const half = (sign: 1 | -1): readonly Point[] =>
    piece.flatMap((p, i) => {
      const j = (i + 1) % piece.length;
      const [s, next, q] = [sides[i] ?? 0, sides[j] ?? 0, piece[j] ?? p];
      return [...(s * sign >= 0 ? [p] : []), ...(s * next < 0 ? [crossing(edge, p, q)] : [])];
    });
  return [half(1), half(-1)].filter((h) => h.length >= 3);
};

const touches = ([a, b]: Edge, x0: number, y0: number, x1: number, y1: number): boolean =>
  Math.max(a[0], b[0]) > x0 && Math.min(a[0], b[0]) < x1 && Math.max(a[1], b[1]) > y0 && Math.min(a[1], b[1]) < y1;

const middle = (piece: readonly Point[]): Point => [piece.reduce((s, p) => s + p[0], 0) / piece.length, piece.reduce((s, p) => s + p[1], 0) / piece.length];

/**
 * Cuts a field into convex pieces along the grid, its outline and its holes, and gives every corner its value.
 * Pieces whose value is nowhere known are left out.
 *
 * @param outline  closed, without its first point repeated
 * @param holes    closed outlines within it
 */
export const meshOf = (grid: Grid, outline: readonly Point[], holes: readonly (readonly Point[])[] = []): Mesh => {
  if (outline.length < 3 || grid.columns < 1 || grid.rows < 1) return [];
  const corners = [...outline, ...holes.flat()];
  const [low, high] = [outline.reduce((m, p) => Math.min(m, p[0]), Number.POSITIVE_INFINITY), outline.reduce((m, p) => Math.max(m, p[0]), Number.NEGATIVE_INFINITY)];
  const [bottom, top] = [outline.reduce((m, p) => Math.min(m, p[1]), Number.POSITIVE_INFINITY), outline.reduce((m, p) => Math.max(m, p[1]), Number.NEGATIVE_INFINITY)];
  const within = (v: number, a: number, b: number): number => Math.min(Math.max(v, a), b);
  const xs = cuts(
    grid.x0_m,
    grid.step_m,
    grid.columns,
    corners.map((p) => within(p[0], low, high)),
  );
  const ys = cuts(
    grid.y0_m,
    grid.step_m,
    grid.rows,
    corners.map((p) => within(p[1], bottom, top)),
  );
  const slanted = edgesOf([outline, ...holes]).filter(([a, b]) => Math.abs(a[0] - b[0]) > SAME_M && Math.abs(a[1] - b[1]) > SAME_M);
  const values = filledOut(grid);
  const known = new Map<string, number | undefined>();
  const value = (p: Point): number | undefined => {
    const key = pointKey(p);
    if (!known.has(key)) known.set(key, valueAt(grid, values, p));
    return known.get(key);
  };
  const mesh: (readonly Node[])[] = [];
  for (let j = 0; j + 1 < ys.length; j += 1)
    for (let i = 0; i + 1 < xs.length; i += 1) {
      const [x0, x1, y0, y1] = [xs[i] ?? 0, xs[i + 1] ?? 0, ys[j] ?? 0, ys[j + 1] ?? 0];
      let pieces: readonly (readonly Point[])[] = [
        [
          [x0, y0],
          [x1, y0],
          [x1, y1],
          [x0, y1],
        ],
      ];
      for (const edge of slanted) if (touches(edge, x0, y0, x1, y1)) pieces = pieces.flatMap((p) => split(p, edge));
      for (const piece of pieces) {
        const at = middle(piece);
        if (!isInside(at, outline) || holes.some((h) => isInside(at, h))) continue;
        const nodes = piece.flatMap((p): readonly Node[] => {
          const v = value(p);
          return v === undefined ? [] : [{ at: p, value: v }];
        });
        if (nodes.length === piece.length) mesh.push(nodes);
      }
    }
  return mesh;
};
