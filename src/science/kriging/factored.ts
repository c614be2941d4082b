import { accept, type Result, refuse } from '../../units';
import { cholesky, solve, type Triangle } from './cholesky';
import { places, type Sample } from './samples';
import { covarianceOfSquare, unfold, usableVariogram, type Variogram } from './variogram';

/** The system of one set of readings, factored once: every target, check and suggestion is worked from it. */
export type Factored = {
  readonly samples: readonly Sample[];
  readonly repeats: number;
  readonly variogram: Variogram;
  readonly triangle: Triangle;
  /** Coordinates of the readings, unfolded. */
  readonly a: Float64Array;
  readonly b: Float64Array;
  /** C⁻¹ 1 and its sum. */
  readonly ones: Float64Array;
  readonly of_ones: number;
  /** Mean by generalised least squares. */
  readonly mean: number;
  /** C⁻¹ (z − mean). */
  readonly dual: Float64Array;
};

/** Nearer than this share of the range is the same place. */
export const SAME = 1e-9;

const SINGULAR = {
  code: 'singular',
  path: 'values',
  expected: 'readings that stand apart, or a nugget above zero',
  received: 'a system without a single answer',
  sentence:
    'These readings stand so close to each other, for how alike they are taken to be, that the places between have no single answer. Use a nugget, or leave close readings out.',
} as const;

export const factored = (given: readonly Sample[], variogram: Variogram): Result<Factored> => {
  const usable = usableVariogram(variogram);
  const distinct = places(given, usable.ok ? SAME * variogram.range : 0);
  if (!usable.ok || !distinct.ok) return refuse(...(usable.ok ? [] : usable.refusals), ...(distinct.ok ? [] : distinct.refusals));
  const { samples, repeats } = distinct.value;
  const n = samples.length;
  const u = unfold(variogram);
  const a = Float64Array.from(samples, (s) => u.ax * s.x + u.ay * s.y);
  const b = Float64Array.from(samples, (s) => u.bx * s.x + u.by * s.y);
  const covariance = covarianceOfSquare(variogram);
  const sill = variogram.nugget + variogram.partial_sill;
  const triangle = cholesky(n, (i, j) => (i === j ? sill : covariance(((a[i] ?? 0) - (a[j] ?? 0)) ** 2 + ((b[i] ?? 0) - (b[j] ?? 0)) ** 2)));
  if (triangle === undefined) return refuse(SINGULAR);
  const ones = solve(triangle, new Float64Array(n).fill(1));
  const of_ones = ones.reduce((sum, w) => sum + w, 0);
  if (!(of_ones > 0)) return refuse(SINGULAR);
  const mean = samples.reduce((sum, s, i) => sum + (ones[i] ?? 0) * s.value, 0) / of_ones;
  const dual = solve(
    triangle,
    Float64Array.from(samples, (s) => s.value - mean),
  );
  return accept({ samples, repeats, variogram, triangle, a, b, ones, of_ones, mean, dual });
};
