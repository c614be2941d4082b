import { defineKind, type Fields } from '../../../terms';
import { line, wordIn } from '../../line';
import { SEALANTS } from '../../sealing';

const wood = [
  { id: 'dry-and-firm', word: 'Dry and firm' },
  { id: 'damp', word: 'Damp, firm' },
  { id: 'soft', word: 'Soft', line: 'wood that gives is for a professional' },
  { id: 'not-seen', word: 'Not seen' },
] as const;

const fields = {
  bedded_on: { type: 'choice', label: 'Bedded on', options: SEALANTS },
  wood: { type: 'choice', label: 'Wood found behind', options: wood, optional: true },
  product: { type: 'text', label: 'What the package says', most: 120, optional: true },
} as const satisfies Fields;

export const rebedded = defineKind()({
  id: 'rebedded',
  group: 'care',
  version: 1,
  title: 'Re-bedded',
  meaning: 'A frame, flange or fitting was taken off, looked behind, and set back on new bedding.',
  places: ['station', 'stretch'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(`re-bedded on ${wordIn(SEALANTS, body.bedded_on) ?? 'something not known'}`, body.wood && `wood behind ${wordIn(wood, body.wood)}`, body.product),
});
