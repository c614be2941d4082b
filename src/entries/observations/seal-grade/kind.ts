import { type BodyOf, defineKind, type Fields, type Station } from '../../../terms';
import { line, readingIf, wordOf, wordsOf } from '../../line';
import { span } from '../../span';

/**
 * Our own scale, made on the pattern of ISO 4628-1 (0 to 5 by amount and size of defects); not a published scale of any body.
 * No grade depends on a moisture reading: a reading is recorded apart and judged apart.
 */
const grades = [
  { id: 'S0', word: 'S0 As new', line: 'no crack, edges down, soft to the nail' },
  { id: 'S1', word: 'S1 Dull', line: 'dull, holds dirt; cracks only under a lens; no edge lifts' },
  { id: 'S2', word: 'S2 Crazed', line: 'fine cracks under 0.2 mm, not through; no edge lifts' },
  { id: 'S3', word: 'S3 Cracked', line: 'cracks 0.2 to 0.5 mm or pinholes, or an edge lifts under 3 mm, or under 5 % of the length' },
  { id: 'S4', word: 'S4 Open', line: 'over 0.5 mm or right through, or an edge lifts 3 mm or more, or 5 to 25 % of the length' },
  { id: 'S5', word: 'S5 Failed', line: 'gap down to what it was laid on, a piece missing, or over 25 % of the length' },
] as const;

const defects = [
  { id: 'cracked-through', word: 'Crack right through' },
  { id: 'edge-lifts', word: 'Edge lifts' },
  { id: 'not-adhering', word: 'Does not stick' },
  { id: 'piece-missing', word: 'Piece missing' },
] as const;

const FROM_S2 = { field: 'grade', in: ['S2', 'S3', 'S4', 'S5'] } as const;

/** Beads that a person can grade; gaskets and screw heads are looked at with the part they belong to. */
const GRADED: readonly Station['bead'][] = ['all-round', 'top-and-upper-sides', 'upper-long-edge', 'both-long-edges'];
/** Parts with a question of their own, which comes first. */
const OTHERWISE_FIRST: readonly string[] = ['lamp', 'tyre', 'step', 'awning-fabric', 'awning-arm', 'slide-topper', 'slide-seals'];

const fields = {
  grade: { type: 'choice', label: 'Grade', meaning: 'The worst part of the bead at this place, by eye, nail and card.', options: grades, pictures: 'seal' },
  defects: { type: 'many', label: 'Seen at the bead', options: defects, optional: true, showIf: FROM_S2 },
  gap_width: {
    type: 'number',
    label: 'Widest gap',
    quantity: 'small-length',
    limits: span('small-length', 'mm', 0, 100),
    usual: span('small-length', 'mm', 0, 15),
    optional: true,
    showIf: FROM_S2,
  },
} as const satisfies Fields;

/** Version 1 held the grade as a bare number from 0 to 5. */
type Version1 = { readonly grade: number; readonly defects?: BodyOf<typeof fields>['defects'] };

export const sealGrade = defineKind()({
  id: 'seal-grade',
  group: 'observation',
  version: 2,
  title: 'Seal',
  meaning: 'The state of a bead of sealant on our own scale from S0 to S5; not a leak test, and not a moisture reading.',
  places: ['station', 'stretch'],
  sides: ['outside'],
  suits: (station, side) => side === 'outside' && station.group !== 'area' && GRADED.includes(station.bead) && !OTHERWISE_FIRST.includes(station.looks),
  adds: (station, side) => side === 'outside' && GRADED.includes(station.bead),
  sound: { field: 'grade', answer: 'S0' },
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  upcasts: {
    1: ({ grade, ...rest }: Version1) => ({ grade: `S${grade}`, ...rest }),
  },
  line: (body, preferences) => line(wordOf(grades, body.grade), wordsOf(defects, body.defects), readingIf('gap ', body.gap_width, 'small-length', preferences)),
});
