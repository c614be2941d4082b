import { defineKind, type Fields } from '../../../terms';
import { line, readingIf, wordsOf } from '../../line';
import { span } from '../../span';

const signs = [
  { id: 'fading', word: 'Fading' },
  { id: 'chalking', word: 'Chalking', line: 'powder on a dark cloth' },
  { id: 'cracking', word: 'Cracking' },
  { id: 'brittle', word: 'Brittle', line: 'creaks or chips when pressed lightly' },
  { id: 'peeling', word: 'Peeling or lifting' },
] as const;

const fields = {
  signs: { type: 'many', label: 'What the sun has done', options: signs },
  share: { type: 'number', label: 'Share of the part', quantity: 'share', limits: span('share', 'percent', 0, 100), optional: true },
} as const satisfies Fields;

export const sunDamage = defineKind()({
  id: 'sun-damage',
  group: 'observation',
  version: 1,
  title: 'Sun damage',
  meaning: 'What sun and weather have done to a part: plastic, paint, decal, rubber, fabric; a bead of sealant is graded apart.',
  places: ['station', 'outline', 'point'],
  sides: ['outside'],
  adds: (_station, side) => side === 'outside',
  repeatable: true,
  fields,
  refuse: (body) =>
    body.signs.length > 0
      ? []
      : [{ code: 'says-nothing', path: 'signs', expected: 'at least one', received: 'none', sentence: 'Choose what the sun has done here, or leave it out.' }],
  fold: { mode: 'latest' },
  line: (body, preferences) => line(wordsOf(signs, body.signs), readingIf('', body.share, 'share', preferences, ' of the part')),
});
