import type { Field, Option } from '../../terms';

/** What came off before the new went on: decides what the new has to stick to. */
export const removed = {
  type: 'choice',
  label: 'Removed before',
  options: [
    { id: 'all', word: 'All old sealant removed', line: 'down to the bare surface' },
    { id: 'loose', word: 'Loose sealant removed', line: 'what still stuck was left' },
    { id: 'none', word: 'Nothing removed', line: 'laid over the old' },
  ],
} as const satisfies Field;

export const CLEANERS = [
  { id: 'soap-and-water', word: 'Mild soap and water' },
  { id: 'alcohol', word: 'Isopropyl alcohol' },
  { id: 'makers-cleaner', word: "The product maker's cleaner" },
  { id: 'petroleum', word: 'Petroleum-based cleaner', line: 'harms a rubber roof' },
  { id: 'nothing', word: 'Nothing' },
  { id: 'other', word: 'Something else' },
] as const satisfies readonly Option[];
