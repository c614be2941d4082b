/**
 * How long after a repair a look first counts as proof, read from the trade table's own words
 * (`7 days, next two rains, 90 days`). Distances, uses, rounds and rains count from the next day: the logbook cannot see them.
 */
const LENGTH = /(\d+)\s*(days?|h)\b/i;
const NEXT_DAY = 1;
/** Nothing said: a week, as for a bead (our choice). */
const OTHERWISE = 7;

/** Days to the first look that counts. [d] */
export const firstProofDays = (recheck: string | undefined): number => {
  if (recheck === undefined) return OTHERWISE;
  const m = LENGTH.exec(recheck);
  if (m) return m[2]?.toLowerCase() === 'h' ? Math.max(NEXT_DAY, Math.ceil(Number(m[1]) / 24)) : Number(m[1]);
  if (/^weekly/i.test(recheck)) return 7;
  if (/^(season|each|every)/i.test(recheck) && !/^each month/i.test(recheck)) return NEXT_DAY;
  return /month/i.test(recheck) ? 30 : NEXT_DAY;
};
