import { defineKind, type Fields } from '../../../terms';
import { line, wordOf, wordsOf } from '../../line';
import { isWheel } from '../wheel';

/**
 * Depths as a truck-tyre service manual parts them (1/32 and 2/32 in), shown as what a professional will use.
 * They never lower the urgency: any visible crack waits for a professional.
 */
const cracks = [
  { id: 'none', word: 'None', line: 'no crack to be seen, all round, both sides' },
  { id: 'fine', word: 'Fine cracks', line: 'shallower than 1/32 in (0.8 mm)' },
  { id: 'deeper', word: 'Deeper', line: '1/32 to 2/32 in (0.8 to 1.6 mm)' },
  { id: 'deepest', word: 'Deepest', line: 'over 2/32 in (1.6 mm)' },
] as const;

const damage = [
  { id: 'bulge', word: 'Bulge' },
  { id: 'cord-showing', word: 'Cord showing' },
  { id: 'cut', word: 'Cut or torn' },
  { id: 'valve', word: 'Valve cracked or leaking' },
] as const;

const fields = {
  cracks: { type: 'choice', label: 'Sidewall cracks', options: cracks, pictures: 'sidewall' },
  damage: { type: 'many', label: 'Also seen', options: damage, optional: true },
} as const satisfies Fields;

export const tyreSidewall = defineKind()({
  id: 'tyre-sidewall',
  group: 'observation',
  version: 1,
  title: 'Tyre sidewall',
  meaning: 'What the side of a tyre shows by eye; a sound-looking sidewall says nothing about the cords inside.',
  places: ['station'],
  sides: ['outside'],
  suits: isWheel,
  before_trip: isWheel,
  sound: { field: 'cracks', answer: 'none' },
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line(body.cracks === 'none' ? 'no sidewall cracks' : `sidewall: ${wordOf(cracks, body.cracks)?.toLowerCase()}`, wordsOf(damage, body.damage)),
});
