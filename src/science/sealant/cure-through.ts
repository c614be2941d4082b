import { type Metres, type Seconds, seconds } from '../../units';

const DAY = 86400;

export type CureThrough = {
  /** If every day cures as much as the first. [s] */
  readonly soonest: Seconds;
  /** If each further layer waits for water through the cured skin, the deeper the slower. [s] */
  readonly latest: Seconds;
};

/**
 * How long a bead that cures by the damp of the air takes to cure through, from what its sheet says of the first day.
 *
 * @param depth      from the open face of the bead to its deepest place. [m]
 * @param first_day  depth that cures in the first 24 h, by its sheet; above 0. [m]
 * @returns          a span: by the straight rule, and by the square root. A bead no deeper than the first day's is done within a day by both. [s]
 * @agrees           exactly with the closed forms of three cases
 * @assumes          the air of the sheet, mostly 20 to 25 °C and 50 % humidity. Colder or drier air is slower; by how much nobody has published
 * @source           1. straight rule t = d / k: closed form
 *                   2. cure grows as the square root of time, d = k √t: from memory, unconfirmed; that deeper is slower stands in makers’ articles, read
 */
export const cureThrough = (depth: Metres, first_day: Metres): CureThrough => {
  const days = depth / first_day;
  const [straight, root] = [days * DAY, days ** 2 * DAY];
  return { soonest: seconds(Math.min(straight, root)), latest: seconds(Math.max(straight, root)) };
};
