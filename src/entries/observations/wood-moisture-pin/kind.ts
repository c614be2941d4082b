import { defineKind, type Fields } from '../../../terms';
import { line, reading, readingIf, wordIn } from '../../line';
import { ANY_TEMPERATURE, span, USUAL_OUTDOORS } from '../../span';
import { dryReference, dryWords } from '../dry-reference';
import { material } from '../material';
import { meter, meterWords, surface, surfaceWords } from '../meter-used';

const fields = {
  reading: {
    type: 'number',
    label: 'Reading',
    meaning: 'What the meter shows with its pins in the wood; not yet corrected for temperature.',
    quantity: 'moisture-content',
    limits: span('moisture-content', 'percent', 0, 100),
    usual: span('moisture-content', 'percent', 5, 60),
    partner: 'wood_temperature',
  },
  wood_temperature: { type: 'number', label: 'Wood temperature', quantity: 'temperature', limits: ANY_TEMPERATURE, usual: USUAL_OUTDOORS, optional: true },
  material,
  surface,
  dry_reference: dryReference,
  meter,
} as const satisfies Fields;

export const woodMoisturePin = defineKind()({
  id: 'wood-moisture-pin',
  group: 'observation',
  version: 1,
  title: 'Moisture, pin meter',
  meaning: 'Moisture of wood by a meter with two pins, as read; kept apart from pinless and relative readings, which are other scales.',
  places: ['station', 'point'],
  sides: ['inside', 'outside'],
  adds: (station) => station.group !== 'wheel',
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  worksheet: 'pin-meter-temperature',
  line: (body, preferences) =>
    line(
      `${reading(body.reading, 'moisture-content', preferences)} by pin meter`,
      readingIf('wood ', body.wood_temperature, 'temperature', preferences),
      wordIn(material.options, body.material),
      surfaceWords(body.surface),
      dryWords(body.dry_reference),
      meterWords(body.meter),
    ),
});
