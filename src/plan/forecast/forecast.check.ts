import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseInstant, type Result } from '../../units';
import { readForecast } from './read-forecast';
import { asGridpoint, asTable, type Told } from './trial-forecast';

/**
 * Forecast files. The shape of the gridpoint answer is that of the documentation of the US National Weather Service and of its maintainers’
 * public answers: equal values merged into longer intervals, amounts as totals of their interval, nulls, compound durations. The files here
 * are invented in that shape. Both readers must give the same hours from the same weather.
 */
const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};
const refusals = (text: string): readonly string[] => {
  const read = readForecast(text);
  return read.ok ? ['read'] : read.refusals.map((r) => `${r.code} @ ${r.path}`);
};
const START = '2026-10-04T10:00:00+00:00';
const FAIR: Told = { air_c: 15, dew_c: 8, wind_kmh: 10, cloud: 20, chance: 5, rain_mm: 0 };
const layer = (values: readonly unknown[], uom = 'wmoUnit:degC') => ({ uom, values });
const gridpoint = (more: Readonly<Record<string, unknown>>): string => {
  const given = JSON.parse(asGridpoint(START, [FAIR, FAIR])) as { readonly properties: object };
  return JSON.stringify({ ...given, properties: { ...given.properties, ...more } });
};

describe('a gridpoint answer', () => {
  it('holds values over intervals, compound ones too, spreads totals, and leaves nulls missing', () => {
    const read = value(
      readForecast(
        gridpoint({
          temperature: layer([
            { validTime: '2026-10-04T10:00:00+00:00/P1DT6H', value: 10 },
            { validTime: '2026-10-05T16:00:00+00:00/PT2H', value: null },
            { validTime: '2026-10-05T18:00:00+00:00/PT1H', value: 12 },
          ]),
          quantitativePrecipitation: layer([{ validTime: '2026-10-04T12:00:00+00:00/PT6H', value: 3 }], 'wmoUnit:mm'),
        }),
      ),
    );
    expect(read.hours).toHaveLength(33);
    expect(read.hours.map((h) => h.air).filter((a) => a === 283.15)).toHaveLength(30);
    expect([read.hours[30]?.air, read.hours[31]?.air, read.hours[32]?.air]).toEqual([undefined, undefined, 285.15]);
    expect(read.hours.slice(0, 9).map((h) => h.rain)).toEqual([undefined, undefined, ...Array.from({ length: 6 }, () => expect.closeTo(0.0005, 12)), undefined]);
  });

  it('says where it holds, how high, and when it was made', () => {
    const read = value(readForecast(asGridpoint(START, [FAIR])));
    expect(read.place?.latitude_deg).toBeCloseTo(36.08, 9);
    expect(read.place?.longitude_deg).toBeCloseTo(-79.95, 9);
    expect(read.altitude_m).toBe(270);
    expect(read.issued).toBe(parseInstant('2026-10-04T08:12:00+00:00'));
  });

  const one = (validTime: unknown, v: unknown = 10, uom = 'wmoUnit:degC') => gridpoint({ temperature: layer([{ validTime, value: v }], uom) });
  it.each<readonly [string, string, string]>([
    ['no JSON', '{ half', 'not-json @ '],
    ['another JSON', '{"rows":[]}', 'not-as-expected @ properties'],
    ['a layer that is missing', '{"properties":{}}', 'layer-missing @ properties'],
    ['a layer without values', gridpoint({ temperature: { uom: 'wmoUnit:degC' } }), 'not-as-expected @ properties.temperature'],
    ['an unknown unit', one('2026-10-04T10:00:00+00:00/PT1H', 10, 'wmoUnit:furlong'), 'unknown-unit @ properties.temperature.uom'],
    ['a unit of another quantity', one('2026-10-04T10:00:00+00:00/PT1H', 10, 'wmoUnit:mm'), 'unknown-unit @ properties.temperature.uom'],
    ['a value in words', one('2026-10-04T10:00:00+00:00/PT1H', 'mild'), 'not-a-number @ properties.temperature.values[0].value'],
    ['no value at all', gridpoint({ temperature: layer([{ validTime: '2026-10-04T10:00:00+00:00/PT1H' }]) }), 'not-a-number @ properties.temperature.values[0].value'],
    ['what no weather has', one('2026-10-04T10:00:00+00:00/PT1H', 120), 'above-limit @ properties.temperature.values[0].value'],
    ...[
      '2026-10-04T10:00:00+00:00',
      '2026-10-04T10:00:00+00:00/PT0H',
      '2026-10-04T10:00:00+00:00/PT90M',
      '2026-10-04T10:30:00+00:00/PT1H',
      '2026-02-30T10:00:00+00:00/PT1H',
      '2026-10-04T10:00:00+00:00/P1M',
      '2026-10-04T10:00:00+00:00/P99D',
      null,
      7,
    ].map((validTime) => [`the interval ${validTime}`, one(validTime), 'no-such-interval @ properties.temperature.values[0].validTime'] as const),
  ])('is refused with %s', (_, text, said) => expect(refusals(text)).toEqual([said]));

  it('is refused where two values speak of one hour, and after twelve refusals only counts', () => {
    const twice = [
      { validTime: '2026-10-04T10:00:00+00:00/PT3H', value: 10 },
      { validTime: '2026-10-04T12:00:00+00:00/PT3H', value: 11 },
    ];
    expect(refusals(gridpoint({ temperature: layer(twice) }))).toEqual(['given-twice @ properties.temperature.values[1].validTime']);
    const bad = Array.from({ length: 30 }, () => ({ validTime: 'now', value: 1 }));
    expect(refusals(gridpoint({ temperature: layer(bad) }))).toHaveLength(13);
  });
});

