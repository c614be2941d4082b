import { chanceAbove } from '../science';
import { defineWorksheet, memory } from '../terms';
import { accept, figure } from '../units';
import { points } from './map-inputs';
import { step } from './working';

const value = { least: -10, most: 10 };

export const chanceAboveSheet = defineWorksheet({
  id: 'chance-above',
  title: 'Chance that a place between readings is above a threshold',
  tells: 'How likely a reading taken there would lie above the threshold: more honest than a picture of moisture alone.',
  example: { estimate_percent: 16.4, standard_error_percent: 3, threshold_percent: 20 },
  inputs: {
    estimate_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'most likely reading at the place', limits: value },
    standard_error_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'its standard error', limits: { least: 0, most: 10 } },
    threshold_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'the threshold', limits: value },
  },
  results: { chance_percent: { type: 'number', quantity: 'share', unit: 'percent', meaning: 'chance of being above it', decimals: 0 } },
  calculate: ({ estimate_percent, standard_error_percent, threshold_percent }) => {
    const chance = chanceAbove(estimate_percent, standard_error_percent ** 2, threshold_percent);
    return accept({
      result: { chance_percent: chance },
      working: [
        step(
          'Upper tail of the normal distribution',
          'P = 1 − Φ((threshold − estimate) / standard error)',
          `threshold = ${points(threshold_percent, 1)}, estimate = ${points(estimate_percent, 1)}, standard error = ${points(standard_error_percent, 1)}`,
          `${figure(chance * 100, 0)} %`,
        ),
      ],
    });
  },
  sources: [memory('Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.2.11 and 26.2.14: how the tail is worked out')],
  limits: ['Errors are taken as normally distributed. Near 0 and near 100 % the figure says “hardly” and “almost surely”, no more.'],
  cautions: [],
});
