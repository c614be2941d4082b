import { semivariance } from '../science';
import { defineWorksheet, ours } from '../terms';
import { accept, figure } from '../units';
import { likenessInputs, likenessStep, points, variogramFrom } from './map-inputs';
import { step } from './working';

const { model, repeatability_percent, spread_percent, range_m } = likenessInputs;

export const typicalDifference = defineWorksheet({
  id: 'typical-difference',
  title: 'How much two readings differ by their distance',
  tells: 'What a likeness between readings means: by how much two readings this far apart usually differ.',
  example: { distance_m: 0.3, spread_percent: 5 },
  inputs: {
    distance_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'distance of the two readings, along the longer direction', limits: { least: 0, most: 1000 } },
    model,
    repeatability_percent,
    spread_percent,
    range_m,
  },
  results: {
    difference_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'root mean square difference of the two', decimals: 1 },
  },
  calculate: (given) => {
    const all = { ...given, ratio_number: 1, direction_deg: Math.PI / 2 };
    const gamma = semivariance(variogramFrom(all), given.distance_m);
    return accept({
      result: { difference_percent: Math.sqrt(2 * gamma) },
      working: [
        likenessStep(all),
        step('Usual difference', '√(2 γ(h))', `h = ${figure(given.distance_m, 2)} m, γ = ${figure(gamma * 1e4, 2)} points²`, points(Math.sqrt(2 * gamma), 1)),
      ],
    });
  },
  sources: [ours('Spherical, exponential and Gaussian likeness are closed forms; usual values are this project’s proposal')],
  limits: ['A mean over many pairs of readings in one bay. Two readings at hand may differ by more or by less.'],
  cautions: [],
});
