import { defineKind, type Fields } from '../../../terms';
import { line, readingIf } from '../../line';
import { span } from '../../span';

const fields = {
  distance: { type: 'number', label: 'Distance', quantity: 'distance', limits: span('distance', 'km', 0, 10_000), usual: span('distance', 'km', 0, 1500), optional: true },
  from: { type: 'text', label: 'From', most: 120, optional: true },
  to: { type: 'text', label: 'To', most: 120, optional: true },
} as const satisfies Fields;

export const leg = defineKind()({
  id: 'leg',
  group: 'whereabouts',
  version: 1,
  title: 'Leg',
  meaning: 'A span of travel; the rig was moved, and what was seen before it counts no longer as not moved since.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body, preferences) => line('moved', body.from && `from ${body.from}`, body.to && `to ${body.to}`, readingIf('', body.distance, 'distance', preferences)),
});
