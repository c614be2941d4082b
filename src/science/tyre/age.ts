import { type CivilDay, dateOf } from '../../units';

/** Whole calendar months from one day to a later one. */
export const wholeMonths = (from: CivilDay, to: CivilDay): number => {
  const a = dateOf(from);
  const b = dateOf(to);
  return (b.year - a.year) * 12 + (b.month - a.month) - (b.day < a.day ? 1 : 0);
};

export type AgeStanding = 'no-rule-by-age' | 'look-every-year' | 'plan-replacement' | 'replace' | 'out-of-service';

/** From how many months on, the oldest first. No federal rule sets an age; whose rule it is stands in the sentence. */
const STANDINGS: readonly { readonly from_months: number; readonly standing: AgeStanding; readonly sentence: string }[] = [
  {
    from_months: 120,
    standing: 'replace',
    sentence: 'Ten years or older: vehicle and tyre makers advise replacing it whatever it looks like.',
  },
  {
    from_months: 72,
    standing: 'plan-replacement',
    sentence: 'Six years or older: some vehicle makers replace now, others have a professional look every year until ten. Plan its replacement.',
  },
  {
    from_months: 60,
    standing: 'look-every-year',
    sentence: 'Five years or older: vehicle makers advise that a professional looks at it every year.',
  },
  { from_months: 0, standing: 'no-rule-by-age', sentence: 'Younger than five years: no rule by age alone. Condition counts.' },
];

/**
 * What makers advise for a tyre of this age. Condition can always ask for more.
 *
 * @param months  whole months since the week it was made
 * @returns       the standing, the sentence that names whose rule it is, and the age from which it stands
 * @assumes       a tyre's age counts from the first day of its week, a spare's as well
 * @source        1. Vehicle makers' manuals (6 years; yearly from 5 and out at 10 years), as read; no US federal age limit
 */
export const ageStanding = (months: number): { readonly standing: AgeStanding; readonly sentence: string; readonly from_months: number } =>
  STANDINGS.find((s) => months >= s.from_months) ?? { standing: 'no-rule-by-age', sentence: 'Made this month.', from_months: 0 };
