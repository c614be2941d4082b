import type { DeviceId, Draft, Entry, EntryId, Hash, Head, RigId } from '../terms';
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
 * The lines that drafts become: what every store writes, whatever it writes to.
 *
 * @param positionOf   where this device's chain for a rig stands
 * @param drafts       in the order in which they are to stand
 * @param ids          one for each draft
 * @param recorded_at  the device clock's claim
 * @returns            the lines, in the order of the drafts
 */
export const nextLines = (positionOf: (rig: RigId) => Position, drafts: readonly Draft[], ids: readonly EntryId[], recorded_at: string): readonly Line[] => {
  const positions = new Map<RigId, Position>();
  return drafts.map((draft, i) => {
    const position = positions.get(draft.rig) ?? positionOf(draft.rig);
    const { device, heads } = position;
    const counter = position.counter + 1;
    const line = lineOf({ ...draft, id: ids[i] ?? '', recorded_at, device, counter, previous: position.hash, heads } as Entry);
    positions.set(draft.rig, { ...position, counter, hash: line.hash });
    return line;
  });
};

/** Where a device stands among the heads of one rig. */
export const positionAmong = (device: DeviceId, heads: readonly Head[]): Position => {
  const own = heads.find((h) => h.device === device);
  return { device, counter: own?.counter ?? 0, hash: own?.hash ?? null, heads: heads.filter((h) => h.device !== device) };
};

/** The later of two lines of one device; the same answer whichever comes first, even when the counter was used twice. */
export const laterHead = (a: Head | undefined, b: Head): Head => (a === undefined || b.counter > a.counter || (b.counter === a.counter && b.hash < a.hash) ? b : a);

/** The last line of every device, by device. */
export const headsOf = (lines: Iterable<Line>): readonly Head[] => {
  const last = new Map<DeviceId, Head>();
  for (const { entry, hash } of lines) last.set(entry.device, laterHead(last.get(entry.device), { device: entry.device, counter: entry.counter, hash }));
  return [...last.values()].sort((a, b) => (a.device < b.device ? -1 : 1));
};
