import type { State } from '../logbook';
import type { Rig } from '../rig';
import type { Mark, StationId } from '../terms';
import type { CivilDay } from '../units';
import { isOpen } from './finding';
import { jobsOf } from './jobs';
import { type Judged, judgeAll } from './judge';
import { countsOf, marksOf } from './marks';
import { nextRound } from './next-round';
import { notSeen } from './not-seen';
import type { Plan } from './plan-types';
import { readyToRoll } from './ready-to-roll';
import { serviceDue } from './service-due';

/** Proved findings stay in sight for a year. [d] */
const IN_SIGHT = 365;

/** A plan with what is needed to bring it up to date after one more entry. */
export type Planned = { readonly plan: Plan; readonly judged: Judged; readonly marks: Readonly<Record<StationId, Mark>> };

/**
 * Brings a plan up to date. What nothing has touched is taken over from before; the answer is the same as planning anew.
 *
 * @param before  the last plan of the same rig; undefined to plan anew
 */
export const planAfter = (before: Planned | undefined, rig: Rig, state: State<Rig>, on: CivilDay): Planned => {
  const judged = judgeAll(rig, state, on, before?.judged);
  const not_seen = notSeen(judged, state);
  const marks = marksOf(judged, not_seen);
  const findings = judged.findings.filter((f) => isOpen(f) || (f.life === 'proved' && f.closed !== undefined && on - f.closed <= IN_SIGHT));
  const { jobs, shopping } = jobsOf(judged);
  const plan: Plan = {
    on,
    findings,
    jobs,
    shopping,
    ready: readyToRoll(judged, state),
    not_seen,
    next_round: nextRound(rig, state, on),
    service_due: serviceDue(rig, state, on),
    counts: countsOf(findings, marks),
    water: judged.water.water,
  };
  return { plan, judged, marks };
};

/** The whole answer for one rig on one civil day. */
export const planOf = (rig: Rig, state: State<Rig>, on: CivilDay): Plan => planAfter(undefined, rig, state, on).plan;

/** The most urgent standing of each station. */
export const marks = (rig: Rig, state: State<Rig>, on: CivilDay): Readonly<Record<StationId, Mark>> => planAfter(undefined, rig, state, on).marks;
