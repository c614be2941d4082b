import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CivilDay, civilDay, dayOf, gaugePascals, isoDay, kelvin, metres, type Result, toSi } from '../../units';
import { ageStanding, gaugeAfterChange, loadOfIndex, readDateCode, readServiceDescription, readTyreSize, runFlat, speedOfSymbol, weekStart, wholeMonths } from '.';

/**
 * Printed tables and cases are held in tyre.agreement.ts and in the case files. Here: weekdays against the calendar of the
 * language, which this project did not write; and what must hold of any such law.
 */
const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};
const TODAY = dayOf(2026, 5, 3);
const DAY_MS = 86_400_000;

describe('weeks of the date code', () => {
  it('begin on the nth Sunday of the year, by the weekdays of Date.UTC, from 1971 to 2099', () => {
    let weeks = 0;
    for (let year = 1971; year <= 2099; year++) {
      const sundays: number[] = [];
      for (let ms = Date.UTC(year, 0, 1); new Date(ms).getUTCFullYear() === year; ms += DAY_MS) if (new Date(ms).getUTCDay() === 0) sundays.push(ms / DAY_MS);
      for (let week = 0; week <= 54; week++) expect(weekStart(year, week), `${year} week ${week}`).toBe(sundays[week - 1]);
      weeks += sundays.length;
    }
    expect(weeks).toBe(6731);
  });

  it('have a week 53 in the years with 53 Sundays only', () => {
    const long = Array.from({ length: 30 }, (_, i) => 2000 + i).filter((y) => weekStart(y, 53) !== undefined);
    expect(long).toEqual([2000, 2006, 2012, 2017, 2023, 2028]);
  });
});

describe('date code', () => {
  it('reads back every week that has come, and refuses every one that has not', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2000, max: 2099 }), fc.integer({ min: 0, max: 99 }), (year, week) => {
        const code = `${String(week).padStart(2, '0')}${String(year % 100).padStart(2, '0')}`;
        const start = weekStart(year, week);
        const read = readDateCode(code, TODAY);
        expect(read.ok).toBe(start !== undefined && start <= TODAY);
        if (read.ok) expect(read.value).toMatchObject({ form: 'four-digit', week, year, first_day: start });
        else expect(['no-such-week', 'future-date-code']).toContain(read.refusals[0]?.code);
      }),
    );
  });

  it('takes the date from the end of a whole number, with or without spaces', () => {
    for (const text of ['DOT MDHHA51V 3416', 'dot mdhha51v 3416', 'DOTMDHHA51V3416', 'DOT 1A2B3 C4D5 3416', '3416', ' 3416 ', 'DOT U2-LL-LMLR-3416'])
      expect(value(readDateCode(text, TODAY)), text).toMatchObject({ week: 34, year: 2016 });
  });

  it('keeps every decade that three digits may mean, and none after the middle of 2000', () => {
    const years = (code: string) => {
      const read = value(readDateCode(code, TODAY));
      return read.form === 'three-digit' ? read.candidates.map((c) => c.year) : [];
    };
    expect(years('317')).toEqual([1977, 1987, 1997]);
    expect(years('220')).toEqual([1980, 1990, 2000]);
    expect(years('300')).toEqual([1980, 1990]);
    expect(years('538')).toEqual([1978]);
    expect(readDateCode('007', TODAY).ok).toBe(false);
  });

  it.each(['', 'DOT ABCD EFG', '34', '34161', 'week 34', '34-16', '1.5'])('refuses “%s” and says where to look', (text) => {
    const read = readDateCode(text, TODAY);
    expect(read.ok ? 'read' : read.refusals[0]?.code).toBe('not-a-date-code');
    expect(read.ok ? '' : read.refusals[0]?.sentence).toContain('other side');
  });
});

