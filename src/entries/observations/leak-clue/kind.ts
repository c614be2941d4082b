import { defineKind, type Fields } from '../../../terms';
import { line, wordsOf } from '../../line';

const clues = [
  { id: 'only-parked-rain', word: 'In rain while parked, not on the road' },
  { id: 'only-driving-rain', word: 'In rain on the road, not while parked' },
  { id: 'wind-from-front', word: 'With wind from the front' },
  { id: 'wind-from-rear', word: 'With wind from the rear' },
  { id: 'wind-from-road', word: 'With wind on the road side', line: 'left of travel' },
  { id: 'wind-from-curb', word: 'With wind on the curb side', line: 'right of travel' },
  { id: 'pump-on', word: 'With the water pump on or mains water connected' },
  { id: 'air-conditioner-on', word: 'While the air conditioner runs' },
  { id: 'dry-weather', word: 'In dry weather as well' },
  { id: 'snow-melt', word: 'When snow or ice melts' },
] as const;

const fields = {
  when: { type: 'many', label: 'It gets wet', meaning: 'Only what was noticed more than once, or seen to happen; it points at where it comes in.', options: clues },
} as const satisfies Fields;

/** Pairs of which one denies the other. */
const AGAINST = [
  ['only-parked-rain', 'only-driving-rain'],
  ['only-parked-rain', 'dry-weather'],
  ['only-driving-rain', 'dry-weather'],
] as const;

export const leakClue = defineKind()({
  id: 'leak-clue',
  group: 'observation',
  version: 1,
  title: 'When it gets wet',
  meaning: 'In what weather, on the road or with what running water shows, as people noticed; a hint at where it comes in, and no proof.',
  places: ['rig', 'station', 'point'],
  sides: ['inside', 'outside'],
  adds: (station, side) => side === 'inside' && station.group !== 'wheel',
  repeatable: false,
  fields,
  refuse: ({ when }) =>
    when.length === 0
      ? [{ code: 'says-nothing', path: 'when', expected: 'at least one', received: 'none', sentence: 'Choose when it gets wet, or leave it out.' }]
      : AGAINST.filter(([a, b]) => when.includes(a) && when.includes(b)).map(([a, b]) => ({
          code: 'against-each-other',
          path: 'when',
          expected: `${a} or ${b}, not both`,
          received: `${a}, ${b}`,
          sentence: `“${wordsOf(clues, [a])}” and “${wordsOf(clues, [b])}” deny each other. Keep the one that holds.`,
        })),
  fold: { mode: 'series' },
  line: (body) => line('gets wet', wordsOf(clues, body.when)),
});
