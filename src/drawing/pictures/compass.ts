import { arcD, flat, type Point } from '../path';
import { penOn } from '../pen';
import type { Drawing, Primitive } from '../primitives';

const p = penOn(flat);

const R = 42;
const SIDE = 128;
const C = SIDE / 2;

/** A point at an angle counted clockwise from the top of the page. [rad] */
const at = (r: number, a: number): Point => [C + r * Math.sin(a), C - r * Math.cos(a)];

/**
 * How the rig stands to the sun: the rig as on the sheet, nose to the left, and the compass turned round it.
 *
 * @param heading  which way the nose points, clockwise from true north. [rad]
 */
export const compass = (heading: number): Drawing => {
  // On the page the nose points left, which is a quarter turn back from the top: north lies that much further round.
  const north = -Math.PI / 2 - heading;
  const ticks = Array.from({ length: 36 }, (_, i): readonly Point[] => {
    const a = north + (i * Math.PI) / 18;
    return [at(R, a), at(R - (i % 9 === 0 ? 9 : 4), a)];
  });
  const letters = ['N', 'E', 'S', 'W'].map((c, i): Primitive => {
    const [x, y] = at(R + 11, north + (i * Math.PI) / 2);
    return p.text(i === 0 ? 'text-bold' : 'text-small', x, y + 4, c, 11, 'middle');
  });
  const degrees = ((Math.round((heading * 180) / Math.PI) % 360) + 360) % 360;
  return {
    width: SIDE,
    height: SIDE,
    title: `Nose to ${degrees}° from true north`,
    px: 1,
    primitives: [
      { form: 'path', d: arcD(flat, C, C, R, R, 0, 2 * Math.PI), ink: 'dimension' },
      p.strokes('tick-end', ticks),
      p.box('face', C - 18, C - 5, 36, 10, 1),
      p.line('face', [C - 18, C], [C - 25, C]),
      ...letters,
    ],
  };
};
