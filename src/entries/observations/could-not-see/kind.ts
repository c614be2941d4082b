import { defineKind, type Fields } from '../../../terms';
import { line, wordIn } from '../../line';

const reasons = [
  { id: 'out-of-reach', word: 'Out of reach', line: 'ladder too short, or no footing' },
  { id: 'in-the-way', word: 'Something in the way', line: 'fence, cover, load, awning' },
  { id: 'not-safe', word: 'Not safe today', line: 'wind, wet rungs, alone' },
  { id: 'dark-or-dirty', word: 'Dark or dirty', line: 'could not tell' },
  { id: 'other', word: 'Another reason', line: 'say which in the note' },
] as const;

const fields = {
  reason: { type: 'choice', label: 'Why', options: reasons },
} as const satisfies Fields;

export const couldNotSee = defineKind()({
  id: 'could-not-see',
  group: 'observation',
  version: 1,
  title: 'Could not see it',
  meaning: 'A station was reached in a round and could not be looked at; it is never treated as sound, and hides no earlier finding.',
  places: ['station', 'point', 'outline', 'stretch'],
  sides: ['outside', 'inside'],
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line('not seen', wordIn(reasons, body.reason)),
});
