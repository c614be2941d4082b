import { defineKind, type Fields, type Side, type Station } from '../../../terms';
import { line, wordsOf } from '../../line';
import { SOUND, verdict, WHEN_WRONG } from '../verdict';

/** Ids are rows of the defects table. */
const defects = [
  { id: 'lock-latch.no-hold', word: 'Does not secure', line: 'opens when pulled' },
  { id: 'lock-latch.stiff', word: 'Stiff', line: 'key, cam or handle turns hard' },
  { id: 'lock-latch.turns-loose', word: 'Turns loose', line: 'barrel or handle turns with nothing behind it' },
  { id: 'hinge.loose', word: 'Hinge loose', line: 'screws or pin worn' },
  { id: 'hinge.seized', word: 'Hinge stiff or rusted' },
  { id: 'hinge.cracked', word: 'Hinge cracked', line: 'or its pin is walking out' },
] as const;

const fields = {
  verdict,
  defects: { type: 'many', label: 'What is wrong', options: defects, optional: true, showIf: WHEN_WRONG },
} as const satisfies Fields;

const LATCHED: readonly string[] = ['lock-latch', 'hinge', 'entry-door', 'compartment-door'];

/** The fitting itself, or a door or hatch that carries one. */
const hasLatch = (station: Station, side: Side): boolean =>
  side === 'outside' && ((LATCHED.includes(station.looks) && station.group !== 'seam') || station.parts.some((part) => part.looks === 'lock-latch' || part.looks === 'hinge'));

export const latchCondition = defineKind()({
  id: 'latch-condition',
  group: 'observation',
  version: 1,
  title: 'Lock, hinge and latch',
  meaning: 'Whether a lock, hinge or latch turns freely and secures what it should, tried by hand; of a door or hatch, all of its parts.',
  places: ['station'],
  sides: ['outside'],
  suits: hasLatch,
  before_trip: hasLatch,
  sound: SOUND,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line(body.verdict === 'sound' ? 'turns freely, secures' : (wordsOf(defects, body.defects) ?? 'something wrong')),
});
