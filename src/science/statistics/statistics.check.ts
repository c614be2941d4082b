import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Result } from '../../units';
import { kendallUpperTail, mannKendall, median, scaledMad, senInterval, theilSen } from '.';
import { normalAbove, normalUpperTail } from './normal';

/**
 * Published values are held in statistics.agreement.ts and in the cases, through the worksheets. Here: what must hold of
 * any such method, whoever wrote it down: the order of readings, time run backwards, readings shifted and stretched.
 */
const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};
const code = (result: Result<unknown>): string => (result.ok ? 'answered' : `${result.refusals[0]?.code} ${result.refusals[0]?.path}`);

const reading = fc.integer({ min: -400, max: 400 }).map((n) => n / 10);
const readings = fc.array(reading, { minLength: 5, maxLength: 14 });
/** Readings with rising times, some days apart. */
const series = readings.chain((values) =>
  fc.array(fc.integer({ min: 1, max: 30 }), { minLength: values.length, maxLength: values.length }).map((gaps) => {
    let t = 0;
    return { values, times: gaps.map((gap) => (t += gap)) };
  }),
);

describe('median and scaled deviation', () => {
  it('do not care about order, and move with a shift', () => {
    fc.assert(
      fc.property(readings, reading, (values, shift) => {
        expect(median(values.toReversed())).toBe(median(values));
        expect(median(values.map((v) => v + shift))).toBeCloseTo(median(values) + shift, 9);
        expect(scaledMad(values.map((v) => v + shift))).toBeCloseTo(scaledMad(values), 9);
        expect(scaledMad(values.map((v) => 3 * v))).toBeCloseTo(3 * scaledMad(values), 9);
      }),
    );
  });

  it('hold against one wild reading among seven', () => {
    expect(median([12, 13, 11.5, 12.5, 12, 90, 12.2])).toBe(12.2);
    expect(scaledMad([12, 13, 11.5, 12.5, 12, 90, 12.2])).toBeLessThan(0.6);
  });

  it('of nothing are our own mistake', () => expect(() => median([])).toThrow());
});

describe('slope', () => {
  it('turns with time run backwards, stretches with the scale, and does not move with a shift or with the order given', () => {
    fc.assert(
      fc.property(series, reading, ({ values, times }, shift) => {
        const slope = value(theilSen(times, values)).slope;
        expect(value(theilSen(times.toReversed(), values.toReversed())).slope).toBeCloseTo(slope, 9);
        expect(
          value(
            theilSen(
              times.map((t) => -t),
              values,
            ),
          ).slope,
        ).toBeCloseTo(-slope, 9);
        expect(
          value(
            theilSen(
              times.map((t) => t + 1000),
              values.map((v) => 2 * v + shift),
            ),
          ).slope,
        ).toBeCloseTo(2 * slope, 9);
      }),
    );
  });

  it('is that of a straight line, and lies within its own interval', () => {
    fc.assert(
      fc.property(series, reading, reading, ({ times, values }, a, b) => {
        const line = value(
          theilSen(
            times,
            times.map((t) => a + b * t),
          ),
        );
        expect(line.slope).toBeCloseTo(b, 9);
        expect(line.intercept).toBeCloseTo(a, 6);
        const interval = senInterval(times, values, 0.9);
        // Many equal readings leave less to count; that only narrows the interval, and never past the slope.
        if (interval.ok) {
          const { slope } = value(theilSen(times, values));
          expect(interval.value.low).toBeLessThanOrEqual(slope);
          expect(interval.value.high).toBeGreaterThanOrEqual(slope);
        }
      }),
    );
  });

  it('is 0 with nothing either side where all readings are equal', () => {
    expect(value(theilSen([0, 3, 9], [12, 12, 12]))).toEqual({ slope: 0, intercept: 12 });
    expect(value(senInterval([0, 3, 9], [12, 12, 12], 0.95))).toEqual({ low: 0, high: 0 });
  });

  it('leaves out pairs of one time', () => expect(value(theilSen([0, 0, 2], [10, 30, 20])).slope).toBe(0));

  it('is refused for one reading, one time, lengths that differ, or no number', () => {
    expect(code(theilSen([1], [12]))).toBe('too-few-readings times');
    expect(code(theilSen([5, 5, 5], [12, 13, 14]))).toBe('times-all-equal times');
    expect(code(theilSen([1, 2, 3], [12, 13]))).toBe('lengths-differ readings');
    expect(code(theilSen([1, 2], [12, Number.NaN]))).toBe('not-a-number readings[1]');
    expect(code(theilSen([], []))).toBe('too-few-readings times');
  });

  it('has no 95 % interval from four readings, and one from five', () => {
    expect(code(senInterval([0, 7, 14, 21], [27, 24, 21, 18.5], 0.95))).toBe('too-few-readings readings');
    expect(senInterval([0, 7, 14, 21, 28], [27, 24, 21, 18.5, 18], 0.95).ok).toBe(true);
  });
});

