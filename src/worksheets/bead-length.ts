import { BEAD_PRACTICES, type BeadPractice, beadFormula, beadLength, RUN_DOWN } from '../science';
import { COMMON_PRACTICE, defineWorksheet, ours } from '../terms';
import { accept, metres, refuse, showIn } from '../units';
import { put, step } from './working';

const rules = BEAD_PRACTICES.map((p) => p.rule) as readonly BeadPractice[] as readonly [BeadPractice, ...BeadPractice[]];

export const beadLengthSheet = defineWorksheet({
  id: 'bead-length',
  title: 'Length of bead on an opening',
  tells: 'How much bead an opening takes when it is sealed as the trade does it.',
  example: { rule: 'top-and-upper-sides', width_m: 0.76, height_m: 0.56 },
  inputs: {
    rule: { type: 'word', meaning: BEAD_PRACTICES.map((p) => `${p.rule}: ${p.words}`).join('; '), words: rules },
    outline: { type: 'word', meaning: 'outline of the flange', words: ['rect', 'circle'], otherwise: 'rect' },
    width_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'width of the flange, or its diameter', limits: { least: 0.01, most: 20 } },
    height_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'height of the flange; for a circle left out', limits: { least: 0, most: 20 }, otherwise: 0 },
    run_down_m: {
      type: 'number',
      quantity: 'length',
      unit: 'm',
      meaning: 'how far down each side from the upper corners of a wall opening',
      limits: { least: 0, most: 1 },
      otherwise: RUN_DOWN,
    },
  },
  results: {
    length_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'length of bead', decimals: 2 },
    length_ft: { type: 'number', quantity: 'length', unit: 'ft', meaning: 'the same', decimals: 1 },
  },
  calculate: ({ rule, outline, width_m: w, height_m: h, run_down_m: s }) => {
    const circle = outline === 'circle';
    if (!circle && h === 0)
      return refuse({
        code: 'missing',
        path: 'height_m',
        expected: 'a height above 0 for a rectangle',
        received: 'nothing',
        sentence: 'A rectangular opening needs its height as well.',
      });
    const height = circle ? w : h;
    const around = circle ? Math.PI * w : 2 * (w + h);
    const length = beadLength(rule, { width: metres(w), height: metres(height), around: metres(around) }, metres(s));
    const m = (si: number): string => put(si, 'length', 'm', 2);
    return accept({
      result: { length_m: length, length_ft: length },
      working: [
        circle ? step('Whole outline', 'π w', `w = ${m(w)} m`, `${m(around)} m`) : step('Whole outline', '2 (w + h)', `w = ${m(w)} m, h = ${m(h)} m`, `${m(around)} m`),
        step('Length of bead', beadFormula(rule), `w = ${m(w)} m, h = ${m(height)} m, s = ${m(s)} m`, `${m(length)} m (${showIn(length, 'length', 'ft')})`),
      ],
      remarks: rule === 'none-gasket' ? ['A gasket seals this. A bead over it traps water: none may be added.'] : [],
    });
  },
  sources: [COMMON_PRACTICE, ours('0.15 m down each side is a guess of this project, no source')],
  limits: [
    'Practice disagrees: some shops bead a wall opening all round, some call the outer bead optional behind sound bedding.',
    'The bottom of a wall opening and its weep slots stay free to drain.',
  ],
  cautions: ['Never seal a vent of a gas appliance or a generator box.'],
});
