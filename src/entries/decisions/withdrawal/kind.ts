import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';

const fields = {
  why: { type: 'text', label: 'Why', most: 500, optional: true },
} as const satisfies Fields;

export const withdrawal = defineKind()({
  id: 'withdrawal',
  group: 'decision',
  version: 1,
  title: 'Withdrawal',
  meaning: 'One earlier entry no longer counts; it stays in the logbook. Withdrawing a withdrawal makes the entry count again.',
  places: ['rig', 'station', 'point', 'outline', 'stretch'],
  sides: ['outside', 'inside'],
  concerns: 'one',
  repeatable: false,
  fields,
  fold: { mode: 'amends', amendment: 'withdrawal' },
  line: (body) => line('withdrawn', body.why),
});
