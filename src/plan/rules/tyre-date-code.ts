import type { tyreDateCode } from '../../entries';
import type { Standing } from '../../logbook';
import { ageStanding, readDateCode, wholeMonths } from '../../science';
import type { BodyOf, Urgency } from '../../terms';
import { addMonths, isoDay, showDay } from '../../units';
import { defineRule, type Scene, type Verdict } from '../rule';
import { PRACTICE, THREE_DIGITS, TYRE_AGE } from './sources';

type Body = BodyOf<(typeof tyreDateCode)['fields']>;

/** At this age a professional first looks. */
const FIRST_MONTHS = 60;

/** Urgency and title by what makers advise; the sentence and its limits come from the law of tyre ages. */
const BANDS: Readonly<Record<string, { readonly urgency: Urgency; readonly title: string }>> = {
  replace: { urgency: 'before-moving', title: 'Tyre ten years old or older' },
  'plan-replacement': { urgency: 'this-season', title: 'Tyre six years old or older' },
  'look-every-year': { urgency: 'this-season', title: 'Tyre five years old or older' },
};

/** A look by a professional holds for a year. [d] */
const YEAR = 365;

const judge = (seen: Standing, scene: Scene): readonly Verdict[] => {
  const { code, date_code } = seen.body as Partial<Body> & { readonly date_code?: string };
  const read_off = code ?? date_code;
  if (read_off === undefined) return [];
  const here = [seen.entry.id];
  const worksheet = { id: 'tyre-date-code', inputs: { code: read_off, today: isoDay(scene.on) } };
  const read = readDateCode(read_off, scene.on);
  if (!read.ok)
    return [
      {
        key: '',
        title: 'Tyre date code does not read',
        urgency: 'this-season',
        who: 'yourself',
        because: [{ text: `${read.refusals[0]?.sentence ?? 'This code cannot be read.'} Its age is not known.`, entries: here, source: PRACTICE }],
        remedies: [],
      },
    ];
  if (read.value.form === 'three-digit')
    return [
      {
        key: '',
        title: 'Tyre from before 2000: out of service',
        urgency: 'before-moving',
        who: 'professional',
        because: [
          {
            text: `A date code of three digits (${read_off}) was used until mid-2000: whichever decade it is from, the tyre goes out of service.`,
            entries: here,
            source: THREE_DIGITS,
            worksheet,
          },
        ],
        defect: 'tyre.old',
      },
    ];
  const months = wholeMonths(read.value.first_day, scene.on);
  const { standing, sentence, from_months } = ageStanding(months);
  const band = BANDS[standing];
  if (!band) return [];
  return [
    {
      key: '',
      title: band.title,
      urgency: band.urgency,
      who: 'professional',
      because: [{ text: `Made in the week from ${showDay(read.value.first_day)}. ${sentence}`, entries: here, source: TYRE_AGE, worksheet }],
      defect: 'tyre.old',
      proof_days: YEAR,
      from: { first: addMonths(read.value.first_day, FIRST_MONTHS), as_urgent: addMonths(read.value.first_day, band.urgency === 'before-moving' ? from_months : FIRST_MONTHS) },
    },
  ];
};

export const tyreDateCodeRule = defineRule({
  id: 'tyre-date-code',
  title: 'Age of a tyre',
  says: 'Three digits: out of service. From five years a professional looks every year, from six its replacement is planned, from ten it is replaced before moving; each time with whose rule that is.',
  sources: [TYRE_AGE, THREE_DIGITS],
  reads: ['tyre-date-code', 'tyre-fitted'],
  together: true,
  example: { kind: 'tyre-date-code', body: { code: '317' }, looks: 'tyre', gives: 'before-moving' },
  judge,
  settles: (care) => care.entry.kind === 'tyre-fitted' || care.entry.kind === 'professional-work',
  endedBy: ['tyre-fitted'],
});
