import { tapeLength, wholePackages } from '../science';
import { COMMON_PRACTICE, defineWorksheet } from '../terms';
import { accept, metres, share, showIn } from '../units';
import { put, step } from './working';

export const tapeRolls = defineWorksheet({
  id: 'tape-rolls',
  title: 'Rolls of tape needed',
  tells: 'How many rolls of bedding tape to buy for edges of this length.',
  example: { length_m: 13.7 },
  inputs: {
    length_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'length of edges together', limits: { least: 0, most: 500 } },
    waste_percent: { type: 'number', quantity: 'share', unit: 'percent', meaning: 'on top, for corners and overlaps', limits: { least: 0, most: 1 }, otherwise: 15 },
    roll_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'length of one roll, from its label', limits: { least: 0.5, most: 100 }, otherwise: 9.144 },
  },
  results: {
    rolls_count: { type: 'number', quantity: 'count', unit: 'count', meaning: 'whole rolls', decimals: 0 },
    tape_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'tape, waste included', decimals: 2 },
  },
  calculate: (g) => {
    const need = tapeLength(metres(g.length_m), share(g.waste_percent));
    const rolls = wholePackages(need, g.roll_m);
    const m = (si: number): string => put(si, 'length', 'm', 2);
    return accept({
      result: { rolls_count: rolls, tape_m: need },
      working: [
        step('Tape', 'L (1 + waste)', `${m(g.length_m)} m × ${put(1 + g.waste_percent, 'share', 'fraction', 2)}`, showIn(need, 'length', 'm')),
        step('Rolls', 'tape / length of a roll, rounded up', `${m(need)} / ${m(g.roll_m)}`, String(rolls)),
      ],
    });
  },
  sources: [COMMON_PRACTICE],
  limits: [
    'Roll lengths vary and no sheet with lengths was read: 30 ft (9.14 m) is common practice. Read the label.',
    'The tape must be thicker than the gap it fills, and is not stretched while it is laid.',
  ],
  cautions: [],
});
