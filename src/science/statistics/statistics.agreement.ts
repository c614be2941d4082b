import type { Agreement } from '../../terms';
import { kendallUpperTail } from '.';

export const statisticsAgreements: readonly Agreement[] = [
  {
    quantity: 'Exact upper tail of Kendall’s S',
    source: 'Counted permutations, run in R 4.2.2; agrees with Gilbert 1987, table A18, from memory, unconfirmed',
    table: 'src/science/statistics/kendall-upper-tail.csv',
    rows: 88,
    allowed: { by: 'ratio', most: 0.000005, unit: '' },
    remark: 'Printed to six significant digits: half of the last one.',
    measure: (rows) => rows.map((r) => ({ label: `n ${r.n}, S ${r.S}`, expected: Number(r.p_upper_tail), got: kendallUpperTail(Number(r.n), Number(r.S)) })),
  },
];
