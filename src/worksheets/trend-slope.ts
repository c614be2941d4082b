import { theilSen } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure } from '../units';
import { inDays, inPoints, listed, NOT_SEASON, rateInSi, seriesInputs } from './trend-inputs';
import { step } from './working';

export const trendSlope = defineWorksheet({
  id: 'trend-slope',
  title: 'How fast a wall dries',
  tells: 'By how much readings change in a day: the median of the slopes between any two of them, which one wild reading hardly moves.',
  example: { times_d: [0, 3, 7, 10, 14], readings_percent: [31, 28, 24.5, 22, 19.5] },
  inputs: seriesInputs,
  results: {
    slope_percentday: { type: 'number', quantity: 'moisture-rate', unit: 'percentday', meaning: 'change of moisture in a day; below 0 it dries', decimals: 3 },
    at_day_0_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'where the line stands at day 0', decimals: 1 },
    pairs_count: { type: 'number', quantity: 'count', unit: 'count', meaning: 'pairs of readings it rests on', decimals: 0 },
  },
  calculate: ({ times_d, readings_percent }) => {
    const [times, readings] = [inDays(times_d), inPoints(readings_percent)];
    const line = theilSen(times, readings);
    if (!line.ok) return line;
    const { slope, intercept } = line.value;
    const n = readings.length;
    return accept({
      result: { slope_percentday: rateInSi(slope), at_day_0_percent: intercept / 100, pairs_count: (n * (n - 1)) / 2 },
      working: [
        step(
          'Slope between any two readings, the middle one of all',
          'b = median of (yⱼ − yᵢ) / (tⱼ − tᵢ)',
          `t = ${listed(times, 1)} days; y = ${listed(readings, 1)} %`,
          `${figure(slope, 3)} % a day`,
        ),
        step('Height at day 0', 'a = median of (y − b t)', `b = ${figure(slope, 3)}`, `${figure(intercept, 1)} %`),
      ],
      remarks: n < 4 ? ['With so few readings the slope is a first look only; no trend can be told from it.'] : [],
    });
  },
  sources: [
    seen('Theil–Sen estimator as R 4.2.2 and SciPy 1.17.1 work it; both run on the cases'),
    memory('Sen, Journal of the American Statistical Association 63 (1968), 1379, with its worked example'),
  ],
  limits: [
    'Readings of one meter, one kind of scale whose steps are equal, at one place. A relative scale has ranks only: use the worksheet trend-test.',
    NOT_SEASON,
    'Pairs taken within a minute of each other are left out.',
  ],
  cautions: [],
});
