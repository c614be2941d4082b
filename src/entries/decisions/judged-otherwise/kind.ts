import { defineKind, type Fields, MARK_WORD, URGENCIES } from '../../../terms';
import { line, wordIn } from '../../line';

const urgencies = [...URGENCIES.map((id) => ({ id, word: MARK_WORD[id] })), { id: 'no-fault', word: 'No fault', line: 'looked at closely, and nothing is wrong' } as const];

const fields = {
  urgency: { type: 'choice', label: 'How soon, in your judgement', options: urgencies },
  why: { type: 'text', label: 'Why', meaning: 'What was seen that the rule does not know.', most: 1000 },
} as const satisfies Fields;

export const judgedOtherwise = defineKind()({
  id: 'judged-otherwise',
  group: 'decision',
  version: 1,
  title: 'Judged otherwise',
  meaning: 'A person judges a finding otherwise than the rule does, and says why; both are shown, and the rule is not silenced.',
  places: ['rig', 'station', 'outline', 'point', 'stretch'],
  sides: ['outside', 'inside'],
  concerns: 'some',
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(`judged: ${wordIn(urgencies, body.urgency)}`, body.why),
});
