import type { FacePoint } from '../../terms';
import type { Box } from '../shapes';
import { clipToBox } from './clip';
import type { CutOut } from './cut-outs';

/** How wide a strip a frame tube spoils for a pinless meter: a tube of an inch and a half and as much again for the meter's reach; ours. [m] */
export const TUBE_STRIP_M = 0.0762;

/** Along the edge of the sheet, just inside it. */
const alongEdges = (outline: readonly FacePoint[]): readonly (readonly FacePoint[])[] => {
  const turning = outline.reduce((sum, [ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length] ?? [ax, ay];
    return sum + ax * by - bx * ay;
  }, 0);
  return outline.map((p, i) => {
    const q = outline[(i + 1) % outline.length] ?? p;
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]) || 1;
    const by = ((turning > 0 ? 1 : -1) * TUBE_STRIP_M) / length;
    const [nx, ny] = [-(q[1] - p[1]) * by, (q[0] - p[0]) * by];
    return [p, q, [q[0] + nx, q[1] + ny], [p[0] + nx, p[1] + ny]];
  });
};

const beside = ({ box: b }: CutOut): readonly Box[] => [
  { x0: b.x0 - TUBE_STRIP_M, x1: b.x0, y0: b.y0 - TUBE_STRIP_M, y1: b.y1 + TUBE_STRIP_M },
  { x0: b.x1, x1: b.x1 + TUBE_STRIP_M, y0: b.y0 - TUBE_STRIP_M, y1: b.y1 + TUBE_STRIP_M },
  { x0: b.x0, x1: b.x1, y0: b.y0 - TUBE_STRIP_M, y1: b.y0 },
  { x0: b.x0, x1: b.x1, y0: b.y1, y1: b.y1 + TUBE_STRIP_M },
];

/** A tube of the regular spacing ends at a framed opening, and goes on beyond it. */
const pastOpenings = (x: number, y0: number, y1: number, framed: readonly CutOut[]): readonly Box[] => {
  const half = TUBE_STRIP_M / 2;
  const stops = framed.filter(({ box: b }) => b.x0 < x && b.x1 > x).toSorted((a, b) => a.box.y0 - b.box.y0);
  const ends = [y0, ...stops.flatMap(({ box: b }) => [b.y0, b.y1]), y1];
  return Array.from({ length: ends.length / 2 }, (_, i) => ({ x0: x - half, x1: x + half, y0: ends[2 * i] ?? y0, y1: ends[2 * i + 1] ?? y1 })).filter((b) => b.y1 > b.y0);
};

/** Strips over the frame tubes of a bonded sheet: at its edges, beside framed openings, and at the regular spacing. */
export const tubeStrips = (outline: readonly FacePoint[], framed: readonly CutOut[], regular: readonly number[]): readonly (readonly FacePoint[])[] => {
  const ys = outline.map((p) => p[1]);
  const [y0, y1] = [Math.min(...ys), Math.max(...ys)];
  return [...framed.flatMap(beside), ...regular.flatMap((x) => pastOpenings(x, y0, y1, framed))]
    .map((b) => clipToBox(outline, b))
    .filter((o) => o.length >= 3)
    .concat(alongEdges(outline));
};
