import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';

const fields = {
  what: { type: 'text', label: 'What did you notice', meaning: 'A noise, a smell, a change: in your own words.', most: 2000 },
} as const satisfies Fields;

export const outOfTheOrdinary = defineKind()({
  id: 'out-of-the-ordinary',
  group: 'observation',
  version: 1,
  title: 'Anything out of the ordinary',
  meaning: 'Whatever a person noticed that no other question asks; it is kept and shown, and not judged by a rule.',
  places: ['rig', 'station', 'point', 'outline', 'stretch'],
  sides: ['outside', 'inside'],
  adds: () => true,
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(body.what),
});
