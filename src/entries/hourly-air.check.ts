import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { livedAir, readBody, readHourlyAir } from '.';

/**
 * How a logger's file is read. Outside witnesses: the calendar and clock of JavaScript's own Date for the hours, and means worked
 * out by hand for the short files below. Refusals name the line as a text editor counts it.
 */
const HEAD = 'time,temperature_c,relative_humidity_percent';
const file = (...lines: readonly string[]): string => `${[HEAD, ...lines].join('\n')}\n`;

const value = (text: string, offset?: string) => {
  const read = readHourlyAir(text, offset);
  if (!read.ok) throw new Error(read.refusals.map((r) => r.sentence).join(' '));
  return read.value;
};
const refusals = (text: string, offset?: string) => {
  const read = readHourlyAir(text, offset);
  return read.ok ? [] : read.refusals.map((r) => `${/^Line \d+/.exec(r.sentence)?.[0].toLowerCase() ?? r.path}: ${r.code}`);
};

describe('a file of hourly air', () => {
  it('becomes the body of an entry, means and hours', () => {
    const air = value(file('2026-09-01T00:00:00-04:00,20,80', '2026-09-01T01:00:00-04:00,21,82', '2026-09-01T02:00:00-04:00,22,90'));
    expect(air.observed_at).toBe('2026-09-01/2026-09-01');
    expect(air.body.temperature).toMatchObject({ typed: '21.0', unit: 'c' });
    expect(air.body.relative_humidity).toMatchObject({ typed: '84', unit: 'percent', si: 0.84 });
    expect(air.body.hours).toEqual({ from: '2026-09-01T04:00:00Z', step_s: 3600, temperature_k: [293.15, 294.15, 295.15], relative_humidity: [0.8, 0.82, 0.9] });
    expect(air.sentence).toBe('3 hours without a gap.');
    expect(readBody(livedAir, air.body).ok).toBe(true);
  });

  it('keeps gaps as gaps and counts them', () => {
    const air = value(file('2026-09-01T00:00:00Z,20,80', '2026-09-01T01:00:00Z,,', '2026-09-01T04:20:00Z,22,90', '2026-09-01T05:00:00Z,20,', '2026-09-01T06:00:00Z,24,70'));
    expect(air.body.hours.temperature_k).toEqual([293.15, null, null, null, 295.15, null, 297.15]);
    expect(air).toMatchObject({ hours_measured: 3, hours_missing: 4, longest_gap_h: 3 });
    expect(air.sentence).toBe('3 hours measured, 4 hours missing, at most 3 in a row; they stay missing.');
    expect(readBody(livedAir, air.body).ok).toBe(true);
  });

  it('averages what was read within an hour, in °F, with semicolons, quotes, a byte order mark and other columns', () => {
    const text =
      '\uFEFF"Time";"battery";"temperature_f";"relative_humidity_percent"\r\n2026-09-01T00:00:00Z;3.1;68;60,5\r\n2026-09-01T00:30:00Z;3.1;70;61,5\r\n2026-09-01T01:00:00Z;3.1;69;61\r\n';
    const air = value(text);
    expect(air.body.hours.temperature_k).toEqual([293.71, 293.71]);
    expect(air.body.hours.relative_humidity).toEqual([0.61, 0.61]);
    expect(air.body.temperature).toMatchObject({ typed: '69.0', unit: 'f' });
  });

  it('takes times of a wall clock only with the offset of that clock', () => {
    const text = file('2026-09-01 00:00,20,80', '2026-09-01 01:00:00,21,82');
    expect(refusals(text)).toEqual(['line 2: no-such-time', 'line 3: no-such-time']);
    expect(value(text, '-04:00').body.hours.from).toBe('2026-09-01T04:00:00Z');
  });

  it.each([
    ['no columns', '20,80\n21,80\n', ['line 1: column-missing']],
    ['nothing', '', ['line 1: column-missing']],
    ['no unit in the header', 'time,temperature,relative_humidity_percent\n', ['line 1: column-missing']],
    ['two units', 'time,temperature_c,temperature_f,relative_humidity_percent\n', ['line 1: given-twice']],
    ['a word for a figure', file('2026-09-01T00:00:00Z,warm,80'), ['line 2: not-a-number']],
    ['a humidity that cannot be', file('2026-09-01T00:00:00Z,20,80', '', '2026-09-01T01:00:00Z,20,104'), ['line 4: above-limit']],
    ['a time that goes back', file('2026-09-01T01:00:00Z,20,80', '2026-09-01T00:00:00Z,20,80'), ['line 3: not-later']],
    ['a time given twice', file('2026-09-01T01:00:00Z,20,80', '2026-09-01T01:00:00Z,20,80'), ['line 3: not-later']],
    ['a day that does not exist', file('2026-02-30T01:00:00Z,20,80'), ['line 2: no-such-time']],
    ['one hour only', file('2026-09-01T01:00:00Z,20,80'), [': too-few']],
    ['fractions for per cent', file('2026-09-01T01:00:00Z,20,0.8', '2026-09-01T02:00:00Z,20,0.7'), ['relative_humidity_percent: other-unit-likely']],
    ['two years', file('2024-09-01T01:00:00Z,20,80', '2026-09-01T02:00:00Z,20,70'), [': above-limit']],
  ])('is refused with %s', (_what, text, expected) => expect(refusals(text)).toEqual(expected));

  it('says a dozen faults and counts the rest', () => {
    const read = readHourlyAir(file(...Array.from({ length: 40 }, () => 'x,20,80')));
    expect(read.ok ? 0 : read.refusals.length).toBe(13);
  });

  it('whatever the logger missed: every hour is measured or missing, and the hours lie where the clock puts them', () => {
    const start = Date.parse('2026-03-07T00:00:00Z');
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 2, maxLength: 200 }), (there) => {
        fc.pre(there.filter((t) => t).length >= 2);
        const lines = there.flatMap((t, i) => (t ? [`${new Date(start + i * 3_600_000).toISOString()},${10 + (i % 7)},${50 + (i % 11)}`] : []));
        const air = value(file(...lines));
        const first = there.indexOf(true);
        expect(air.body.hours.from).toBe(new Date(start + first * 3_600_000).toISOString().replace('.000', ''));
        expect(air.body.hours.temperature_k.map((t) => t !== null)).toEqual(there.slice(first, there.lastIndexOf(true) + 1));
        expect(air.hours_measured + air.hours_missing).toBe(air.body.hours.temperature_k.length);
        expect(readBody(livedAir, air.body).ok).toBe(true);
      }),
    );
  });

  it('never stops at made-up text', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        expect(typeof readHourlyAir(`${HEAD}\n${text}`).ok).toBe('boolean');
        expect(typeof readHourlyAir(text).ok).toBe('boolean');
      }),
    );
  });
});
