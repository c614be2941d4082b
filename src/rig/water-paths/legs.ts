import type { FacePoint } from '../../terms';
import { pointInside } from '../outline';
import type { Box } from '../shapes';
import type { Lattice } from './lattice';
import { OVER_EDGE, PLAIN, STEP_M, THROUGH_FLOOR } from './mesh';
import type { Leg, LegHow } from './types';

/** One move of a way, still lattice by lattice. */
export type Step = {
  readonly surface: number;
  readonly from: FacePoint;
  readonly to: FacePoint;
  readonly by: number;
  readonly drop_m: number;
  readonly steepest: number;
  readonly aft_m: number;
};

const cutsThrough = (a: FacePoint, b: FacePoint, hole: Box): boolean => {
  let [t0, t1] = [0, 1];
  for (const [p, q, lo, hi] of [
    [a[0], b[0], hole.x0 + 1e-4, hole.x1 - 1e-4],
    [a[1], b[1], hole.y0 + 1e-4, hole.y1 - 1e-4],
  ] as const) {
    if (p === q) {
      if (p <= lo || p >= hi) return false;
      continue;
    }
    const [u, v] = [(lo - p) / (q - p), (hi - p) / (q - p)];
    t0 = Math.max(t0, Math.min(u, v));
    t1 = Math.min(t1, Math.max(u, v));
  }
  return t0 < t1;
};

/** Whether water can go straight from one point of a face to another: through no opening, and not off the face. */
export const straight = (lattice: Lattice, surface: number, a: FacePoint, b: FacePoint): boolean => {
  const s = lattice.surfaces[surface];
  if (!s) return false;
  if (s.cut_away.some((h) => cutsThrough(a, b, h))) return false;
  if (s.kind !== 'floor' && lattice.gaps.some((g) => g.face === s.face && cutsThrough(a, b, g))) return false;
  const n = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / STEP_M);
  for (let i = 1; i < n; i++) if (!pointInside([a[0] + (i / n) * (b[0] - a[0]), a[1] + (i / n) * (b[1] - a[1])], s.outline_m)) return false;
  return true;
};

const long = (points: readonly FacePoint[]): number => points.slice(1).reduce((sum, p, i) => sum + Math.hypot(p[0] - (points[i]?.[0] ?? 0), p[1] - (points[i]?.[1] ?? 0)), 0);

/** Without the points that lie on the line between their neighbours. */
const thinned = (points: readonly FacePoint[]): readonly FacePoint[] =>
  points.filter((p, i) => {
    const [a, b] = [points[i - 1], points[i + 1]];
    if (!a || !b) return true;
    if (p[0] === a[0] && p[1] === a[1]) return false;
    return Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) > 1e-6 * Math.max(1, Math.hypot(b[0] - a[0], b[1] - a[1]));
  });

type Run = { readonly steps: readonly Step[]; readonly by: number; readonly surface: number };

const runs = (steps: readonly Step[]): readonly Run[] => {
  const out: { steps: Step[]; by: number; surface: number }[] = [];
  for (const step of steps) {
    const last = out.at(-1);
    if (last && last.by === step.by && last.surface === step.surface) last.steps.push(step);
    else out.push({ steps: [step], by: step.by, surface: step.surface });
  }
  return out;
};

/** As straight as the openings allow: on a plain face effort depends on the ends alone, so the straight line is as good a way. */
const pulled = (lattice: Lattice, surface: number, points: readonly FacePoint[]): readonly FacePoint[] => {
  const out: FacePoint[] = points[0] ? [points[0]] : [];
  for (let i = 0; i < points.length - 1; ) {
    let j = points.length - 1;
    while (j > i + 1 && !straight(lattice, surface, points[i] as FacePoint, points[j] as FacePoint)) j--;
    out.push(points[j] as FacePoint);
    i = j;
  }
  return out;
};

const wordOf = ({ steps }: Run, driving: boolean): LegHow => {
  let [down, whole, aft] = [0, 0, 0];
  for (const s of steps) {
    whole += Math.hypot(s.to[0] - s.from[0], s.to[1] - s.from[1]);
    down += Math.max(0, s.drop_m) / Math.max(s.steepest, 1e-9);
    aft += s.aft_m;
  }
  if (driving && aft > down && aft > whole / 2) return 'driven-aft';
  return Math.min(down, whole) >= whole / Math.SQRT2 - 1e-9 ? 'down' : 'aside';
};

/** The steps of a way as legs to draw: straightened on plain faces, each channel by its name. */
export const legsOf = (lattice: Lattice, steps: readonly Step[], driving: boolean): readonly Leg[] =>
  runs(steps).flatMap((run): readonly Leg[] => {
    const face = lattice.surfaces[run.surface]?.face ?? '';
    const first = run.steps[0];
    if (!first) return [];
    const raw = [first.from, ...run.steps.map((s) => s.to)];
    if (run.by === OVER_EDGE || run.by === THROUGH_FLOOR) return [{ how: run.by === OVER_EDGE ? 'over-edge' : 'down', face, points_m: [raw.at(-1) as FacePoint], length_m: 0 }];
    const points_m = thinned(run.by === PLAIN ? pulled(lattice, run.surface, raw) : raw);
    const length_m = long(points_m);
    if (length_m < 1e-9) return [];
    if (run.by === PLAIN) return [{ how: wordOf(run, driving), face, points_m, length_m }];
    return [{ how: 'along-channel', face, points_m, length_m, channel: lattice.channels[run.by] ?? '' }];
  });
