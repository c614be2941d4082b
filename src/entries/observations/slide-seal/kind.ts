import { defineKind, type Fields, type Side, type Station } from '../../../terms';
import { line, wordsOf } from '../../line';
import { SOUND, verdict, WHEN_WRONG } from '../verdict';

/** Ids are rows of the defects table. */
const defects = [
  { id: 'slide-seals.torn', word: 'Torn', line: 'or a corner is missing' },
  { id: 'slide-seals.folded', word: 'Folded the wrong way', line: 'a wiper lip turned in' },
  { id: 'slide-seals.stiff', word: 'Stiff or flat', line: 'does not spring back' },
] as const;

const fields = {
  verdict,
  defects: { type: 'many', label: 'What is wrong', options: defects, optional: true, showIf: WHEN_WRONG },
} as const satisfies Fields;

const isSlideSeal = (station: Station, side: Side): boolean => side === 'outside' && station.looks === 'slide-seals';

export const slideSeal = defineKind()({
  id: 'slide-seal',
  group: 'observation',
  version: 1,
  title: 'Slide seal',
  meaning: 'The rubber seals, wipers and corner blocks of a slide-out, by eye and hand, with the slide standing still.',
  places: ['station'],
  sides: ['outside'],
  suits: isSlideSeal,
  before_trip: isSlideSeal,
  sound: SOUND,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line(body.verdict === 'sound' ? 'supple, lies right' : (wordsOf(defects, body.defects) ?? 'something wrong')),
});
