import { defineKind, type Fields } from '../../../terms';
import { line, wordsOf } from '../../line';

const done = [
  { id: 'sanded', word: 'Sanded', line: 'to bright or tight metal, edges feathered' },
  { id: 'primed', word: 'Primed' },
  { id: 'painted', word: 'Painted' },
] as const;

const fields = {
  done: { type: 'many', label: 'What was done', options: done },
  product: { type: 'text', label: 'What the package says', most: 120, optional: true },
} as const satisfies Fields;

export const spotPainted = defineKind()({
  id: 'spot-painted',
  group: 'care',
  version: 1,
  title: 'Spot painted',
  meaning: 'Worn, chipped or rusted metal was sanded, primed or painted at one place.',
  places: ['station', 'point', 'outline'],
  sides: ['outside'],
  repeatable: false,
  fields,
  refuse: (body) => (body.done.length > 0 ? [] : [{ code: 'says-nothing', path: 'done', expected: 'at least one', received: 'none', sentence: 'Choose what was done.' }]),
  fold: { mode: 'series' },
  line: (body) => line(wordsOf(done, body.done), body.product),
});
