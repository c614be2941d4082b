import type { Book } from '../../../src/logbook';
import { type Finding, judgeAll, type Planned, planAfter, roundProgress, roundsOf, timelineOf } from '../../../src/plan';
import { type Rig, walkingOrder } from '../../../src/rig';
import { placeKey, type RigId, WHOLE_RIG } from '../../../src/terms';
import type { CivilDay } from '../../../src/units';
import type { Overview, RoundView } from './session';

export type Answer = Pick<Overview, 'plan' | 'marks' | 'round' | 'timeline'>;

type Held = { readonly book: Book<Rig>; readonly on: CivilDay; readonly planned: Planned; readonly answer: Answer };

/** Plans of this device's rigs, each kept and moved on with its logbook; a second look at an unchanged logbook costs nothing. */
export const planning = () => {
  const held = new Map<RigId, Held>();

  const of = (rig: RigId, book: Book<Rig>, on: CivilDay): Held => {
    const known = held.get(rig);
    if (known && known.book === book && known.on === on) return known;
    const planned = planAfter(known?.on === on ? known.planned : undefined, book.state.subject, book.state, on);
    const answer: Answer = { plan: planned.plan, marks: planned.marks, round: roundView(book, planned), timeline: timelineOf(planned.judged, book.state) };
    const next = { book, on, planned, answer };
    held.set(rig, next);
    return next;
  };

  return {
    of: (rig: RigId, book: Book<Rig>, on: CivilDay): Answer => of(rig, book, on).answer,
    /** A book that is only supposed: it is judged on from the real one and not remembered. */
    findings: (rig: RigId, real: Book<Rig>, supposed: Book<Rig>, on: CivilDay): readonly Finding[] =>
      judgeAll(supposed.state.subject, supposed.state, on, of(rig, real, on).planned.judged).findings,
    drop: (rig: RigId): void => {
      held.delete(rig);
    },
  };
};

/** What has no station of its own and must be answered before the wheels turn. */
const BEFORE_A_TRIP: readonly string[] = ['stowed'];

/** The round that is open, or else the last one; with the place to stand for every stop, as the rig is now. */
const roundView = (book: Book<Rig>, { judged }: Planned): RoundView | undefined => {
  const rounds = roundsOf(book.state);
  const round = rounds.findLast((r) => r.ended === undefined) ?? rounds.at(-1);
  const id = round?.begun.entry.id;
  const progress = id === undefined ? undefined : roundProgress(judged, book.state, id);
  if (!round || !progress || id === undefined) return undefined;
  const ofRig = book.state.through.get(placeKey(WHOLE_RIG));
  const inside = progress.steps.filter((s) => s.side === 'inside').map((s) => s.station);
  const order = walkingOrder(judged.rig, { form: progress.form, inside });
  const groups = new Map([...order.map((s) => [s.station, s.group] as const), ...order.map((s) => [`${s.station} ${s.side}`, s.group] as const)]);
  return {
    id,
    form: progress.form,
    begun: round.begun.observed_at,
    steps: progress.steps.map((s) => ({ ...s, group: groups.get(`${s.station} ${s.side}`) ?? groups.get(s.station) ?? 'Elsewhere' })),
    at: Math.min(progress.at, progress.steps.length - 1),
    left_s: progress.left_s,
    asked_of_rig: progress.form === 'pre-trip' ? BEFORE_A_TRIP.filter((kind) => !ofRig?.get(kind)?.some((s) => s.entry.round === id)) : [],
    ended: progress.ended,
  };
};
