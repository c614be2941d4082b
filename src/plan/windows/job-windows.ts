import { type CivilDay, civilDay, instant, kelvin, metresPerSecond } from '../../units';
import { HOUR_MS } from '../forecast/forecast-types';
import type { Job } from '../plan-types';
import { JUDGES, lacking, type Scene } from './gates';
import { type Clock, type Closed, type Figures, GATES, type Gate, type JobWindows, type Window } from './windows-types';

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** The civil day of an instant by a clock on the wall. */
export const dayAt = (at: number, clock: Clock): CivilDay => civilDay(Math.floor((at + clock(instant(at)) * MINUTE_MS) / DAY_MS));

/** Which gates are shut in every hour, as bits in the order of `GATES`. */
export const shutIn = (scene: Scene): readonly number[] =>
  scene.hours.map((hour, i) => {
    let bits = 0;
    GATES.forEach((gate, g) => {
      if (JUDGES[gate](scene, i, hour, scene.faces[i])) bits |= 1 << g;
    });
    return bits;
  });

export const gatesOf = (bits: number): readonly Gate[] => GATES.filter((_, g) => bits & (1 << g));
const bit = (gate: Gate): number => 1 << GATES.indexOf(gate);
const DARK = bit('dark');
const PAST = bit('past');

const least = (values: readonly (number | undefined)[]): number | undefined => values.reduce((a, b) => (a === undefined || (b !== undefined && b < a) ? b : a), undefined);
const most = (values: readonly (number | undefined)[]): number | undefined => values.reduce((a, b) => (a === undefined || (b !== undefined && b > a) ? b : a), undefined);

const figuresOf = (scene: Scene, from: number, to: number): Figures => {
  const hours = scene.hours.slice(from, to);
  const faces = scene.need.for === 'laying' ? scene.faces.slice(from, to) : [];
  const [coldest, warmest] = [least(faces.map((f) => f?.coldest)), most(faces.map((f) => f?.warmest))];
  const margins = faces.map((f, k) => {
    const dew = hours[k]?.dew_point;
    return f && dew !== undefined ? f.coldest - dew : undefined;
  });
  const margin = least(margins);
  const dew_point = margin === undefined ? undefined : hours[margins.indexOf(margin)]?.dew_point;
  const wind = scene.need.climbs ? most(hours.map((h) => h.wind)) : undefined;
  const gust = scene.need.climbs ? most(hours.map((h) => h.gust)) : undefined;
  const rain_chance = scene.rain.largest(from, to + scene.need.rain_free_h);
  return {
    ...(coldest === undefined ? {} : { coldest: kelvin(coldest) }),
    ...(warmest === undefined ? {} : { warmest: kelvin(warmest) }),
    ...(margin === undefined || dew_point === undefined ? {} : { margin, dew_point }),
    ...(wind === undefined ? {} : { wind: metresPerSecond(wind) }),
    ...(gust === undefined ? {} : { gust: metresPerSecond(gust) }),
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
const hoursFor = (job: Job): number => Math.max(1, Math.ceil((job.minutes?.[0] ?? 0) / 60));

/**
 * The windows of one job: hours in a row in which every gate stands open, long enough for the least of the work; and why the rest of the daylight is closed.
 *
 * @param bits  from `shutIn`
 * @param days  civil day of every hour
 */
export const jobWindows = (job: Job, scene: Scene, bits: readonly number[], days: readonly CivilDay[]): JobWindows => {
  const runs = runsOf(bits, days).filter((r) => !(r.bits & (DARK | PAST)));
  const windows: Window[] = [];
  const closed: Closed[] = [];
  for (const run of runs) {
    const span = { ...spanOf(scene, run), ...figuresOf(scene, run.from, run.to) };
    if (run.bits === 0 && run.to - run.from >= hoursFor(job)) windows.push({ ...span, fails: scene.rain.chance(run.from, run.to + scene.need.rain_free_h) });
    else {
      const lacks = [...new Set(scene.hours.slice(run.from, run.to).flatMap((h) => lacking(scene, h)))];
      closed.push({ ...span, gates: gatesOf(run.bits), lacks, ...(run.bits === 0 ? { too_short: true as const } : {}) });
    }
  }
  const none = windows.length > 0 ? undefined : noneOf(scene, bits);
  return {
    job: job.id,
    title: job.title,
    ...(job.station === undefined ? {} : { station: job.station }),
    need: scene.need,
    windows,
    closed,
    ...(none ? { none } : {}),
  };
};