describe('age', () => {
  it('counts whole months: adding them never passes the day', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 0, max: 15_000 }), (from, more) => {
        const a = civilDay(from);
        const b = civilDay(from + more);
        const months = wholeMonths(a, b);
        const day = new Date(from * DAY_MS);
        const then = (m: number) => Date.UTC(day.getUTCFullYear(), day.getUTCMonth() + m, 1) / DAY_MS;
        expect(months).toBeGreaterThanOrEqual(0);
        expect(then(months)).toBeLessThanOrEqual(b);
        expect(then(months + 2)).toBeGreaterThan(b);
      }),
    );
    expect(wholeMonths(dayOf(2020, 5, 4), dayOf(2026, 5, 3))).toBe(71);
    expect(wholeMonths(dayOf(2020, 5, 3), dayOf(2026, 5, 3))).toBe(72);
  });

  it('changes its standing exactly at five, six and ten years', () => {
    expect([0, 59, 60, 71, 72, 119, 120, 400].map((m) => ageStanding(m).standing)).toEqual([
      'no-rule-by-age',
      'no-rule-by-age',
      'look-every-year',
      'look-every-year',
      'plan-replacement',
      'plan-replacement',
      'replace',
      'replace',
    ]);
  });
});

describe('size', () => {
  it('reads back any metric size, with diameter from width, aspect and rim', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('', 'P', 'LT', 'ST', 'T'),
        fc.integer({ min: 21, max: 63 }),
        fc.integer({ min: 6, max: 18 }),
        fc.constantFrom('R', 'D', 'B'),
        fc.constantFrom('13', '14', '15', '16', '17.5', '19.5', '22.5'),
        (mark, w, a, build, rim) => {
          const [width, aspect] = [w * 5 + 0, a * 5];
          const size = value(readTyreSize(`${mark}${width}/${aspect}${build}${rim}`));
          expect(size.section_width * 1000).toBeCloseTo(width, 9);
          expect((size.aspect ?? 0) * 100).toBeCloseTo(aspect, 9);
          expect(size.rim / 0.0254).toBeCloseTo(Number(rim), 9);
          expect((size.overall_diameter ?? 0) * 1000).toBeCloseTo(Number(rim) * 25.4 + (2 * width * aspect) / 100, 9);
        },
      ),
    );
  });

  it('keeps what stands behind it, in any usual order', () => {
    const all = ['ST225/75R15 121/117M E', 'ST225/75R15 E 121/117M', 'ST 225/75 R15 LR E 121/117 M', 'ST225/75R15/E 121/117M', 'st225/75r15 load range e 121/117m'];
    for (const text of all) expect(value(readTyreSize(text)).description, text).toEqual({ load_index_single: 121, load_index_dual: 117, speed_symbol: 'M', load_range: 'E' });
  });

  it('never takes a trailer tyre’s load range C for a commercial tyre', () => {
    expect(value(readTyreSize('ST225/75R15C'))).toMatchObject({ service: 'special-trailer', description: { load_range: 'C' } });
    expect(value(readTyreSize('225/75R16C'))).toMatchObject({ service: 'commercial', description: {} });
  });

  it('gives no diameter where the size tells none', () => {
    for (const text of ['8R19.5', '10R22.5', '7.50-16', '4.80-12']) expect(value(readTyreSize(text)).overall_diameter, text).toBeUndefined();
  });

  it.each(['', 'R15', '225', '22/75R15', '999/99R99', '225/75R15 banana', '31x10.50'])('refuses “%s”', (text) => expect(readTyreSize(text).ok).toBe(false));

  it('never fails on any text', () => {
    fc.assert(fc.property(fc.string(), (text) => typeof readTyreSize(text).ok === 'boolean' && typeof readDateCode(text, TODAY).ok === 'boolean'));
  });
});

