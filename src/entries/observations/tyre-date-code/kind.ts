import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';
import { isWheel } from '../wheel';

const fields = {
  code: { type: 'code', label: 'Date code', meaning: 'The last group of the number that begins with DOT; often on the inner side only.', code: 'tyre-date' },
} as const satisfies Fields;

export const tyreDateCode = defineKind()({
  id: 'tyre-date-code',
  group: 'observation',
  version: 1,
  title: 'Tyre date code',
  meaning: 'The week in which a tyre was made, as moulded on it; for a retread, that of the retread.',
  places: ['station'],
  sides: ['outside'],
  suits: isWheel,
  once: true,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  worksheet: 'tyre-date-code',
  line: (body) => line(`date code ${body.code}`),
});
