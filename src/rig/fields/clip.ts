import type { FacePoint } from '../../terms';
import type { Box } from '../shapes';

type Edge = { readonly inside: (p: FacePoint) => boolean; readonly cross: (p: FacePoint, q: FacePoint) => FacePoint };

const upright = (x: number, inside: Edge['inside']): Edge => ({ inside, cross: (p, q) => [x, p[1] + ((q[1] - p[1]) * (x - p[0])) / (q[0] - p[0])] });
const level = (y: number, inside: Edge['inside']): Edge => ({ inside, cross: (p, q) => [p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1]), y] });

const cut = (outline: readonly FacePoint[], { inside, cross }: Edge): readonly FacePoint[] =>
  outline.flatMap((q, i) => {
    const p = outline.at(i - 1) ?? q;
    if (inside(p) === inside(q)) return inside(q) ? [q] : [];
    return inside(q) ? [cross(p, q), q] : [cross(p, q)];
  });

/** The part of an outline within an upright box; empty where they do not meet. */
export const clipToBox = (outline: readonly FacePoint[], { x0, y0, x1, y1 }: Box): readonly FacePoint[] =>
  [upright(x0, (p) => p[0] >= x0), upright(x1, (p) => p[0] <= x1), level(y0, (p) => p[1] >= y0), level(y1, (p) => p[1] <= y1)].reduce(cut, outline);

/** The same line with no point twice and none that only lies on the way between its neighbours. */
export const tidy = (outline: readonly FacePoint[]): readonly FacePoint[] => {
  const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-9;
  const apart = outline.filter((p, i) => {
    const before = outline.at(i - 1);
    return before === undefined || !(near(before[0], p[0]) && near(before[1], p[1]));
  });
  return apart.filter((p, i) => {
    const a = apart.at(i - 1) ?? p;
    const b = apart[(i + 1) % apart.length] ?? p;
    return !near((p[0] - a[0]) * (b[1] - a[1]), (p[1] - a[1]) * (b[0] - a[0]));
  });
};
