import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';

const fields = {
  why: { type: 'text', label: 'Why', most: 500, optional: true },
} as const satisfies Fields;

export const declined = defineKind()({
  id: 'declined',
  group: 'decision',
  version: 1,
  title: 'Declined by the owner',
  meaning: 'The owner was told and does not want it done; the finding stays on the plan with this beside it.',
  places: ['rig', 'station', 'outline', 'point', 'stretch'],
  sides: ['outside', 'inside'],
  concerns: 'some',
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line('declined by the owner', body.why),
});
