import { accept, type Result } from '../../units';
import { solve } from './cholesky';
import { type Factored, factored } from './factored';
import type { Sample } from './samples';
import { covarianceOfSquare, unfold, type Variogram } from './variogram';

export type Estimate = { readonly estimate: number; readonly variance: number };

/** Row by row: the value at `xs[i]`, `ys[j]` stands at `j * xs.length + i`. */
export type EstimateGrid = { readonly estimate: Float64Array; readonly variance: Float64Array };

export type Kriging = {
  /** Distinct places; readings repeated at one place are one, their mean. */
  readonly samples: readonly Sample[];
  readonly repeats: number;
  readonly at: (x: number, y: number) => Estimate;
  readonly grid: (xs: readonly number[], ys: readonly number[]) => EstimateGrid;
  /** The share of each sample in the estimate, summing to one, and the size of the Lagrange multiplier. */
  readonly weights: (x: number, y: number) => { readonly weights: readonly number[]; readonly lagrange: number };
};

/** Square of the distance, in ranges, below which a target stands on a reading: a billionth of the range. */
const SAME = 1e-18;

/** Works targets through one factored system; keeps its own scratch, so that a grid allocates nothing for each of its points. */
const worker = (f: Factored) => {
  const n = f.samples.length;
  const { rows } = f.triangle;
  const { a, b, ones, dual } = f;
  const u = unfold(f.variogram);
  const covariance = covarianceOfSquare(f.variogram);
  const sill = f.variogram.nugget + f.variogram.partial_sill;
  const c = new Float64Array(n);

  /** Covariances with the readings into `c`; the index of the reading the target stands on, or −1. */
  const reach = (x: number, y: number): number => {
    if (!Number.isFinite(x) || !Number.isFinite(y)) throw new RangeError(`no place: ${x}, ${y}`);
    const ta = u.ax * x + u.ay * y;
    const tb = u.bx * x + u.by * y;
    let on = -1;
    for (let i = 0; i < n; i++) {
      const da = ta - (a[i] as number);
      const db = tb - (b[i] as number);
      const square = da * da + db * db;
      if (square < SAME) on = i;
      c[i] = covariance(square);
    }
    return on;
  };

  const into = (x: number, y: number, estimate: Float64Array, variance: Float64Array, k: number): void => {
    const on = reach(x, y);
    if (on >= 0) {
      estimate[k] = f.samples[on]?.value ?? 0;
      variance[k] = 0;
      return;
    }
    let guess = f.mean;
    let left = 1;
    for (let i = 0; i < n; i++) {
      guess += (dual[i] as number) * (c[i] as number);
      left -= (ones[i] as number) * (c[i] as number);
    }
    let known = 0;
    for (let i = 0, r = 0; i < n; i++) {
      let sum = c[i] as number;
      for (let j = 0; j < i; j++, r++) sum -= (rows[r] as number) * (c[j] as number);
      sum *= rows[r] as number;
      r++;
      c[i] = sum;
      known += sum * sum;
    }
    estimate[k] = guess;
    // Never below zero but for the last binary digit.
    variance[k] = Math.max(0, sill - known + (left * left) / f.of_ones);
  };

  return { n, c, reach, into };
};

/**
 * Ordinary kriging: the best unbiased guess at places between readings, and how far it may be off, for a likeness that is given, not fitted.
 * Solved by Cholesky and the Lagrange multiplier in closed form; factored once, then n²/2 steps for each target.
 *
 * @param given      readings; those at one and the same place are averaged and count as one
 * @param variogram  how likeness falls with distance; lengths and values in the units of the readings
 * @returns          `at`, `grid`, `weights`; or a refusal: no reading, no number, an unusable variogram, a singular system
 * @valid            any number of places from one upward; the variance does not depend on the values read
 * @agrees           0.0005 against an independent implementation on 27 targets, three models, with and without nugget and anisotropy
 * @assumes          on a reading: that reading, variance zero, nugget or not, as that implementation does; beside it the nugget stays in the variance
 * @source           1. Isaaks and Srivastava, An Introduction to Applied Geostatistics (1989), chapter 12
 */
export const kriging = (given: readonly Sample[], variogram: Variogram): Result<Kriging> => {
  const system = factored(given, variogram);
  if (!system.ok) return system;
  const f = system.value;
  const w = worker(f);
  const at = (x: number, y: number): Estimate => {
    const [estimate, variance] = [new Float64Array(1), new Float64Array(1)];
    w.into(x, y, estimate, variance, 0);
    return { estimate: estimate[0] ?? 0, variance: variance[0] ?? 0 };
  };
  const grid = (xs: readonly number[], ys: readonly number[]): EstimateGrid => {
    const estimate = new Float64Array(xs.length * ys.length);
    const variance = new Float64Array(xs.length * ys.length);
    let k = 0;
    for (const y of ys) for (const x of xs) w.into(x, y, estimate, variance, k++);
    return { estimate, variance };
  };
  const weights: Kriging['weights'] = (x, y) => {
    const on = w.reach(x, y);
    if (on >= 0) return { weights: f.samples.map((_, i) => (i === on ? 1 : 0)), lagrange: 0 };
    const k = solve(f.triangle, w.c.slice());
    const lagrange = (1 - k.reduce((sum, s) => sum + s, 0)) / f.of_ones;
    return { weights: [...k].map((s, i) => s + lagrange * (f.ones[i] ?? 0)), lagrange: Math.abs(lagrange) };
  };
  return accept({ samples: f.samples, repeats: f.repeats, at, grid, weights });
};
