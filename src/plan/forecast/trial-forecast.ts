import { civilDay, instant, isoDay, parseInstant } from '../../units';
import { HOUR_MS } from './forecast-types';

/** One invented hour, in the units that files use; null is missing. */
export type Told = {
  readonly air_c: number | null;
  readonly dew_c: number | null;
  readonly wind_kmh: number | null;
  readonly cloud: number | null;
  readonly chance: number | null;
  readonly rain_mm: number | null;
};

const stamp = (at: number): string => `${isoDay(civilDay(Math.floor(at / HOUR_MS / 24)))}T${String(Math.floor(at / HOUR_MS) % 24).padStart(2, '0')}:00:00+00:00`;

const duration = (hours: number): string => {
  const [d, h] = [Math.floor(hours / 24), hours % 24];
  return `P${d > 0 ? `${d}D` : ''}${h > 0 ? `T${h}H` : ''}`;
};

const GRID: readonly (readonly [layer: string, uom: string, of: (t: Told) => number | null, total: boolean])[] = [
  ['temperature', 'wmoUnit:degC', (t) => t.air_c, false],
  ['dewpoint', 'wmoUnit:degC', (t) => t.dew_c, false],
  ['windSpeed', 'wmoUnit:km_h-1', (t) => t.wind_kmh, false],
  ['skyCover', 'wmoUnit:percent', (t) => t.cloud, false],
  ['probabilityOfPrecipitation', 'wmoUnit:percent', (t) => t.chance, false],
  ['quantitativePrecipitation', 'wmoUnit:mm', (t) => t.rain_mm, true],
];

/** The hours in the shape of a gridpoint answer: equal values merged into one interval, amounts as its total. */
export const asGridpoint = (start: string, hours: readonly Told[]): string => {
  const first = parseInstant(start) ?? instant(0);
  const layers = GRID.map(([layer, uom, of, total]) => {
    const values: { validTime: string; value: number | null }[] = [];
    for (let from = 0; from < hours.length; ) {
      const value = of(hours[from] as Told);
      let to = from + 1;
      while (to < hours.length && of(hours[to] as Told) === value) to += 1;
      values.push({ validTime: `${stamp(first + from * HOUR_MS)}/${duration(to - from)}`, value: value === null || !total ? value : value * (to - from) });
      from = to;
    }
    return [layer, { uom, values }] as const;
  });
  const corners = [
    [-79.96, 36.07],
    [-79.96, 36.09],
    [-79.94, 36.09],
    [-79.94, 36.07],
    [-79.96, 36.07],
  ];
  return JSON.stringify({
    type: 'Feature',
    geometry: { type: 'Polygon', coordinates: [corners] },
    properties: { updateTime: '2026-10-04T08:12:00+00:00', elevation: { unitCode: 'wmoUnit:m', value: 270 }, ...Object.fromEntries(layers) },
  });
};

/** The same hours as a plain table. */
export const asTable = (start: string, hours: readonly Told[]): string => {
  const first = parseInstant(start) ?? instant(0);
  const lines = hours.map((t, i) => [stamp(first + i * HOUR_MS), t.air_c, t.dew_c, t.wind_kmh, t.cloud, t.chance, t.rain_mm].map((v) => v ?? '').join(','));
  return ['time,air_temperature_c,dew_point_c,wind_kmh,cloud_percent,rain_chance_percent,rain_mm', ...lines].join('\n');
};
