import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';

const fields = {
  what: { type: 'text', label: 'What was replaced', most: 200 },
  with_what: { type: 'text', label: 'With what', meaning: 'Size and kind; no need of a maker.', most: 200, optional: true },
} as const satisfies Fields;

export const replaced = defineKind()({
  id: 'replaced',
  group: 'care',
  version: 1,
  title: 'Replaced',
  meaning: 'A part at this place was taken out and another put in.',
  places: ['station', 'stretch', 'point'],
  sides: ['outside', 'inside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(`replaced: ${body.what}`, body.with_what && `with ${body.with_what}`),
});
