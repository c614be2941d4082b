import { criticalHumidity, largestMouldIndex, mouldHumidity, mouldTemperature, weeksToFirstMould } from '../science';
import { defineWorksheet } from '../terms';
import { accept, figure, kelvin, relativeHumidity } from '../units';
import { MOULD_CAUTIONS, MOULD_LIMITS, mouldSources, surfaceInput } from './mould-inputs';
import { step } from './working';

export const mouldLimits = defineWorksheet({
  id: 'mould-limits',
  title: 'Where mould can grow',
  tells: 'From which humidity mould can grow on a surface, how far it would come if nothing changes, and how soon it begins on pine.',
  example: { surface: 'very-sensitive', temperature_c: 20, relative_humidity_percent: 97 },
  inputs: {
    surface: surfaceInput,
    temperature_c: {
      type: 'number',
      quantity: 'temperature',
      unit: 'c',
      meaning: 'temperature of the surface',
      limits: { least: mouldTemperature.least, most: mouldTemperature.most },
    },
    relative_humidity_percent: {
      type: 'number',
      quantity: 'relative-humidity',
      unit: 'percent',
      meaning: 'relative humidity at the surface',
      limits: { least: mouldHumidity.least, most: mouldHumidity.most },
      otherwise: 95,
    },
  },
  results: {
    critical_humidity_percent: { type: 'number', quantity: 'relative-humidity', unit: 'percent', meaning: 'mould can grow from this humidity', decimals: 0 },
    largest_index_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'the index it comes to in the end, 0 to 6; 0 where none grows', decimals: 1 },
    first_mould: { type: 'text', meaning: 'how soon the first mould is there, on bare pine' },
    way_in_a_week_percent: {
      type: 'number',
      quantity: 'share',
      unit: 'percent',
      meaning: 'how far one week takes bare pine towards the first mould; 0 where none grows',
      decimals: 0,
    },
  },
  calculate: ({ surface, temperature_c, relative_humidity_percent }) => {
    const [t, h] = [kelvin(temperature_c), relativeHumidity(relative_humidity_percent)];
    const critical = criticalHumidity(t, surface);
    if (!critical.ok) return critical;
    const largest = largestMouldIndex(t, h, surface);
    if (!largest.ok) return largest;
    const weeks = weeksToFirstMould(t, h);
    if (!weeks.ok) return weeks;
    const soon =
      weeks.value === undefined ? 'never, in this air' : weeks.value > 520 ? 'after more than ten years' : `after about ${figure(weeks.value, weeks.value < 10 ? 1 : 0)} weeks`;
    const T = figure(temperature_c - 273.15, 1);
    const RH = figure(relative_humidity_percent * 100, 0);
    return accept({
      result: {
        critical_humidity_percent: critical.value,
        largest_index_number: largest.value,
        first_mould: soon,
        way_in_a_week_percent: weeks.value === undefined ? 0 : 1 / weeks.value,
      },
      working: [
        step('Critical humidity', '−0.00267 T³ + 0.160 T² − 3.13 T + 100 up to 20 °C, never below the floor of the class', `T = ${T} °C`, `${figure(critical.value * 100, 1)} %`),
        step('Largest index', 'A + B x − C x², x = (RHcrit − RH) / (RHcrit − 100)', `RH = ${RH} %`, figure(largest.value, 1)),
        step('Weeks to index 1 on pine', 'exp(−0.68 ln T − 13.9 ln RH + 66.02)', `T = ${T} °C, RH = ${RH} %`, soon),
      ],
    });
  },
  sources: mouldSources,
  limits: [...MOULD_LIMITS, 'Surfaces from 0 to 50 °C.'],
  cautions: MOULD_CAUTIONS,
});
