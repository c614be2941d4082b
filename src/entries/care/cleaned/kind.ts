import { defineKind, type Fields } from '../../../terms';
import { line, wordIn } from '../../line';
import { CLEANERS } from '../work';

const fields = {
  with_what: { type: 'choice', label: 'With', options: CLEANERS },
  treated_with: { type: 'text', label: 'Treated afterwards with', most: 120, optional: true },
} as const satisfies Fields;

export const cleaned = defineKind()({
  id: 'cleaned',
  group: 'care',
  version: 1,
  title: 'Cleaned or treated',
  meaning: 'A part or an area was washed, cleared or treated; it mends nothing that is open.',
  places: ['station', 'outline', 'point', 'stretch', 'rig'],
  sides: ['outside', 'inside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) =>
    line(body.with_what === 'nothing' ? 'cleared, no cleaner used' : `cleaned with ${wordIn(CLEANERS, body.with_what)}`, body.treated_with && `treated with ${body.treated_with}`),
});
