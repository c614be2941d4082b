import { accept, figure, type Instant, instant, type Result, refuse, type Seconds } from '../../units';
import { holds, outsideValidity } from '../validity';
import { sunYears } from './apparent-place';
import type { Sky } from './clear-sky';
import type { Face } from './faces';
import { onFaces, type SkyModel } from './on-faces';
import type { Site } from './site';
import { type Sun, sunOver } from './sun-position';

export type SunSpan = {
  readonly site: Site;
  readonly from: Instant;
  readonly to: Instant;
  /** Length of a step; the sun is taken at its middle. [s] */
  readonly step: Seconds;
  /** The sky of a step: a clear one, one under clouds, or a measured one. */
  readonly sky: (sun: Sun, at: Instant) => Sky;
  readonly faces: readonly Face[];
  /** [1] */
  readonly albedo: number;
  readonly model: SkyModel;
};

/** Sums over a span. [J/m²] */
export type SunSum = {
  readonly global: number;
  readonly direct: number;
  readonly diffuse: number;
  /** On level ground without any air, which would not bend light either. */
  readonly outside_air: number;
  /** One for each face, in their order. */
  readonly faces: readonly number[];
  /** How long the sun was up. [s] */
  readonly sunlit: number;
};

/** As many steps as ten years of half-hours; our own limit. */
const MOST_STEPS = 180_000;

/** A chunk of at most `step`, the last one shorter. */
const steps = ({ from, to, step }: SunSpan): Result<number> => {
  for (const at of [from, to]) if (!holds(at, sunYears)) return outsideValidity({ ...sunYears, of: at === from ? 'from' : 'to' }, Number.isFinite(at) ? `${at} ms` : 'no instant');
  if (to <= from)
    return refuse({
      code: 'ends-before-it-begins',
      path: 'to',
      expected: 'a time after the start',
      received: 'an earlier or the same time',
      sentence: 'The end must come after the start.',
    });
  const n = Math.ceil((to - from) / (step * 1000));
  if (!(step > 0) || !(n <= MOST_STEPS))
    return refuse({
      code: 'too-many-steps',
      path: 'step',
      expected: `a step above 0, and no more than ${MOST_STEPS} of them`,
      received: `steps of ${figure(step / 60, 1)} min`,
      sentence: 'That span holds too many steps. Take longer steps or a shorter span.',
    });
  return accept(n);
};

/**
 * Sunlight summed over a span, on level ground and on each face; the sun is worked out once for all faces of a step.
 *
 * @param span  place, span, step, sky, faces, ground
 * @returns     sums. [J/m²]
 * @valid       1900…2100, real places, at most 180 000 steps (refused otherwise)
 * @agrees      1 % against annual-faces-clear.csv and monthly-clear-by-azimuth.csv, made in 5-minute steps; half-hours do
 * @assumes     the sun at the middle of a step stands for all of it
 * @source      1. as `sunOver`, `clearSkyOver` and `onFaces`
 */
export const sunSum = (span: SunSpan): Result<SunSum> => {
  const n = steps(span);
  if (!n.ok) return n;
  const sun = sunOver(span.site);
  if (!sun.ok) return sun;
  const faces = span.faces.map(() => 0);
  let [global, direct, diffuse, outside_air, sunlit] = [0, 0, 0, 0, 0];
  const length = span.step * 1000;
  const all = span.faces;
  for (let i = 0; i < n.value; i++) {
    const start = span.from + i * length;
    const lasts = Math.min(length, span.to - start);
    const at = instant(start + lasts / 2);
    const s = sun.value(at);
    const dt = lasts / 1000;
    if (s.elevation > 0) outside_air += s.extraterrestrial * Math.sin(s.elevation) * dt;
    if (s.up <= 0) continue;
    const sky = span.sky(s, at);
    const on = onFaces(s, sky, span.albedo, span.model);
    for (let k = 0; k < all.length; k++) faces[k] = (faces[k] ?? 0) + on(all[k] as Face).total * dt;
    global += sky.global * dt;
    direct += sky.direct * dt;
    diffuse += sky.diffuse * dt;
    sunlit += dt;
  }
  return accept({ global, direct, diffuse, outside_air, faces, sunlit });
};
