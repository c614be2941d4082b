import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Result } from '../../units';
import { chanceAbove, inverseDistance, kriging, leaveOneOut, nextPlaces, type Sample, semivariance, type Variogram } from '.';

/**
 * Numbers are held against an independent implementation through the worksheets (src/worksheets/cases/kriging.jsonl).
 * Here: what must hold of any kriging, whatever is read; leave-one-out against really leaving out, to a billionth;
 * next places against reckoning anew with the place added, to a millionth; and what is refused.
 */
const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};
const codes = (result: Result<unknown>): readonly string[] => (result.ok ? [] : result.refusals.map((r) => `${r.code} ${r.path}`));

const coordinate = fc.integer({ min: 0, max: 120 }).map((n) => n / 40);
const sample: fc.Arbitrary<Sample> = fc.record({ x: coordinate, y: coordinate, value: fc.double({ min: 6, max: 30, noNaN: true }) });
const samples = fc.uniqueArray(sample, { minLength: 2, maxLength: 24, selector: (s) => `${s.x},${s.y}` });
const variogram: fc.Arbitrary<Variogram> = fc.record({
  model: fc.constantFrom('spherical', 'exponential', 'gaussian'),
  nugget: fc.double({ min: 0.05, max: 4, noNaN: true }),
  partial_sill: fc.double({ min: 0, max: 40, noNaN: true }),
  range: fc.double({ min: 0.2, max: 2, noNaN: true }),
  anisotropy: fc.record({ ratio: fc.double({ min: 1, max: 3, noNaN: true }), direction_rad: fc.double({ min: 0, max: 3, noNaN: true }) }),
});

