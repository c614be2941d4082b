import type { FacePoint, Shape } from '../terms';
import { box, pointsOf } from './shapes';

/** Work on a face's own outline, a closed polygon that may have notches (a cab, an overhang, a wheel box). */

const edges = (outline: readonly FacePoint[]): readonly (readonly [FacePoint, FacePoint])[] => outline.map((p, i) => [p, outline[(i + 1) % outline.length] ?? p] as const);

const toEdge = ([px, py]: FacePoint, [[ax, ay], [bx, by]]: readonly [FacePoint, FacePoint]): number => {
  const [dx, dy] = [bx - ax, by - ay];
  const t = dx === 0 && dy === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
};

const within = ([px, py]: FacePoint, outline: readonly FacePoint[]): boolean => {
  let inside = false;
  for (const [[ax, ay], [bx, by]] of edges(outline)) if (ay > py !== by > py && px < ((bx - ax) * (py - ay)) / (by - ay) + ax) inside = !inside;
  return inside;
};

/** Inside the outline, or no farther out than `slack`. The slack lets a trim that follows the edge count as inside. [m] */
export const pointInside = (point: FacePoint, outline: readonly FacePoint[], slack = 0.006): boolean =>
  within(point, outline) || edges(outline).some((e) => toEdge(point, e) <= slack);

const CIRCLE_POINTS = 16;

const rim = (shape: Shape): readonly FacePoint[] => {
  if (shape.form !== 'circle') return pointsOf(shape);
  const [cx, cy] = [shape.x_m + shape.w_m / 2, shape.y_m + shape.h_m / 2];
  return Array.from({ length: CIRCLE_POINTS }, (_, i) => {
    const turn = (2 * Math.PI * i) / CIRCLE_POINTS;
    return [cx + (shape.w_m / 2) * Math.cos(turn), cy + (shape.h_m / 2) * Math.sin(turn)] as const;
  });
};

/** The whole shape lies on the face: its corners inside, and no notch of the outline reaching into it. */
export const shapeInside = (shape: Shape, outline: readonly FacePoint[], slack = 0.006): boolean => {
  if (!rim(shape).every((p) => pointInside(p, outline, slack))) return false;
  if (shape.form === 'lines' || shape.form === 'poly') return true;
  const b = box(shape);
  return !outline.some(([x, y]) => x > b.x0 + slack && x < b.x1 - slack && y > b.y0 + slack && y < b.y1 - slack);
};

export const areaOf = (outline: readonly FacePoint[]): number => Math.abs(edges(outline).reduce((sum, [[ax, ay], [bx, by]]) => sum + ax * by - bx * ay, 0)) / 2;
