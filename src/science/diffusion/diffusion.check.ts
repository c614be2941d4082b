import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { metres, type Result, seconds, share } from '../../units';
import { dryingTime, fractionLeft, timesLonger } from '.';

/**
 * Five values of the closed form (from memory, unconfirmed) run through the worksheet, in the cases. As a second witness
 * of the law itself a slab is dried here in small steps, which shares nothing with the series: within 0.002 of what is left.
 */
const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};

/** A slab in cells, one face open and dry, the other closed; what is left at each of these Fourier numbers. */
const inSteps = (until: readonly number[], cells = 200): readonly number[] => {
  const dx = 1 / cells;
  const dt = 0.4 * dx * dx;
  let now = new Float64Array(cells).fill(1);
  let t = 0;
  return until.map((end) => {
    for (; t < end; t += dt) {
      const next = new Float64Array(cells);
      for (let i = 0; i < cells; i++) {
        const here = now[i] ?? 0;
        const outer = i === 0 ? -here : (now[i - 1] ?? 0);
        const inner = i === cells - 1 ? here : (now[i + 1] ?? 0);
        next[i] = here + (dt / (dx * dx)) * (outer - 2 * here + inner);
      }
      now = next;
    }
    return now.reduce((a, b) => a + b, 0) / cells;
  });
};

describe('what is left in a slab', () => {
  it('is what a slab dried in small steps keeps', () => {
    const at = [0.005, 0.02, 0.1, 0.197, 0.5, 1];
    for (const [i, left] of inSteps(at).entries()) expect(Math.abs(fractionLeft(at[i] ?? 0) - left), `at ${at[i]}`).toBeLessThan(0.002);
  });

  it('starts full, always falls, and has no step where the early form gives way', () => {
    expect(fractionLeft(0)).toBe(1);
    expect(fractionLeft(0.0099999999)).toBeCloseTo(fractionLeft(0.0100000001), 7);
    fc.assert(fc.property(fc.double({ min: 0, max: 3, noNaN: true }), fc.double({ min: 0.001, max: 1, noNaN: true }), (a, d) => fractionLeft(a + d) < fractionLeft(a)));
  });
});

describe('drying time', () => {
  it('undoes what is left', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), fc.double({ min: 0.0005, max: 1, noNaN: true }), (left, way) => {
        const t = value(dryingTime(metres(way), 1e-10, share(left)));
        expect(fractionLeft((1e-10 * t) / way ** 2)).toBeCloseTo(left, 6);
      }),
    );
  });

  it('goes with the square of the way: one face takes four times as long as two, a foot 9 216 times as long as an eighth of an inch', () => {
    const both = value(dryingTime(metres(0.0015), 1e-10, share(0.5)));
    expect(value(dryingTime(metres(0.003), 1e-10, share(0.5))) / both).toBeCloseTo(4, 9);
    expect(timesLonger(metres(0.3048), metres(0.3048 / 96))).toBeCloseTo(9216, 6);
    expect(both).toBeGreaterThan(seconds(0));
  });

  it('is refused for nothing left, no way and no diffusivity', () => {
    const path = (r: Result<unknown>) => (r.ok ? 'answered' : r.refusals[0]?.path);
    expect(path(dryingTime(metres(0.003), 1e-10, share(0)))).toBe('fraction_left');
    expect(path(dryingTime(metres(0), 1e-10, share(0.5)))).toBe('way');
    expect(path(dryingTime(metres(0.003), 0, share(0.5)))).toBe('diffusivity');
    expect(path(dryingTime(metres(Number.NaN), 1e-10, share(0.5)))).toBe('way');
  });
});
