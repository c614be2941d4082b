import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';

const fields = {
  to: { type: 'text', label: 'To whom', meaning: 'The trade or workshop.', most: 120 },
  why: { type: 'text', label: 'What was asked for', most: 1000, optional: true },
} as const satisfies Fields;

export const handedOver = defineKind()({
  id: 'handed-over',
  group: 'decision',
  version: 1,
  title: 'Handed over',
  meaning: 'A finding was given to somebody else to settle; it stays on the plan until it is settled and proved.',
  places: ['rig', 'station', 'outline', 'point', 'stretch'],
  sides: ['outside', 'inside'],
  concerns: 'some',
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(`handed to ${body.to}`, body.why),
});
