import { defineKind, type Fields } from '../../../terms';
import { line, readingIf, wordOf } from '../../line';
import { span } from '../../span';

const winds = [
  { id: 'front', word: 'From the front' },
  { id: 'rear', word: 'From the rear' },
  { id: 'road', word: 'On the road side', line: 'left of travel' },
  { id: 'curb', word: 'On the curb side', line: 'right of travel' },
  { id: 'calm', word: 'Calm' },
] as const;

const whiles = [
  { id: 'parked', word: 'Parked' },
  { id: 'driving', word: 'On the road' },
  { id: 'both', word: 'Both' },
] as const;

const fields = {
  amount: {
    type: 'number',
    label: 'How much fell',
    meaning: 'By a gauge or the nearest weather station; a shower that hardly wets the ground is no test of a repair.',
    quantity: 'length',
    units: { us: 'in', metric: 'mm' },
    limits: span('length', 'mm', 0, 1000),
    usual: span('length', 'mm', 0.2, 150),
    optional: true,
  },
  wind_from: { type: 'choice', label: 'Wind', options: winds, optional: true },
  while: { type: 'choice', label: 'The rig was', options: whiles, optional: true },
} as const satisfies Fields;

export const rainFell = defineKind()({
  id: 'rain-fell',
  group: 'whereabouts',
  version: 1,
  title: 'Rain',
  meaning: 'A real rain that the rig stood or drove in, on its day or days; it tests what was sealed, and says nothing about what it found.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body, preferences) =>
    line(
      'rain',
      readingIf('', body.amount, 'length', preferences),
      body.wind_from === 'calm' ? 'calm' : body.wind_from && `wind ${wordOf(winds, body.wind_from)?.toLowerCase()}`,
      body.while && { parked: 'while parked', driving: 'on the road', both: 'parked and on the road' }[body.while],
    ),
});
