import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';

const fields = {
  what: { type: 'text', label: 'What was done', most: 1000 },
  who: { type: 'text', label: 'By whom', meaning: 'The trade or workshop.', most: 120 },
  document: { type: 'text', label: 'Invoice or report', meaning: 'Its number or where it is kept; a photograph can go with it.', most: 200, optional: true },
} as const satisfies Fields;

export const professionalWork = defineKind()({
  id: 'professional-work',
  group: 'care',
  version: 1,
  title: 'Done by a professional',
  meaning: 'Work that a professional did, as the person or the document tells it.',
  places: ['rig', 'station', 'outline', 'point', 'stretch'],
  sides: ['outside', 'inside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(body.what, `by ${body.who}`, body.document && `document ${body.document}`),
});
