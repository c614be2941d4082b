import type { Agreement } from '../../terms';
import { fromSi, kelvin, metres, type QuantityId, relativeHumidity, toSi } from '../../units';
import { dewPoint, saturationPressure, standardPressure } from '.';

const ASHRAE = 'ASHRAE Handbook – Fundamentals (2017), chapter 1';

const given = (n: unknown, quantity: QuantityId, unit: string): number => toSi(Number(n), quantity, unit);

const saturation: Omit<Agreement, 'quantity' | 'rows' | 'allowed' | 'remark'> = {
  source: `${ASHRAE}, table 3, as quoted in the tests of an open library`,
  table: 'src/science/air/saturation-pressure.csv',
  measure: (rows) =>
    rows.map((r) => {
      const p = saturationPressure(kelvin(given(r.temperature_c, 'temperature', 'c')));
      return { label: `${r.temperature_c} °C`, expected: Number(r.saturation_pressure_pa), got: p.ok ? p.value : 'refused' };
    }),
};

const coating = (unit: 'c' | 'f', rows: number, most: number, remark: string): Agreement => ({
  quantity: `Dew point, °${unit.toUpperCase()}`,
  source: unit === 'f' ? 'Dew point chart of a coating supplier, whole degrees' : 'Climate and humidity table for coating work, whole degrees, rounded down',
  table: `src/science/air/dew-point-coating-${unit}.csv`,
  rows,
  allowed: { by: 'difference', most, unit: `°${unit.toUpperCase()}` },
  remark,
  measure: (table) =>
    table.map((r) => {
      const dew = dewPoint(kelvin(given(r[`air_${unit}`], 'temperature', unit)), relativeHumidity(given(r.relative_humidity_percent, 'relative-humidity', 'percent')));
      return {
        label: `${r[`air_${unit}`]} °${unit.toUpperCase()}, ${r.relative_humidity_percent} %`,
        expected: Number(r[`dew_point_${unit}`]),
        got: dew.ok ? fromSi(dew.value, 'temperature', unit) : 'refused',
      };
    }),
});

export const airAgreements: readonly Agreement[] = [
  {
    ...saturation,
    quantity: 'Saturation pressure of water vapour',
    rows: 7,
    allowed: { by: 'ratio', most: 0.0003, unit: '' },
    remark: 'Every row but −60 °C, which the table prints with three digits. The table follows a newer formulation than equations 5 and 6, hence not exactly.',
    measure: (rows) => saturation.measure(rows.filter((r) => Number(r.temperature_c) > -60)),
  },
  {
    ...saturation,
    quantity: 'Saturation pressure at −60 °C',
    rows: 1,
    allowed: { by: 'difference', most: 0.005, unit: 'Pa' },
    remark: 'Printed with three digits: half a unit of the last one.',
    measure: (rows) => saturation.measure(rows.filter((r) => Number(r.temperature_c) <= -60)),
  },
  coating(
    'f',
    143,
    3.2,
    'A coarse witness: whole degrees, rounded down. Two cells in three agree within a degree; hot and dry ones are printed up to 3 °F lower than any formula gives.',
  ),
  coating(
    'c',
    110,
    2.5,
    'A coarse witness: whole degrees, rounded down. Four cells in five agree within a degree; hot and dry ones lie up to 2.4 °C lower than any formula gives.',
  ),
  {
    quantity: 'Standard-atmosphere pressure',
    source: `${ASHRAE}, table 1, as quoted in the tests of an open library`,
    table: 'src/science/air/standard-atmosphere.csv',
    rows: 3,
    allowed: { by: 'difference', most: 1, unit: 'Pa' },
    remark: 'The last printed digit.',
    measure: (rows) =>
      rows.map((r) => {
        const p = standardPressure(metres(Number(r.altitude_m)));
        return { label: `${r.altitude_m} m`, expected: Number(r.pressure_pa), got: p.ok ? p.value : 'refused' };
      }),
  },
  {
    quantity: 'Standard-atmosphere pressure, psi',
    source: 'Altitude and atmospheric pressure list of a tyre trade page',
    table: 'src/science/air/standard-atmosphere-psi.csv',
    rows: 4,
    allowed: { by: 'difference', most: 0.05, unit: 'psi' },
    remark: 'Printed to a tenth: half of it.',
    measure: (rows) =>
      rows.map((r) => {
        const p = standardPressure(metres(given(r.altitude_ft, 'length', 'ft')));
        return { label: `${r.altitude_ft} ft`, expected: Number(r.pressure_psi), got: p.ok ? fromSi(p.value, 'absolute-pressure', 'psi') : 'refused' };
      }),
  },
];
