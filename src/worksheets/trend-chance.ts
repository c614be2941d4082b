import { kendallUpperTail } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure, refuse } from '../units';
import { step } from './working';

const notWhole = (path: string, n: number) =>
  refuse({ code: 'not-whole', path, expected: 'a whole number', received: figure(n, 3), sentence: 'This counts readings or pairs of them and must be a whole number.' });

export const trendChance = defineWorksheet({
  id: 'trend-chance',
  title: 'How often a trend this strong comes by chance',
  tells: 'What so many readings can tell at best, before they are taken: the chance that random ones score S or more.',
  example: { readings_count: 5, s_number: 10 },
  inputs: {
    readings_count: { type: 'number', quantity: 'count', unit: 'count', meaning: 'how many readings, no two of them equal', limits: { least: 3, most: 60 } },
    s_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'pairs that rise less pairs that fall', limits: { least: -1770, most: 1770 } },
  },
  results: { p_upper_fraction: { type: 'number', quantity: 'share', unit: 'fraction', meaning: 'chance of this S or more', decimals: 5 } },
  calculate: ({ readings_count: n, s_number: s }) => {
    if (!Number.isInteger(n)) return notWhole('readings', n);
    if (!Number.isInteger(s)) return notWhole('s', s);
    const p = kendallUpperTail(n, s);
    return accept({
      result: { p_upper_fraction: p },
      working: [step('Orders of the readings that score so much, of all there are', 'P(S′ ≥ S), counted', `n = ${figure(n, 0)}, S = ${figure(s, 0)}`, figure(p, 5))],
    });
  },
  sources: [seen('Counted exactly; 88 values run in R 4.2.2'), memory('Gilbert, Statistical Methods for Environmental Pollution Monitoring (1987), table A18')],
  limits: ['No two readings equal. With equal ones the worksheet trend-test takes the normal approximation.'],
  cautions: [],
});
