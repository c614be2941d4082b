import type { DeviceId, Draft, Entry, EntryId, Hash, Head } from '../terms';
import { parseInstant } from '../units';
import { lineOf, uuidV7 } from './line';
import type { Stamp } from './ports';
import type { Line } from './state';

/** Where a device's chain for one rig stands: its last line, and the last line held from every other device. */
export type Position = { readonly device: DeviceId; readonly counter: number; readonly hash: Hash | null; readonly heads: readonly Head[] };

/** Ids for entries still to be written. They are drawn before the first attempt, so that an attempt can be repeated without writing twice. */
export const drawIds = (stamp: Stamp, count: number): readonly EntryId[] => {
  const now = parseInstant(stamp.now());
  return Array.from({ length: count }, () => uuidV7(now ?? 0, stamp.random(10)));
};

/**
 * The lines that follow a position: what every store writes, whatever it writes to.
 *
 * @param drafts       for one rig, in the order in which they are to stand
 * @param ids          one for each draft
 * @param recorded_at  the device clock's claim
 */
export const nextLines = (position: Position, drafts: readonly Draft[], ids: readonly EntryId[], recorded_at: string): readonly Line[] => {
  const { device, heads } = position;
  let { counter, hash } = position;
  return drafts.map((draft, i) => {
    counter += 1;
    const line = lineOf({ ...draft, id: ids[i] ?? '', recorded_at, device, counter, previous: hash, heads } as Entry);
    hash = line.hash;
    return line;
  });
};

/** The later of two lines of one device; the same answer whichever comes first, even when the counter was used twice. */
export const laterHead = (a: Head | undefined, b: Head): Head => (a === undefined || b.counter > a.counter || (b.counter === a.counter && b.hash < a.hash) ? b : a);

/** The last line of every device, by device. */
export const headsOf = (lines: Iterable<Line>): readonly Head[] => {
  const last = new Map<DeviceId, Head>();
  for (const { entry, hash } of lines) last.set(entry.device, laterHead(last.get(entry.device), { device: entry.device, counter: entry.counter, hash }));
  return [...last.values()].sort((a, b) => (a.device < b.device ? -1 : 1));
};
