import type { Standing } from '../logbook';
import { parseWhen, sortInstant } from '../units';

/** Orders by when it was so. Entries of one list keep the order which the logbook gave them. */
export const byWhen = (a: Standing, b: Standing): number => {
  if (a.day !== b.day) return a.day - b.day;
  const [x, y] = [parseWhen(a.observed_at), parseWhen(b.observed_at)];
  return x && y ? sortInstant(x) - sortInstant(y) : 0;
};

/** One list out of several, each already in order. */
export const inOrder = (lists: readonly (readonly Standing[])[]): readonly Standing[] => {
  const [only] = lists;
  return lists.length <= 1 ? (only ?? []) : lists.flat().sort(byWhen);
};