describe('a table of hours', () => {
  const HEAD = 'time,air_temperature_c,relative_humidity_percent,wind_mph,cloud_percent,rain_chance_percent,rain_in';
  const table = (...lines: readonly string[]): string => [HEAD, ...lines].join('\n');
  const LINE = '2026-10-04T06:00:00-04:00,20,65,10,20,5,0.01';

  it('reads units from its header, works out the dew point, and keeps a gap as missing hours', () => {
    const read = value(readForecast(table(LINE, '2026-10-04T09:00:00-04:00,,65,10,20,5,')));
    expect(read.hours).toHaveLength(4);
    const [first, second, , last] = read.hours;
    // 20 °C and 65 %: 13.2 °C, as the worksheet of the dew point is checked.
    expect(first?.dew_point).toBeCloseTo(286.35, 1);
    expect(first?.wind).toBeCloseTo(4.4704, 9);
    expect(first?.rain).toBeCloseTo(0.000254, 12);
    expect(second).toEqual({ at: parseInstant('2026-10-04T11:00:00Z') });
    expect(last).toEqual({ at: parseInstant('2026-10-04T13:00:00Z'), wind: expect.any(Number), cover: 0.2, rain_chance: 0.05 });
  });

  it('counts both hours of the night when clocks go back, and none that is skipped when they go forward', () => {
    const back = value(readForecast(table(...['00:00:00-04:00', '01:00:00-04:00', '01:00:00-05:00', '02:00:00-05:00'].map((t) => `2026-11-01T${t},10,65,10,20,5,0`))));
    expect(back.hours.map((h) => h.air)).toEqual([283.15, 283.15, 283.15, 283.15]);
    const forward = value(readForecast(table(...['01:00:00-05:00', '03:00:00-04:00'].map((t) => `2026-03-08T${t},10,65,10,20,5,0`))));
    expect(forward.hours).toHaveLength(2);
  });

  it.each<readonly [string, string, readonly string[]]>([
    ['a column that is missing', 'time,air_temperature_c\n', ['column-missing @ line 1, header']],
    ['a column without its unit', HEAD.replace('wind_mph', 'wind'), ['column-missing @ line 1, header']],
    ['a column twice', `${HEAD},air_temperature_f\n${LINE},68`, ['given-twice @ line 1, header']],
    ['a time without its offset', table(LINE.replace('-04:00', '')), ['no-such-time @ line 2, time']],
    ['a day that does not exist', table(LINE.replace('10-04', '02-30')), ['no-such-time @ line 2, time']],
    ['a time within an hour', table(LINE.replace('06:00:00', '06:20:00')), ['no-full-hour @ line 2, time']],
    ['a time that goes back', table(LINE, LINE), ['not-later @ line 3, time']],
    [
      'figures that are none',
      table('2026-10-04T06:00:00-04:00,warm,165,10,20,5,0'),
      ['not-a-number @ line 2, air_temperature_c', 'above-limit @ line 2, relative_humidity_percent'],
    ],
    ['no hours', HEAD, ['nothing-in-it @ ']],
    ['empty hours only', table('2026-10-04T06:00:00-04:00,,,,,,'), ['nothing-in-it @ ']],
    ['years between its lines', table(LINE, LINE.replace('2026', '2027')), ['above-limit @ ']],
    ['nothing at all', '', ['column-missing @ line 1, header']],
  ])('is refused with %s', (_, text, said) => expect(refusals(text)).toEqual(said));
});

describe('both shapes', () => {
  const told = fc.record({
    air_c: fc.option(fc.integer({ min: -20, max: 40 }), { nil: null }),
    dew_c: fc.option(fc.integer({ min: -25, max: 25 }), { nil: null }),
    wind_kmh: fc.option(fc.integer({ min: 0, max: 60 }), { nil: null }),
    cloud: fc.option(fc.integer({ min: 0, max: 100 }), { nil: null }),
    chance: fc.option(fc.constantFrom(0, 5, 20, 60), { nil: null }),
    rain_mm: fc.option(fc.constantFrom(0, 0.5, 2), { nil: null }),
  });

  it('give the same hours', () => {
    fc.assert(
      fc.property(fc.array(told, { minLength: 1, maxLength: 60 }), (hours) => {
        const [grid, table] = [readForecast(asGridpoint(START, hours)), readForecast(asTable(START, hours))];
        expect(grid.ok).toBe(table.ok);
        if (!grid.ok || !table.ok) return;
        const rounded = (f: typeof grid.value) => f.hours.map((h) => Object.fromEntries(Object.entries(h).map(([k, v]) => [k, Math.round(v * 1e9) / 1e9])));
        expect(rounded(grid.value)).toEqual(rounded(table.value));
      }),
    );
  });
});