describe('ordinary kriging', () => {
  it('gives the reading itself where one was taken, nugget or not', () => {
    fc.assert(
      fc.property(samples, variogram, (given, v) => {
        const map = value(kriging(given, v));
        for (const s of given) expect(map.at(s.x, s.y)).toEqual({ estimate: s.value, variance: 0 });
      }),
    );
  });

  it('weighs to one, and its variance lies between nothing and the sill plus that of the mean', () => {
    fc.assert(
      fc.property(samples, variogram, coordinate, coordinate, (given, v, x, y) => {
        const map = value(kriging(given, v));
        const { weights } = map.weights(x, y);
        expect(weights.reduce((sum, w) => sum + w, 0)).toBeCloseTo(1, 9);
        const { estimate, variance } = map.at(x, y);
        expect(estimate).toBeCloseTo(
          weights.reduce((sum, w, i) => sum + w * (given[i]?.value ?? 0), 0),
          6,
        );
        expect(variance).toBeGreaterThanOrEqual(0);
        expect(variance).toBeLessThan(2 * (v.nugget + v.partial_sill) + 1e-9);
      }),
    );
  });

  it('fills a grid with what it gives place by place', () => {
    fc.assert(
      fc.property(samples, variogram, (given, v) => {
        const map = value(kriging(given, v));
        const [xs, ys] = [
          [-0.5, 0.013, 1.4, 3],
          [0.3, 0.77, 2.21],
        ];
        const grid = map.grid(xs, ys);
        const points = ys.flatMap((y) => xs.map((x) => [x, y] as const));
        expect(map.each(points)).toEqual(grid);
        for (const [j, y] of ys.entries())
          for (const [i, x] of xs.entries()) {
            const k = j * xs.length + i;
            expect({ estimate: grid.estimate[k], variance: grid.variance[k] }).toEqual(map.at(x, y));
          }
      }),
      { numRuns: 30 },
    );
  });

  it('does not care where the axes begin, and mirrors as the wall mirrors', () => {
    fc.assert(
      fc.property(samples, variogram, coordinate, coordinate, (given, v, x, y) => {
        const here = value(kriging(given, v)).at(x + 0.0123, y);
        const moved = value(
          kriging(
            given.map((s) => ({ ...s, x: s.x + 7, y: s.y - 3 })),
            v,
          ),
        ).at(x + 7.0123, y - 3);
        const turned: Variogram = { ...v, anisotropy: { ratio: v.anisotropy?.ratio ?? 1, direction_rad: Math.PI - (v.anisotropy?.direction_rad ?? 0) } };
        const mirrored = value(
          kriging(
            given.map((s) => ({ ...s, x: -s.x })),
            turned,
          ),
        ).at(-x - 0.0123, y);
        for (const other of [moved, mirrored]) {
          expect(other.estimate).toBeCloseTo(here.estimate, 6);
          expect(other.variance).toBeCloseTo(here.variance, 6);
        }
      }),
    );
  });

  it('knows no less for one reading more, whatever it reads', () => {
    fc.assert(
      fc.property(samples, sample, variogram, coordinate, coordinate, (given, more, v, x, y) => {
        fc.pre(!given.some((s) => s.x === more.x && s.y === more.y));
        const before = value(kriging(given, v)).at(x, y).variance;
        expect(value(kriging([...given, more], v)).at(x, y).variance).toBeLessThanOrEqual(before + 1e-8);
      }),
    );
  });

  it('says the same everywhere where all readings are equal, and counts a place read twice once, with its mean', () => {
    const v: Variogram = { model: 'spherical', nugget: 0.5, partial_sill: 9, range: 0.6 };
    const flat = value(
      kriging(
        [0, 1, 2, 3].map((x) => ({ x, y: 0, value: 14 })),
        v,
      ),
    );
    expect(flat.at(1.5, 0.4).estimate).toBeCloseTo(14, 12);
    const twice = value(
      kriging(
        [
          { x: 0, y: 0, value: 12 },
          { x: 1, y: 0, value: 20 },
          { x: 0, y: 0, value: 16 },
        ],
        v,
      ),
    );
    expect(twice.repeats).toBe(1);
    expect(twice.samples).toEqual([
      { x: 0, y: 0, value: 14 },
      { x: 1, y: 0, value: 20 },
    ]);
  });

  it('answers from a single reading with that reading and twice the sill far away', () => {
    const one = value(kriging([{ x: 0, y: 0, value: 17 }], { model: 'spherical', nugget: 1, partial_sill: 8, range: 0.5 }));
    expect(one.at(2, 0)).toEqual({ estimate: 17, variance: 18 });
  });

  it('refuses what has no answer', () => {
    const v: Variogram = { model: 'gaussian', nugget: 0, partial_sill: 9, range: 5 };
    const close = Array.from({ length: 12 }, (_, i) => ({ x: i / 100, y: 0, value: i }));
    expect(codes(kriging(close, v))).toEqual(['singular values']);
    expect(codes(leaveOneOut(close, v))).toEqual(['singular values']);
    expect(codes(kriging([], v))).toEqual(['too-few values']);
    expect(codes(leaveOneOut(close.slice(0, 1), v))).toEqual(['too-few values']);
    expect(codes(kriging([{ x: 0, y: Number.NaN, value: 3 }], v))).toEqual(['not-a-number values']);
    expect(codes(kriging([{ x: 0, y: 0, value: Number.POSITIVE_INFINITY }], v))).toEqual(['not-a-number values']);
    expect(codes(kriging(close, { ...v, partial_sill: 0 }))).toEqual(['outside-validity partial_sill']);
    expect(codes(kriging(close, { model: 'spherical', nugget: -1, partial_sill: Number.NaN, range: 0, anisotropy: { ratio: 0, direction_rad: Number.NaN } }))).toEqual([
      'outside-validity nugget',
      'outside-validity partial_sill',
      'outside-validity range',
      'outside-validity ratio',
      'outside-validity direction',
    ]);
    expect(codes(inverseDistance([], 2))).toEqual(['too-few values']);
    expect(() => value(kriging(close, { ...v, nugget: 1 })).at(Number.NaN, 0)).toThrow(RangeError);
  });
});

describe('leave-one-out', () => {
  it('is what leaving each reading out and reckoning anew gives', () => {
    fc.assert(
      fc.property(samples, variogram, (given, v) => {
        const check = value(leaveOneOut(given, v));
        for (const [i, s] of given.entries()) {
          const without = value(kriging(given.toSpliced(i, 1), v)).at(s.x, s.y);
          expect(check.residuals[i]).toBeCloseTo(s.value - without.estimate, 7);
          expect(check.variances[i]).toBeCloseTo(without.variance, 7);
        }
        const mean = given.map((s, i) => s.value - given.toSpliced(i, 1).reduce((sum, o) => sum + o.value, 0) / (given.length - 1));
        expect(check.of_the_mean).toBeCloseTo(Math.sqrt(mean.reduce((sum, m) => sum + m * m, 0) / mean.length), 9);
      }),
      { numRuns: 60 },
    );
  });
});

