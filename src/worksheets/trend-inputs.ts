import type { Input } from '../terms';
import { figure } from '../units';

const DAY = 86400;

/** Times and readings of a series, as every worksheet about a trend asks for them. */
export const seriesInputs = {
  times_d: {
    type: 'numbers',
    quantity: 'duration',
    unit: 'd',
    meaning: 'when each reading was taken, counted from any day',
    limits: { least: -36500 * DAY, most: 36500 * DAY },
    least: 2,
    most: 60,
  },
  readings_percent: {
    type: 'numbers',
    quantity: 'moisture-content',
    unit: 'percent',
    meaning: 'the readings, one for each time: each less the dry reference of its day, where there is one',
    limits: { least: -1, most: 3 },
    least: 2,
    most: 60,
  },
} as const satisfies Readonly<Record<string, Input>>;

/** Times to the second, in days; what lies behind it comes from turning one unit into another. */
export const inDays = (times: readonly number[]): readonly number[] => times.map((t) => Math.round(t) / DAY);

/** Readings to a millionth of a point, so that equal ones stay equal in every unit. */
export const inPoints = (readings: readonly number[]): readonly number[] => readings.map((r) => Math.round(r * 1e8) / 1e6);

/** Points a day as SI has it. */
export const rateInSi = (points_a_day: number): number => points_a_day / 100 / DAY;

/** A list in the working: all of a short one, both ends of a long one. */
export const listed = (ns: readonly number[], decimals: number): string => {
  const words = ns.map((n) => figure(n, decimals));
  return words.length <= 8 ? words.join('; ') : `${words.slice(0, 4).join('; ')}; … ${words.slice(-2).join('; ')}`;
};

export const NOT_SEASON =
  'A cold spell or a season is a trend too: correct each reading for temperature and take the dry reference of the same day from it before anything is said about drying.';
