import { defineKind, type Fields } from '../../../terms';
import { line, wordIn } from '../../line';

const lubricants = [
  { id: 'graphite', word: 'Dry graphite', line: 'locks and vent gear; never wetted' },
  { id: 'ptfe', word: 'Dry PTFE film' },
  { id: 'silicone-spray', word: 'Silicone spray', line: 'never near a place that will be sealed' },
  { id: 'light-oil', word: 'Light oil' },
  { id: 'grease', word: 'Grease' },
  { id: 'rubber-conditioner', word: 'Water-based rubber conditioner' },
  { id: 'other', word: 'Something else' },
] as const;

const fields = {
  with_what: { type: 'choice', label: 'With', options: lubricants },
  flushed: { type: 'flag', label: 'Old lubricant flushed out first', optional: true },
} as const satisfies Fields;

export const lubricated = defineKind()({
  id: 'lubricated',
  group: 'care',
  version: 1,
  title: 'Lubricated',
  meaning: 'A moving part or a rubber seal was cleaned and treated so that it moves freely.',
  places: ['station'],
  sides: ['outside', 'inside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(`lubricated with ${wordIn(lubricants, body.with_what)}`, body.flushed && 'old lubricant flushed out'),
});
