import { type CivilDay, civilDay, instant, kelvin, metresPerSecond } from '../../units';
import { HOUR_MS } from '../forecast/forecast-types';
import type { Job } from '../plan-types';
import { askedOf, JUDGES, lacking, type Scene } from './gates';
import { type Clock, type Closed, type Figures, GATES, type Gate, type JobWindows, type Window } from './windows-types';

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** The civil day of an instant by a clock on the wall. */
export const dayAt = (at: number, clock: Clock): CivilDay => civilDay(Math.floor((at + clock(instant(at)) * MINUTE_MS) / DAY_MS));

export const gatesOf = (bits: number): readonly Gate[] => GATES.filter((_, g) => bits & (1 << g));
const bit = (gate: Gate): number => 1 << GATES.indexOf(gate);
const DARK = bit('dark');
const PAST = bit('past');
const MISSING = bit('missing');

/** Which gates are shut in every hour, as bits in the order of `GATES`; of an hour that is dark or past nothing more is asked. */
export const shutIn = (scene: Scene): readonly number[] =>
  scene.hours.map((hour, i) => {
    if (hour.at < scene.now) return PAST;
    if (!scene.light[i]) return DARK;
    const asked = askedOf(scene, hour, i);
    let bits = 0;
    for (let g = 0; g < GATES.length; g += 1) if (JUDGES[GATES[g] as Gate](asked)) bits |= 1 << g;
    return bits;
  });

const lower = (a: number | undefined, b: number | undefined): number | undefined => (a === undefined || (b !== undefined && b < a) ? b : a);
const higher = (a: number | undefined, b: number | undefined): number | undefined => (a === undefined || (b !== undefined && b > a) ? b : a);

const figuresOf = (scene: Scene, from: number, to: number): Figures => {
  let [coldest, warmest, wind, gust, margin, dew_point]: (number | undefined)[] = [];
  for (let i = from; i < to; i += 1) {
    const hour = scene.hours[i];
    const face = scene.need.dry_surface ? scene.faces[i] : undefined;
    coldest = lower(coldest, face?.coldest);
    warmest = higher(warmest, face?.warmest);
    wind = higher(wind, hour?.wind);
    gust = higher(gust, hour?.gust);
    if (!face || hour?.dew_point === undefined || face.coldest - hour.dew_point >= (margin ?? Number.POSITIVE_INFINITY)) continue;
    margin = face.coldest - hour.dew_point;
    dew_point = hour.dew_point;
  }
  const { climbs, rain_free_h } = scene.need;
  const rain_chance = scene.rain.largest(from, to + rain_free_h);
  return {
    ...(coldest === undefined ? {} : { coldest: kelvin(coldest) }),
    ...(warmest === undefined ? {} : { warmest: kelvin(warmest) }),
    ...(margin === undefined || dew_point === undefined ? {} : { margin, dew_point: kelvin(dew_point) }),
    ...(wind === undefined || !climbs ? {} : { wind: metresPerSecond(wind) }),
    ...(gust === undefined || !climbs ? {} : { gust: metresPerSecond(gust) }),
    ...(rain_chance === undefined ? {} : { rain_chance }),
  };
};

type Run = { readonly from: number; readonly to: number; readonly bits: number; readonly day: CivilDay };

/** Hours of one day that are shut for the same reasons, one after the other. */
const runsOf = (bits: readonly number[], days: readonly CivilDay[]): readonly Run[] => {
  const runs: Run[] = [];
  bits.forEach((b, i) => {
    const last = runs.at(-1);
    const day = days[i] as CivilDay;
    if (last && last.bits === b && last.day === day) runs[runs.length - 1] = { ...last, to: i + 1 };
    else runs.push({ from: i, to: i + 1, bits: b, day });
  });
  return runs;
};

const spanOf = (scene: Scene, { from, to, day }: Run) => {
  const starts = scene.hours[from]?.at ?? instant(0);
  return { starts, ends: instant(starts + (to - from) * HOUR_MS), day };
};

/** The gate that closes most of these hours. */
const commonest = (bits: readonly number[]): Gate | undefined => {
  const counts = GATES.map((g) => bits.filter((b) => b & bit(g)).length);
  const top = Math.max(...counts);
  return top === 0 ? undefined : GATES[counts.indexOf(top)];
};

const noneOf = (scene: Scene, bits: readonly number[]): JobWindows['none'] => {
  const ahead = bits.flatMap((b, i) => (b & (DARK | PAST) ? [] : [{ b, i }]));
  const gate = commonest(ahead.map((x) => x.b));
  if (gate === undefined) return { gate: ahead.length === 0 ? (bits.every((b) => b & PAST) ? 'past' : 'dark') : 'missing' };
  const free = ahead.filter((x) => !(x.b & bit(gate)));
  const [first] = free;
  const until = first && scene.hours[first.i]?.at;
  const then = commonest(free.map((x) => x.b));
  return { gate, ...(until === undefined ? {} : { until }), ...(then === undefined ? {} : { then }) };
};

/** Hours that the least of the work takes. */
export const hoursFor = (job: Job): number => Math.max(1, Math.ceil((job.minutes?.[0] ?? 0) / 60));

/** What jobs that ask the same of the same face have in common. */
export type Found = Pick<JobWindows, 'windows' | 'closed' | 'none'>;

/**
 * The windows of a job: hours in a row in which every gate stands open, long enough for the least of the work; and why the rest of the daylight is closed.
 *
 * @param bits   from `shutIn`
 * @param days   civil day of every hour
 * @param least  hours that the work takes at least
 */
export const windowsIn = (scene: Scene, bits: readonly number[], days: readonly CivilDay[], least: number): Found => {
  const runs = runsOf(bits, days).filter((r) => !(r.bits & (DARK | PAST)));
  const windows: Window[] = [];
  const closed: Closed[] = [];
  for (const run of runs) {
    const span = { ...spanOf(scene, run), ...figuresOf(scene, run.from, run.to) };
    if (run.bits === 0 && run.to - run.from >= least) windows.push({ ...span, fails: scene.rain.chance(run.from, run.to + scene.need.rain_free_h) });
    else {
      const lacks = run.bits & MISSING ? [...new Set(scene.hours.slice(run.from, run.to).flatMap((h) => lacking(scene, h)))] : [];
      closed.push({ ...span, gates: gatesOf(run.bits), lacks, ...(run.bits === 0 ? { too_short: true as const } : {}) });
    }
  }
  const none = windows.length > 0 ? undefined : noneOf(scene, bits);
  return { windows, closed, ...(none ? { none } : {}) };
};
