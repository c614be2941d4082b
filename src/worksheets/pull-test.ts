import { type MovementClassId, movementClass, pulledLength, shareProved } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, metres, share, showIn } from '../units';
import { classInput, widthOutput } from './joint-inputs';
import { put, step } from './working';

export const pullTest = defineWorksheet({
  id: 'pull-test',
  title: 'Pulling a tail of bead',
  tells: 'How far a cut tail of cured bead is pulled to prove that it sticks, and how much of the seam that proves.',
  example: { gauge_mm: 25, class: '25' },
  inputs: {
    gauge_mm: {
      type: 'number',
      quantity: 'small-length',
      unit: 'mm',
      meaning: 'distance between two marks on the tail, before it is pulled',
      limits: { least: 0.005, most: 0.2 },
      otherwise: 25,
    },
    class: classInput,
    test_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'length of seam that one pull takes', limits: { least: 0.01, most: 1 }, otherwise: 0.15 },
    seam_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'length of seam for each pull', limits: { least: 0.01, most: 500 }, otherwise: 5 },
  },
  results: {
    stretched_mm: widthOutput('distance between the marks at which it must still hold'),
    proved_percent: { type: 'number', quantity: 'share', unit: 'percent', meaning: 'share of the seam that was pulled', decimals: 2 },
  },
  calculate: (g) => {
    const cls = movementClass(g.class as MovementClassId);
    const pulled = pulledLength(metres(g.gauge_mm), share(cls.extension));
    const proved = shareProved(metres(g.test_m), metres(g.seam_m));
    return accept({
      result: { stretched_mm: pulled, proved_percent: proved },
      working: [
        step(
          'Between the marks',
          'L (1 + 2 m)',
          `${put(g.gauge_mm, 'small-length', 'mm', 1)} mm × (1 + 2 × ${put(cls.extension, 'share', 'fraction', 3)})`,
          showIn(pulled, 'small-length', 'mm'),
        ),
        step('Pulled', 'test / seam', `${put(g.test_m, 'length', 'm', 2)} m / ${put(g.seam_m, 'length', 'm', 2)} m`, `${put(proved, 'share', 'percent', 2)} %`),
      ],
    });
  },
  sources: [
    seen('ASTM C1521, significance: the tail is pulled until it fails or holds; adhesive, cohesive or substrate failure'),
    seen('Sealant trade page on ASTM C1521: pulled to twice the movement capability; 6 in for each 1 000 ft is one part in 2 000'),
  ],
  limits: [
    'It cuts the bead: mend the place at once.',
    'A pull proves what sticks to what, not that the bead has no gap. Peeled clean off: the ground or the family was wrong. Torn within itself: movement, or age. Paint or gelcoat lifted with it: the ground itself is weak.',
    'A tail that fails need not mean that the seam leaks already.',
  ],
  cautions: [],
});
