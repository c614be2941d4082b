import { defineKind, type Fields } from '../../../terms';
import { line, reading, wordIn } from '../../line';
import { span } from '../../span';
import { isWheel } from '../wheel';

const wear = [
  { id: 'even', word: 'Even wear' },
  { id: 'one-edge', word: 'One edge worn' },
  { id: 'both-edges', word: 'Both edges worn' },
  { id: 'middle', word: 'Middle worn' },
  { id: 'patches', word: 'Patches or cups' },
] as const;

const fields = {
  depth: {
    type: 'number',
    label: 'Tread depth',
    meaning: 'The shallowest of several places in the main grooves, not at the wear bars.',
    quantity: 'small-length',
    units: { us: '32in', metric: 'mm' },
    limits: span('small-length', 'mm', 0, 60),
    usual: span('small-length', 'mm', 0, 20),
  },
  wear: { type: 'choice', label: 'Wear', options: wear, optional: true },
} as const satisfies Fields;

export const tyreTread = defineKind()({
  id: 'tyre-tread',
  group: 'observation',
  version: 1,
  title: 'Tyre tread',
  meaning: 'The shallowest tread depth measured at one tyre, and how it is worn.',
  places: ['station'],
  sides: ['outside'],
  suits: isWheel,
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  line: (body, preferences) => line(`tread ${reading(body.depth, 'small-length', preferences)}`, wordIn(wear, body.wear)),
});
