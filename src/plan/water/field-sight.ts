import type { Field } from '../../rig';

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

/** Whether the straight way from one point to another crosses the inside of a box. Run for every node and reading, so that it makes nothing. */
const crosses = (ax: number, ay: number, bx: number, by: number, box: Box): boolean => {
  const dx = bx - ax;
  const dy = by - ay;
  let from = 0;
  let to = 1;
  if (dx === 0) {
    if (ax <= box.x0 || ax >= box.x1) return false;
  } else {
    const a = (box.x0 - ax) / dx;
    const b = (box.x1 - ax) / dx;
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
  }
  if (dy === 0) {
    if (ay <= box.y0 || ay >= box.y1) return false;
  } else {
    const a = (box.y0 - ay) / dy;
    const b = (box.y1 - ay) / dy;
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
  }
  return to - from > 1e-9;
};

/** Whether a reading speaks for a place: nothing that parts them lies on the straight way. */
export const sees = (ax: number, ay: number, bx: number, by: number, between: readonly Box[]): boolean => {
  for (const box of between) if (crosses(ax, ay, bx, by, box)) return false;
  return true;
};
