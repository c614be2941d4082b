import { describe, expect, it } from 'vitest';
import { MARKS, type Mark } from '../terms';
import { TONES } from './ink';
import { drawMark } from './marks';
import type { Primitive } from './primitives';

/**
 * The marks against their stated geometry in shares of the nominal size s, and against the general rule that shape alone
 * tells them apart. A regular octagon of width 1 has sides of √2 − 1 (geometry), so its corners are cut by 1 − √2/2 = 0.293.
 */
const numbers = (p: Primitive): readonly number[] => (p.form === 'path' ? (p.d.match(/-?[\d.]+/g) ?? []).map(Number) : []);
const xs = (p: Primitive): readonly number[] => numbers(p).filter((_, i) => i % 2 === 0);
const ys = (p: Primitive): readonly number[] => numbers(p).filter((_, i) => i % 2 === 1);
const span = (v: readonly number[]): readonly [number, number] => [Math.min(...v), Math.max(...v)];
const first = (mark: Mark): Primitive => drawMark(mark, 0, 0, 1)[0] as Primitive;

describe('marks', () => {
  it('are all of different shape', () => {
    const drawn = MARKS.map((m) => JSON.stringify(drawMark(m, 0, 0, 1).map((p) => (p.form === 'group' ? '' : { ...p, ink: '' }))));
    expect(new Set(drawn).size).toBe(7);
  });

  it('draw an octagon of s across the flats with equal sides', () => {
    const octagon = first('before-moving');
    expect(span(xs(octagon))).toEqual([-0.5, 0.5]);
    expect(span(ys(octagon))).toEqual([-0.5, 0.5]);
    const points = xs(octagon).map((x, i) => [x, ys(octagon)[i] ?? 0] as const);
    expect(points).toHaveLength(8);
    const sides = points.map(([x, y], i) => {
      const [a, b] = points[(i + 1) % 8] ?? [0, 0];
      return Math.hypot(a - x, b - y);
    });
    for (const side of sides) expect(side).toBeCloseTo(Math.SQRT2 - 1, 2);
  });

  it('draw a drop with its point at 0.6 s above and a bowl 0.86 s wide', () => {
    const drop = first('before-rain');
    expect(span(ys(drop))[0]).toBeCloseTo(-0.6, 6);
    expect(span(xs(drop))).toEqual([-0.43, 0.43]);
  });

  it('draw a square of 0.86 s, its lower half filled, the line at the middle', () => {
    const [frame, half] = drawMark('this-season', 0, 0, 1);
    expect(span(xs(frame as Primitive))).toEqual([-0.43, 0.43]);
    expect(span(ys(frame as Primitive))).toEqual([-0.43, 0.43]);
    expect(span(ys(half as Primitive))).toEqual([0, 0.43]);
  });

  it('draw a ring 0.15 s thick, twelve dots for not seen, a bar across the square', () => {
    const [outer, inner] = drawMark('watch', 0, 0, 1);
    expect(outer).toMatchObject({ form: 'circle', r: 0.475 });
    expect(inner).toMatchObject({ form: 'circle', r: 0.325 });
    const dots = first('not-seen');
    expect(dots.form === 'path' ? (dots.d.match(/M/g) ?? []).length : 0).toBe(12);
    expect(drawMark('do-not-use', 0, 0, 1).map((p) => ('ink' in p ? p.ink : ''))).toEqual(['mark-stop', 'mark-gap']);
  });

  it('never draw not seen like sound', () => {
    expect(JSON.stringify(drawMark('not-seen', 0, 0, 1))).not.toBe(JSON.stringify(drawMark('sound', 0, 0, 1)));
  });

  it('put a flag of about half s at the upper right of any mark for a professional', () => {
    for (const mark of MARKS) {
      const flag = drawMark(mark, 0, 0, 1, { professional: true }).at(-1) as Primitive;
      expect('ink' in flag ? flag.ink : '').toBe('flag');
      expect(span(xs(flag))[0]).toBeGreaterThan(0.1);
      expect(span(ys(flag))[1]).toBeLessThan(0);
    }
  });

  it('keep the order of urgency in grey: fills grow lighter', () => {
    // Relative luminance: WCAG 2.2, definition of "relative luminance"; from memory, unconfirmed.
    const { stop, moving, rain, season } = TONES.desk;
    const order = [stop, moving, rain, season].map(luminance);
    for (let i = 1; i < order.length; i += 1) expect(order[i]).toBeGreaterThan((order[i - 1] ?? 0) * 1.5);
  });
});

const channel = (v: number): number => (v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => channel(Number.parseInt(hex.slice(i, i + 2), 16) / 255));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