describe('trend', () => {
  it('turns when the readings run backwards, and is the same after any rising change of scale', () => {
    fc.assert(
      fc.property(readings, (values) => {
        const there = value(mannKendall(values));
        const back = value(mannKendall(values.toReversed()));
        expect(back.s + there.s).toBe(0);
        expect(back.p_rising).toBeCloseTo(there.p_falling, 12);
        expect(back.p_two_sided).toBeCloseTo(there.p_two_sided, 12);
        expect(value(mannKendall(values.map((v) => v ** 3 + 5))).s).toBe(there.s);
        for (const p of [there.p_two_sided, there.p_falling, there.p_rising]) {
          expect(p).toBeGreaterThan(0);
          expect(p).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it('needs four readings in strict order for one side at 0.05, five for both', () => {
    expect(value(mannKendall([4, 3, 2])).p_falling).toBeCloseTo(1 / 6, 12);
    expect(value(mannKendall([4, 3, 2, 1])).p_falling).toBeCloseTo(1 / 24, 12);
    expect(value(mannKendall([4, 3, 2, 1])).p_two_sided).toBeGreaterThan(0.05);
    expect(value(mannKendall([5, 4, 3, 2, 1])).p_two_sided).toBeCloseTo(1 / 60, 12);
  });

  it('is none where all readings are equal, and is refused for two', () => {
    expect(value(mannKendall([12, 12, 12]))).toMatchObject({ s: 0, tau: 0, p_two_sided: 1, p_falling: 1, p_rising: 1 });
    expect(code(mannKendall([12, 13]))).toBe('too-few-readings readings');
    expect(code(mannKendall([12, Number.POSITIVE_INFINITY, 13]))).toBe('not-a-number readings[1]');
  });

  it('goes over from counting to the normal curve with a small step: within 0.007 at ten and fifteen readings', () => {
    for (const n of [10, 15])
      for (let s = n % 4 < 2 ? 0 : 1; s <= (n * (n - 1)) / 2; s += 2) {
        const variance = (n * (n - 1) * (2 * n + 5)) / 18;
        expect(Math.abs(kendallUpperTail(n, s) - normalUpperTail((s - 1) / Math.sqrt(variance))), `n ${n}, S ${s}`).toBeLessThan(0.007);
      }
  });

  it('has tails that add up', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), fc.integer({ min: -200, max: 200 }), (n, s) => {
        expect(kendallUpperTail(n, s) + kendallUpperTail(n, 1 - s)).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('the normal curve', () => {
  it('is cut at 1.959964 for 95 % and 1.644854 for 90 %, as every table prints', () => {
    expect(normalAbove(0.025)).toBeCloseTo(1.959964, 6);
    expect(normalAbove(0.05)).toBeCloseTo(1.644854, 6);
    expect(normalAbove(0.5)).toBeCloseTo(0, 9);
  });
});
