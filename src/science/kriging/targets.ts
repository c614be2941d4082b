import { type Factored, SAME } from './factored';
import { covarianceOfSquare, unfold } from './variogram';

/** Targets worked side by side: the sums of one do not wait for those of the other, and the factor is read once for all. */
export const LANES = 4;

/** Works targets through one factored system; keeps its own scratch, so that a grid allocates nothing for each of its points. */
export const worker = (f: Factored) => {
  const n = f.samples.length;
  const { rows } = f.triangle;
  const { a, b, ones, dual } = f;
  const u = unfold(f.variogram);
  const covariance = covarianceOfSquare(f.variogram);
  const sill = f.variogram.nugget + f.variogram.partial_sill;
  /** Reading i of lane l stands at `LANES * i + l`. */
  const c = new Float64Array(LANES * n);
  const guess = new Float64Array(LANES);
  const left = new Float64Array(LANES);
  const on = new Int32Array(LANES);
  /** The first reading that is any like the target: with readings in order along the wall, those before it cost nothing. */
  const from = new Int32Array(LANES);

  /** Covariances of one target with the readings; what it takes of each at once, and the reading it stands on, or −1. */
  const reach = (x: number, y: number, lane: number): void => {
    if (!Number.isFinite(x) || !Number.isFinite(y)) throw new RangeError(`no place: ${x}, ${y}`);
    const ta = u.ax * x + u.ay * y;
    const tb = u.bx * x + u.by * y;
    let g = f.mean;
    let rest = 1;
    on[lane] = -1;
    let begin = n;
    for (let i = 0; i < n; i++) {
      const da = ta - (a[i] as number);
      const db = tb - (b[i] as number);
      const square = da * da + db * db;
      if (square < SAME * SAME) on[lane] = i;
      const k = covariance(square);
      c[LANES * i + lane] = k;
      if (k === 0) continue;
      if (i < begin) begin = i;
      g += (dual[i] as number) * k;
      rest -= (ones[i] as number) * k;
    }
    guess[lane] = g;
    left[lane] = rest;
    from[lane] = begin;
  };

  /** Works out what `reach` was called for, and writes the first `count` lanes from `k` on. */
  const write = (estimate: Float64Array, variance: Float64Array, k: number, count: number): void => {
    let k0 = 0;
    let k1 = 0;
    let k2 = 0;
    let k3 = 0;
    // What an earlier block left in idle lanes would grow with every pass.
    for (let lane = count; lane < LANES; lane++) for (let i = lane; i < c.length; i += LANES) c[i] = 0;
    let first = n;
    for (let lane = 0; lane < count; lane++) first = Math.min(first, from[lane] as number);
    // Two rows at a time: what is loaded of the targets serves both. An odd row comes first, alone.
    for (let i = first; i < n; ) {
      const pair = (n - i) % 2 === 0;
      const at = LANES * i;
      const below = at + LANES;
      let r = (i * (i + 1)) / 2 + first;
      let q = pair ? r + i + 1 : r;
      let s0 = c[at] as number;
      let s1 = c[at + 1] as number;
      let s2 = c[at + 2] as number;
      let s3 = c[at + 3] as number;
      let t0 = pair ? (c[below] as number) : 0;
      let t1 = pair ? (c[below + 1] as number) : 0;
      let t2 = pair ? (c[below + 2] as number) : 0;
      let t3 = pair ? (c[below + 3] as number) : 0;
      for (let j = LANES * first; j < at; j += LANES, r++, q++) {
        const l = rows[r] as number;
        const m = rows[q] as number;
        const c0 = c[j] as number;
        const c1 = c[j + 1] as number;
        const c2 = c[j + 2] as number;
        const c3 = c[j + 3] as number;
        s0 -= l * c0;
        s1 -= l * c1;
        s2 -= l * c2;
        s3 -= l * c3;
        t0 -= m * c0;
        t1 -= m * c1;
        t2 -= m * c2;
        t3 -= m * c3;
      }
      const d = rows[r] as number;
      s0 *= d;
      s1 *= d;
      s2 *= d;
      s3 *= d;
      c[at] = s0;
      c[at + 1] = s1;
      c[at + 2] = s2;
      c[at + 3] = s3;
      k0 += s0 * s0;
      k1 += s1 * s1;
      k2 += s2 * s2;
      k3 += s3 * s3;
      i++;
      if (!pair) continue;
      const m = rows[q] as number;
      const e = rows[q + 1] as number;
      t0 = (t0 - m * s0) * e;
      t1 = (t1 - m * s1) * e;
      t2 = (t2 - m * s2) * e;
      t3 = (t3 - m * s3) * e;
      c[below] = t0;
      c[below + 1] = t1;
      c[below + 2] = t2;
      c[below + 3] = t3;
      k0 += t0 * t0;
      k1 += t1 * t1;
      k2 += t2 * t2;
      k3 += t3 * t3;
      i++;
    }
    const known = [k0, k1, k2, k3];
    for (let lane = 0; lane < count; lane++) {
      const reading = f.samples[on[lane] as number];
      estimate[k + lane] = reading ? reading.value : (guess[lane] as number);
      // Never below zero but for the last binary digit.
      variance[k + lane] = reading ? 0 : Math.max(0, sill - (known[lane] ?? 0) + (left[lane] as number) ** 2 / f.of_ones);
    }
  };

  return { reach, write, standsOn: (): number => on[0] as number, covariances: (): Float64Array => Float64Array.from({ length: n }, (_, i) => c[LANES * i] as number) };
};
