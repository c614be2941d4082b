import { testPosterior } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, figure } from '../units';
import { TEST_CAUTIONS, TEST_LIMITS, testInputs } from './water-test-inputs';
import { step } from './working';

export const waterTestUpdate = defineWorksheet({
  id: 'water-test-update',
  title: 'What a water test says of a source',
  tells: 'How likely an opening or seam lets water in after it was tested by itself.',
  example: { prior_fraction: 0.46, result: 'stayed-dry' },
  inputs: { ...testInputs, result: { type: 'word', meaning: 'how the test ended', words: ['came-in', 'stayed-dry'] } },
  results: { posterior_fraction: { type: 'number', quantity: 'share', unit: 'fraction', meaning: 'chance that this source lets water in, after the test', decimals: 3 } },
  calculate: ({ prior_fraction: p, sensitivity_fraction: sensitivity, specificity_fraction: specificity, result }) => {
    const positive = result === 'came-in';
    const after = testPosterior(p, { sensitivity, specificity }, positive);
    const [ifLeaks, ifNot] = positive ? [sensitivity, 1 - specificity] : [1 - sensitivity, specificity];
    return accept({
      result: { posterior_fraction: after },
      working: [
        step('Chance of this result if it leaks', positive ? 'sensitivity' : '1 − sensitivity', '', figure(ifLeaks, 3)),
        step('Chance of this result if it does not', positive ? '1 − specificity' : 'specificity', '', figure(ifNot, 3)),
        step(
          'After the test',
          'p a / (p a + (1 − p) b)',
          `${figure(p, 3)} × ${figure(ifLeaks, 3)} / (${figure(p, 3)} × ${figure(ifLeaks, 3)} + ${figure(1 - p, 3)} × ${figure(ifNot, 3)})`,
          `${figure(after * 100, 1)} %`,
        ),
      ],
      remarks: p * ifLeaks + (1 - p) * ifNot > 0 ? [] : ['With these figures the test could not have ended like this; the chance is left as it was.'],
    });
  },
  sources: [seen('Bayes’ rule, closed form'), ours('sensitivity and specificity of a hose test')],
  limits: [...TEST_LIMITS],
  cautions: [...TEST_CAUTIONS],
});
