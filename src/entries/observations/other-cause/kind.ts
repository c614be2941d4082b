import { defineKind, type Fields } from '../../../terms';
import { line, lower, wordOf } from '../../line';

const causes = [
  { id: 'condensation', word: 'Condensation', line: 'damp air on a cold surface: measure air and surface together' },
  { id: 'plumbing', word: 'Plumbing', line: 'pressure on, everything shut: does the pump start by itself?' },
  { id: 'air-conditioner', word: 'Air conditioner', line: 'its drain pan and gasket; does it drip inside while it runs?' },
  { id: 'weep-holes', word: 'Weep holes of a window', line: 'water leaving outside through them is as it should be; are they clear?' },
] as const;

const answers = [
  { id: 'ruled-out', word: 'Ruled out' },
  { id: 'it-is-this', word: 'It is this' },
] as const;

const fields = {
  cause: { type: 'choice', label: 'Looked into', options: causes },
  answer: { type: 'choice', label: 'Found', options: answers },
  how: { type: 'text', label: 'How you know', most: 300, optional: true },
} as const satisfies Fields;

export const otherCause = defineKind()({
  id: 'other-cause',
  group: 'observation',
  version: 1,
  title: 'Another cause of wet',
  meaning: 'What else than rain coming in was looked into at a wet place, and whether it was that; a leak is named only beside it.',
  places: ['rig', 'station', 'point'],
  sides: ['inside', 'outside'],
  adds: (station, side) => side === 'inside' && station.group !== 'wheel',
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(`${lower(wordOf(causes, body.cause) ?? body.cause)}: ${lower(wordOf(answers, body.answer) ?? body.answer)}`, body.how),
});
