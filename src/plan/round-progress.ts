import { asksAt, type RoundForm } from '../entries';
import type { Standing, State } from '../logbook';
import type { Rig } from '../rig';
import { type EntryId, placeKey, type Side, type StationId } from '../terms';
import { type Seconds, seconds } from '../units';
import { isOpen } from './finding';
import type { Judged } from './judge';
import { roundNamed } from './rounds';

export type StepAnswer = 'no' | 'sound' | 'finding' | 'not-seen';
export type StepState = { readonly station: StationId; readonly side: Side; readonly answered: StepAnswer };

export type RoundProgress = {
  readonly form: RoundForm;
  readonly steps: readonly StepState[];
  /** The first step that has no answer yet; the number of steps when all have one. */
  readonly at: number;
  readonly answered: number;
  readonly sound: number;
  readonly findings: number;
  readonly not_seen: number;
  /** Median time spent at a stop on this round; undefined before there is a pace. */
  readonly pace_s: Seconds | undefined;
  readonly left_s: Seconds | undefined;
  readonly ended: boolean;
};

/** A pace out of fewer stops than this is chance (our choice). */
const ENOUGH = 3;

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[middle] ?? 0) : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2;
};

/** Where a round stands: what each of its stops was answered with, and the time left at today's pace. */
export const roundProgress = (judged: Judged, state: State<Rig>, round: EntryId): RoundProgress | undefined => {
  const found = roundNamed(state, round);
  if (!found) return undefined;
  const { form } = found;
  const stations = new Map(judged.rig.stations.map((s) => [s.id, s]));
  const spent: number[] = [];
  const steps = found.steps.map(({ station: id, side }): StepState => {
    const station = stations.get(id);
    const through = state.through.get(placeKey({ at: 'station', station: id, side }));
    const given: Standing[] = [];
    const answered = new Set<string>();
    for (const [kind, list] of through ?? []) {
      const mine = list.filter((s) => s.entry.round === round);
      given.push(...mine);
      if (mine.length > 0) answered.add(kind);
    }
    if (given.length > 0) spent.push(given.reduce((sum, s) => sum + (s.entry.spent_s ?? 0), 0));
    const unseen = answered.has('could-not-see');
    const before = new Set([...(through ?? [])].filter(([, list]) => list.some((s) => s.entry.round !== round)).map(([kind]) => kind));
    const asked = station ? asksAt(station, side, form, before).asks.map((k) => k.id) : [];
    const complete = given.length > 0 && (unseen || asked.every((k) => answered.has(k)));
    if (!complete) return { station: id, side, answered: 'no' };
    if (unseen && !asked.some((k) => answered.has(k))) return { station: id, side, answered: 'not-seen' };
    const open = (judged.scenes.get(id)?.findings ?? []).some((f) => isOpen(f) && 'side' in f.place && f.place.side === side);
    return { station: id, side, answered: open ? 'finding' : 'sound' };
  });
  const count = (answer: StepAnswer): number => steps.filter((s) => s.answered === answer).length;
  const answered = steps.length - count('no');
  const timed = spent.filter((s) => s > 0);
  const pace = timed.length >= ENOUGH ? median(timed) : undefined;
  const first = steps.findIndex((s) => s.answered === 'no');
  return {
    form,
    steps,
    at: first < 0 ? steps.length : first,
    answered,
    sound: count('sound'),
    findings: count('finding'),
    not_seen: count('not-seen'),
    pace_s: pace === undefined ? undefined : seconds(pace),
    left_s: pace === undefined ? undefined : seconds(Math.round(pace * count('no'))),
    ended: found.ended !== undefined,
  };
};
