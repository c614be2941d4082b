import { defineKind, type Fields } from '../../../terms';
import { line, wordIn } from '../../line';

const covers = [
  { id: 'tape', word: 'Faced tape', line: 'a stop-gap until it is mended' },
  { id: 'tarpaulin', word: 'Tarpaulin' },
  { id: 'fitted-cover', word: 'Breathable cover' },
  { id: 'tyre-covers', word: 'Tyre covers' },
  { id: 'other', word: 'Something else' },
] as const;

const fields = {
  with_what: { type: 'choice', label: 'With', options: covers },
  taken_off: { type: 'flag', label: 'The cover was taken off', optional: true },
} as const satisfies Fields;

export const covered = defineKind()({
  id: 'covered',
  group: 'care',
  version: 1,
  title: 'Covered',
  meaning: 'A place or the whole rig was covered against weather, or a cover taken off; a cover is never a repair.',
  places: ['rig', 'station', 'outline', 'point', 'stretch'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(body.taken_off ? `uncovered: ${wordIn(covers, body.with_what)} taken off` : `covered with ${wordIn(covers, body.with_what)}`),
});
