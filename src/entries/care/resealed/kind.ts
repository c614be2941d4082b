import { defineKind, type Fields } from '../../../terms';
import { line, readingIf, wordIn } from '../../line';
import { SEALANTS } from '../../sealing';
import { ANY_TEMPERATURE, span, USUAL_OUTDOORS } from '../../span';
import { CLEANERS, removed } from '../work';

const fields = {
  removed,
  old: { type: 'choice', label: 'Old sealant was', meaning: 'Not known counts as silicone until a test patch has held.', options: SEALANTS, optional: true },
  cleaned_with: { type: 'choice', label: 'Cleaned with', options: CLEANERS, optional: true },
  product_family: { type: 'choice', label: 'New sealant', options: SEALANTS },
  product: { type: 'text', label: 'What the package says', most: 120, optional: true },
  batch: { type: 'text', label: 'Batch or date on the package', most: 60, optional: true },
  bead_length: { type: 'number', label: 'Length laid', quantity: 'length', limits: span('length', 'm', 0, 100), usual: span('length', 'm', 0.02, 40), optional: true },
  air_temperature: { type: 'number', label: 'Air', quantity: 'temperature', limits: ANY_TEMPERATURE, usual: USUAL_OUTDOORS, optional: true },
  surface_temperature: { type: 'number', label: 'Surface', quantity: 'temperature', limits: ANY_TEMPERATURE, usual: span('temperature', 'c', -20, 80), optional: true },
  humidity: { type: 'number', label: 'Air humidity', quantity: 'relative-humidity', limits: span('relative-humidity', 'percent', 0, 100), optional: true },
} as const satisfies Fields;

export const resealed = defineKind()({
  id: 'resealed',
  group: 'care',
  version: 1,
  title: 'Resealed',
  meaning: 'A new bead was laid at this place: what came off, what it was cleaned with, what went on, in what weather. It is mended, not yet proved.',
  places: ['station', 'stretch', 'point'],
  sides: ['outside', 'inside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body, preferences) =>
    line(
      `resealed with ${wordIn(SEALANTS, body.product_family) ?? 'something not known'}`,
      body.product,
      readingIf('', body.bead_length, 'length', preferences),
      wordIn(removed.options, body.removed),
      readingIf('air ', body.air_temperature, 'temperature', preferences),
      readingIf('surface ', body.surface_temperature, 'temperature', preferences),
    ),
});
