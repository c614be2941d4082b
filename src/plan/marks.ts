import { MARKS, type Mark, type StationId } from '../terms';
import { type Finding, isOpen, shownAs } from './finding';
import type { Judged } from './judge';
import type { Counts, NotSeen } from './plan-types';

/**
 * What each station shows: the most urgent of its open findings; else sound, if it was sound when it was last looked at
 * and no round has missed it since; else not seen.
 */
export const marksOf = (judged: Judged, not_seen: readonly NotSeen[]): Readonly<Record<StationId, Mark>> => {
  const missed = new Set(not_seen.map((n) => n.station));
  const marks: Record<StationId, Mark> = {};
  for (const station of judged.rig.stations) {
    if (station.retired) continue;
    const scene = judged.scenes.get(station.id);
    const open: readonly Mark[] = (scene?.findings ?? []).filter(isOpen).map(shownAs);
    const [worst] = open.toSorted((a, b) => MARKS.indexOf(a) - MARKS.indexOf(b));
    marks[station.id] = worst ?? (scene?.looked && !missed.has(station.id) ? 'sound' : 'not-seen');
  }
  return marks;
};

export const countsOf = (findings: readonly Finding[], marks: Readonly<Record<StationId, Mark>>): Counts => {
  const counts: Record<Mark, number> = { 'do-not-use': 0, 'before-moving': 0, 'before-rain': 0, 'this-season': 0, watch: 0, sound: 0, 'not-seen': 0 };
  for (const finding of findings) if (isOpen(finding)) counts[shownAs(finding)] += 1;
  for (const mark of Object.values(marks)) if (mark === 'sound' || mark === 'not-seen') counts[mark] += 1;
  return counts;
};
