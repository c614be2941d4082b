import type { Standing, State } from '../logbook';
import type { Rig } from '../rig';
import { ours, type Station } from '../terms';
import { showDay } from '../units';
import type { Judged } from './judge';
import { byWhen } from './order';
import type { NotSeen } from './plan-types';
import { lastFullRound, type Round } from './rounds';

const OPENINGS = ours('anything cut through roof or wall is a possible leak (common practice): no opening is left out of a full round without being named');
const UNSEEN = ours('what could not be seen is never treated as sound');

const REASONS: Readonly<Record<string, string>> = {
  'out-of-reach': 'out of reach',
  'in-the-way': 'something in the way',
  'not-safe': 'not safe that day',
  'dark-or-dirty': 'dark or dirty',
};

const couldNot = (station: Station, unseen: Standing): NotSeen => {
  const reason = REASONS[(unseen.body as { readonly reason?: string }).reason ?? ''] ?? unseen.entry.note ?? 'no reason chosen';
  const { round } = unseen.entry;
  return {
    id: `not-seen/${station.id}/${unseen.entry.id}`,
    station: station.id,
    ...(round === undefined ? {} : { round }),
    since: unseen.day,
    because: {
      text: `${station.name} could not be seen on ${showDay(unseen.day)}: ${reason}.`,
      entries: round === undefined ? [unseen.entry.id] : [unseen.entry.id, round],
      source: UNSEEN,
    },
  };
};

const passed = (station: Station, round: Round): NotSeen => ({
  id: `not-seen/${station.id}/${round.begun.entry.id}`,
  station: station.id,
  round: round.begun.entry.id,
  since: round.begun.day,
  because: {
    text: `${station.name} was not seen on the full round of ${showDay(round.begun.day)} by ${round.begun.entry.by}.`,
    entries: [round.begun.entry.id, ...(round.ended ? [round.ended.entry.id] : [])],
    source: OPENINGS,
  },
});

/**
 * Every station that nobody can vouch for: those that could not be seen when they were last tried, the openings that the last
 * full round passed by, and the stations that it set out to see and did not reach.
 */
export const notSeen = (judged: Judged, state: State<Rig>): readonly NotSeen[] => {
  const round = lastFullRound(state);
  const stops = new Set(round?.steps.filter((s) => s.side === 'outside').map((s) => s.station));
  return judged.rig.stations.flatMap((station): readonly NotSeen[] => {
    if (station.retired) return [];
    const scene = judged.scenes.get(station.id);
    const [looked, unseen] = [scene?.looked, scene?.unseen];
    if (unseen && (!looked || byWhen(unseen, looked) >= 0)) return [couldNot(station, unseen)];
    if (!round || (!station.cut_through && !stops.has(station.id))) return [];
    const seen = looked !== undefined && (looked.entry.round === round.begun.entry.id || byWhen(looked, round.begun) >= 0);
    return seen ? [] : [passed(station, round)];
  });
};
