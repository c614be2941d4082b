import type { Mark } from '../terms';
import { circleD, flat, type Point } from './path';
import { penOn } from './pen';
import type { Drawing, Primitive } from './primitives';

/**
 * The marks of urgency. Told apart by shape alone: a barred square, an octagon, a drop, a half-filled square, a ring,
 * a tick, a dotted circle. All sizes are shares of the nominal size s; colour comes last.
 */
type Draw = (cx: number, cy: number, s: number, heavy: boolean) => readonly Primitive[];

const p = penOn(flat);

const moved = (cx: number, cy: number, s: number, points: readonly Point[]): readonly Point[] => points.map(([x, y]) => [cx + x * s, cy + y * s] as const);

/** Square 0.86 s with a white bar from corner to corner. */
const barredSquare: Draw = (cx, cy, s) => [
  p.box('mark-stop', cx - 0.45 * s, cy - 0.45 * s, 0.9 * s, 0.9 * s),
  p.poly(
    'mark-gap',
    moved(cx, cy, s, [
      [-0.36, 0.22],
      [-0.36, 0.36],
      [-0.22, 0.36],
      [0.36, -0.22],
      [0.36, -0.36],
      [0.22, -0.36],
    ]),
  ),
];

/** s across the flats, corners cut by 0.293 s: the side of a regular octagon. */
const octagon: Draw = (cx, cy, s) => {
  const [f, c] = [0.5, 0.5 - 0.293];
  return [
    p.poly(
      'mark-moving',
      moved(cx, cy, s, [
        [-c, -f],
        [c, -f],
        [f, -c],
        [f, c],
        [c, f],
        [-c, f],
        [-f, c],
        [-f, -c],
      ]),
    ),
  ];
};

/** Point at −0.6 s, bowl of radius 0.43 s. */
const drop: Draw = (cx, cy, s) => {
  const at = (x: number, y: number): string => `${round(cx + x * s)} ${round(cy + y * s)}`;
  const [r, by] = [0.43, 0.12];
  const k = 0.5523 * r;
  const d = `M${at(0, -0.6)}C${at(0.12, -0.36)} ${at(r, by - 0.3)} ${at(r, by)}C${at(r, by + k)} ${at(k, by + r)} ${at(0, by + r)}C${at(-k, by + r)} ${at(-r, by + k)} ${at(-r, by)}C${at(-r, by - 0.3)} ${at(-0.12, -0.36)} ${at(0, -0.6)}Z`;
  return [{ form: 'path', d, ink: 'mark-rain' }];
};

const round = (v: number): number => Math.round(v * 1e5) / 1e5;

/** 0.86 s, line at the middle, lower half filled. */
const halfSquare: Draw = (cx, cy, s) => [p.box('mark-frame', cx - 0.43 * s, cy - 0.43 * s, 0.86 * s, 0.86 * s), p.box('mark-season', cx - 0.43 * s, cy, 0.86 * s, 0.43 * s)];

/** Outer radius 0.475 s, 0.15 s thick; the hole is white, so that what lies below does not read as a filled disc. */
const ring: Draw = (cx, cy, s) => [p.disc('mark', cx, cy, 0.475 * s), p.disc('mark-gap', cx, cy, 0.325 * s)];

/** A tick as an outline, so that its weight grows with its size. */
const tick: Draw = (cx, cy, s, heavy) => {
  const t = heavy ? 0.085 : 0.05;
  return [
    p.poly(
      'mark',
      moved(cx, cy, s, [
        [-0.37 - t, 0.05 + t * 0.2],
        [-0.37 + t, 0.05 - t],
        [-0.1, 0.32 - 1.75 * t],
        [0.39 - t, -0.3 - t],
        [0.39 + t, -0.3 + t * 0.6],
        [-0.1, 0.32 + 1.1 * t],
      ]),
    ),
  ];
};

/** Twelve round dots on a circle of 0.43 s. */
const dotted: Draw = (cx, cy, s, heavy) => {
  const r = (heavy ? 0.066 : 0.052) * s;
  const d = Array.from({ length: 12 }, (_, i) => circleD(flat, cx + 0.43 * s * Math.cos((i * Math.PI) / 6), cy + 0.43 * s * Math.sin((i * Math.PI) / 6), r)).join('');
  return [{ form: 'path', d, ink: 'mark' }];
};

const SHAPES: Readonly<Record<Mark, Draw>> = {
  'do-not-use': barredSquare,
  'before-moving': octagon,
  'before-rain': drop,
  'this-season': halfSquare,
  watch: ring,
  sound: tick,
  'not-seen': dotted,
};

/** Solid triangle of 0.52 s at the upper right, on any mark: a professional. */
const cornerFlag = (cx: number, cy: number, s: number): Primitive =>
  p.poly(
    'flag',
    moved(cx, cy, s, [
      [0.2, -0.72],
      [0.78, -0.72],
      [0.78, -0.14],
    ]),
  );

export type MarkLook = {
  /** Heavier strokes, for the field and for paper. */
  readonly heavy?: boolean;
  readonly professional?: boolean;
};

/**
 * One mark, centred.
 *
 * @param s  nominal size: 20 px on drawings, 16 in lists, 28 at a title. [sheet units]
 */
export const drawMark = (mark: Mark, cx: number, cy: number, s: number, { heavy = false, professional = false }: MarkLook = {}): readonly Primitive[] => [
  ...SHAPES[mark](cx, cy, s, heavy),
  ...(professional ? [cornerFlag(cx, cy, s)] : []),
];

/** One mark as a drawing of its own, for lists, titles and legends. */
export const markPicture = (mark: Mark, title: string, size_px = 16, look: MarkLook = {}): Drawing => {
  const side = size_px * (look.professional ? 1.7 : 1.3);
  return {
    width: side,
    height: side,
    title,
    px: 1,
    primitives: drawMark(mark, side / 2 - (look.professional ? size_px * 0.1 : 0), side / 2 + (look.professional ? size_px * 0.1 : 0), size_px, look),
  };
};
