import { testInformation_bit, testPosterior } from '../science';
import { defineWorksheet, memory, ours } from '../terms';
import { accept, figure } from '../units';
import { TEST_CAUTIONS, TEST_LIMITS, testInputs } from './water-test-inputs';
import { step } from './working';

const HOUR_S = 3600;

export const waterTestInformation = defineWorksheet({
  id: 'water-test-information',
  title: 'What a water test is expected to tell',
  tells: 'How much a test of one opening or seam is expected to tell, and how much of it in an hour of work.',
  example: { prior_fraction: 0.46, minutes_min: 25 },
  inputs: {
    ...testInputs,
    minutes_min: { type: 'number', quantity: 'duration', unit: 'min', meaning: 'time the test takes, setting up counted', limits: { least: 60, most: 86_400 }, otherwise: 20 },
  },
  results: {
    information_bit: { type: 'number', quantity: 'information', unit: 'bit', meaning: 'expected information: 1 bit settles an even question', decimals: 3 },
    information_hour_bit: { type: 'number', quantity: 'information', unit: 'bit', meaning: 'the same for an hour of work', decimals: 3 },
    positive_fraction: { type: 'number', quantity: 'share', unit: 'fraction', meaning: 'chance that the test shows a leak', decimals: 3 },
    if_positive_fraction: { type: 'number', quantity: 'share', unit: 'fraction', meaning: 'chance that it leaks, if the test shows it', decimals: 3 },
    if_negative_fraction: { type: 'number', quantity: 'share', unit: 'fraction', meaning: 'chance that it leaks, if the test shows none', decimals: 3 },
  },
  calculate: ({ prior_fraction: p, sensitivity_fraction: sensitivity, specificity_fraction: specificity, minutes_min: seconds }) => {
    const test = { sensitivity, specificity };
    const bit = testInformation_bit(p, test);
    const positive = p * sensitivity + (1 - p) * (1 - specificity);
    return accept({
      result: {
        information_bit: bit,
        information_hour_bit: (bit * HOUR_S) / seconds,
        positive_fraction: positive,
        if_positive_fraction: testPosterior(p, test, true),
        if_negative_fraction: testPosterior(p, test, false),
      },
      working: [
        step(
          'Chance that the test shows a leak',
          'q = p × sensitivity + (1 − p) × (1 − specificity)',
          `p = ${figure(p, 3)}, ${figure(sensitivity, 2)}, ${figure(specificity, 2)}`,
          figure(positive, 3),
        ),
        step(
          'Expected information',
          'I = H(q) − p H(sensitivity) − (1 − p) H(specificity), H(x) = −x log₂ x − (1 − x) log₂ (1 − x)',
          `q = ${figure(positive, 3)}`,
          `${figure(bit, 3)} bit`,
        ),
        step('For an hour of work', 'I × 60 min / minutes', `${figure(bit, 3)} × 60 / ${figure(seconds / 60, 0)}`, `${figure((bit * HOUR_S) / seconds, 3)} bit`),
      ],
    });
  },
  sources: [memory('Shannon, A Mathematical Theory of Communication (1948): mutual information, closed form'), ours('sensitivity, specificity and minutes')],
  limits: [...TEST_LIMITS],
  cautions: [...TEST_CAUTIONS],
});
