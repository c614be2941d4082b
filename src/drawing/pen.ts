import { arcD, circleD, lineD, type Onto, type Point, rectPoints, roundedD } from './path';
import type { CirclePrimitive, Ink, PathPrimitive, TextPrimitive } from './primitives';

/** Draws in the coordinates of `onto`: a face, a part's own box, or the sheet itself. */
export type Pen = {
  readonly line: (ink: Ink, ...points: readonly Point[]) => PathPrimitive;
  readonly poly: (ink: Ink, points: readonly Point[], radius?: number | readonly number[]) => PathPrimitive;
  /** A bent line with rounded bends. */
  readonly bent: (ink: Ink, points: readonly Point[], radius: number) => PathPrimitive;
  readonly box: (ink: Ink, x: number, y: number, w: number, h: number, radius?: number) => PathPrimitive;
  readonly disc: (ink: Ink, cx: number, cy: number, r: number) => CirclePrimitive;
  readonly arc: (ink: Ink, cx: number, cy: number, rx: number, ry: number, from: number, to: number) => PathPrimitive;
  /** Several separate strokes of one ink. */
  readonly strokes: (ink: Ink, lines: readonly (readonly Point[])[]) => PathPrimitive;
  readonly dots: (ink: Ink, points: readonly Point[], r: number) => PathPrimitive;
  readonly text: (ink: Ink, x: number, y: number, text: string, size: number, anchor?: TextPrimitive['anchor'], rotate?: number) => TextPrimitive;
};

export const penOn = (onto: Onto): Pen => ({
  line: (ink, ...points) => ({ form: 'path', d: lineD(onto, points), ink }),
  poly: (ink, points, radius = 0) => ({ form: 'path', d: roundedD(onto, points, radius), ink }),
  bent: (ink, points, radius) => ({ form: 'path', d: roundedD(onto, points, radius, false), ink }),
  box: (ink, x, y, w, h, radius = 0) => ({ form: 'path', d: roundedD(onto, rectPoints(x, y, w, h), Math.min(radius, w / 2, h / 2)), ink }),
  disc: (ink, cx, cy, r) => {
    const [x, y] = onto(cx, cy);
    return { form: 'circle', cx: x, cy: y, r, ink };
  },
  arc: (ink, cx, cy, rx, ry, from, to) => ({ form: 'path', d: arcD(onto, cx, cy, rx, ry, from, to), ink }),
  strokes: (ink, lines) => ({ form: 'path', d: lines.map((l) => lineD(onto, l)).join(''), ink }),
  dots: (ink, points, r) => ({ form: 'path', d: points.map(([x, y]) => circleD(onto, x, y, r)).join(''), ink }),
  text: (ink, x, y, text, size, anchor = 'start', rotate) => {
    const [sx, sy] = onto(x, y);
    return rotate === undefined ? { form: 'text', x: sx, y: sy, text, size, anchor, ink } : { form: 'text', x: sx, y: sy, text, size, anchor, ink, rotate };
  },
});
