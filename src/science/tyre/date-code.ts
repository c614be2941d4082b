import { accept, type CivilDay, civilDay, isoDay, type Refusal, type Result, refuse } from '../../units';
import { weekStart } from './date-week';

/** What a date code says. Three digits never tell the decade: the candidates are kept, no guess is made. */
export type DateCode =
  | { readonly form: 'four-digit'; readonly week: number; readonly year: number; readonly first_day: CivilDay; readonly last_day: CivilDay }
  | { readonly form: 'three-digit'; readonly week: number; readonly candidates: readonly { readonly year: number; readonly first_day: CivilDay }[] };

/** Week in which four-digit codes took over: 2 July 2000 was the 27th Sunday of that year. */
const FOUR_DIGITS_FROM = { year: 2000, week: 27 };
/** Date codes were first asked for in 1971; from memory, unconfirmed. */
const FIRST_YEAR = 1971;

/** Tyre identification number with its date: plant 2 or 3, size 2, optional up to 4 or 6, date last. */
const FULL_NUMBER = /^[A-Z0-9]{4,9}?(\d{4})$/;

const trouble = (code: string, received: string, expected: string, sentence: string): Refusal => ({ code, path: 'code', expected, received: `“${received}”`, sentence });

/** The digits of the date, from a bare code or a whole identification number: the date always stands last. */
const digitsOf = (text: string): string | undefined => {
  const groups = text
    .toUpperCase()
    .replace(/^\s*DOT/, ' ')
    .trim()
    .split(/[\s-]+/);
  const last = groups.at(-1) ?? '';
  if (/^\d{3,4}$/.test(last)) return last;
  return groups.every((g) => /^[A-Z0-9]+$/.test(g)) ? FULL_NUMBER.exec(groups.join(''))?.[1] : undefined;
};

const fourDigits = (text: string, digits: string): Result<DateCode> => {
  const week = Number(digits.slice(0, 2));
  const year = 2000 + Number(digits.slice(2));
  const first_day = weekStart(year, week);
  return first_day === undefined ? refuse(noSuchWeek(text, week, year)) : accept({ form: 'four-digit', week, year, first_day, last_day: civilDay(first_day + 6) });
};

const noSuchWeek = (text: string, week: number, year: number | undefined): Refusal =>
  trouble(
    'no-such-week',
    text,
    'a week from 01 to 52, or 53 in a year with 53 Sundays',
    week === 53 && year !== undefined
      ? `${year} had no week 53: it had only 52 Sundays. Read the code again, with a lamp held flat.`
      : `There is no week ${String(week).padStart(2, '0')}. The first two digits are the week. Read the code again, with a lamp held flat.`,
  );

const threeDigits = (text: string, digits: string): Result<DateCode> => {
  const week = Number(digits.slice(0, 2));
  const candidates = [1970, 1980, 1990, 2000]
    .map((decade) => decade + Number(digits.slice(2)))
    .filter((year) => year >= FIRST_YEAR && (year < FOUR_DIGITS_FROM.year || (year === FOUR_DIGITS_FROM.year && week < FOUR_DIGITS_FROM.week)))
    .flatMap((year) => {
      const first_day = weekStart(year, week);
      return first_day === undefined ? [] : [{ year, first_day }];
    });
  return candidates.length === 0 ? refuse(noSuchWeek(text, week, undefined)) : accept({ form: 'three-digit', week, candidates });
};

/**
 * The week in which a tyre was made, from the last group of the number that begins with DOT.
 *
 * @param text   the code or the whole number, as moulded
 * @param today  so that a code from the future is seen for the misreading it is
 * @returns      week and year; or, for three digits, the years it may be
 * @valid        codes since 1971; the newest year is this one; otherwise a refusal
 * @agrees       exactly with the 19 cases of cases/tyre.jsonl
 * @assumes      two-digit years are 2000 to 2099; a retreaded tyre's code dates the retread, not the casing
 * @source       1. 49 CFR 574.5 (64 FR 36807, 8 July 1999: from three to four digits); week rule in 574.5(b)(3), read as quoted
 */
export const readDateCode = (text: string, today: CivilDay): Result<DateCode> => {
  const digits = digitsOf(text);
  if (digits === undefined)
    return refuse(
      trouble(
        'not-a-date-code',
        text.trim(),
        'three or four digits, or the whole number that begins with DOT',
        'No date code can be read in this. It is the last group of the number that begins with DOT; if this side has none, look on the other side of the tyre.',
      ),
    );
  const read = digits.length === 4 ? fourDigits(text.trim(), digits) : threeDigits(text.trim(), digits);
  if (read.ok && read.value.form === 'four-digit' && read.value.first_day > today)
    return refuse(
      trouble(
        'future-date-code',
        text.trim(),
        `a week that began by ${isoDay(today)}`,
        `This would be the week from ${isoDay(read.value.first_day)}, which has not come yet. Read the code again, and check that today's date is right.`,
      ),
    );
  return read;
};
