import { defineKind, type Fields } from '../../../terms';
import { line, wordIn } from '../../line';

const ends = [
  { id: 'finished', word: 'Finished', line: 'every stop was answered' },
  { id: 'stopped', word: 'Stopped', line: 'some stops were not reached and stay not seen' },
] as const;

const fields = {
  end: { type: 'choice', label: 'How it ended', options: ends },
} as const satisfies Fields;

export const roundEnded = defineKind()({
  id: 'round-ended',
  group: 'observation',
  version: 1,
  title: 'Round ended',
  meaning: 'The end of the round that its envelope names; stations it did not reach are not seen, and are not sound.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line('round', wordIn(ends, body.end)).replace(', ', ' '),
});
