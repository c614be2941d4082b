import { defineKind, type Fields } from '../../../terms';
import { parseDay, showDay } from '../../../units';
import { line } from '../../line';

const fields = {
  until: { type: 'day', label: 'Until' },
  why: { type: 'text', label: 'Why', most: 500, optional: true },
} as const satisfies Fields;

const dayText = (iso: string): string => {
  const day = parseDay(iso);
  return day === undefined ? iso : showDay(day);
};

export const putOff = defineKind()({
  id: 'put-off',
  group: 'decision',
  version: 1,
  title: 'Put off',
  meaning: 'A finding is left until a day; it stays on the plan, with who decided and why, and comes back on that day.',
  places: ['rig', 'station', 'outline', 'point', 'stretch'],
  sides: ['outside', 'inside'],
  concerns: 'some',
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(`put off until ${dayText(body.until)}`, body.why),
});
