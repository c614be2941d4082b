import { defineKind, type Fields } from '../../../terms';
import { line, wordIn, wordsOf } from '../../line';

const damage = [
  { id: 'crushed', word: 'Crushed', line: 'pressed together, as by a slide' },
  { id: 'torn', word: 'Torn' },
  { id: 'broken', word: 'Broken' },
  { id: 'dented', word: 'Dented' },
  { id: 'missing', word: 'Torn off' },
] as const;

const causes = [
  { id: 'slide', word: 'A slide moving' },
  { id: 'branch-or-hail', word: 'Branch or hail' },
  { id: 'road', word: 'Struck on the road' },
  { id: 'manoeuvring', word: 'Struck while parking' },
  { id: 'wind', word: 'Wind' },
  { id: 'other', word: 'Something else' },
  { id: 'not-known', word: 'Not known' },
] as const;

const fields = {
  damage: { type: 'many', label: 'What happened to it', options: damage },
  cause: { type: 'choice', label: 'By what', options: causes, optional: true },
} as const satisfies Fields;

export const accidentDamage = defineKind()({
  id: 'accident-damage',
  group: 'observation',
  version: 1,
  title: 'Accident damage',
  meaning: 'A part that was crushed, torn or broken at one time, and not by age; a part crushed by a slide is named first before the slide moves again.',
  places: ['station', 'outline', 'point', 'stretch'],
  sides: ['outside', 'inside'],
  adds: () => true,
  repeatable: true,
  fields,
  refuse: (body) =>
    body.damage.length > 0 ? [] : [{ code: 'says-nothing', path: 'damage', expected: 'at least one', received: 'none', sentence: 'Choose what happened to it, or leave it out.' }],
  fold: { mode: 'latest' },
  line: (body) => line(wordsOf(damage, body.damage), body.cause && `by ${wordIn(causes, body.cause) ?? 'something not known'}`),
});
