import { kinds } from '../entries';
import type { State } from '../logbook';
import type { Rig } from '../rig';
import { type CivilDay, showDay } from '../units';
import { opened as openedOn } from './episodes';
import type { Judged } from './judge';

export type TimelineMark = { readonly day: CivilDay; readonly what: 'round' | 'care' | 'findings'; readonly open: number; readonly words: string };

const CARE = new Set(kinds.filter((k) => k.group === 'care').map((k) => k.id));

/** When findings opened (an age on the day it was reached), rounds were walked and care was given, oldest first, with how many findings stood open at the end of that day. */
export const timelineOf = (judged: Judged, state: State<Rig>): readonly TimelineMark[] => {
  const opened = new Map<number, number>();
  const days = new Map<string, { day: CivilDay; what: TimelineMark['what']; n: number }>();
  const add = (day: CivilDay, what: TimelineMark['what']): void => {
    const key = `${day} ${what}`;
    const known = days.get(key);
    if (known) known.n += 1;
    else days.set(key, { day, what, n: 1 });
  };
  for (const scene of judged.scenes.values())
    for (const episode of [...scene.episodes, ...(scene.water?.episodes ?? [])]) {
      const first = openedOn(episode);
      add(first, 'findings');
      opened.set(first, (opened.get(first) ?? 0) + 1);
      const closed = episode.closed?.by.day;
      if (closed !== undefined) opened.set(closed, (opened.get(closed) ?? 0) - 1);
    }
  for (const byKind of state.through.values())
    for (const [kind, list] of byKind) {
      if (kind === 'round-begun') for (const s of list) add(s.day, 'round');
      else if (CARE.has(kind)) for (const s of list) add(s.day, 'care');
    }
  const changes = [...opened].sort(([a], [b]) => a - b);
  const openBy = (day: number): number => changes.reduce((sum, [d, n]) => (d <= day ? sum + n : sum), 0);
  return [...days.values()]
    .sort((a, b) => a.day - b.day || (a.what < b.what ? -1 : 1))
    .map(({ day, what, n }) => ({ day, what, open: openBy(day), words: `${WORDS[what](n)} on ${showDay(day)}` }));
};

const plural = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
const WORDS: Readonly<Record<TimelineMark['what'], (n: number) => string>> = {
  round: (n) => (n === 1 ? 'A round' : `${n} rounds`),
  care: (n) => plural(n, 'piece of care', 'pieces of care'),
  findings: (n) => plural(n, 'finding raised', 'findings raised'),
};
