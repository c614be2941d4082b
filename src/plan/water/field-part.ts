import { type Box, box, type Field, pointInside } from '../../rig';
import { chanceAbove, inverseDistance, kriging, leaveOneOut, type Sample, type Variogram } from '../../science';
import type { FacePoint } from '../../terms';
import { likenessWith, REACH } from './field-likeness';
import type { MapReading } from './field-readings';
import { barriers, sees } from './field-sight';
import type { FieldGrid, FieldOptions, FieldPart } from './field-types';
import { pointsOn } from './scales';
import type { Scale } from './water-types';

/** Fewer places than this draw dots only, whatever they read. */
export const ENOUGH_PLACES = 8;
/** Nodes along the longer side of what is drawn, and the finest step: two inches tell more than any meter. */
const MOST_NODES = 80;
const FINEST_M = 0.0254;
const POWER = 2;

type Guess = { readonly estimate: number; readonly variance: number } | undefined;
/** Guesses at places from some of the readings. */
type Guesser = (samples: readonly Sample[], points: readonly FacePoint[]) => readonly Guess[];

const byKriging =
  (variogram: Variogram): Guesser =>
  (samples, points) => {
    const map = kriging(samples, variogram);
    if (!map.ok) return points.map(() => undefined);
    const { estimate, variance } = map.value.each(points);
    // What a reading is worth is never better than the meter repeats it, also where it was taken.
    return points.map((_, i) => ({ estimate: estimate[i] as number, variance: Math.max(variance[i] as number, variogram.nugget) }));
  };

const byInverseDistance: Guesser = (samples, points) => {
  const map = inverseDistance(samples, POWER);
  return points.map(([x, y]) => (map.ok ? { estimate: map.value.at(x, y), variance: 0 } : undefined));
};

const sampleOf = (r: MapReading): Sample => ({ x: r.point_m[0], y: r.point_m[1], value: r.value });

/** Guesses where some reading is near enough and in sight; places that see the same readings are worked together. */
const guesses = (guess: Guesser, samples: readonly Sample[], field: Field, v: Variogram, points: readonly FacePoint[]): readonly Guess[] => {
  const between = barriers(field);
  const across = (v.anisotropy?.ratio ?? 1) / v.range;
  const out: Guess[] = points.map(() => undefined);
  const groups = new Map<string, number[]>();
  for (const [i, [x, y]] of points.entries()) {
    let key = '';
    let reached = false;
    for (const s of samples) {
      const seen = sees(x, y, s.x, s.y, between);
      key += seen ? '1' : '0';
      reached ||= seen && Math.hypot((x - s.x) * across, (y - s.y) / v.range) <= REACH;
    }
    if (!reached) continue;
    const group = groups.get(key);
    if (group) group.push(i);
    else groups.set(key, [i]);
  }
  for (const [key, at] of groups) {
    const made = guess(
      samples.filter((_, k) => key[k] === '1'),
      at.map((i) => points[i] as FacePoint),
    );
    for (const [k, i] of at.entries()) out[i] = made[k];
  }
  return out;
};

type Area = { readonly outline: readonly FacePoint[]; readonly box: Box };

/** Whether a map may say something at a point of a field: inside it, outside its holes, and not over a tube for a pinless meter. */
export const openIn = (field: Field, scale: Scale): ((p: FacePoint) => boolean) => {
  const closed = [...field.holes_m, ...(scale === 'pinless' ? field.masked_m : [])].map((outline): Area => ({ outline, box: box({ form: 'poly', points_m: outline }) }));
  return (p) =>
    pointInside(p, field.outline_m, 1e-6) && !closed.some(({ outline, box: b }) => p[0] >= b.x0 && p[0] <= b.x1 && p[1] >= b.y0 && p[1] <= b.y1 && pointInside(p, outline, 0));
};

type Nodes = Pick<FieldGrid, 'x0_m' | 'y0_m' | 'step_m' | 'columns' | 'rows'> & { readonly points: readonly FacePoint[] };

/** Nodes over that part of the field that readings can speak for, laid out from its middle so that a mirrored wall gives a mirrored map. */
const nodesOf = (field: Field, samples: readonly Sample[], v: Variogram): Nodes => {
  const [rx, ry] = [(REACH * v.range) / (v.anisotropy?.ratio ?? 1), REACH * v.range];
  const span = (of: (p: FacePoint) => number, read: readonly number[], reach: number): readonly [number, number] => {
    const all = field.outline_m.map(of);
    return [Math.max(Math.min(...all), Math.min(...read) - reach), Math.min(Math.max(...all), Math.max(...read) + reach)];
  };
  const [x0, x1] = span(
    (p) => p[0],
    samples.map((s) => s.x),
    rx,
  );
  const [y0, y1] = span(
    (p) => p[1],
    samples.map((s) => s.y),
    ry,
  );
  const step_m = Math.max(FINEST_M, (x1 - x0) / MOST_NODES, (y1 - y0) / MOST_NODES);
  const columns = Math.floor((x1 - x0) / step_m + 1e-9) + 1;
  const rows = Math.floor((y1 - y0) / step_m + 1e-9) + 1;
  const x0_m = (x0 + x1) / 2 - ((columns - 1) / 2) * step_m;
  const y0_m = (y0 + y1) / 2 - ((rows - 1) / 2) * step_m;
  const points = Array.from({ length: columns * rows }, (_, k): FacePoint => [x0_m + (k % columns) * step_m, y0_m + Math.floor(k / columns) * step_m]);
  return { x0_m, y0_m, step_m, columns, rows, points };
};

