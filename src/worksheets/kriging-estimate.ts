import { kriging } from '../science';
import { defineWorksheet, memory, ours } from '../terms';
import { accept, figure } from '../units';
import { likenessInputs, likenessStep, MAP_LIMITS, points, readingsInputs, repeatRemarks, samplesFrom, targetInputs, variogramFrom } from './map-inputs';
import { step } from './working';

export const krigingEstimate = defineWorksheet({
  id: 'kriging-estimate',
  title: 'A reading guessed between readings, with its standard error',
  tells: 'What a meter would most likely show at a place that was not read, and how far that may be off.',
  example: { x_m: [0, 0.3, 0.6, 0, 0.3, 0.6], y_m: [0.9, 0.9, 0.9, 1.2, 1.2, 1.2], values_percent: [11, 14, 21, 11, 15, 24], spread_percent: 5, at_x_m: 0.45, at_y_m: 1 },
  inputs: { ...readingsInputs, ...targetInputs, ...likenessInputs },
  results: {
    estimate_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'most likely reading at that place', decimals: 1 },
    standard_error_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'its standard error', decimals: 1 },
    weights_number: {
      type: 'numbers',
      quantity: 'number',
      unit: 'number',
      meaning: 'share of each place in the guess, in the order in which places first came; they sum to one',
      decimals: 3,
    },
    lagrange_number: {
      type: 'number',
      quantity: 'number',
      unit: 'number',
      meaning: 'size of the Lagrange multiplier, in points squared: what not knowing the mean adds',
      decimals: 3,
    },
  },
  calculate: (given) => {
    const samples = samplesFrom(given);
    if (!samples.ok) return samples;
    const map = kriging(samples.value, variogramFrom(given));
    if (!map.ok) return map;
    const [x, y] = [given.at_x_m, given.at_y_m];
    const { estimate, variance } = map.value.at(x, y);
    const { weights, lagrange } = map.value.weights(x, y);
    const heaviest = Math.max(...weights.map(Math.abs));
    return accept({
      result: { estimate_percent: estimate, standard_error_percent: Math.sqrt(variance), weights_number: weights, lagrange_number: lagrange * 1e4 },
      working: [
        likenessStep(given),
        step(
          'Weights, from the likeness of the readings to each other and to the place',
          '[C 1; 1ᵀ 0] [w; μ] = [c; 1]',
          `${weights.length} places, heaviest ${figure(heaviest, 3)}`,
          `μ = ${figure(lagrange * 1e4, 3)} points²`,
        ),
        step('Guess', 'z* = Σ w z', `x = ${figure(x, 2)} m, y = ${figure(y, 2)} m`, points(estimate, 1)),
        step('Its standard error', '√(C(0) − Σ w c + μ)', `variance ${figure(variance * 1e4, 2)} points²`, points(Math.sqrt(variance), 1)),
      ],
      remarks: [...repeatRemarks(map.value.repeats), ...(variance === 0 ? ['This place was read: the reading itself is given, with no error, whatever the repeatability.'] : [])],
    });
  },
  sources: [
    memory('Isaaks and Srivastava, An Introduction to Applied Geostatistics (1989), chapter 12: ordinary kriging and its worked example'),
    ours('Usual values: spherical, range 48 in up and down a wall, 24 in along it, because water runs down'),
  ],
  limits: MAP_LIMITS,
  cautions: [],
});
