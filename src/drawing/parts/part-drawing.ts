import type { HingeEdge } from '../../terms';
import type { Point } from '../path';
import type { Pen } from '../pen';
import type { Primitive } from '../primitives';

/**
 * What a part is drawn in: its bounding box on the face, from the corner of least x and least y, in metres.
 * On walls y runs up; on the roof and below the floor there is no up.
 */
export type PartBox = {
  readonly p: Pen;
  readonly w: number;
  readonly h: number;
  readonly hinge: HingeEdge;
  /** A drawing of this one part: screws, weep slots and other small things are worth their ink. */
  readonly fine: boolean;
  /** Runs of a line part, or the corners of a polygon, in the same coordinates. */
  readonly runs: readonly (readonly Point[])[];
};

/** How one family of parts is drawn. `window-*` stands for every part whose id begins so; the longest name wins. */
export type PartDrawing = { readonly parts: readonly string[]; readonly draw: (box: PartBox) => readonly Primitive[] };

/** Usual corner radius of a cut-out is about 3 in; from memory, unconfirmed. [m] */
export const CORNER_M = 0.076;

/** Points at equal steps along a line, ends left out by half a step. */
export const along = (from: Point, to: Point, count: number): readonly Point[] =>
  Array.from({ length: count }, (_, i) => {
    const t = (i + 0.5) / count;
    return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t] as const;
  });

/** Equal rungs, slats or slots across a box. */
export const slats = (x: number, y: number, w: number, h: number, count: number): readonly (readonly Point[])[] =>
  along([x, y], [x, y + h], count).map(([, level]) => [
    [x, level],
    [x + w, level],
  ]);

/** The hinge edge as a line, drawn in by `inset`. */
export const hingeLine = (hinge: HingeEdge, w: number, h: number, inset: number): readonly [Point, Point] => {
  const [l, r, b, t] = [inset, w - inset, inset, h - inset];
  if (hinge === 'bottom')
    return [
      [l, b],
      [r, b],
    ];
  if (hinge === 'front' || hinge === 'left')
    return [
      [l, b],
      [l, t],
    ];
  if (hinge === 'rear' || hinge === 'right')
    return [
      [r, b],
      [r, t],
    ];
  return [
    [l, t],
    [r, t],
  ];
};
