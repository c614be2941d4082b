/** What the two worksheets of a water test ask in common. */
const chance = (meaning: string) => ({ type: 'number', quantity: 'share', unit: 'fraction', meaning, limits: { least: 0, most: 1 } }) as const;

/** No test is without error. */
const NEVER_SURE = { least: 0.001, most: 0.999 } as const;

export const testInputs = {
  prior_fraction: chance('chance that this source lets water in, before the test'),
  sensitivity_fraction: { ...chance('chance that the test shows a leak that is there'), limits: NEVER_SURE, otherwise: 0.9 },
  specificity_fraction: { ...chance('chance that the test shows none where there is none'), limits: NEVER_SURE, otherwise: 0.97 },
} as const;

export const TEST_LIMITS = [
  'Nobody has published how often a hose test errs on a rig; the usual values are our own guess.',
  'It holds for a test of one source by itself, with everything above it kept dry.',
] as const;

export const TEST_CAUTIONS = ['A close jet or a pressure washer drives water past sound seals and invents leaks: plain flow, no nozzle.'] as const;
