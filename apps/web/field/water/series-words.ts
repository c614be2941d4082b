import type { FacePoint } from '../../../../src/terms';
import { type Kept, repeatDue, type ToRead } from './series';

/** The place to go to next, and why. */
export type Next = { readonly to: ToRead; readonly why: string };

/** The same places as last time first, then the one that is to be read twice, then where a reading would tell most. */
export const nextToRead = (kept: readonly Kept[], left: readonly ToRead[], wanted: readonly ToRead[], words: (point_m: FacePoint) => string): Next | undefined => {
  const [again] = left;
  if (again) return { to: again, why: `the same place again, ${words(again.point_m)}` };
  const repeat = repeatDue(kept);
  if (repeat) return { to: { point_m: repeat.point_m, words: words(repeat.point_m), dry: repeat.dry }, why: `one place in ten a second time, ${words(repeat.point_m)}` };
  const [first] = wanted;
  return first && { to: first, why: `would tell most, ${words(first.point_m)}` };
};

type Counts = { readonly kept: readonly Kept[]; readonly of: number; readonly left: number; readonly dryMissing: number; readonly wanted: number };

/** What is still to be read on this wall, the most pressing first. */
export const countWords = ({ kept, of, left, dryMissing, wanted }: Counts): string => {
  const parts: string[] = [];
  if (of > 0) parts.push(left === 0 ? `All ${of} places read again.` : `${of - left} of ${of} read again.`);
  if (dryMissing > 0) parts.push(`${dryMissing} more dry ${dryMissing === 1 ? 'place' : 'places'} to compare with.`);
  else if (repeatDue(kept)) parts.push('Read one place a second time.');
  else if (of === 0 && wanted > 0) parts.push('A ring: read there next.');
  return parts.join(' ') || (kept.length === 0 ? 'Dry places first, then towards the stain.' : 'Round openings every 6 in.');
};

/** What the large button says and does now. */
export type Doing = { readonly does: 'go' | 'read-here' | 'agree' | 'keep' | 'wait'; readonly words: string; readonly second?: string };

type Situation = {
  readonly placing: boolean;
  readonly where: string | undefined;
  readonly wrong: string | undefined;
  readonly figure: string;
  readonly refused: string | undefined;
  readonly doubted: boolean;
  readonly dry: boolean;
  readonly next: Next | undefined;
};

export const doingOf = ({ placing, where, wrong, figure, refused, doubted, dry, next }: Situation): Doing => {
  if (where === undefined)
    return next && !placing ? { does: 'go', words: 'Next place', second: next.why } : { does: 'wait', words: 'Touch where you read', second: 'or choose it by steps and lengths' };
  if (wrong !== undefined) return { does: 'wait', words: 'Choose another place', second: where };
  if (placing) return { does: 'read-here', words: 'Read here', second: where };
  if (figure === '') return { does: 'wait', words: 'Type the reading', second: where };
  if (refused !== undefined) return { does: 'wait', words: 'Check the figure', second: refused };
  if (doubted) return { does: 'agree', words: `Yes, ${figure} is right`, second: 'or change the figure above' };
  return { does: 'keep', words: `Keep ${figure}`, second: dry ? `dry place to compare with, ${where}` : where };
};
