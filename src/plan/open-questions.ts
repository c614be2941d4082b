import type { EntryId, Station } from '../terms';
import { type CivilDay, civilDay, showDay } from '../units';
import type { ReadyReason } from './plan-types';

/** A question of the round before a trip that has no answer young enough, at one station. */
export type OpenQuestion = {
  /** The kind that asks. */
  readonly order: string;
  /** `Tyre pressure`. */
  readonly what: string;
  /** What is left open: `not recorded`, `last recorded`; empty where `what` says it all. */
  readonly left: string;
  readonly day?: CivilDay;
  readonly station: Station;
  readonly entries: readonly EntryId[];
};

/** What is asked for first, the most dangerous first; what is stowed and hitched comes after the tyres, all else as the rig is walked round. */
const FIRST: readonly string[] = ['tyre-pressure', 'tyre-sidewall'];

const lower = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

/** More names than this in one line help nobody (our choice). */
const MOST_NAMES = 3;

/** What the stations of a group are together: `4 tyres`; a few places by their names, which may hold commas. */
const together = (stations: readonly Station[]): string => {
  if (stations.every((s) => s.looks === 'tyre')) return `${stations.length} tyres`;
  if (stations.every((s) => s.looks === 'lamp')) return `${stations.length} lamps`;
  return stations.length <= MOST_NAMES ? stations.map((s) => s.name).join('; ') : `${stations.length} places`;
};

const one = ({ what, left, day, station, entries }: OpenQuestion): ReadyReason => ({
  text: `${left === '' ? `${station.name} ${lower(what)}` : `${station.name}: ${lower(what)} ${left}`}${day === undefined ? '' : ` on ${showDay(day)}`}.`,
  station: station.id,
  entries,
});

const several = (group: readonly OpenQuestion[]): ReadyReason | undefined => {
  const [first] = group;
  if (!first) return undefined;
  if (group.length === 1) return one(first);
  const days = group.flatMap((q) => q.day ?? []);
  const last = days.length === 0 ? undefined : civilDay(Math.max(...days));
  const when = last === undefined ? '' : ` on ${showDay(last)}${days.some((d) => d !== last) ? ' or before' : ''}`;
  return {
    text: `${first.what}${first.left === '' ? '' : ` ${first.left}`}${when}: ${together(group.map((q) => q.station))}.`,
    stations: group.map((q) => q.station.id),
    entries: [...new Set(group.flatMap((q) => q.entries))],
  };
};

/** Open questions with what is alike in one line: `Tyre pressure not recorded: 4 tyres.` `stowing` has its place after the tyres. */
export const inGroups = (questions: readonly OpenQuestion[], stowing: readonly ReadyReason[]): readonly ReadyReason[] => {
  const groups = new Map<string, OpenQuestion[]>();
  for (const q of questions) {
    const key = q.left === '' ? q.what : `${q.order} ${q.left}`;
    groups.set(key, [...(groups.get(key) ?? []), q]);
  }
  const lists = [...groups.values()];
  const place = (group: readonly OpenQuestion[]): number => {
    const at = FIRST.indexOf(group[0]?.order ?? '');
    return at < 0 ? FIRST.length : at;
  };
  const told = (is: (at: number) => boolean): readonly ReadyReason[] =>
    lists
      .filter((g) => is(place(g)))
      .sort((a, b) => place(a) - place(b))
      .flatMap((g) => several(g) ?? []);
  return [...told((at) => at < FIRST.length), ...stowing, ...told((at) => at === FIRST.length)];
};
