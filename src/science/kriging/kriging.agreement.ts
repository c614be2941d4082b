import type { Agreement } from '../../terms';
import { chanceAbove } from '.';

/** Kriging itself is held through its worksheets, against 42 cases of an independent implementation. */
export const krigingAgreements: readonly Agreement[] = [
  {
    quantity: 'Chance above a threshold (normal upper tail)',
    source: 'erfc of the GNU C library, z = −4 to 8',
    table: 'src/science/kriging/normal-upper-tail.csv',
    rows: 49,
    allowed: { by: 'ratio', most: 1e-9, unit: '' },
    remark: 'Relative, so that the far tail counts as much as the middle.',
    measure: (rows) => rows.map((r) => ({ label: `z = ${r.z}`, expected: Number(r.chance_above), got: chanceAbove(0, 1, Number(r.z)) })),
  },
];
