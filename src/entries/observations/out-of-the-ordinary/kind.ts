import { defineKind, type Fields } from '../../../terms';
import { line, wordsOf } from '../../line';

/** What is not used again until somebody has dealt with it. */
const dangers = [
  { id: 'gas-smell', word: 'Smell of gas' },
  { id: 'wet-wire', word: 'A live wire bare or wet' },
  { id: 'may-drop-someone', word: 'Something may drop someone', line: 'a step, a ladder, a floor' },
] as const;

const fields = {
  what: { type: 'text', label: 'What did you notice', meaning: 'A noise, a smell, a change: in your own words.', most: 2000 },
  danger: { type: 'many', label: 'Is it one of these', options: dangers, optional: true },
} as const satisfies Fields;

export const outOfTheOrdinary = defineKind()({
  id: 'out-of-the-ordinary',
  group: 'observation',
  version: 1,
  title: 'Anything out of the ordinary',
  meaning: 'Whatever a person noticed that no other question asks; it is kept and shown, and asks to be judged by a person; only the dangers it can name are judged by a rule.',
  places: ['rig', 'station', 'point', 'outline', 'stretch'],
  sides: ['outside', 'inside'],
  adds: () => true,
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(wordsOf(dangers, body.danger), body.what),
});
