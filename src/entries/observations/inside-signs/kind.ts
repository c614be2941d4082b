import { defineKind, type Fields } from '../../../terms';
import { line, wordsOf } from '../../line';
import { SOUND, verdict, WHEN_WRONG } from '../verdict';

const signs = [
  { id: 'stain', word: 'Stain' },
  { id: 'smell', word: 'Musty smell' },
  { id: 'soft-floor', word: 'Soft floor' },
  { id: 'soft-ceiling', word: 'Soft ceiling' },
  { id: 'soft-wall', word: 'Soft wall' },
  { id: 'water', word: 'Water or wet to the touch' },
  { id: 'mould', word: 'Mould' },
] as const;

const fields = {
  verdict,
  signs: { type: 'many', label: 'Signs of water', options: signs, optional: true, showIf: WHEN_WRONG },
} as const satisfies Fields;

export const insideSigns = defineKind()({
  id: 'inside-signs',
  group: 'observation',
  version: 1,
  title: 'Signs inside',
  meaning: 'What eye, nose and hand find inside, behind a station or at a place on a face; water shows away from where it came in.',
  places: ['station', 'point', 'outline'],
  sides: ['inside'],
  suits: (_station, side) => side === 'inside',
  sound: SOUND,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line(body.verdict === 'sound' ? 'no stain, smell or soft place' : (wordsOf(signs, body.signs) ?? 'something wrong')),
});
