import { accept, type Instant, parseInstant, type Result, refuse } from '../../units';
import { HOUR_MS } from './forecast-types';

/** A span of whole hours. */
export type Interval = { readonly from: Instant; readonly hours: number };

const DURATION = /^P(?:(\d{1,3})D)?(?:T(?:(\d{1,4})H)?(?:(\d{1,5})M)?)?$/;
/** A month: no value of a forecast holds for longer. [h] */
const MOST = 744;

/** Hours of `PT3H`, `P1DT6H`, `P2D`; nothing where it is no whole number of them. */
const hoursOf = (text: string): number | undefined => {
  const m = DURATION.exec(text);
  const minutes = m ? Number(m[1] ?? 0) * 1440 + Number(m[2] ?? 0) * 60 + Number(m[3] ?? 0) : 0;
  return minutes > 0 && minutes % 60 === 0 && minutes <= MOST * 60 ? minutes / 60 : undefined;
};

/**
 * Reads an ISO 8601 interval of a start and a duration, such as `2026-10-04T06:00:00+00:00/PT3H`.
 *
 * @param path  where it stands in the file
 * @returns     its start and its hours; refused where it is none, begins within an hour, or lasts no whole hours
 */
export const readInterval = (text: unknown, path: string): Result<Interval> => {
  const [start, duration, more] = typeof text === 'string' ? text.split('/') : [];
  const from = start === undefined ? undefined : parseInstant(start);
  const hours = duration === undefined || more !== undefined ? undefined : hoursOf(duration);
  if (from !== undefined && hours !== undefined && from % HOUR_MS === 0) return accept({ from, hours });
  const received = typeof text === 'string' ? `“${text.slice(0, 60)}”` : text === undefined ? 'nothing' : JSON.stringify(text).slice(0, 60);
  return refuse({
    code: 'no-such-interval',
    path,
    expected: 'a full hour and how long from it, such as 2026-10-04T06:00:00+00:00/PT3H',
    received,
    sentence: `${received} does not say from which full hour, and for how many, this value holds.`,
  });
};
