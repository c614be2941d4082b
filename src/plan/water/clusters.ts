import type { Rig } from '../../rig';
import { suspectsAt } from '../suspects';
import { apart, type Metered, type Shown } from './spots';

/** Wet places within arm's reach on one side of one wall are one question (ours). [m] */
const REACH = 1;

export type Wet = { readonly metered: readonly Metered[]; readonly shown: readonly Shown[] };

type Item = { readonly at: Metered | Shown; readonly metered: boolean };

/**
 * Wet places put together into questions: those near one another, and those below the same opening or seam.
 *
 * @param metered  places that were wet by a meter, oldest first
 * @param shown    places that show water to eye or hand
 */
export const clustered = (rig: Rig, metered: readonly Metered[], shown: readonly Shown[]): readonly Wet[] => {
  const items: readonly Item[] = [...metered.map((at) => ({ at, metered: true })), ...shown.map((at) => ({ at, metered: false }))];
  const suspects = items.map(({ at }) => new Set(suspectsAt(at.place, rig)));
  const group = items.map((_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (group[r] !== r) r = group[r] ?? r;
    return r;
  };
  items.forEach(({ at: a }, i) => {
    for (let j = 0; j < i; j++) {
      const b = items[j]?.at;
      if (!b) continue;
      const near = a.face === b.face && apart(a.point_m, b.point_m) <= REACH;
      const [mine, theirs] = [suspects[i], suspects[j]];
      const common = mine !== undefined && theirs !== undefined && [...mine].some((s) => theirs.has(s)) && [...mine][0] === [...theirs][0];
      if (near || common) group[root(i)] = root(j);
    }
  });
  const byRoot = new Map<number, Item[]>();
  items.forEach((item, i) => {
    const key = root(i);
    byRoot.set(key, [...(byRoot.get(key) ?? []), item]);
  });
  return [...byRoot.values()].map((all) => ({
    metered: all.filter((x) => x.metered).map((x) => x.at as Metered),
    shown: all.filter((x) => !x.metered).map((x) => x.at as Shown),
  }));
};
