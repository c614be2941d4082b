import type { Confidence, TouchedId, TouchingId, TouchVerdict } from './bonds';
import { TOUCH_VERDICTS, TOUCHING } from './bonds';
import { type MovementStanding, movementStanding } from './family-movement';
import { mayTouch, type TouchReason } from './may-touch';

export type SealantFor = {
  readonly family: TouchingId;
  readonly verdict: TouchVerdict;
  readonly confidence: Confidence;
  readonly movement: MovementStanding;
  readonly reasons: readonly TouchReason[];
};

/** What is never a choice for a seam, though it may be found there. */
const NO_CHOICE: readonly TouchingId[] = ['bitumen', 'isopropyl-alcohol', 'petroleum-cleaner'];
const STANDINGS: readonly MovementStanding[] = ['flows', 'enough', 'some-grades', 'not-printed', 'too-little'];
const CONFIDENCE: readonly Confidence[] = ['high', 'medium', 'low'];
/** Nothing else sticks where it was, so among equals it comes last. */
const BLOCKS_REPAIR: readonly TouchingId[] = ['silicone', 'silicone-acetoxy'];

/**
 * Which families may seal a seam that has been stripped bare, the best first.
 *
 * @param sides    both sides of the seam
 * @param stretch  that the movement asks of the bead, of its width; 0 where it is passed over. [1]
 * @returns        every family: by verdict on its worse side, then by movement, then by how sure the sources are; silicone last among equals.
 *                 One that cannot bear the movement is never before one that can, whatever it sticks to
 * @agrees         each verdict with the table of bonds; the order is ours
 * @assumes        bare, clean, dry ground: what stays there is asked of `mayTouch`
 * @source         1. bonds.json and FAMILY_MOVEMENT, each row with its own source
 */
export const whichSealant = (sides: readonly [TouchedId, TouchedId], stretch: number): readonly SealantFor[] =>
  TOUCHING.filter(({ id }) => !NO_CHOICE.includes(id))
    .map(({ id }): SealantFor => {
      const { verdict, confidence, reasons } = mayTouch({ material: id, sides, named: [false, false], there_now: 'nothing', silicone: 'no', patch: 'none' });
      return { family: id, verdict, confidence: confidence ?? 'low', movement: movementStanding(id, stretch), reasons };
    })
    .map((f, order) => ({ f, by: [...standing(f), CONFIDENCE.indexOf(f.confidence), BLOCKS_REPAIR.includes(f.family) ? 1 : 0, order] }))
    .sort((a, b) => compare(a.by, b.by))
    .map(({ f }) => f);

/** Refused or torn comes last of all; else verdict before movement. */
const standing = ({ verdict, movement }: SealantFor): readonly number[] => [
  verdict === 'no' || movement === 'too-little' ? 1 : 0,
  TOUCH_VERDICTS.indexOf(verdict),
  STANDINGS.indexOf(movement),
];

const compare = (a: readonly number[], b: readonly number[]): number => {
  const at = a.findIndex((n, i) => n !== b[i]);
  return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
};
