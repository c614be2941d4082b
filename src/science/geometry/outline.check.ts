import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexHull, longestExtent, outlineArea, outlineGrowth, type PlanePoint } from '.';

/**
 * Worked examples of the area stand in cases/geometry.jsonl. Here: the hull against the example of the Rosetta Code task
 * “Convex hull” (read), regular polygons against their closed form, and what every outline must keep.
 */
const area = (points: readonly PlanePoint[]): number => {
  const a = outlineArea(points);
  if (!a.ok) throw new Error(a.refusals[0]?.sentence);
  return a.value;
};
const regular = (n: number, r: number): readonly PlanePoint[] =>
  Array.from({ length: n }, (_, i) => [r * Math.cos((2 * Math.PI * i) / n), r * Math.sin((2 * Math.PI * i) / n)] as const);
const somewhere = fc.tuple(fc.double({ min: -10, max: 10, noNaN: true }), fc.double({ min: -10, max: 10, noNaN: true }));

describe('area of an outline', () => {
  it.each([3, 4, 6, 12, 97])('regular polygon of %i corners: ½ n r² sin(2π/n)', (n) => {
    expect(area(regular(n, 0.4))).toBeCloseTo(0.5 * n * 0.16 * Math.sin((2 * Math.PI) / n), 12);
  });
  it('is the same either way round, from any corner, and wherever it lies', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 20 }), fc.nat({ max: 19 }), somewhere, (n, first, [dx, dy]) => {
        const shape = regular(n, 1);
        const k = first % n;
        const moved = [...shape.slice(k), ...shape.slice(0, k)].map(([x, y]): PlanePoint => [x + dx, y + dy]).reverse();
        expect(area(moved)).toBeCloseTo(area(shape), 9);
      }),
    );
  });
  it('refuses what encloses nothing, what crosses itself and what is no number', () => {
    const code = (points: readonly PlanePoint[]): string | undefined => {
      const a = outlineArea(points);
      return a.ok ? undefined : a.refusals[0]?.code;
    };
    expect(code([])).toBe('too-few-corners');
    expect(
      code([
        [0, 0],
        [1, 1],
      ]),
    ).toBe('too-few-corners');
    expect(
      code([
        [0, 0],
        [1, 1],
        [2, 2],
      ]),
    ).toBe('encloses-nothing');
    expect(
      code([
        [0, 0],
        [0, 0],
        [0, 0],
      ]),
    ).toBe('encloses-nothing');
    expect(
      code([
        [0, 0],
        [1, 1],
        [1, 0],
        [0, 1],
      ]),
    ).toBe('crosses-itself');
    expect(
      code([
        [0, 0],
        [1, Number.NaN],
        [1, 1],
      ]),
    ).toBe('not-a-number');
  });
});

describe('longest extent', () => {
  it('a rectangle by its diagonal, a dented outline by its farthest corners', () => {
    expect(
      longestExtent([
        [0, 0],
        [0.3, 0],
        [0.3, 0.4],
        [0, 0.4],
      ]),
    ).toBeCloseTo(0.5, 12);
    expect(longestExtent([])).toBe(0);
  });
});

describe('convex hull', () => {
  it('of the published example', () => {
    const points: readonly PlanePoint[] = [
      [16, 3],
      [12, 17],
      [0, 6],
      [-4, -6],
      [16, 6],
      [16, -7],
      [16, -3],
      [17, -4],
      [5, 19],
      [19, -8],
      [3, 16],
      [12, 13],
      [3, -4],
      [17, 5],
      [-3, 15],
      [-3, -9],
      [0, 11],
      [-9, -3],
      [-4, -2],
      [12, 10],
    ];
    expect(convexHull(points)).toEqual([
      [-9, -3],
      [-3, -9],
      [19, -8],
      [17, 5],
      [12, 17],
      [5, 19],
      [-3, 15],
    ]);
  });
  it('holds every point, is its own hull, and is nothing of fewer than three', () => {
    fc.assert(
      fc.property(fc.array(somewhere, { maxLength: 30 }), (points) => {
        const hull = convexHull(points);
        expect(convexHull(hull)).toEqual(hull);
        if (hull.length < 3) return;
        for (const [x, y] of points)
          for (const [i, a] of hull.entries()) {
            const b = hull[(i + 1) % hull.length] as PlanePoint;
            expect((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])).toBeGreaterThanOrEqual(-1e-9);
          }
      }),
    );
    expect(
      convexHull([
        [1, 1],
        [1, 1],
      ]),
    ).toEqual([[1, 1]]);
    expect(
      convexHull([
        [0, 0],
        [1, 1],
        [2, 2],
      ]),
    ).toHaveLength(2);
  });
});

describe('growth', () => {
  it('a ratio at like temperature, a refusal else', () => {
    expect(outlineGrowth(0.1, 0.11, 3)).toEqual({ ok: true, value: 0.11 / 0.1 });
    expect(outlineGrowth(0.1, 0.11, -10).ok).toBe(true);
    for (const [a, b, k] of [
      [0.1, 0.2, 10.1],
      [0.1, 0.2, -11],
      [0, 0.2, 0],
      [0.1, 0.2, Number.NaN],
      [Number.NaN, 1, 0],
    ] as const)
      expect(outlineGrowth(a, b, k).ok).toBe(false);
  });
});
