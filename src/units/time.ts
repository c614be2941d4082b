import { type CivilDay, civilDay, type Instant, instant } from './brands';

/**
 * Times. Entries carry ISO 8601 text with an offset (`2026-09-19T10:12:00-04:00`) or a span of civil days
 * (`2022-03-01/2022-05-31`); a due date is a civil day and knows no clock.
 */
const DAY_MS = 86_400_000;

/** Days since 1970-01-01 of a proleptic Gregorian date. Follows the era arithmetic described by H. Hinnant, "chrono-Compatible Low-Level Date Algorithms"; from memory, unconfirmed; checked against Date.UTC. */
export const dayOf = (year: number, month: number, day: number): CivilDay => {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return civilDay(era * 146_097 + dayOfEra - 719_468);
};

export const dateOf = (day: CivilDay): { readonly year: number; readonly month: number; readonly day: number } => {
  const z = day + 719_468;
  const era = Math.floor(z / 146_097);
  const doe = z - era * 146_097;
  const yoe = Math.floor((doe - Math.floor(doe / 1460) + Math.floor(doe / 36_524) - Math.floor(doe / 146_096)) / 365);
  const doy = doe - (365 * yoe + Math.floor(yoe / 4) - Math.floor(yoe / 100));
  const mp = Math.floor((5 * doy + 2) / 153);
  const month = mp < 10 ? mp + 3 : mp - 9;
  return { year: yoe + era * 400 + (month <= 2 ? 1 : 0), month, day: doy - Math.floor((153 * mp + 2) / 5) + 1 };
};

const two = (n: number): string => String(n).padStart(2, '0');

/** `2026-09-19` */
export const isoDay = (day: CivilDay): string => {
  const d = dateOf(day);
  return `${String(d.year).padStart(4, '0')}-${two(d.month)}-${two(d.day)}`;
};

const LAST_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

const lastDayOf = (year: number, month: number): number => (month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : (LAST_DAYS[month - 1] ?? 0));

/** The day, if the calendar has it. */
const realDay = (year: number, month: number, day: number): CivilDay | undefined => (day >= 1 && day <= lastDayOf(year, month) ? dayOf(year, month, day) : undefined);

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Reads `2026-09-19`; undefined when no such day exists (30 February, month 13). */
export const parseDay = (text: string): CivilDay | undefined => {
  const m = DAY.exec(text);
  return m ? realDay(Number(m[1]), Number(m[2]), Number(m[3])) : undefined;
};

const INSTANT = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})(?::(\d{2})(\.\d{1,3})?)?(?:Z|([+-])(\d{2}):(\d{2}))$/;

type Moment = { readonly at: Instant; readonly day: CivilDay };

const momentOf = (text: string): Moment | undefined => {
  const m = INSTANT.exec(text);
  if (!m) return undefined;
  const day = realDay(Number(m[1]), Number(m[2]), Number(m[3]));
  const [h, min, s] = [Number(m[4]), Number(m[5]), Number(m[6] ?? 0)];
  const [zoneH, zoneMin] = [Number(m[9] ?? 0), Number(m[10] ?? 0)];
  if (day === undefined || h > 23 || min > 59 || s > 59 || zoneH > 23 || zoneMin > 59) return undefined;
  const offset = (m[8] === '-' ? -1 : 1) * (zoneH * 60 + zoneMin);
  return { at: instant(day * DAY_MS + ((h * 60 + min - offset) * 60 + s) * 1000 + Number(m[7] ?? 0) * 1000), day };
};

/** Reads an RFC 3339 instant; undefined when it names no real time. */
export const parseInstant = (text: string): Instant | undefined => momentOf(text)?.at;

/** When something was so: an instant, or a span of civil days, both ends counted. */
export type When = { readonly form: 'instant'; readonly at: Instant; readonly day: CivilDay } | { readonly form: 'span'; readonly from: CivilDay; readonly to: CivilDay };

export const parseWhen = (text: string): When | undefined => {
  const moment = momentOf(text);
  if (moment !== undefined) return { form: 'instant', ...moment };
  const [a, b, more] = text.split('/');
  const from = parseDay(a ?? '');
  const to = parseDay(b ?? a ?? '');
  if (from === undefined || to === undefined || more !== undefined || to < from) return undefined;
  return { form: 'span', from, to };
};

/** The civil day on which it was so at the latest: a span counts from its end. */
export const lastDay = (when: When): CivilDay => (when.form === 'instant' ? when.day : when.to);

/** A place on one line of time for sorting: a span stands at the end of its last day, so that it never hides a later instant. */
export const sortInstant = (when: When): Instant => (when.form === 'instant' ? when.at : instant((when.to + 1) * DAY_MS - 1));

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'] as const;

export const monthName = (month: number): string => MONTHS[month - 1] ?? '';

/** `3 May 2026`: unambiguous everywhere. */
export const showDay = (day: CivilDay, short = false): string => {
  const d = dateOf(day);
  return `${d.day} ${short ? monthName(d.month).slice(0, 3) : monthName(d.month)} ${d.year}`;
};

/** Adds calendar months; the 31st falls back to the last day of a shorter month. */
export const addMonths = (day: CivilDay, months: number): CivilDay => {
  const d = dateOf(day);
  const index = d.year * 12 + (d.month - 1) + months;
  const year = Math.floor(index / 12);
  const month = (((index % 12) + 12) % 12) + 1;
  const last = dateOf(civilDay(dayOf(month === 12 ? year + 1 : year, month === 12 ? 1 : month + 1, 1) - 1)).day;
  return dayOf(year, month, Math.min(d.day, last));
};
