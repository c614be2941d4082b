import { defineKind, type Fields } from '../../../terms';
import { defectWords, line, wordOf } from '../../line';
import { SOUND, verdict, WHEN_WRONG } from '../verdict';

const fields = {
  verdict,
  defects: {
    type: 'many',
    label: 'What is wrong',
    meaning: 'Rows of the defects table for this kind of station.',
    options: 'defects-of-station',
    optional: true,
    showIf: WHEN_WRONG,
  },
} as const satisfies Fields;

/** Areas that are wide enough to need a look of their own beside the hand's answer. */
const AREA = /^(roof-(field|epdm|tpo|pvc|coated|fibreglass|metal)|wall-(laminated|corrugated|sheet|moulded))$/;

export const look = defineKind()({
  id: 'look',
  group: 'observation',
  version: 1,
  title: 'Look',
  meaning: 'What a person saw, felt and tried at a station that has no closer question of its own.',
  places: ['station', 'point', 'outline'],
  sides: ['outside', 'inside'],
  suits: (station, side) => side === 'outside' && AREA.test(station.looks),
  adds: (_station, side) => side === 'outside',
  sound: SOUND,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line(wordOf(verdict.options, body.verdict), defectWords(body.defects)),
});
