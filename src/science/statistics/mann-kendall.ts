import { accept, type Result } from '../../units';
import { normalUpperTail } from './normal';
import { enough } from './series';
import { ties, varianceOfS } from './ties';

/** From here on the normal approximation is used, as the source does. */
const EXACT_UP_TO = 10;
/** Two readings in order tell nothing; the published tails begin at three. */
const LEAST = 3;

const pairsOf = (n: number): number => (n * (n - 1)) / 2;

/** Chance of each number of reversals among n readings in random order, built up one reading at a time. */
const reversals = (n: number): readonly number[] => {
  let chances: readonly number[] = [1];
  for (let m = 2; m <= n; m++) {
    const before = chances;
    chances = Array.from({ length: pairsOf(m) + 1 }, (_, k) => {
      let sum = 0;
      for (let j = Math.max(0, k - m + 1); j <= Math.min(k, before.length - 1); j++) sum += before[j] ?? 0;
      return sum / m;
    });
  }
  return chances;
};

/**
 * Chance that n readings in random order, no two equal, score S or more by themselves.
 *
 * @param n  how many readings, from 1
 * @param s  Kendall's S, any whole number
 * @agrees   every one of the 88 printed values of kendall-upper-tail.csv, n = 3 to 10, to their last digit
 * @source   1. counted exactly by the recursion of numbers of reversals; kendall-upper-tail.source.md
 */
export const kendallUpperTail = (n: number, s: number): number => {
  const most = (pairsOf(n) - s) / 2;
  return Math.min(
    1,
    reversals(n).reduce((sum, chance, k) => (k <= most ? sum + chance : sum), 0),
  );
};

export type MannKendall = {
  /** Pairs that rise less pairs that fall. */
  readonly s: number;
  /** From −1, always falling, to 1, always rising; ties count for neither. */
  readonly tau: number;
  /** Counted exactly, or by the normal approximation. */
  readonly exact: boolean;
  readonly variance: number;
  /** Of the normal approximation. */
  readonly z: number;
  readonly p_two_sided: number;
  /** Chance of falling this much or more by itself. */
  readonly p_falling: number;
  /** Chance of rising this much or more by itself. */
  readonly p_rising: number;
};

const score = (values: readonly number[]): number => values.reduce((sum, a, i) => sum + values.slice(i + 1).reduce((t, b) => t + Math.sign(b - a), 0), 0);

type Chances = Pick<MannKendall, 'exact' | 'p_two_sided' | 'p_falling' | 'p_rising'>;

const counted = (n: number, s: number): Chances => ({
  exact: true,
  p_two_sided: Math.min(1, 2 * kendallUpperTail(n, Math.abs(s))),
  p_falling: kendallUpperTail(n, -s),
  p_rising: kendallUpperTail(n, s),
});

/** One is taken off S towards zero, because S goes in steps; of S = 0 nothing is left. */
const standard = (s: number, variance: number): number => (s === 0 ? 0 : (Math.sign(s) * (Math.abs(s) - 1)) / Math.sqrt(variance));

const approximated = (s: number, variance: number): Chances => ({
  exact: false,
  p_two_sided: Math.min(1, 2 * normalUpperTail(Math.abs(standard(s, variance)))),
  p_falling: normalUpperTail(-(s + 1) / Math.sqrt(variance)),
  p_rising: normalUpperTail((s - 1) / Math.sqrt(variance)),
});

/**
 * Whether readings rise or fall at all, from their order alone: how often a later one lies above an earlier one.
 * Works for scales whose steps are not equal.
 *
 * @param values  readings in the order of their times; three or more
 * @returns       S, tau and the chances; counted exactly for up to ten readings no two of which are equal
 * @valid         three readings or more; fewer are refused. All equal: S = 0 and every chance 1
 * @agrees        five exact cases run in R 4.2.2 and SciPy 1.17.1, p within 0.1 %; one case with ties within 0.0005
 * @assumes       readings do not depend on each other but through time; a cold spell or a season is a trend too
 * @source        1. variance with ties: page `mk.test` of the R package trend
 *                2. exact up to ten, normal above: Gilbert 1987 as described in the manual of a statistics program
 */
export const mannKendall = (values: readonly number[]): Result<MannKendall> => {
  const usable = enough(values, LEAST, 'readings');
  if (!usable.ok) return usable;
  const n = values.length;
  const s = score(values);
  const groups = ties(values);
  const variance = varianceOfS(n, groups);
  const untied = pairsOf(n) - groups.reduce((sum, t) => sum + pairsOf(t), 0);
  if (untied === 0) return accept({ s: 0, tau: 0, exact: true, variance: 0, z: 0, p_two_sided: 1, p_falling: 1, p_rising: 1 });
  const tau = s / Math.sqrt(untied * pairsOf(n));
  return accept({ s, tau, variance, z: standard(s, variance), ...(groups.length === 0 && n <= EXACT_UP_TO ? counted(n, s) : approximated(s, variance)) });
};
