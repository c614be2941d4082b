import type { FacePoint, Shape } from '../terms';

/** Bounding box on a face. [m] */
export type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/** Drawings are kept to the millimetre; nothing on a rig is measured finer. */
export const toMillimetre = (m: number): number => Math.round(m * 1000) / 1000;

export const pointsOf = (shape: Shape): readonly FacePoint[] => {
  if (shape.form === 'poly') return shape.points_m;
  if (shape.form === 'lines') return shape.lines_m.flat();
  return [
    [shape.x_m, shape.y_m],
    [shape.x_m + shape.w_m, shape.y_m],
    [shape.x_m + shape.w_m, shape.y_m + shape.h_m],
    [shape.x_m, shape.y_m + shape.h_m],
  ];
};

/** The smallest upright box that holds the shape. [m] */
export const box = (shape: Shape): Box => {
  const points = pointsOf(shape);
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
};

/** Middle of the bounding box: where a mark or a number is put. [m] */
export const centre = (shape: Shape): FacePoint => {
  const b = box(shape);
  return [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2];
};

const length = (line: readonly FacePoint[], closed = false): number => {
  let sum = 0;
  for (let i = 1; i < line.length; i++) sum += Math.hypot((line[i]?.[0] ?? 0) - (line[i - 1]?.[0] ?? 0), (line[i]?.[1] ?? 0) - (line[i - 1]?.[1] ?? 0));
  const first = line[0];
  const last = line.at(-1);
  return closed && first && last ? sum + Math.hypot(first[0] - last[0], first[1] - last[1]) : sum;
};

/**
 * How long the edge of a shape is: what would be sealed if it were sealed all round, or the run of a seam.
 *
 * @returns  length; a circle by its diameter, an oval by the mean of its two diameters. [m]
 * @assumes  sharp corners: a window's rounded corners make its true outline shorter, by 0.86 of the corner radius each.
 */
export const outlineLength = (shape: Shape): number => {
  if (shape.form === 'lines') return shape.lines_m.reduce((sum, line) => sum + length(line), 0);
  if (shape.form === 'poly') return length(shape.points_m, true);
  if (shape.form === 'circle') return (Math.PI * (shape.w_m + shape.h_m)) / 2;
  return 2 * (shape.w_m + shape.h_m);
};

const shift = (points: readonly FacePoint[], dx: number, dy: number): readonly FacePoint[] => points.map(([x, y]) => [toMillimetre(x + dx), toMillimetre(y + dy)]);

/** The same shape somewhere else on its face. */
export const movedBy = (shape: Shape, dx: number, dy: number): Shape => {
  if (shape.form === 'poly') return { form: 'poly', points_m: shift(shape.points_m, dx, dy) };
  if (shape.form === 'lines') return { form: 'lines', lines_m: shape.lines_m.map((line) => shift(line, dx, dy)) };
  return { ...shape, x_m: toMillimetre(shape.x_m + dx), y_m: toMillimetre(shape.y_m + dy) };
};

export const rect = (x: number, y: number, w: number, h: number): Shape => ({
  form: 'rect',
  x_m: toMillimetre(x),
  y_m: toMillimetre(y),
  w_m: toMillimetre(w),
  h_m: toMillimetre(h),
});

/** Two boxes share more than `by` in both directions. Touching is not overlapping. */
export const overlaps = (a: Box, b: Box, by = 0.001): boolean => Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0) > by && Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0) > by;

export const contains = (outer: Box, inner: Box, slack = 0.006): boolean =>
  inner.x0 >= outer.x0 - slack && inner.x1 <= outer.x1 + slack && inner.y0 >= outer.y0 - slack && inner.y1 <= outer.y1 + slack;
