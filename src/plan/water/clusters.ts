import { type Rig, type WaterPath, type WaterSpot, waterPaths } from '../../rig';
import { apart, type Metered, type Shown } from './spots';

/** Wet places within arm's reach on one wall are one question (ours). [m] */
const REACH = 1;
/** Places that water from one gap reaches this readily are one question too (ours). [m] */
const READY = 2;

export type Wet = { readonly metered: readonly Metered[]; readonly shown: readonly Shown[] };

type Item = { readonly at: Metered | Shown; readonly metered: boolean };

const LEVEL = { nose_up_rad: 0, curb_up_rad: 0 };

/** A place as the ways of water see it. */
export const waterSpot = ({ id, face, side, point_m }: Pick<Metered, 'id' | 'face' | 'side' | 'point_m'>): WaterSpot => ({ id, face, side, point_m });

/** Water from one gap gets to both: the same opening, or the same stretch of a seam. */
const haveOneWayIn = (a: readonly WaterPath[], b: readonly WaterPath[]): boolean =>
  a.some((p) => b.some((q) => q.source === p.source && q.from.face === p.from.face && apart(q.from.point_m, p.from.point_m) <= REACH));

/**
 * Wet places put together into questions: those near one another, and those that water from one gap reaches readily.
 *
 * @param metered  places that were wet by a meter, oldest first
 * @param shown    places that show water to eye or hand
 */
export const clustered = (rig: Rig, metered: readonly Metered[], shown: readonly Shown[]): readonly Wet[] => {
  const items: readonly Item[] = [...metered.map((at) => ({ at, metered: true })), ...shown.map((at) => ({ at, metered: false }))];
  if (items.length === 0) return [];
  const group = items.map((_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (group[r] !== r) r = group[r] ?? r;
    return r;
  };
  const join = (one: (a: Item['at'], b: Item['at']) => boolean): void =>
    items.forEach(({ at: a }, i) => {
      for (let j = 0; j < i; j++) {
        const b = items[j]?.at;
        if (b && root(i) !== root(j) && one(a, b)) group[root(i)] = root(j);
      }
    });
  join((a, b) => a.face === b.face && apart(a.point_m, b.point_m) <= REACH);
  const ready = new Map<string, WaterPath[]>();
  if (items.some((_, i) => root(i) !== root(0))) {
    for (const path of waterPaths(
      rig,
      items.map(({ at }) => waterSpot(at)),
      LEVEL,
      'parked',
    ))
      if (path.effort_m <= READY) ready.set(path.spot, [...(ready.get(path.spot) ?? []), path]);
    join((a, b) => haveOneWayIn(ready.get(a.id) ?? [], ready.get(b.id) ?? []));
  }
  const byRoot = new Map<number, Item[]>();
  items.forEach((item, i) => {
    byRoot.set(root(i), [...(byRoot.get(root(i)) ?? []), item]);
  });
  return [...byRoot.values()].map((all) => ({
    metered: all.filter((x) => x.metered).map((x) => x.at as Metered),
    shown: all.filter((x) => !x.metered).map((x) => x.at as Shown),
  }));
};
