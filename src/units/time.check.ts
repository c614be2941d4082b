import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addMonths, civilDay, dateOf, dayOf, instant, isoDay, lastDay, monthName, parseDay, parseInstant, parseWhen, showDay, sortInstant, type When } from '.';

/**
 * Days and instants against Date.UTC and Date.parse of the language, which this project did not write:
 * every day from 1900 to 2100, and any instant that both can read. They must agree exactly.
 */
const DAY_MS = 86_400_000;
const when = (text: string): When => {
  const w = parseWhen(text);
  if (!w) throw new Error(text);
  return w;
};

describe('civil days', () => {
  it('are what Date.UTC says, each day from 1900 to 2100', () => {
    let days = 0;
    for (let ms = Date.UTC(1900, 0, 1); ms < Date.UTC(2101, 0, 1); ms += DAY_MS) {
      const d = new Date(ms);
      const [year, month, day] = [d.getUTCFullYear(), d.getUTCMonth() + 1, d.getUTCDate()];
      const n = dayOf(year, month, day);
      if (n !== ms / DAY_MS || isoDay(n) !== d.toISOString().slice(0, 10)) throw new Error(d.toISOString());
      const back = dateOf(n);
      if (back.year !== year || back.month !== month || back.day !== day) throw new Error(d.toISOString());
      days++;
    }
    expect(days).toBe(73_414);
  });

  it.each(['2026-02-29', '2026-02-30', '2026-13-01', '2026-00-10', '2026-04-31', '2026-4-1', '26-04-01', '2026-04-01T', '1900-02-29', ''])('do not include “%s”', (text) =>
    expect(parseDay(text)).toBeUndefined(),
  );
  it('include the leap days that exist', () => {
    expect(parseDay('2000-02-29')).toBe(dayOf(2000, 2, 29));
    expect(parseDay('2024-02-29')).toBe(dayOf(2024, 2, 29));
  });

  it('are shown without a doubt about day and month', () => {
    expect(showDay(dayOf(2026, 5, 3))).toBe('3 May 2026');
    expect(showDay(dayOf(2026, 9, 19), true)).toBe('19 Sep 2026');
    expect(monthName(12)).toBe('December');
  });
});

describe('adding months', () => {
  it('keeps the day, or falls back to the last day of a shorter month, as Date.UTC has it', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 40_000 }), fc.integer({ min: -240, max: 240 }), (n, months) => {
        const d = new Date(n * DAY_MS);
        const first = new Date(Date.UTC(d.getUTCFullYear(), d.getUTCMonth() + months, 1));
        const last = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 0)).getUTCDate();
        expect(addMonths(civilDay(n), months)).toBe(first.getTime() / DAY_MS + Math.min(d.getUTCDate(), last) - 1);
      }),
    );
    expect(isoDay(addMonths(dayOf(2024, 1, 31), 1))).toBe('2024-02-29');
    expect(isoDay(addMonths(dayOf(2025, 12, 31), 2))).toBe('2026-02-28');
  });
});

describe('instants', () => {
  it('are what Date.parse says, with any offset', () => {
    const two = (n: number): string => String(n).padStart(2, '0');
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 50_000 }),
        fc.integer({ min: 0, max: 86_399 }),
        fc.option(fc.integer({ min: 0, max: 999 })),
        fc.integer({ min: -14 * 4, max: 14 * 4 }),
        (day, s, milli, quarters) => {
          const offset = quarters === 0 ? 'Z' : `${quarters < 0 ? '-' : '+'}${two(Math.floor(Math.abs(quarters) / 4))}:${two((Math.abs(quarters) % 4) * 15)}`;
          const fraction = milli === null ? '' : `.${String(milli).padStart(3, '0')}`;
          const text = `${isoDay(civilDay(day))}T${two(Math.floor(s / 3600))}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}${fraction}${offset}`;
          expect(parseInstant(text)).toBe(Date.parse(text));
        },
      ),
    );
  });

  it.each([
    '2026-09-19',
    '2026-09-19T10:12',
    '2026-09-19T24:00:00Z',
    '2026-09-19T10:60:00Z',
    '2026-09-19T10:12:60Z',
    '2026-02-30T10:12:00Z',
    '2026-09-19 10:12:00Z',
    '2026-09-19T10:12:00+0400',
    '2026-09-19T10:12:00+24:00',
    '2026-09-19T10:12:00+04:60',
  ])('do not include “%s”', (text) => expect(parseInstant(text)).toBeUndefined());
});

describe('when it was so', () => {
  it('is an instant with the day of the place it was written at', () => {
    const w = when('2026-09-19T23:12:00-04:00');
    expect(w).toEqual({ form: 'instant', at: instant(Date.parse('2026-09-20T03:12:00Z')), day: dayOf(2026, 9, 19) });
    expect(lastDay(w)).toBe(dayOf(2026, 9, 19));
  });

  it('is a span with both ends counted; one day is a span of one', () => {
    expect(when('2022-03-01/2022-05-31')).toEqual({ form: 'span', from: dayOf(2022, 3, 1), to: dayOf(2022, 5, 31) });
    expect(when('2022-03-01')).toEqual({ form: 'span', from: dayOf(2022, 3, 1), to: dayOf(2022, 3, 1) });
    expect(lastDay(when('2022-03-01/2022-05-31'))).toBe(dayOf(2022, 5, 31));
  });

  it('sorts a span at the end of its last day, before anything of the next and after any instant within', () => {
    const span = sortInstant(when('2022-03-01/2022-05-31'));
    expect(span).toBe(Date.parse('2022-05-31T23:59:59.999Z'));
    expect(sortInstant(when('2022-05-31T20:00:00Z'))).toBeLessThan(span);
    expect(sortInstant(when('2022-06-01T00:00:00Z'))).toBeGreaterThan(span);
  });

  it.each(['', '2022-05-31/2022-03-01', '2022-03-01/', '/2022-03-01', '2022-03-01/2022-04-01/2022-05-01', 'spring 2022', '2022-02-30', '2022-03-01/2022-02-30'])(
    'does not include “%s”',
    (text) => expect(parseWhen(text)).toBeUndefined(),
  );
});