describe('load index and speed symbol', () => {
  it('rise from row to row, and ten times in eighty steps where both ends were read', () => {
    const load = (n: number) => value(loadOfIndex(n)).load;
    for (let n = 60; n < 170; n++) expect(load(n + 1), `index ${n + 1}`).toBeGreaterThan(load(n));
    // Printed values leave out half kilograms, so that ten times may be up to 5 kg more.
    for (let n = 60; n <= 90; n++) expect(load(n + 80) - 10 * load(n), `index ${n}`).toBeGreaterThanOrEqual(0);
    for (let n = 60; n <= 90; n++) expect(load(n + 80) - 10 * load(n), `index ${n}`).toBeLessThanOrEqual(5);
  });

  it('refuse what no table holds', () => {
    for (const n of [59, 171, 100.5, -1, Number.NaN]) expect(loadOfIndex(n).ok).toBe(false);
    expect(speedOfSymbol('I').ok).toBe(false);
    expect(speedOfSymbol('').ok).toBe(false);
  });

  it('read as moulded', () => {
    expect(readServiceDescription('117/112N')).toEqual({ description: { load_index_single: 117, load_index_dual: 112, speed_symbol: 'N' }, unread: undefined });
    expect(readServiceDescription('hello').unread).toBe('HELLO');
  });
});

describe('pressure after a change', () => {
  const state = (c: number, z: number) => ({ temperature: kelvin(c + 273.15), altitude: metres(z) });
  const c = fc.double({ min: -30, max: 60, noNaN: true });
  const z = fc.double({ min: 0, max: 4000, noNaN: true });
  const psi = fc.double({ min: 30, max: 130, noNaN: true }).map((n) => gaugePascals(toSi(n, 'gauge-pressure', 'psi')));

  it('comes back to itself when the change is undone', () => {
    fc.assert(
      fc.property(
        psi,
        c,
        z,
        c,
        z,
        (p, c1, z1, c2, z2) => Math.abs(value(gaugeAfterChange(value(gaugeAfterChange(p, state(c1, z1), state(c2, z2))), state(c2, z2), state(c1, z1))) - p) < 1e-6,
      ),
    );
  });

  it('rises with warmth and with height', () => {
    fc.assert(
      fc.property(psi, c, z, (p, c1, z1) => {
        expect(value(gaugeAfterChange(p, state(c1, z1), state(c1 + 1, z1)))).toBeGreaterThan(p);
        expect(value(gaugeAfterChange(p, state(c1, z1), state(c1, z1 + 100)))).toBeGreaterThan(p);
      }),
    );
  });

  it('moves by 0.94 psi in 10 °F at 35 psi and 1.79 at 80 psi, as the sensitivity (p + a) / T says', () => {
    const moved = (n: number) =>
      value(gaugeAfterChange(gaugePascals(toSi(n, 'gauge-pressure', 'psi')), state(21.11, 0), state(21.11 + 50 / 9, 0))) / toSi(1, 'gauge-pressure', 'psi') - n;
    expect(moved(35)).toBeCloseTo(0.94, 2);
    expect(moved(80)).toBeCloseTo(1.79, 2);
  });

  it('refuses a tyre that would hold less than the air outside, and heights beyond the atmosphere', () => {
    expect(gaugeAfterChange(gaugePascals(1000), state(60, 0), state(-40, 0)).ok).toBe(false);
    const high = gaugeAfterChange(gaugePascals(5e5), state(20, 20_000), state(20, 0));
    expect(high.ok ? '' : high.refusals[0]?.path).toBe('set_altitude');
  });
});

describe('run flat', () => {
  it('holds at the threshold itself and below, not above', () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 130 }), fc.integer({ min: 0, max: 200 }), (set, reading) => {
        const found = runFlat(gaugePascals(toSi(reading, 'gauge-pressure', 'psi')), gaugePascals(toSi(set, 'gauge-pressure', 'psi')));
        expect(found.at_or_below).toBe(reading * 5 <= set * 4);
      }),
    );
  });
});

it('days shown are the days meant', () => expect(isoDay(weekStart(2016, 34) as CivilDay)).toBe('2016-08-21'));
