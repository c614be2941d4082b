import type { Preferences } from '../../units';
import { show } from '../../units';
import { dimension } from '../dimension';
import { US } from '../length-words';
import { flat, type Point } from '../path';
import { penOn } from '../pen';
import type { Drawing, Primitive } from '../primitives';

/** A ladder against the edge of a roof, to scale; every figure comes from the ladder worksheet. */
export type LadderLook = {
  /** Height of the edge it leans on. [m] */
  readonly edge_m: number;
  /** Foot from the wall. [m] */
  readonly foot_m: number;
  /** How far the rails stand above the edge. [m] */
  readonly above_m: number;
  readonly preferences?: Preferences;
  readonly height_px?: number;
};

const p = penOn(flat);

/** Distance between rungs: 0.305 m, a foot; common practice. [m] */
const RUNG_M = 0.305;

export const ladderPicture = ({ edge_m, foot_m, above_m, preferences = US, height_px = 170 }: LadderLook): Drawing => {
  const reach = edge_m + above_m;
  const px = height_px / (reach + 0.95);
  const type = 12 / px;
  const top = 0.15;
  const ground = top + reach;
  const lean = foot_m / edge_m;
  const left = 0.35 + type * 0.5;
  const wall = left + foot_m;
  const width = wall + 1.1 + type * 3;
  const on = (h: number, across: number): Point => [left + h * lean + across, ground - h];
  const half = 0.17;
  const rungs = Array.from({ length: Math.floor(reach / RUNG_M) }, (_, i): readonly Point[] => [on((i + 1) * RUNG_M, -half * 0.5), on((i + 1) * RUNG_M, half * 0.5)]);
  const hatch = Array.from({ length: Math.floor(width / 0.16) }, (_, i): readonly Point[] => [
    [(i + 1) * 0.16, ground],
    [(i + 1) * 0.16 - 0.07, ground + 0.07],
  ]);
  const rails: readonly Primitive[] = [-half * 0.5, half * 0.5].map((a) => p.line('picture-line', on(0, a), on(reach, a)));
  return {
    width,
    height: ground + 0.2 + type * 2.4,
    title: `Ladder: foot ${show(foot_m, 'length', preferences)} from the wall, rails ${show(above_m, 'length', preferences)} above the edge`,
    px,
    primitives: [
      p.strokes('hatch', hatch),
      p.line('ground', [0, ground], [width, ground]),
      p.line('face', [width, ground - edge_m], [wall, ground - edge_m], [wall, ground]),
      ...rails,
      p.strokes('picture-thin', rungs),
      ...dimension([left, ground + type * 1.1], [wall, ground + type * 1.1], show(foot_m, 'length', preferences), px, { size_px: 12, beside: true }).map(
        (q): Primitive => (q.form === 'text' ? { ...q, y: ground + type * 2.5 } : q),
      ),
      ...dimension([wall + 0.5, ground - reach], [wall + 0.5, ground - edge_m], show(above_m, 'length', preferences), px, { size_px: 12, beside: true }).map(
        (q): Primitive => (q.form === 'text' ? { ...q, x: wall + 0.5 + type * 0.6, anchor: 'start' } : q),
      ),
    ],
  };
};
