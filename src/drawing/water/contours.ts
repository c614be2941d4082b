import type { Point } from '../path';
import { type Mesh, type Node, pointKey } from './mesh';

/**
 * Marching squares over the pieces of a field. Each piece is a fan of triangles about its middle, whose value is the mean of
 * its corners: that decides the saddles, and no two contours of one field ever cross.
 */
type Triangle = readonly [Node, Node, Node];

const trianglesOf = (piece: readonly Node[]): readonly Triangle[] => {
  if (piece.length === 3) return [piece as unknown as Triangle];
  const n = piece.length;
  const mid: Node = {
    at: [piece.reduce((s, p) => s + p.at[0], 0) / n, piece.reduce((s, p) => s + p.at[1], 0) / n],
    value: piece.reduce((s, p) => s + p.value, 0) / n,
  };
  return piece.map((p, i): Triangle => [mid, p, piece[(i + 1) % n] ?? p]);
};

/** Where the level lies between two nodes; the same from either side. */
const crossing = (p: Node, q: Node, level: number): Point => {
  const [a, b] = p.at[0] < q.at[0] || (p.at[0] === q.at[0] && p.at[1] < q.at[1]) ? [p, q] : [q, p];
  const t = (level - a.value) / (b.value - a.value);
  return [a.at[0] + (b.at[0] - a.at[0]) * t, a.at[1] + (b.at[1] - a.at[1]) * t];
};

type Cut = { readonly above: readonly Point[]; readonly line?: readonly [Point, Point] };

/** The part of a triangle at or above the level, counter-clockwise as the piece is, and the contour that bounds it. */
const cut = (triangle: Triangle, level: number): Cut => {
  const above: Point[] = [];
  let enters: Point | undefined;
  let leaves: Point | undefined;
  triangle.forEach((p, i) => {
    const q = triangle[(i + 1) % 3] ?? p;
    const [pIn, qIn] = [p.value >= level, q.value >= level];
    if (pIn) above.push(p.at);
    if (pIn === qIn) return;
    const at = crossing(p, q, level);
    above.push(at);
    if (pIn) leaves = at;
    else enters = at;
  });
  return enters && leaves && pointKey(enters) !== pointKey(leaves) ? { above, line: [leaves, enters] } : { above };
};

type Joined = { readonly points: readonly Point[]; readonly closed: boolean };

/** Directed pieces of line, end to end. */
const chained = (edges: readonly (readonly [Point, Point])[]): readonly Joined[] => {
  const from = new Map<string, number[]>();
  const into = new Map<string, number>();
  edges.forEach(([a, b], i) => {
    const [ka, kb] = [pointKey(a), pointKey(b)];
    from.set(ka, [...(from.get(ka) ?? []), i]);
    into.set(kb, (into.get(kb) ?? 0) + 1);
  });
  const used = new Set<number>();
  const follow = (start: number): Joined => {
    const [first, second] = edges[start] ?? [[0, 0] as Point, [0, 0] as Point];
    used.add(start);
    const points: Point[] = [first, second];
    for (let here = pointKey(second); here !== pointKey(first); ) {
      const next = from.get(here)?.find((i) => !used.has(i));
      const to = next === undefined ? undefined : edges[next]?.[1];
      if (next === undefined || !to) return { points, closed: false };
      used.add(next);
      points.push(to);
      here = pointKey(to);
    }
    return { points: points.slice(0, -1), closed: true };
  };
  const ends = edges.map((_, i) => i).filter((i) => (into.get(pointKey(edges[i]?.[0] ?? [0, 0])) ?? 0) === 0);
  return [...ends, ...edges.keys()].flatMap((i) => (used.has(i) ? [] : [follow(i)]));
};

/** What a line may leave out without being seen to. [m] */
const NEAR_M = 0.0006;

/** Points that lie on the line between their neighbours are left out (Ramer, Douglas and Peucker). */
const simpler = (points: readonly Point[]): readonly Point[] => {
  const keep = new Set<number>([0, points.length - 1]);
  const open: (readonly [number, number])[] = [[0, points.length - 1]];
  for (let span = open.pop(); span; span = open.pop()) {
    const [i, j] = span;
    const [a, b] = [points[i] ?? [0, 0], points[j] ?? [0, 0]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    let [far, at] = [NEAR_M, -1];
    for (let k = i + 1; k < j; k += 1) {
      const p = points[k] ?? a;
      const d = length === 0 ? Math.hypot(p[0] - a[0], p[1] - a[1]) : Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length;
      if (d > far) [far, at] = [d, k];
    }
    if (at < 0) continue;
    keep.add(at);
    open.push([i, at], [at, j]);
  }
  return points.filter((_, i) => keep.has(i));
};

const simplerRing = (ring: readonly Point[]): readonly Point[] => {
  const first = ring[0];
  if (!first || ring.length < 4) return ring;
  return simpler([...ring, first]).slice(0, -1);
};

/**
 * Everything of a field at or above a level, as closed rings: outlines run one way, what they leave free the other.
 * It ends exactly at the edge of the field and of its holes.
 */
export const regionAbove = (mesh: Mesh, level: number): readonly (readonly Point[])[] => {
  const edges = new Map<string, readonly [Point, Point]>();
  for (const piece of mesh)
    for (const triangle of trianglesOf(piece)) {
      const { above } = cut(triangle, level);
      above.forEach((a, i) => {
        const b = above[(i + 1) % above.length] ?? a;
        const [ka, kb] = [pointKey(a), pointKey(b)];
        if (ka === kb) return;
        // What two pieces share is no edge of the whole.
        if (!edges.delete(`${kb}>${ka}`)) edges.set(`${ka}>${kb}`, [a, b]);
      });
    }
  return chained([...edges.values()])
    .map((j) => simplerRing(j.points))
    .filter((r) => r.length >= 3);
};

/** A contour: where the level itself lies, higher ground on its left. Open where it meets the edge of the field. */
export type Contour = Joined;

export const contoursAt = (mesh: Mesh, level: number): readonly Contour[] => {
  const lines: (readonly [Point, Point])[] = [];
  for (const piece of mesh)
    for (const triangle of trianglesOf(piece)) {
      const { line } = cut(triangle, level);
      if (line) lines.push(line);
    }
  return chained(lines).map(({ points, closed }) => ({ points: closed ? simplerRing(points) : simpler(points), closed }));
};
