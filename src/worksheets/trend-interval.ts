import { senInterval } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure } from '../units';
import { inDays, inPoints, listed, NOT_SEASON, rateInSi, seriesInputs } from './trend-inputs';
import { step } from './working';

export const trendInterval = defineWorksheet({
  id: 'trend-interval',
  title: 'How sure the drying rate is',
  tells: 'Between which slopes the true one lies: where both are below 0, the wall dries.',
  example: { times_d: [0, 4, 9, 15, 20, 30], readings_percent: [24, 22.5, 23.2, 19, 18.4, 15.1] },
  inputs: {
    ...seriesInputs,
    confidence_percent: { type: 'number', quantity: 'share', unit: 'percent', meaning: 'how sure it shall be', limits: { least: 0.5, most: 0.999 }, otherwise: 95 },
  },
  results: {
    slope_low_percentday: { type: 'number', quantity: 'moisture-rate', unit: 'percentday', meaning: 'the least slope that fits', decimals: 3 },
    slope_high_percentday: { type: 'number', quantity: 'moisture-rate', unit: 'percentday', meaning: 'the greatest slope that fits', decimals: 3 },
  },
  calculate: ({ times_d, readings_percent, confidence_percent }) => {
    const [times, readings] = [inDays(times_d), inPoints(readings_percent)];
    const interval = senInterval(times, readings, confidence_percent);
    if (!interval.ok) return interval;
    const { low, high } = interval.value;
    return accept({
      result: { slope_low_percentday: rateInSi(low), slope_high_percentday: rateInSi(high) },
      working: [
        step(
          'Slopes counted inward from both ends of their order',
          'ranks (N ∓ z √Var S) / 2 of the N slopes between any two readings',
          `t = ${listed(times, 1)} days; y = ${listed(readings, 1)} %; ${figure(confidence_percent * 100, 1)} %`,
          `${figure(low, 3)} to ${figure(high, 3)} % a day`,
        ),
      ],
    });
  },
  sources: [seen('SciPy 1.17.1, theilslopes, run on the cases'), memory('Sen, Journal of the American Statistical Association 63 (1968), equation 2.6')],
  limits: [
    'Four readings are too few for 95 %, whatever they are: the answer is refused, not widened.',
    'The ranks come from a normal approximation, which is coarse below ten readings.',
    NOT_SEASON,
  ],
  cautions: [],
});
