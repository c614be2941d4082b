import { type BodyCheck, drawIds, hashOfBytes, headsOf, type Line, type LogbookStore, nextLines, type PhotoStore, positionAmong, type Stamp, uuidV7 } from '../logbook';
import type { DeviceId, Hash, RigId } from '../terms';
import { readForTaking } from './take-in';

/** A logbook that lives as long as the program: for checks, the command line and the demo's making. */
export type MemoryStoreOptions = {
  readonly stamp: Stamp;
  readonly device?: DeviceId;
  /** Judges the body of a line that comes from elsewhere. */
  readonly check?: BodyCheck;
  /** Shared by several stores that stand for several windows on the same data. */
  readonly shelf?: Shelf;
};

export type Shelf = { readonly lines: Map<RigId, Map<Hash, Line>>; readonly devices: Map<RigId, DeviceId> };

export const emptyShelf = (): Shelf => ({ lines: new Map(), devices: new Map() });

export const memoryStore = ({ stamp, device, check, shelf = emptyShelf() }: MemoryStoreOptions): LogbookStore => {
  const own = device ?? uuidV7(0, stamp.random(10));
  const held = (rig: RigId): Map<Hash, Line> => shelf.lines.get(rig) ?? new Map<Hash, Line>();
  const keep = (line: Line): void => {
    const rig = held(line.entry.rig);
    rig.set(line.hash, line);
    shelf.lines.set(line.entry.rig, rig);
  };
  const deviceFor = (rig: RigId): DeviceId => {
    const chosen = shelf.devices.get(rig) ?? own;
    shelf.devices.set(rig, chosen);
    return chosen;
  };
  return {
    rigs: async () => [...shelf.lines.keys()].sort(),
    lines: async (rig) => [...held(rig).values()],
    append: async (drafts) => {
      const lines = nextLines((rig) => positionAmong(deviceFor(rig), headsOf(held(rig).values())), drafts, drawIds(stamp, drafts.length), stamp.now());
      lines.forEach(keep);
      return lines;
    },
    take: async (texts) => {
      const { lines, refused } = readForTaking(texts, check);
      const taken: Line[] = [];
      for (const line of lines) {
        if (held(line.entry.rig).has(line.hash)) continue;
        keep(line);
        taken.push(line);
      }
      return { taken, known: lines.length - taken.length, refused };
    },
    forget: async (rig) => {
      shelf.lines.delete(rig);
      // A new name for whatever is written next: the forgotten lines may come back from a file, and no counter is used twice.
      shelf.devices.set(rig, uuidV7(0, stamp.random(10)));
    },
  };
};

export const memoryPhotos = (): PhotoStore => {
  const held = new Map<Hash, { readonly bytes: Uint8Array; readonly media_type: string }>();
  return {
    put: async (bytes, media_type) => {
      const hash = hashOfBytes(bytes);
      if (!held.has(hash)) held.set(hash, { bytes: bytes.slice(), media_type });
      return hash;
    },
    get: async (hash) => held.get(hash),
    has: async (hash) => held.has(hash),
    hashes: async () => [...held.keys()].sort(),
  };
};
