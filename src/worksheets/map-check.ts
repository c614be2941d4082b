import { leaveOneOut } from '../science';
import { defineWorksheet, memory, ours } from '../terms';
import { accept, figure } from '../units';
import { likenessInputs, likenessStep, MAP_LIMITS, points, readingsInputs, samplesFrom, variogramFrom } from './map-inputs';
import { step } from './working';

/** Residuals this near to the largest, relatively, are as large: rounding does not choose between them. */
const AS_LARGE = 1 - 1e-9;

export const mapCheck = defineWorksheet({
  id: 'map-check',
  title: 'Is a map of these readings worth drawing',
  tells: 'How far off each reading would have been guessed from all the others, against guessing the plain mean: a map that does no better tells nothing.',
  example: {
    x_m: [0, 0.3, 0.6, 0, 0.3, 0.6, 0, 0.3, 0.6],
    y_m: [0.6, 0.6, 0.6, 0.9, 0.9, 0.9, 1.2, 1.2, 1.2],
    values_percent: [10, 12, 15, 11, 14, 21, 11, 15, 24],
    spread_percent: 5,
  },
  inputs: { ...readingsInputs, ...likenessInputs },
  results: {
    error_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'root mean square of read minus guessed', decimals: 1 },
    of_the_mean_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'the same where the plain mean of the others is the guess', decimals: 1 },
    worth_drawing: { type: 'text', meaning: 'whether the map does better than the mean' },
    mean_error_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'mean of read minus guessed', decimals: 2 },
    mean_squared_z_number: {
      type: 'number',
      quantity: 'number',
      unit: 'number',
      meaning: 'mean square of error over standard error: near one where the likeness was well chosen',
      decimals: 2,
    },
    largest_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'the largest error, read minus guessed', decimals: 1 },
    largest_x_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'where that is, first coordinate', decimals: 2 },
    largest_y_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'second coordinate', decimals: 2 },
  },
  calculate: (given) => {
    const samples = samplesFrom(given);
    if (!samples.ok) return samples;
    const check = leaveOneOut(samples.value, variogramFrom(given));
    if (!check.ok) return check;
    const c = check.value;
    const most = Math.max(...c.residuals.map(Math.abs));
    const at = c.residuals.findIndex((r) => Math.abs(r) >= most * AS_LARGE);
    return accept({
      result: {
        error_percent: c.error,
        of_the_mean_percent: c.of_the_mean,
        worth_drawing: c.error < c.of_the_mean ? 'yes' : 'no: draw the readings only',
        mean_error_percent: c.mean_error,
        mean_squared_z_number: c.mean_squared_z,
        largest_percent: c.residuals[at] ?? 0,
        largest_x_m: c.samples[at]?.x ?? 0,
        largest_y_m: c.samples[at]?.y ?? 0,
      },
      working: [
        likenessStep(given),
        step(
          'Each reading left out and guessed from the others',
          'e = (Q z)ᵢ / Qᵢᵢ, Q = C⁻¹ − C⁻¹ 1 1ᵀ C⁻¹ / 1ᵀ C⁻¹ 1',
          `${c.samples.length} places`,
          `largest ${points(c.residuals[at] ?? 0, 1)}`,
        ),
        step('Root mean square error', '√(Σ e² / n)', `n = ${c.samples.length}`, points(c.error, 1)),
        step('The plain mean instead', '√(Σ (z − mean of the others)² / n)', `n = ${c.samples.length}`, points(c.of_the_mean, 1)),
        step('Error against standard error', 'Σ (e / s)² / n', `n = ${c.samples.length}`, figure(c.mean_squared_z, 2)),
      ],
      remarks: c.samples.length < 8 ? ['Fewer than eight places: dots only, whatever the check says.'] : [],
    });
  },
  sources: [
    memory('Dubrule, Cross validation of kriging in a unique neighborhood, Mathematical Geology 15 (1983)'),
    ours('A map is drawn from eight places upward, and only where it beats the plain mean'),
  ],
  limits: MAP_LIMITS,
  cautions: [],
});