const gridOf = (guess: Guesser, samples: readonly Sample[], field: Field, scale: Scale, v: Variogram, threshold: number, plain: boolean): FieldGrid => {
  const { points, ...layout } = nodesOf(field, samples, v);
  const isOpen = openIn(field, scale);
  const open = points.flatMap((p, k) => (isOpen(p) ? [k] : []));
  const made = guesses(
    guess,
    samples,
    field,
    v,
    open.map((k) => points[k] as FacePoint),
  );
  const at: Guess[] = points.map(() => undefined);
  for (const [i, k] of open.entries()) at[k] = made[i];
  return {
    ...layout,
    estimate: at.map((g) => g?.estimate),
    chance: at.map((g) => (g && !plain ? chanceAbove(g.estimate, g.variance, threshold) : undefined)),
    standard_error: at.map((g) => (g && !plain ? Math.sqrt(g.variance) : undefined)),
  };
};

type Check = { readonly error: number; readonly of_the_mean: number };

/** Each reading guessed from those of the others that it sees; from none, by their plain mean. */
const checkOf = (guess: Guesser, samples: readonly Sample[], field: Field, v: Variogram, plain: boolean): Check | undefined => {
  if (!plain && barriers(field).length === 0) {
    const check = leaveOneOut(samples, v);
    return check.ok ? { error: check.value.error, of_the_mean: check.value.of_the_mean } : undefined;
  }
  const n = samples.length;
  const total = samples.reduce((sum, s) => sum + s.value, 0);
  const errors = samples.map((s, i) => {
    const mean = (total - s.value) / (n - 1);
    const [made] = guesses(guess, samples.toSpliced(i, 1), field, v, [[s.x, s.y]]);
    return { guess: s.value - (made?.estimate ?? mean), mean: s.value - mean };
  });
  const root = (of: (e: (typeof errors)[number]) => number): number => Math.sqrt(errors.reduce((sum, e) => sum + of(e) ** 2, 0) / n);
  return { error: root((e) => e.guess), of_the_mean: root((e) => e.mean) };
};

/** Readings of one place are one, their mean. */
const distinct = (readings: readonly MapReading[]): readonly Sample[] => {
  const at = new Map<string, MapReading[]>();
  for (const r of readings) at.set(r.point_m.join(), [...(at.get(r.point_m.join()) ?? []), r]);
  return [...at.values()].map((same) => ({ ...sampleOf(same[0] as MapReading), value: same.reduce((sum, r) => sum + r.value, 0) / same.length }));
};

const placesWord = (n: number): string => (n === 1 ? 'One place is read here' : `${n} places are read here`);

/**
 * One field of a panel: a map where its readings bear one, else dots and why.
 *
 * @param readings  those that lie in the field, outside its holes
 * @assumes         a map is drawn from eight places upward, and only where leaving out one by one it beats their plain mean
 */
export const fieldPart = (field: Field, readings: readonly MapReading[], scale: Scale, prior: Variogram, threshold: number, method: FieldOptions['method']): FieldPart => {
  const samples = distinct(readings);
  const variogram = likenessWith(prior, readings);
  const base = { field, readings: samples.length, variogram };
  const dots = (why: string, leave_one_out?: Check): FieldPart => ({ ...base, drawn: 'dots', why, ...(leave_one_out ? { leave_one_out } : {}) });
  if (samples.length < ENOUGH_PLACES) return dots(`${placesWord(samples.length)}; a map needs ${ENOUGH_PLACES}.`);
  if (samples.every((s) => s.value === samples[0]?.value)) return dots('All readings here are the same: there is nothing to map.');
  const plain = method === 'inverse-distance';
  const guess = plain ? byInverseDistance : byKriging(variogram);
  const check = checkOf(guess, samples, field, variogram, plain);
  if (!check) return dots('These readings stand too close together for a map.');
  if (!(check.error < check.of_the_mean))
    return dots(
      `Left out one by one, readings here are guessed no better by a map than by their plain mean (off by ${pointsOn(scale, check.error)} against ${pointsOn(scale, check.of_the_mean)}).`,
      check,
    );
  return { ...base, drawn: 'map', leave_one_out: check, grid: gridOf(guess, samples, field, scale, variogram, threshold, plain) };
};
