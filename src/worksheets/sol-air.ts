import { airValidity, filmValidity, lightValidity, solAir } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure, kelvin, share, showIn } from '../units';
import { watts } from './sun-inputs';
import { step } from './working';

export const solAirSheet = defineWorksheet({
  id: 'sol-air',
  title: 'Sol-air temperature',
  tells: 'The handbook’s plain rule for how warm the sun makes an insulated face; the worksheet surface-temperature takes weather instead.',
  example: { air_temperature_c: 35, irradiance_wm2: 650, absorptance_percent: 90, film_wm2k: 17, deficit_wm2: 0 },
  inputs: {
    air_temperature_c: { type: 'number', quantity: 'temperature', unit: 'c', meaning: 'temperature of the air', limits: { least: airValidity.least, most: airValidity.most } },
    irradiance_wm2: { type: 'number', quantity: 'irradiance', unit: 'wm2', meaning: 'sunlight on the face', limits: { least: lightValidity.least, most: lightValidity.most } },
    absorptance_percent: { type: 'number', quantity: 'share', unit: 'percent', meaning: 'share of it that the colour takes up: 45 light, 90 dark', limits: { least: 0, most: 1 } },
    film_wm2k: {
      type: 'number',
      quantity: 'heat-transfer',
      unit: 'wm2k',
      meaning: 'film coefficient of air and radiation together: 17 in a summer breeze, 34 in a winter wind, 10 to 12 in still air',
      limits: { least: filmValidity.least, most: filmValidity.most },
      otherwise: 17,
    },
    emittance_percent: {
      type: 'number',
      quantity: 'share',
      unit: 'percent',
      meaning: 'share of heat radiation that the skin gives off; bare metal far less',
      limits: { least: 0, most: 1 },
      otherwise: 90,
    },
    deficit_wm2: {
      type: 'number',
      quantity: 'irradiance',
      unit: 'wm2',
      meaning: 'how much less the surroundings shine back than they would if as warm as the air: 63 for a roof, 0 for a wall',
      limits: { least: 0, most: 200 },
    },
  },
  results: { sol_air_c: { type: 'number', quantity: 'temperature', unit: 'c', meaning: 'temperature that the face comes to', decimals: 0 } },
  calculate: (i) => {
    const t = solAir({
      air: kelvin(i.air_temperature_c),
      irradiance: i.irradiance_wm2,
      absorptance: share(i.absorptance_percent),
      emittance: share(i.emittance_percent),
      film: i.film_wm2k,
      deficit: i.deficit_wm2,
    });
    if (!t.ok) return t;
    const h = figure(i.film_wm2k, 1);
    const sun = (i.absorptance_percent * i.irradiance_wm2) / i.film_wm2k;
    const sky = (i.emittance_percent * i.deficit_wm2) / i.film_wm2k;
    return accept({
      result: { sol_air_c: t.value },
      working: [
        step('What the sun adds', 'α I / h', `α = ${figure(i.absorptance_percent, 2)}, I = ${watts(i.irradiance_wm2)}, h = ${h}`, `${figure(sun, 1)} K`),
        step('What the sky takes', 'ε ΔR / h', `ε = ${figure(i.emittance_percent, 2)}, ΔR = ${watts(i.deficit_wm2)}`, `${figure(sky, 1)} K`),
        step(
          'Sol-air temperature',
          'air + sun − sky',
          `${showIn(i.air_temperature_c, 'temperature', 'c')} + ${figure(sun, 1)} K − ${figure(sky, 1)} K`,
          showIn(t.value, 'temperature', 'c'),
        ),
      ],
    });
  },
  sources: [
    seen('ASHRAE Handbook – Fundamentals, sol-air equation, corrections 4 K for a roof and 0 for a wall, α/h 0.026 light and 0.053 dark, as quoted on public pages'),
    memory('Film 17 W/(m² K) at 3.4 m/s and 34 in a winter wind'),
    seen('Cool-roof definitions page of a national laboratory: the same rule with a film of 12.4 + 6.1 ε'),
  ],
  limits: ['Insulation behind a thin skin. Good to ±30 % of the rise, as the cool-roof page says of its own.'],
  cautions: ['A dark roof in sun burns skin, and a walked roof may be slippery as well as hot.'],
});
