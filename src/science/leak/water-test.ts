/** How well a water test tells: the chance that it shows a leak that is there, and that it shows none where there is none. [1] */
export type TestQuality = { readonly sensitivity: number; readonly specificity: number };

/**
 * Chance that a source leaks after a test of it.
 *
 * @param prior     before the test. [1]
 * @param test      its sensitivity and specificity. [1]
 * @param positive  whether water came in
 * @returns         chance after it [1]; the prior itself where the test could not have ended like this
 * @valid           probabilities from 0 to 1
 * @agrees          exact against the worked case of a negative test (worksheets/cases/leak.jsonl)
 * @source          1. Bayes' rule, closed form
 */
export const testPosterior = (prior: number, { sensitivity, specificity }: TestQuality, positive: boolean): number => {
  const leaks = prior * (positive ? sensitivity : 1 - sensitivity);
  const sound = (1 - prior) * (positive ? 1 - specificity : specificity);
  return leaks + sound > 0 ? leaks / (leaks + sound) : prior;
};

const bits = (p: number): number => (p > 0 && p < 1 ? -p * Math.log2(p) - (1 - p) * Math.log2(1 - p) : 0);

/**
 * What a test is expected to tell about a source: mutual information of result and source.
 *
 * @param prior  that the source leaks. [1]
 * @param test   its sensitivity and specificity. [1]
 * @returns      expected information, 0 to 1. [bit]
 * @valid        probabilities from 0 to 1
 * @agrees       0 for a test that tells nothing, the entropy of the prior for a test without error; within 1e-12 of the
 *               expected fall of entropy through `testPosterior` (leak.check.ts)
 * @source       1. Shannon, A Mathematical Theory of Communication (1948): from memory, unconfirmed; closed form
 */
export const testInformation_bit = (prior: number, { sensitivity, specificity }: TestQuality): number =>
  bits(prior * sensitivity + (1 - prior) * (1 - specificity)) - prior * bits(sensitivity) - (1 - prior) * bits(specificity);
