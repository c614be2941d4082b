import { flat, type Point } from '../path';
import { penOn } from '../pen';
import type { Primitive } from '../primitives';

/** A tyre's sidewall cut through: the rubber's face above, the cords as a wave below, cracks as wedges between. */
const p = penOn(flat);

const FACE = 13;
const CORDS = 42;

const wave = (y: number): Primitive =>
  p.bent(
    'picture-line',
    Array.from({ length: 14 }, (_, i): Point => [i * 8, y + (i % 2 === 0 ? 3.5 : -3.5)]),
    5,
  );

const base: readonly Primitive[] = [wave(CORDS), wave(CORDS + 8), p.line('picture-line', [0, FACE], [104, FACE])];

/** A crack that opens at the face. */
const wedge = (x: number, half: number, depth: number): Primitive =>
  p.poly('picture-fill', [
    [x - half, FACE],
    [x + half, FACE],
    [x + half * 0.3, FACE + depth * 0.55],
    [x + half * 0.15, FACE + depth],
    [x - half * 0.35, FACE + depth * 0.5],
  ]);

export const sidewallSteps: Readonly<Record<string, readonly Primitive[]>> = {
  none: base,
  fine: [...base, wedge(24, 2.4, 5), wedge(46, 3, 7), wedge(64, 2, 4), wedge(84, 2.4, 5)],
  deeper: [...base, wedge(26, 2.6, 7), wedge(52, 6, 18), wedge(80, 2.6, 8)],
  deepest: [...base, wedge(20, 2.6, 7), wedge(36, 4, 15), wedge(58, 9, 33), wedge(82, 4, 14)],
};
