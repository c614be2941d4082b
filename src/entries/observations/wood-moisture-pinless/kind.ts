import { defineKind, type Fields } from '../../../terms';
import { line, reading, wordIn } from '../../line';
import { span } from '../../span';
import { dryReference, dryWords } from '../dry-reference';
import { material } from '../material';
import { meter, meterWords, surface, surfaceWords } from '../meter-used';

const fields = {
  reading: {
    type: 'number',
    label: 'Reading',
    meaning: 'What a pinless meter shows in per cent; an average of the depth it reaches.',
    quantity: 'moisture-content',
    limits: span('moisture-content', 'percent', 0, 100),
    usual: span('moisture-content', 'percent', 3, 60),
  },
  material,
  surface,
  dry_reference: dryReference,
  meter,
} as const satisfies Fields;

export const woodMoisturePinless = defineKind()({
  id: 'wood-moisture-pinless',
  group: 'observation',
  version: 1,
  title: 'Moisture, pinless meter',
  meaning: 'Moisture by a meter laid on the surface, as read; upset by metal, foil and air gaps, and never mixed with pin readings.',
  places: ['station', 'point'],
  sides: ['inside', 'outside'],
  adds: (station) => station.group !== 'wheel',
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  line: (body, preferences) =>
    line(
      `${reading(body.reading, 'moisture-content', preferences)} by pinless meter`,
      wordIn(material.options, body.material),
      surfaceWords(body.surface),
      dryWords(body.dry_reference),
      meterWords(body.meter),
    ),
});
