import type { Hash, RigId } from '../terms';
import { compareText, inKnownOrder } from './known-order';
import type { Line } from './state';

/** Two logbooks of one rig become one: every line of either, each once. Which is called the first makes no difference. */
export const merge = (one: readonly Line[], other: readonly Line[]): readonly Line[] => inKnownOrder(byHash([...one, ...other]));

const byHash = (lines: readonly Line[]): readonly Line[] => [...new Map<Hash, Line>(lines.map((l) => [l.hash, l])).values()];

/** Lines sorted by the rig they belong to; rigs in the order of their ids. */
export const byRig = (lines: readonly Line[]): ReadonlyMap<RigId, readonly Line[]> => {
  const rigs = new Map<RigId, Line[]>();
  for (const line of lines) {
    const list = rigs.get(line.entry.rig);
    if (list) list.push(line);
    else rigs.set(line.entry.rig, [line]);
  }
  return new Map([...rigs].sort(([a], [b]) => compareText(a, b)));
};
