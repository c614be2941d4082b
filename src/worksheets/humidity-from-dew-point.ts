import { humidityFromDewPoint, saturationLaw, saturationValidity } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, kelvin } from '../units';
import { step } from './working';

const temperature = (meaning: string) =>
  ({ type: 'number', quantity: 'temperature', unit: 'c', meaning, limits: { least: saturationValidity.least, most: saturationValidity.most } }) as const;

export const humidityFromDewPointSheet = defineWorksheet({
  id: 'humidity-from-dew-point',
  title: 'Humidity from the dew point',
  tells: 'Relative humidity of air whose dew point is known, as weather stations report it.',
  example: { dry_bulb_c: 25, dew_point_c: 5 },
  inputs: { dry_bulb_c: temperature('temperature of the air'), dew_point_c: temperature('dew point of that air') },
  results: { relative_humidity_percent: { type: 'number', quantity: 'relative-humidity', unit: 'percent', meaning: 'relative humidity of the air', decimals: 0 } },
  calculate: ({ dry_bulb_c, dew_point_c }) => {
    const result = humidityFromDewPoint(kelvin(dry_bulb_c), kelvin(dew_point_c));
    if (!result.ok) return result;
    const [held, full] = [saturationLaw(dew_point_c), saturationLaw(dry_bulb_c)];
    return accept({
      result: { relative_humidity_percent: result.value },
      working: [
        step('Vapour the air holds', 'p = p_ws(dew point), see the worksheet saturation-pressure', `${figure(dew_point_c - 273.15, 1)} °C`, `${figure(held, 1)} Pa`),
        step('Vapour it could hold', 'p_ws(air)', `${figure(dry_bulb_c - 273.15, 1)} °C`, `${figure(full, 1)} Pa`),
        step('Relative humidity', 'h = p / p_ws(air)', `${figure(held, 1)} Pa / ${figure(full, 1)} Pa`, `${figure(result.value * 100, 0)} %`),
      ],
    });
  },
  sources: [seen('ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6', 'https://github.com/psychrometrics/psychrolib')],
  limits: [
    'Air from −100 to 200 °C; a dew point above the air is refused.',
    'Below freezing a station may report the dew point over water or the frost point over ice; here it is the frost point.',
  ],
  cautions: [],
});
