import { defineKind, type Fields } from '../../../terms';
import { line, wordIn } from '../../line';

const results = [
  { id: 'held', word: 'It held' },
  { id: 'did-not-hold', word: 'It did not hold' },
] as const;

const means = [
  { id: 'look', word: 'Looked at again' },
  { id: 'rain', word: 'After rain' },
  { id: 'hose', word: 'Hose test', line: 'from low to high, one place at a time' },
  { id: 'reading', word: 'Reading taken again' },
  { id: 'use', word: 'In use' },
] as const;

const fields = {
  result: { type: 'choice', label: 'Did it hold', options: results },
  by: { type: 'choice', label: 'How it was seen', options: means, optional: true },
} as const satisfies Fields;

export const proofSeen = defineKind()({
  id: 'proof-seen',
  group: 'care',
  version: 1,
  title: 'Proof',
  meaning: 'Whether a repair held, looked at or tried after it was made; it names the finding or the care that it proves.',
  places: ['rig', 'station', 'outline', 'point', 'stretch'],
  sides: ['outside', 'inside'],
  concerns: 'some',
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(wordIn(results, body.result), wordIn(means, body.by)),
});
