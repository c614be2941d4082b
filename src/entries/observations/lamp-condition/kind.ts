import { defineKind, type Fields, type Side, type Station } from '../../../terms';
import { line, wordsOf } from '../../line';
import { SOUND, verdict, WHEN_WRONG } from '../verdict';

/** Ids are rows of the defects table. */
const defects = [
  { id: 'lamp.out', word: 'Does not light' },
  { id: 'lamp.water-in', word: 'Water or mist inside' },
  { id: 'lamp.lens-broken', word: 'Lens or reflector broken', line: 'or a piece is missing' },
] as const;

const fields = {
  verdict,
  defects: { type: 'many', label: 'What is wrong', options: defects, optional: true, showIf: WHEN_WRONG },
} as const satisfies Fields;

const isLamp = (station: Station, side: Side): boolean => side === 'outside' && station.looks === 'lamp';

export const lampCondition = defineKind()({
  id: 'lamp-condition',
  group: 'observation',
  version: 1,
  title: 'Lamp or lens',
  meaning: 'Whether a lamp lights and its lens or reflector is whole and dry; its bead is graded apart.',
  places: ['station'],
  sides: ['outside'],
  suits: isLamp,
  before_trip: isLamp,
  sound: SOUND,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line(body.verdict === 'sound' ? 'lights, whole and dry' : (wordsOf(defects, body.defects) ?? 'something wrong')),
});
