import { atmosphereValidity, standardPressure } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, metres, showIn } from '../units';
import { step } from './working';

export const standardAtmosphere = defineWorksheet({
  id: 'standard-atmosphere',
  title: 'Pressure of the standard atmosphere',
  tells: 'The pressure of the air at a height above sea level on a standard day.',
  example: { altitude_m: 1500 },
  inputs: {
    altitude_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'height above sea level', limits: { least: atmosphereValidity.least, most: atmosphereValidity.most } },
  },
  results: {
    pressure_kpa: { type: 'number', quantity: 'absolute-pressure', unit: 'kpa', meaning: 'pressure of the air', decimals: 2 },
    pressure_psi: { type: 'number', quantity: 'absolute-pressure', unit: 'psi', meaning: 'the same', decimals: 2 },
  },
  calculate: ({ altitude_m }) => {
    const p = standardPressure(metres(altitude_m));
    if (!p.ok) return p;
    return accept({
      result: { pressure_kpa: p.value, pressure_psi: p.value },
      working: [
        step(
          'Pressure',
          'p = 101.325 kPa × (1 − 2.25577·10⁻⁵ Z)^5.2559',
          `Z = ${figure(altitude_m, 0)} m`,
          `${figure(p.value / 1000, 2)} kPa (${showIn(p.value, 'absolute-pressure', 'psi')})`,
        ),
      ],
    });
  },
  sources: [
    seen('ASHRAE Handbook – Fundamentals (2017), chapter 1, equation 3 and table 1 as quoted in the tests of an open library', 'https://github.com/psychrometrics/psychrolib'),
  ],
  limits: ['A standard day. The weather moves the real pressure by up to about 3 %.'],
  cautions: [],
});
