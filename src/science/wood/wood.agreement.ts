import type { Agreement } from '../../terms';
import { kelvin, moistureContent, type QuantityId, relativeHumidity, toSi } from '../../units';
import { equilibriumMoisture, pinMeterLinear, pinMeterPfaffGarrahan } from '.';

const given = (n: unknown, quantity: QuantityId, unit: string): number => toSi(Number(n), quantity, unit);

const chart = {
  source: 'Pin-probe meter manual, p. 37, temperature chart in whole numbers',
  table: 'src/science/wood/pin-meter-chart.csv',
  rows: 4,
};

export const woodAgreements: readonly Agreement[] = [
  {
    quantity: 'Equilibrium moisture content of wood',
    source: 'Wood Handbook, FPL-GTR-190 (2010), table 4-2, 30 to 200 °F, 5 to 95 %',
    table: 'src/science/wood/equilibrium-moisture.csv',
    rows: 342,
    allowed: { by: 'difference', most: 0.1, unit: '% moisture' },
    remark: 'Printed to 0.1; the table was made in Fahrenheit, equation 4-5 is used in Celsius with rounded coefficients.',
    measure: (rows) =>
      rows.map((r) => {
        const m = equilibriumMoisture(kelvin(given(r.temperature_f, 'temperature', 'f')), relativeHumidity(given(r.relative_humidity_percent, 'relative-humidity', 'percent')));
        return { label: `${r.temperature_f} °F, ${r.relative_humidity_percent} %`, expected: Number(r.moisture_content_percent), got: m.ok ? m.value * 100 : 'refused' };
      }),
  },
  {
    ...chart,
    quantity: 'Pin meter temperature correction, linear rule',
    allowed: { by: 'difference', most: 1.1, unit: '% moisture' },
    remark: 'Two makers differ by a point: this is the uncertainty that goes with every corrected reading.',
    measure: (rows) =>
      rows.map((r) => {
        const m = pinMeterLinear(moistureContent(Number(r.reading_percent) / 100), kelvin(given(r.wood_temperature_c, 'temperature', 'c')), kelvin(293.15));
        return { label: `${r.reading_percent} % at ${r.wood_temperature_c} °C`, expected: Number(r.corrected_percent), got: m.ok ? m.value * 100 : 'refused' };
      }),
  },
  {
    ...chart,
    quantity: 'Pin meter temperature correction, Pfaff and Garrahan',
    allowed: { by: 'difference', most: 1.6, unit: '% moisture' },
    remark: 'Coefficients from memory, unconfirmed; this chart is what supports them.',
    measure: (rows) =>
      rows.map((r) => {
        const m = pinMeterPfaffGarrahan(moistureContent(Number(r.reading_percent) / 100), kelvin(given(r.wood_temperature_c, 'temperature', 'c')));
        return { label: `${r.reading_percent} % at ${r.wood_temperature_c} °C`, expected: Number(r.corrected_percent), got: m.ok ? m.value * 100 : 'refused' };
      }),
  },
];
