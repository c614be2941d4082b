import type { Field } from '../../rig';
import type { FacePoint } from '../../terms';

type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/** Holes from a foot on, both ways, part the readings on either side; a small inlet does not. As for framed openings; ours. [m] */
const PARTS_M = 0.3;

/** Openings, slide-outs and wheel arches across which no reading speaks for a place. */
export const barriers = (field: Field): readonly Box[] =>
  field.holes_m
    .map((hole): Box => {
      const xs = hole.map((p) => p[0]);
      const ys = hole.map((p) => p[1]);
      return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
    })
    .filter((b) => Math.min(b.x1 - b.x0, b.y1 - b.y0) >= PARTS_M - 1e-9);

/** Whether the straight way from one point to another crosses the inside of a box. */
const crosses = ([ax, ay]: FacePoint, [bx, by]: FacePoint, box: Box): boolean => {
  let from = 0;
  let to = 1;
  for (const [start, by_, low, high] of [
    [ax, bx - ax, box.x0, box.x1],
    [ay, by - ay, box.y0, box.y1],
  ] as const) {
    if (by_ === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [near, far] = by_ > 0 ? [(low - start) / by_, (high - start) / by_] : [(high - start) / by_, (low - start) / by_];
    from = Math.max(from, near);
    to = Math.min(to, far);
  }
  return to - from > 1e-9;
};

/** Whether a reading speaks for a place: nothing that parts them lies on the straight way. */
export const sees = (a: FacePoint, b: FacePoint, between: readonly Box[]): boolean => !between.some((box) => crosses(a, b, box));
