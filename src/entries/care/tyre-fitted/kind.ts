import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';

const fields = {
  date_code: { type: 'code', label: 'Date code', code: 'tyre-date', optional: true },
  size: { type: 'code', label: 'Size', meaning: 'As moulded, with its service letters.', code: 'tyre-size', optional: true },
  load_range: { type: 'text', label: 'Load range or index', most: 20, optional: true },
  from: { type: 'text', label: 'Where it came from', meaning: 'New, the spare, or the station it was moved from.', most: 120, optional: true },
} as const satisfies Fields;

export const tyreFitted = defineKind()({
  id: 'tyre-fitted',
  group: 'care',
  version: 1,
  title: 'Tyre fitted',
  meaning: 'Another tyre stands at this place from now on; readings of the tyre before it are not this one’s history.',
  places: ['station'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line('tyre fitted', body.size, body.load_range, body.date_code && `date code ${body.date_code}`, body.from),
});
