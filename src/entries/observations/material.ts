import type { Field } from '../../terms';

/** What the meter was set against; most tables hold for one species of solid wood only. */
export const material = {
  type: 'choice',
  label: 'What is behind',
  options: [
    { id: 'softwood', word: 'Softwood framing' },
    { id: 'plywood', word: 'Plywood' },
    { id: 'chipboard', word: 'Chipboard or fibreboard' },
    { id: 'hardwood', word: 'Hardwood' },
    { id: 'foam', word: 'Foam core' },
    { id: 'metal', word: 'Metal or foil', line: 'a meter shows nothing of wood through it' },
    { id: 'no-wood', word: 'No wood at all', line: 'as in a moulded shell' },
    { id: 'not-known', word: 'Not known' },
  ],
  optional: true,
} as const satisfies Field;
