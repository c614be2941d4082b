import { accept, type Result } from '../../units';
import { forward } from './cholesky';
import { factored } from './factored';
import type { Sample } from './samples';
import { covarianceOfSquare, unfold, usableVariogram, type Variogram } from './variogram';

export type Position = { readonly x: number; readonly y: number };

/** Which candidate, and the mean variance over the targets once it has been read as well. */
export type NextPlace = { readonly candidate: number; readonly mean_variance: number };

/** Before any reading the mean itself is unknown: its variance, in sills. Large enough that the first reading settles it. */
const UNKNOWN_MEAN = 1e4;

/**
 * Where further readings tell most: each choice lowers the mean kriging variance over the targets by as much as any candidate can,
 * the earlier choices taken as read. The values still to be read do not matter for this, only the places.
 *
 * @param given       readings so far, also none
 * @param candidates  places where a meter can be put
 * @param targets     places the map must speak for
 * @param count       how many at most; fewer come back when no candidate lowers the variance any more
 * @assumes           greedy: two places chosen together could be better than two chosen one after the other
 */
export const nextPlaces = (
  given: readonly Sample[],
  variogram: Variogram,
  candidates: readonly Position[],
  targets: readonly Position[],
  count: number,
): Result<readonly NextPlace[]> => {
  const usable = usableVariogram(variogram);
  if (!usable.ok) return usable;
  if (targets.length === 0 || candidates.length === 0) return accept([]);
  const system = given.length > 0 ? factored(given, variogram) : undefined;
  if (system && !system.ok) return system;
  const f = system?.value;
  const n = f?.samples.length ?? 0;
  const u = unfold(variogram);
  const covariance = covarianceOfSquare(variogram);
  const sill = variogram.nugget + variogram.partial_sill;
  const all = [...targets, ...candidates].map((p) => {
    const [a, b] = [u.ax * p.x + u.ay * p.y, u.bx * p.x + u.by * p.y];
    const c = new Float64Array(n);
    for (let i = 0; i < n; i++) c[i] = covariance((a - (f?.a[i] ?? 0)) ** 2 + (b - (f?.b[i] ?? 0)) ** 2);
    const left = 1 - c.reduce((sum, x, i) => sum + x * (f?.ones[i] ?? 0), 0);
    return { a, b, left, whitened: f ? forward(f.triangle, c) : c };
  });
  const freeMean = f ? 1 / f.of_ones : UNKNOWN_MEAN * sill;
  type Point = (typeof all)[number];
  /** Covariance of what is left unknown at two places; the nugget is no part of what a map can know. */
  const unknown = (p: Point, q: Point): number => {
    let k = covariance((p.a - q.a) ** 2 + (p.b - q.b) ** 2) + p.left * q.left * freeMean;
    for (let i = 0; i < n; i++) k -= (p.whitened[i] ?? 0) * (q.whitened[i] ?? 0);
    return k;
  };
  const at = all.slice(0, targets.length);
  const may = all.slice(targets.length);
  const between = may.map((p) => Float64Array.from(at, (t) => unknown(t, p)));
  const among = may.map((p) => Float64Array.from(may, (q) => unknown(p, q)));
  let total = at.reduce((sum, t) => sum + unknown(t, t), 0);
  const chosen: NextPlace[] = [];
  while (chosen.length < count) {
    let best: { readonly i: number; readonly gain: number } | undefined;
    for (const [i, k] of between.entries()) {
      const own = (among[i]?.[i] ?? 0) + variogram.nugget;
      if (chosen.some((c) => c.candidate === i) || !(own > 1e-9 * sill)) continue;
      const gain = k.reduce((sum, x) => sum + x * x, 0) / own;
      // A gain that is larger only in its last digits is none: the first of two equals stays.
      if (gain > 1e-9 * sill && (!best || gain > best.gain * (1 + 1e-9))) best = { i, gain };
    }
    if (!best) break;
    const { i, gain } = best;
    const own = (among[i]?.[i] ?? 0) + variogram.nugget;
    const [toTargets, toCandidates] = [between[i]?.slice() ?? new Float64Array(0), among[i]?.slice() ?? new Float64Array(0)];
    for (const [j, k] of between.entries()) {
      const share = (toCandidates[j] ?? 0) / own;
      for (let t = 0; t < k.length; t++) k[t] = (k[t] ?? 0) - share * (toTargets[t] ?? 0);
      const row = among[j];
      if (row) for (let c = 0; c < row.length; c++) row[c] = (row[c] ?? 0) - share * (toCandidates[c] ?? 0);
    }
    total -= gain;
    chosen.push({ candidate: i, mean_variance: total / targets.length + variogram.nugget });
  }
  return accept(chosen);
};
