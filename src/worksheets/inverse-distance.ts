import { inverseDistance } from '../science';
import { COMMON_PRACTICE, defineWorksheet } from '../terms';
import { accept, figure } from '../units';
import { points, readingsInputs, repeatRemarks, samplesFrom, targetInputs } from './map-inputs';
import { step } from './working';

export const inverseDistanceSheet = defineWorksheet({
  id: 'inverse-distance',
  title: 'A reading guessed by inverse distance',
  tells: 'The plain way to guess between readings: the nearer a reading, the more it counts.',
  example: { x_m: [0, 0.3, 0.6, 0, 0.3, 0.6], y_m: [0.9, 0.9, 0.9, 1.2, 1.2, 1.2], values_percent: [11, 14, 21, 11, 15, 24], at_x_m: 0.45, at_y_m: 1 },
  inputs: {
    ...readingsInputs,
    ...targetInputs,
    power_number: {
      type: 'number',
      quantity: 'number',
      unit: 'number',
      meaning: 'power of the distance: the higher, the more the nearest reading alone decides',
      limits: { least: 0.5, most: 10 },
      otherwise: 2,
    },
  },
  results: { estimate_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'guess at that place', decimals: 1 } },
  calculate: (given) => {
    const samples = samplesFrom(given);
    if (!samples.ok) return samples;
    const map = inverseDistance(samples.value, given.power_number);
    if (!map.ok) return map;
    const estimate = map.value.at(given.at_x_m, given.at_y_m);
    return accept({
      result: { estimate_percent: estimate },
      working: [
        step(
          'Mean, weighed by distance',
          'z* = Σ z d⁻ᵖ / Σ d⁻ᵖ',
          `${map.value.samples.length} places, p = ${figure(given.power_number, 1)}, x = ${figure(given.at_x_m, 2)} m, y = ${figure(given.at_y_m, 2)} m`,
          points(estimate, 1),
        ),
      ],
      remarks: repeatRemarks(map.value.repeats),
    });
  },
  sources: [COMMON_PRACTICE],
  limits: [
    'It has no standard error, so no chance of being above a threshold can be told from it.',
    'It draws towards the mean and never goes beyond what was read: the wettest place of a map is always a place that was read.',
    'Nothing is known across a stud, a wheel arch, metal, foil or a joint between panels: reckon each bay by itself.',
  ],
  cautions: [],
});
