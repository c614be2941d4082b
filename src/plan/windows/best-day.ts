import { type CivilDay, type Instant, instant } from '../../units';
import { HOUR_MS } from '../forecast/forecast-types';
import type { Job } from '../plan-types';
import { PREPARING, PREPARING_ON_THE_ROOF } from './gates';
import { type BestDay, GATES, type Gate, type JobWindows, type Turn, type Window } from './windows-types';

const MINUTE_MS = 60_000;
/** Of the work on a bead, what goes before the bead itself: stripping, cleaning, priming. Ours. */
const BEFORE_LAYING = 2 / 3;

const bitsOf = (gates: readonly Gate[]): number => gates.reduce((bits, gate) => bits | (1 << GATES.indexOf(gate)), 0);
const PREPARES = bitsOf(PREPARING);
const PREPARES_ON_THE_ROOF = bitsOf(PREPARING_ON_THE_ROOF);

/** A job with its windows and with the bits of its hours. */
export type Candidate = { readonly job: Job; readonly found: JobWindows; readonly bits: readonly number[] };

type Day = { readonly first: Instant };

/** Minutes of a job, the most that the trade table gives; half an hour where it gives none. */
const minutesOf = (job: Job): number => job.minutes?.[1] ?? 30;

/** The latest time before laying from which the place can be prepared without a break, not before the person is free. */
const turnIn = ({ job, found, bits }: Candidate, window: Window, free: number, { first }: Day): Turn | undefined => {
  const laying = found.need.for === 'laying';
  const total = minutesOf(job) * MINUTE_MS;
  const prepares = laying ? Math.ceil((total * BEFORE_LAYING) / (5 * MINUTE_MS)) * 5 * MINUTE_MS : 0;
  const shut = found.need.stands_on_it ? PREPARES_ON_THE_ROOF : PREPARES;
  const open = (at: number): boolean => {
    const b = bits[Math.floor((at - first) / HOUR_MS)];
    return b !== undefined && !(b & shut);
  };
  const fits = (from: number, to: number): boolean => {
    for (let at = from; at < to; at += HOUR_MS) if (!open(at)) return false;
    return from >= to || open(to - 1);
  };
  const step = 5 * MINUTE_MS;
  for (let lays = Math.max(window.starts, free + prepares); lays + (total - prepares) <= window.ends; lays += step) {
    const starts = lays - prepares;
    if (starts < free || !fits(starts, lays)) continue;
    const ends = lays + total - prepares;
    return {
      job: job.id,
      title: job.title,
      ...(job.station === undefined ? {} : { station: job.station }),
      starts: instant(starts),
      lays: instant(lays),
      ends: instant(ends),
      ...(found.need.rain_free_h > 0 ? { rain_free_until: instant(ends + found.need.rain_free_h * HOUR_MS) } : {}),
      ...(found.need.cure_h > 0 ? { travel_from: instant(ends + found.need.cure_h * HOUR_MS) } : {}),
      fails: window.fails,
    };
  }
  return undefined;
};

/** One job after the other: whose window closes first goes first. */
const planFor = (day: CivilDay, candidates: readonly Candidate[], hours: Day): readonly Turn[] => {
  const mine = candidates
    .flatMap((c) => c.found.windows.filter((w) => w.day === day).map((window) => ({ c, window })))
    .sort((a, b) => a.window.ends - b.window.ends || candidates.indexOf(a.c) - candidates.indexOf(b.c));
  const turns: Turn[] = [];
  let free = Number.NEGATIVE_INFINITY;
  for (const { c, window } of mine) {
    if (turns.some((t) => t.job === c.job.id)) continue;
    const turn = turnIn(c, window, free, hours);
    if (!turn) continue;
    turns.push(turn);
    free = turn.ends;
  }
  return turns;
};

const risk = (turns: readonly Turn[]): number => Math.max(0, ...turns.map((t) => t.fails.most));

/**
 * The day on which most jobs fit one after the other for one person: prepared, laid within its window, dry and cured in time.
 * Among equals the one with the least chance of rain, then the earliest.
 */
export const bestDay = (candidates: readonly Candidate[], first: Instant | undefined): BestDay | undefined => {
  if (first === undefined) return undefined;
  const days = [...new Set(candidates.flatMap((c) => c.found.windows.map((w) => w.day)))].sort((a, b) => a - b);
  const plans = days.map((day) => ({ day, turns: planFor(day, candidates, { first }) })).filter((p) => p.turns.length > 0);
  const [best] = plans.sort((a, b) => b.turns.length - a.turns.length || risk(a.turns) - risk(b.turns) || a.day - b.day);
  return best && { ...best, left: candidates.map((c) => c.job.id).filter((id) => !best.turns.some((t) => t.job === id)) };
};
