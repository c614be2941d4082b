import type { Agreement } from '../../terms';
import { fromSi, metres, toSi } from '../../units';
import { beadSection } from '.';

export const sealantAgreements: readonly Agreement[] = [
  {
    quantity: 'Feet of joint from a US gallon',
    source: 'Polyurethane joint sealant data sheet no. 773, coverage chart',
    table: 'src/science/sealant/coverage.csv',
    rows: 4,
    allowed: { by: 'ratio', most: 0.012, unit: '' },
    remark: 'Printed in whole feet and rounded down; the narrowest is out by a foot.',
    measure: (rows) =>
      rows.map((r) => {
        const inch = (n: unknown) => metres(toSi(Number(n), 'small-length', 'in'));
        const feet = fromSi(toSi(1, 'volume', 'gal') / beadSection('rectangle', inch(r.width_in), inch(r.depth_in)), 'length', 'ft');
        return { label: `${r.width_in} × ${r.depth_in} in`, expected: Number(r.length_ft_per_gallon), got: feet };
      }),
  },
];
