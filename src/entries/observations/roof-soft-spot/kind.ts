import { defineKind, type Fields, type Side, type Station } from '../../../terms';
import { line, readingIf, wordIn, wordOf } from '../../line';
import { span } from '../../span';

const deck = [
  { id: 'firm', word: 'Firm', line: 'hard and level wherever the palm could reach' },
  { id: 'gives', word: 'Gives a little' },
  { id: 'soft', word: 'Soft or springy', line: 'stop there; do not put weight on it' },
] as const;

const near = [
  { id: 'front-or-rear-seam', word: 'Near the front or rear seam' },
  { id: 'side-edge', word: 'Near a side edge' },
  { id: 'opening', word: 'Near an opening' },
  { id: 'elsewhere', word: 'Elsewhere' },
] as const;

const WHEN_NOT_FIRM = { field: 'deck', in: ['gives', 'soft'] } as const;

const fields = {
  deck: { type: 'choice', label: 'The deck under the palm', options: deck },
  near: { type: 'choice', label: 'Where', options: near, optional: true, showIf: WHEN_NOT_FIRM },
  across: {
    type: 'number',
    label: 'Widest extent',
    quantity: 'length',
    units: { us: 'in', metric: 'cm' },
    limits: span('length', 'm', 0, 15),
    optional: true,
    showIf: WHEN_NOT_FIRM,
  },
} as const satisfies Fields;

const isRoofArea = (station: Station, side: Side): boolean => side === 'outside' && station.group === 'area' && station.looks.startsWith('roof-');
const isRoofEdgeOrOpening = (station: Station, side: Side): boolean =>
  side === 'outside' && (station.face === 'roof' || ['roof-edge', 'cap-seam', 'roof-field'].includes(station.looks));

export const roofSoftSpot = defineKind()({
  id: 'roof-soft-spot',
  group: 'observation',
  version: 1,
  title: 'Roof deck',
  meaning: 'Whether the deck under the roof covering is firm, felt with a flat palm from a ladder; nobody walks on it to find out.',
  places: ['station', 'outline', 'point', 'stretch'],
  sides: ['outside'],
  suits: isRoofArea,
  adds: isRoofEdgeOrOpening,
  sound: { field: 'deck', answer: 'firm' },
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body, preferences) => line(`deck ${wordOf(deck, body.deck)?.toLowerCase()}`, wordIn(near, body.near), readingIf('', body.across, 'length', preferences, ' across')),
});