describe('next places', () => {
  const v: Variogram = { model: 'spherical', nugget: 0.5, partial_sill: 20, range: 0.6, anisotropy: { ratio: 2, direction_rad: Math.PI / 2 } };
  const lattice = Array.from({ length: 35 }, (_, i) => ({ x: 0.0123 + (i % 7) * 0.4, y: 0.017 + Math.floor(i / 7) * 0.4 }));
  const meanVariance = (given: readonly Sample[]): number => {
    const map = value(kriging(given, v));
    return lattice.reduce((sum, t) => sum + map.at(t.x, t.y).variance, 0) / lattice.length;
  };
  // Off the lattice by a hair: on a reading the variance is nothing, beside it the nugget.
  const candidates = lattice.map((p) => ({ x: p.x + 1e-6, y: p.y }));

  it('says what the mean variance will be, as reckoning with the place added says, and no other candidate does better', () => {
    fc.assert(
      fc.property(samples, (given) => {
        const [first, second] = value(nextPlaces(given, v, candidates, lattice, 2));
        if (!first || !second) throw new Error('two places expected');
        const added = (base: readonly Sample[], i: number): readonly Sample[] => [...base, { x: candidates[i]?.x ?? 0, y: candidates[i]?.y ?? 0, value: 10 }];
        expect(meanVariance(added(given, first.candidate))).toBeCloseTo(first.mean_variance, 3);
        expect(meanVariance(added(added(given, first.candidate), second.candidate))).toBeCloseTo(second.mean_variance, 3);
        for (const i of candidates.keys()) expect(meanVariance(added(given, i))).toBeGreaterThan(first.mean_variance - 1e-3);
      }),
      { numRuns: 15 },
    );
  });

  it('begins near the middle where nothing was read, and names three different places', () => {
    const chosen = value(nextPlaces([], v, candidates, lattice, 3)).map((c) => candidates[c.candidate]);
    expect(new Set(chosen).size).toBe(3);
    expect(value(nextPlaces([], v, [], lattice, 3))).toEqual([]);
  });
});

describe('inverse distance', () => {
  it('stays within what was read, gives a reading back, and nears the nearest reading as the power grows', () => {
    fc.assert(
      fc.property(samples, coordinate, coordinate, fc.double({ min: 0.5, max: 400, noNaN: true }), (given, x, y, power) => {
        const { at } = value(inverseDistance(given, power));
        const all = given.map((s) => s.value);
        expect(at(x, y)).toBeGreaterThanOrEqual(Math.min(...all) - 1e-9);
        expect(at(x, y)).toBeLessThanOrEqual(Math.max(...all) + 1e-9);
        for (const s of given) expect(at(s.x, s.y)).toBe(s.value);
      }),
    );
  });
});

describe('chance above a threshold', () => {
  it('rises with the estimate, halves at the threshold, and adds up with the chance below', () => {
    expect(chanceAbove(20, 4, 20)).toBe(0.5);
    expect(chanceAbove(21, 0, 20)).toBe(1);
    expect(chanceAbove(20, 0, 20)).toBe(0);
    fc.assert(
      fc.property(fc.double({ min: -40, max: 40, noNaN: true }), fc.double({ min: 0.01, max: 50, noNaN: true }), (by, variance) => {
        const chance = chanceAbove(20 + by, variance, 20);
        expect(chance).toBeGreaterThanOrEqual(0);
        expect(chance).toBeLessThanOrEqual(1);
        expect(chance + chanceAbove(20 - by, variance, 20)).toBeCloseTo(1, 12);
        expect(chanceAbove(20.5 + by, variance, 20)).toBeGreaterThanOrEqual(chance);
      }),
    );
  });
});

it('a variogram is nothing at no distance and its sill at a spherical range', () => {
  const v: Variogram = { model: 'spherical', nugget: 0.5, partial_sill: 24, range: 30 };
  expect([0, 30, 90].map((h) => semivariance(v, h))).toEqual([0, 24.5, 24.5]);
});
