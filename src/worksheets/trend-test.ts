import { type MannKendall, mannKendall } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure } from '../units';
import { listed, NOT_SEASON } from './trend-inputs';
import { step } from './working';

/** How small a chance must be before an order is taken for a trend. */
const TAKEN_FOR_A_TREND = 0.05;

const verdict = ({ p_falling, p_rising }: MannKendall): string =>
  p_falling <= TAKEN_FOR_A_TREND ? 'they fall' : p_rising <= TAKEN_FOR_A_TREND ? 'they rise' : 'no trend can be told from these';

const chance = (meaning: string) => ({ type: 'number', quantity: 'share', unit: 'fraction', meaning, decimals: 4 }) as const;

export const trendTest = defineWorksheet({
  id: 'trend-test',
  title: 'Whether a trend is real',
  tells: 'Whether readings rise or fall at all, from their order alone, or whether they could stand so by chance.',
  example: { readings_number: [31, 28, 24.5, 22, 19.5] },
  inputs: {
    readings_number: {
      type: 'numbers',
      quantity: 'number',
      unit: 'number',
      meaning: 'the readings in the order they were taken, in the meter’s own points',
      limits: { least: -1000, most: 1000 },
      least: 3,
      most: 60,
    },
  },
  results: {
    says: { type: 'text', meaning: 'what the order of the readings says, at one chance in twenty' },
    p_falling_fraction: chance('chance that readings in random order fall this much or more'),
    p_rising_fraction: chance('chance that readings in random order rise this much or more'),
    p_two_sided_fraction: chance('chance of a trend this strong either way'),
    s_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'pairs that rise less pairs that fall', decimals: 0 },
    tau_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'from −1, always falling, to 1, always rising', decimals: 3 },
    variance_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'variance of S', decimals: 2 },
    z_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'S against its own scatter, continuity corrected', decimals: 2 },
    method: { type: 'text', meaning: 'how the chances were found' },
  },
  calculate: ({ readings_number }) => {
    const found = mannKendall(readings_number);
    if (!found.ok) return found;
    const m = found.value;
    const method = m.exact ? 'counted exactly' : 'normal approximation, because readings are equal or more than ten';
    const n = readings_number.length;
    return accept({
      result: {
        says: verdict(m),
        p_falling_fraction: m.p_falling,
        p_rising_fraction: m.p_rising,
        p_two_sided_fraction: m.p_two_sided,
        s_number: m.s,
        tau_number: m.tau,
        variance_number: m.variance,
        z_number: m.z,
        method,
      },
      working: [
        step('Pairs that rise less pairs that fall', 'S = Σ sign(yⱼ − yᵢ), i before j', listed(readings_number, 1), figure(m.s, 0)),
        step('Variance of S', '[n(n−1)(2n+5) − Σ t(t−1)(2t+5)] / 18, t the sizes of groups of equal readings', `n = ${n}`, figure(m.variance, 2)),
        step(`Chance of falling this much, ${method}`, 'P(S′ ≤ S)', `n = ${n}, S = ${figure(m.s, 0)}`, figure(m.p_falling, 4)),
        step(`Chance of rising this much, ${method}`, 'P(S′ ≥ S)', `n = ${n}, S = ${figure(m.s, 0)}`, figure(m.p_rising, 4)),
      ],
      remarks: n < 4 ? ['Three readings in strict order could stand so by chance once in six: take more before anything is said.'] : [],
    });
  },
  sources: [
    seen('Mann–Kendall test with ties: page mk.test of the R package trend'),
    seen('Exact for n up to 10, normal above: the procedure of Gilbert 1987 as described in the manual of a statistics program'),
    seen('R 4.2.2, cor.test(method = "kendall"), and SciPy 1.17.1, run on the cases'),
    memory('Gilbert, Statistical Methods for Environmental Pollution Monitoring (1987), table A18'),
  ],
  limits: [
    'One meter at one place. Only the order counts, so a relative scale will do.',
    'Four readings in strict order tell one side at one chance in twenty; both sides need five.',
    NOT_SEASON,
  ],
  cautions: [],
});
