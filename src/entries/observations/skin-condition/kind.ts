import { defineKind, type Fields, type Side, type Station } from '../../../terms';
import { line, readingIf, wordIn, wordsOf } from '../../line';
import { ANY_TEMPERATURE, span } from '../../span';
import { SOUND, verdict, WHEN_WRONG } from '../verdict';

const signs = [
  { id: 'ripple', word: 'Ripple', line: 'waves in low light' },
  { id: 'bubble', word: 'Bubble', line: 'a raised outline' },
  { id: 'soft', word: 'Soft', line: 'gives under the palm' },
  { id: 'moves-under-hand', word: 'Moves under the hand', line: 'skin slides or ticks against what is behind' },
  { id: 'stain', word: 'Stain' },
  { id: 'crack', word: 'Crack' },
  { id: 'dent', word: 'Dent or split' },
  { id: 'corrosion', word: 'Corrosion', line: 'white powder, pits or worm tracks' },
  { id: 'fasteners-out', word: 'Rivets, staples or screws working out' },
] as const;

const warmth = [
  { id: 'cool', word: 'Cool', line: 'in shade for hours, or a cool day' },
  { id: 'hot', word: 'Hot from the sun', line: 'bubbles are looked at again when it is cool' },
  { id: 'not-known', word: 'Not known' },
] as const;

/** From a frosty morning to dark paint in full sun. */
const USUAL_SKIN = span('temperature', 'c', -35, 85);

const fields = {
  verdict,
  signs: { type: 'many', label: 'What you found', options: signs, optional: true, showIf: WHEN_WRONG },
  warmth: { type: 'choice', label: 'The skin was', options: warmth, optional: true, showIf: { field: 'signs', in: ['ripple', 'bubble', 'moves-under-hand'] } },
  skin_temperature: {
    type: 'number',
    label: 'Temperature of the skin',
    meaning: 'A bubble grows in the sun: outlines are compared at temperatures that are alike.',
    quantity: 'temperature',
    limits: ANY_TEMPERATURE,
    usual: USUAL_SKIN,
    optional: true,
    showIf: WHEN_WRONG,
  },
  across: { type: 'number', label: 'Widest extent', quantity: 'length', units: { us: 'in', metric: 'cm' }, limits: span('length', 'm', 0, 20), optional: true, showIf: WHEN_WRONG },
} as const satisfies Fields;

/** A wall area as a station. */
const isWallArea = (station: Station, side: Side): boolean => side === 'outside' && station.group === 'area' && station.looks.startsWith('wall-');

export const skinCondition = defineKind()({
  id: 'skin-condition',
  group: 'observation',
  version: 1,
  title: 'Skin of a wall',
  meaning: 'What the outer or inner skin shows in low light and under the palm; what it means depends on whether the wall is bonded or hung.',
  places: ['outline', 'point', 'station'],
  sides: ['outside', 'inside'],
  suits: isWallArea,
  adds: (station) => station.group === 'opening' || station.group === 'seam',
  sound: SOUND,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body, preferences) =>
    line(
      body.verdict === 'sound' ? 'flat and firm' : (wordsOf(signs, body.signs) ?? 'something wrong'),
      readingIf('', body.across, 'length', preferences, ' across'),
      body.warmth === undefined ? undefined : wordIn(warmth, body.warmth) && `skin ${wordIn(warmth, body.warmth)}`,
      readingIf('at ', body.skin_temperature, 'temperature', preferences),
    ),
});
