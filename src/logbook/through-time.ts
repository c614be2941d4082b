import { placeKey } from '../terms';
import { byKnown, compareText, type Known } from './known-order';
import type { Standing } from './state';

/** All standings by place and kind, oldest first; and the latest of each. */
export type ThroughTime = {
  readonly through: ReadonlyMap<string, ReadonlyMap<string, readonly Standing[]>>;
  readonly latest: ReadonlyMap<string, ReadonlyMap<string, Standing>>;
};

/** Where a standing stands on the line of observed time. Remembered for each standing, since reading a time costs more than comparing it. */
type Rank = { readonly at: number; readonly known: Known };
export type Ranks = WeakMap<Standing, Rank>;

/** One entry that stands differently. `at`: where it now stands on the line of observed time. [ms] */
export type Move = { readonly known: Known; readonly at: number; readonly before: Standing | undefined; readonly after: Standing | undefined };

/**
 * Takes standings out of their places and puts others in, copying only the places touched.
 * Places and kinds are kept in the order of their names, so that the same logbook is walked in the same order everywhere.
 *
 * @param moves  in the order of what was known when
 */
export const moved = (old: ThroughTime, moves: readonly Move[], ranks: Ranks): ThroughTime => {
  const through = new Map(old.through) as Map<string, Map<string, Standing[]>>;
  const touched = new Map<string, Set<string>>();

  const touch = (standing: Standing): Standing[] => {
    const [key, kind] = [placeKey(standing.place), standing.entry.kind];
    let kinds = touched.get(key);
    if (kinds === undefined) {
      kinds = new Set();
      touched.set(key, kinds);
      through.set(key, new Map(through.get(key)));
    }
    const place = through.get(key) as Map<string, Standing[]>;
    if (!kinds.has(kind)) {
      kinds.add(kind);
      place.set(kind, [...(place.get(kind) ?? [])]);
    }
    return place.get(kind) as Standing[];
  };

  for (const { known, at, before, after } of moves) {
    if (before) {
      const list = touch(before);
      list.splice(list.indexOf(before), 1);
    }
    if (after) {
      const rank = { at, known };
      ranks.set(after, rank);
      insert(touch(after), after, rank, ranks);
    }
  }

  const latest = new Map(old.latest) as Map<string, Map<string, Standing>>;
  for (const [key, kinds] of touched) {
    const lists = through.get(key) as Map<string, Standing[]>;
    for (const kind of kinds) if (lists.get(kind)?.length === 0) lists.delete(kind);
    if (lists.size === 0) {
      through.delete(key);
      latest.delete(key);
      continue;
    }
    through.set(key, inOrder(lists));
    latest.set(key, new Map([...inOrder(lists)].map(([kind, list]) => [kind, list.at(-1) as Standing])));
  }
  return { through: inOrder(through), latest: inOrder(latest) };
};

const insert = (list: Standing[], standing: Standing, rank: Rank, ranks: Ranks): void => {
  let [low, high] = [0, list.length];
  const last = list.at(-1);
  if (last && before(ranks.get(last), rank)) low = high;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (before(ranks.get(list[middle] as Standing), rank)) low = middle + 1;
    else high = middle;
  }
  list.splice(low, 0, standing);
};

const before = (a: Rank | undefined, b: Rank): boolean => a !== undefined && (a.at - b.at || byKnown(a.known, b.known)) < 0;

/** The map itself when its keys are in order already. */
const inOrder = <V>(map: Map<string, V>): Map<string, V> => {
  let last = '';
  for (const key of map.keys()) {
    if (compareText(last, key) > 0) return new Map([...map].sort(([a], [b]) => compareText(a, b)));
    last = key;
  }
  return map;
};
