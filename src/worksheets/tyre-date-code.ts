import { ageStanding, readDateCode, wholeMonths } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, type CivilDay, isoDay, parseDay, refuse } from '../units';
import { step } from './working';

const two = (n: number): string => String(n).padStart(2, '0');
const NOT_KNOWN = 'not known';

export const tyreDateCode = defineWorksheet({
  id: 'tyre-date-code',
  title: 'Date code of a tyre',
  tells: 'The week in which a tyre was made, how old it is today, and what makers advise at that age.',
  example: { code: '3421', today: '2026-05-03' },
  inputs: {
    code: { type: 'text', meaning: 'the last group of the number that begins with DOT, or the whole number', example: '3416' },
    today: { type: 'text', meaning: 'today as year-month-day', example: '2026-05-03' },
  },
  results: {
    standing: { type: 'text', meaning: 'no-rule-by-age, look-every-year, plan-replacement, replace or out-of-service' },
    week: { type: 'text', meaning: 'week of the year, 01 to 53' },
    year: { type: 'text', meaning: 'year, or the years it may be' },
    first_day: { type: 'text', meaning: 'first day of that week, a Sunday' },
    last_day: { type: 'text', meaning: 'last day of that week' },
    age_months: { type: 'number', quantity: 'months', unit: 'months', meaning: 'whole months since then; for three digits at least', decimals: 0 },
  },
  calculate: ({ code, today }) => {
    const on = parseDay(today.trim());
    if (on === undefined)
      return refuse({
        code: 'no-such-day',
        path: 'today',
        expected: 'a day such as 2026-05-03',
        received: `“${today}”`,
        sentence: `“${today}” is not a day. Type year, month and day: 2026-05-03.`,
      });
    const read = readDateCode(code, on);
    if (!read.ok) return read;
    const c = read.value;
    const ageStep = (from: CivilDay, months: number) =>
      step('Age', 'whole calendar months from the first day of that week', `${isoDay(from)} to ${isoDay(on)}`, `${Math.floor(months / 12)} years ${months % 12} months`);
    if (c.form === 'four-digit') {
      const age = wholeMonths(c.first_day, on);
      const advice = ageStanding(age);
      return accept({
        result: { standing: advice.standing, week: two(c.week), year: String(c.year), first_day: isoDay(c.first_day), last_day: isoDay(c.last_day), age_months: age },
        working: [
          step('Four digits', 'two for the week, two for the year from 2000', code.trim(), `week ${two(c.week)} of ${c.year}`),
          step('That week', 'the nth Sunday of the year and the six days after it', `n = ${c.week}`, `${isoDay(c.first_day)} to ${isoDay(c.last_day)}`),
          ageStep(c.first_day, age),
        ],
        remarks: [advice.sentence],
      });
    }
    const years = c.candidates.map((k) => k.year);
    const youngest = c.candidates.at(-1)?.first_day ?? on;
    const months = wholeMonths(youngest, on);
    const listed = years.length === 1 ? String(years[0]) : `${years.slice(0, -1).join(', ')} or ${years.at(-1)}`;
    return accept({
      result: { standing: 'out-of-service', week: two(c.week), year: listed, first_day: NOT_KNOWN, last_day: NOT_KNOWN, age_months: months },
      working: [
        step('Three digits', 'two for the week, one for the year of a decade that is not told', code.trim(), `week ${two(c.week)} of ${listed}`),
        ageStep(youngest, months),
      ],
      remarks: ['Three digits were used until the middle of 2000. Whatever the decade, this tyre is too old: out of service.'],
    });
  },
  sources: [
    seen('64 FR 36807, 8 July 1999: four digits instead of three; van owner’s manual 2006, p. 197: since July 2000, 01 is the first full calendar week'),
    seen(
      '49 CFR 574.5(b)(3), as quoted word for word in a public document: weeks run Sunday to Saturday, 01 is the first full one, the last may hold up to six days of the next year',
    ),
    seen('Vehicle makers’ manuals: replace at 6 years; or a professional every year from 5 and out at 10. There is no US federal age limit.'),
  ],
  limits: [
    'The date is moulded on one side only; the number on the other side may end without it.',
    'A retreaded tyre’s code dates the retread, not the casing.',
    'Not the weeks of ISO 8601: those begin on Monday and may differ by one.',
  ],
  cautions: ['Age is one sign among others. Cracks, bulges and wear count at any age, and a spare ages too.'],
});
