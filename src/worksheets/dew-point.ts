import { dewPoint, saturationPressure, saturationValidity, TRIPLE_POINT } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, kelvin, relativeHumidity } from '../units';
import { step } from './working';

export const dewPointSheet = defineWorksheet({
  id: 'dew-point',
  title: 'Dew point',
  tells: 'How warm a surface must stay so that it is not wet with no leak at all.',
  example: { dry_bulb_c: 25, relative_humidity_percent: 80 },
  inputs: {
    dry_bulb_c: {
      type: 'number',
      quantity: 'temperature',
      unit: 'c',
      meaning: 'temperature of the air',
      limits: { least: saturationValidity.least, most: saturationValidity.most },
    },
    relative_humidity_percent: { type: 'number', quantity: 'relative-humidity', unit: 'percent', meaning: 'relative humidity of that air', limits: { least: 0.01, most: 1 } },
  },
  results: {
    dew_point_c: { type: 'number', quantity: 'temperature', unit: 'c', meaning: 'a surface colder than this is wet', decimals: 1 },
    dew_point_f: { type: 'number', quantity: 'temperature', unit: 'f', meaning: 'the same', decimals: 1 },
    vapour_pressure_pa: { type: 'number', quantity: 'vapour-pressure', unit: 'pa', meaning: 'pressure of the water vapour in the air', decimals: 0 },
  },
  calculate: ({ dry_bulb_c: T, relative_humidity_percent: h }) => {
    const saturated = saturationPressure(kelvin(T));
    const point = dewPoint(kelvin(T), relativeHumidity(h));
    if (!point.ok) return point;
    if (!saturated.ok) return saturated;
    const p = saturated.value * h;
    return accept({
      result: { dew_point_c: point.value, dew_point_f: point.value, vapour_pressure_pa: p },
      working: [
        step('Saturation pressure of the air', 'p_ws(T), see the worksheet saturation-pressure', `T = ${figure(T, 2)} K`, `${figure(saturated.value, 1)} Pa`),
        step('Vapour pressure', 'p = h p_ws(T)', `${figure(h, 3)} × ${figure(saturated.value, 1)} Pa`, `${figure(p, 1)} Pa`),
        step('Dew point', 'the temperature at which p_ws equals p', `p = ${figure(p, 1)} Pa`, `${figure(point.value - 273.15, 1)} °C`),
      ],
      remarks: point.value <= TRIPLE_POINT ? ['Below freezing this is the frost point: hoar forms instead of dew.'] : [],
    });
  },
  sources: [
    seen('ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6, solved for the temperature', 'https://github.com/psychrometrics/psychrolib'),
    seen('Dew point chart of a coating supplier, whole degrees Fahrenheit, 20 to 120 °F, 30 to 90 %'),
  ],
  limits: [
    'As good as the humidity reading: 5 points of humidity move the dew point by about 1 to 2 °C.',
    'A roof under a clear sky is colder than the air; measure the surface itself.',
  ],
  cautions: [],
});
