import { saturationPressure, saturationValidity, TRIPLE_POINT } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, kelvin } from '../units';
import { step } from './working';

export const saturationPressureSheet = defineWorksheet({
  id: 'saturation-pressure',
  title: 'Saturation pressure of water vapour',
  tells: 'The most water vapour that air at this temperature can hold, as a pressure.',
  example: { temperature_c: 25 },
  inputs: {
    temperature_c: {
      type: 'number',
      quantity: 'temperature',
      unit: 'c',
      meaning: 'temperature of the air or of a surface',
      limits: { least: saturationValidity.least, most: saturationValidity.most },
    },
  },
  results: {
    saturation_pressure_pa: { type: 'number', quantity: 'vapour-pressure', unit: 'pa', meaning: 'pressure of saturated water vapour', decimals: 1 },
    over: { type: 'text', meaning: 'whether the vapour stands over water or over ice' },
  },
  calculate: ({ temperature_c: T }) => {
    const result = saturationPressure(kelvin(T));
    if (!result.ok) return result;
    const ice = T <= TRIPLE_POINT;
    const formula = ice
      ? 'ln p = −5674.5359/T + 6.3925247 − 0.009677843 T + 6.2215701·10⁻⁷ T² + 2.0747825·10⁻⁹ T³ − 9.484024·10⁻¹³ T⁴ + 4.1635019 ln T'
      : 'ln p = −5800.2206/T + 1.3914993 − 0.048640239 T + 4.1764768·10⁻⁵ T² − 1.4452093·10⁻⁸ T³ + 6.5459673 ln T';
    return accept({
      result: { saturation_pressure_pa: result.value, over: ice ? 'ice' : 'water' },
      working: [
        step('Absolute temperature', 'T = t + 273.15', `t = ${figure(T - 273.15, 2)} °C`, `${figure(T, 2)} K`),
        step(`Saturation pressure over ${ice ? 'ice' : 'water'}`, formula, `T = ${figure(T, 2)} K`, `${figure(result.value, 1)} Pa`),
      ],
    });
  },
  sources: [
    seen(
      'ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6, coefficients as in an open library; table 3 as quoted in its tests',
      'https://github.com/psychrometrics/psychrolib',
    ),
  ],
  limits: ['Pure water vapour: that air is present raises it by less than 0.5 %.', 'Below 0.01 °C it is the pressure over ice; over water that has not frozen yet it is higher.'],
  cautions: [],
});
