import { defineKind, type Fields } from '../../../terms';
import { line, reading } from '../../line';
import { span } from '../../span';
import { dryReference, dryWords } from '../dry-reference';
import { meter, meterWords, surface, surfaceWords } from '../meter-used';

const fields = {
  reading: {
    type: 'number',
    label: 'Reading',
    meaning: 'A figure on the meter’s own scale; its steps are not equal and it is not per cent.',
    quantity: 'relative-scale',
    limits: span('relative-scale', 'points', 0, 100),
  },
  surface,
  dry_reference: dryReference,
  meter,
} as const satisfies Fields;

export const moistureRelative = defineKind()({
  id: 'moisture-relative',
  group: 'observation',
  version: 1,
  title: 'Moisture, relative scale',
  meaning: 'A reading on a meter’s own scale from 0 to 100; only good beside a dry place read with the same meter.',
  places: ['station', 'point'],
  sides: ['inside', 'outside'],
  adds: (station) => station.group !== 'wheel',
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  line: (body, preferences) =>
    line(`${reading(body.reading, 'relative-scale', preferences)} on the meter’s scale`, surfaceWords(body.surface), dryWords(body.dry_reference), meterWords(body.meter)),
});
