import { defineKind, type Fields } from '../../../terms';
import { line, wordOf } from '../../line';

const sounds = [
  { id: 'solid', word: 'Solid', line: 'short and bright, as over sound wall' },
  { id: 'dull', word: 'Dull', line: 'deader than beside it' },
  { id: 'hollow', word: 'Hollow', line: 'drums: the skin is loose from what is behind' },
] as const;

const fields = {
  sound: { type: 'choice', label: 'It sounds', meaning: 'To a light tap with a plastic handle, compared with a place of the same wall that is sound.', options: sounds },
} as const satisfies Fields;

export const tapSound = defineKind()({
  id: 'tap-sound',
  group: 'observation',
  version: 1,
  title: 'Tapped',
  meaning: 'How a bonded wall sounds at one point; many points make a map of where the skin has come loose, and say nothing about why.',
  places: ['point'],
  sides: ['outside', 'inside'],
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line(`sounds ${wordOf(sounds, body.sound)?.toLowerCase()}`),
});
