import { type CivilDay, civilDay, dateOf, dayOf } from '../../units';

/** 1 January 1970 was a Thursday: day 4 of a week that begins on Sunday. */
const THURSDAY = 4;

/**
 * The first day of the week that a tyre's date code names. Weeks run Sunday to Saturday, and week 01 is the first full one:
 * not the weeks of ISO 8601, which begin on Monday and may begin in December.
 *
 * @param year  full year
 * @param week  1 to 53
 * @returns     its Sunday; undefined when that year has no such week
 * @agrees      exactly with six published or closed-form weeks, and with the weekdays of Date.UTC
 * @source      1. 49 CFR 574.5(b)(3), read as quoted word for word in a public document: Sunday through Saturday, 01 the first full week, the last with up to six days of the next year; its own example: 0109 is 4 to 10 January 2009
 */
export const weekStart = (year: number, week: number): CivilDay | undefined => {
  const newYear = dayOf(year, 1, 1);
  const weekday = (((newYear + THURSDAY) % 7) + 7) % 7;
  const firstSunday = newYear + ((7 - weekday) % 7);
  const start = civilDay(firstSunday + 7 * (week - 1));
  return Number.isInteger(week) && week >= 1 && dateOf(start).year === year ? start : undefined;
};
