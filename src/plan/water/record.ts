import { kinds } from '../../entries';
import type { Standing, State } from '../../logbook';
import type { Rig } from '../../rig';
import { inOrder } from '../order';
import { REPAIRS } from '../rules/repairs';

/** Kinds that a meter's readings come in, and their scale. */
export const METER_KINDS = { 'wood-moisture-pin': 'pin', 'wood-moisture-pinless': 'pinless', 'moisture-relative': 'relative' } as const;

/** What shows water to eye and hand, where no meter was read. */
export const SIGNS = ['inside-signs', 'roof-soft-spot', 'skin-condition'] as const;

/** Everything that what is known about water rests on; the rest of the logbook may change without it. */
const READ: ReadonlySet<string> = new Set([
  ...Object.keys(METER_KINDS),
  ...SIGNS,
  ...REPAIRS,
  ...kinds.filter((k) => k.id === 'proof-seen').map((k) => k.id),
  'air-and-skin',
  'lived-air',
  'rain-fell',
  'leak-clue',
  'other-cause',
  'water-test',
  'tap-sound',
  'seal-grade',
  'stay',
  'round-begun',
  'round-ended',
]);

/** The entries that speak of water, by kind, oldest first. */
export type WaterRecord = {
  readonly of: (kind: string) => readonly Standing[];
  readonly ofAll: (kinds: Iterable<string>) => readonly Standing[];
  /** The lists themselves: as long as they are the same, so is everything that follows from them. */
  readonly lists: readonly (readonly Standing[])[];
};

const NONE: readonly Standing[] = [];

export const waterRecord = (state: State<Rig>): WaterRecord => {
  const byKind = new Map<string, (readonly Standing[])[]>();
  const lists: (readonly Standing[])[] = [];
  for (const place of state.through.values())
    for (const [kind, list] of place) {
      if (!READ.has(kind)) continue;
      lists.push(list);
      const same = byKind.get(kind);
      if (same) same.push(list);
      else byKind.set(kind, [list]);
    }
  const merged = new Map<string, readonly Standing[]>();
  const of = (kind: string): readonly Standing[] => {
    const known = merged.get(kind) ?? inOrder(byKind.get(kind) ?? [NONE]);
    merged.set(kind, known);
    return known;
  };
  return { of, ofAll: (all) => inOrder([...all].map(of).filter((l) => l.length > 0)), lists };
};

/** Whether two records rest on the same entries. */
export const sameRecord = (a: WaterRecord, b: WaterRecord): boolean =>
  a.lists.length === b.lists.length && a.lists.every((list, i) => list === b.lists[i] || (list.length === b.lists[i]?.length && list.every((s, j) => s === b.lists[i]?.[j])));
