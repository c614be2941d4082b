import { type BodyCheck, drawIds, type Line, type LogbookStore, laterHead, nextLines, positionAmong, type Stamp, uuidV7 } from '../../logbook';
import type { DeviceId, Draft, Entry, Head, RigId } from '../../terms';
import { parseInstant } from '../../units';
import { readForTaking } from '../take-in';
import type { Trouble } from '../trouble';
import type { Changes } from './changes';
import { type ChainRow, type Database, type Handle, type LineRow, ofRig, together, within } from './database';

/** Nothing called kept is lost when the power fails: the browser flushes to the disk before it says that a transaction is done. */
const STRICT = { durability: 'strict' } as const;
/** Lines taken from a file go in by portions, so that one transaction does not hold up an entry being written meanwhile. */
const PORTION = 500;

export type LinesOptions = { readonly stamp: Stamp; readonly check?: BodyCheck };

const rowOf = ({ entry, text, hash }: Line): LineRow => ({ rig: entry.rig, hash, id: entry.id, text, photos: (entry.photos ?? []).map((p) => p.hash) });
const lineOfRow = ({ text, hash }: LineRow): Line => ({ entry: JSON.parse(text) as Entry, text, hash });
const headOf = ({ device, counter, hash }: ChainRow): Head => ({ device, counter, hash });

export const browserLines = (handle: Handle, changes: Changes, { stamp, check }: LinesOptions, tell: (trouble: Trouble | undefined) => void): LogbookStore => ({
  rigs: () => handle.use(async (db) => [...new Set((await db.getAllKeys('chains')).map(([rig]) => rig))]),

  lines: (rig) =>
    handle.use(async (db) => {
      const lines: Line[] = [];
      let unreadable = 0;
      for (const row of await db.getAll('lines', ofRig(rig))) {
        try {
          lines.push(lineOfRow(row));
        } catch {
          unreadable += 1; // Damaged on the disk: the rest of the logbook stays usable, and people are told.
        }
      }
      if (unreadable > 0)
        tell({
          code: 'unreadable',
          happened: `${unreadable} ${unreadable === 1 ? 'entry was' : 'entries were'} damaged on this device and cannot be read.`,
          safe: 'The other entries can be read.',
          todo: 'Take in a copy of this logbook from a file, if there is one.',
        });
      return lines;
    }),

  append: async (drafts) => {
    if (drafts.length === 0) return [];
    // Drawn once: if the browser drops the handle while a try is being kept, the next try finds these ids and does not write twice.
    const ids = drawIds(stamp, drafts.length);
    const recorded_at = stamp.now();
    const name = uuidV7(parseInstant(recorded_at) ?? 0, stamp.random(10));
    const lines = await handle.use((db, attempt) => appendOnce(db, drafts, ids, recorded_at, name, attempt > 0));
    tell(undefined);
    changes.tell(lines.map((l) => l.entry.rig));
    return lines;
  },

  take: async (texts) => {
    const { lines, refused } = readForTaking(texts, check);
    const taken: Line[] = [];
    for (let at = 0; at < lines.length; at += PORTION) taken.push(...(await handle.use((db) => takeOnce(db, lines.slice(at, at + PORTION)))));
    changes.tell(taken.map((l) => l.entry.rig));
    return { taken, known: lines.length - taken.length, refused };
  },

  forget: async (rig) => {
    const name = uuidV7(parseInstant(stamp.now()) ?? 0, stamp.random(10));
    await handle.use((db) => forgetOnce(db, rig, name));
    changes.tell([rig]);
  },
});

/**
 * One transaction: reads where this device stands, makes the lines, writes them. Nothing in it waits for anything but the database,
 * or the browser would close the transaction in between; that is why the hash is worked out synchronously.
 */
const appendOnce = (db: Database, drafts: readonly Draft[], ids: readonly string[], recorded_at: string, name: DeviceId, again: boolean): Promise<readonly Line[]> => {
  const tx = db.transaction(['lines', 'chains', 'devices'], 'readwrite', STRICT);
  return within(tx, async () => {
    const [lines, chains, devices] = [tx.objectStore('lines'), tx.objectStore('chains'), tx.objectStore('devices')];
    if (again) {
      const found = await Promise.all(drafts.map((d, i) => lines.index('by_id').get([d.rig, ids[i] ?? ''])));
      if (found.every((row) => row !== undefined)) return found.map(lineOfRow);
    }
    const own = (await devices.get(OWN)) ?? name;
    const rigs = new Map<RigId, { readonly device: DeviceId; readonly rows: readonly ChainRow[] }>();
    for (const rig of new Set(drafts.map((d) => d.rig))) rigs.set(rig, { device: (await devices.get(forRig(rig))) ?? own, rows: await chains.getAll(ofRig(rig)) });
    const written = nextLines(
      (rig) => {
        const at = rigs.get(rig);
        return positionAmong(at?.device ?? own, (at?.rows ?? []).map(headOf));
      },
      drafts,
      ids,
      recorded_at,
    );
    const last = new Map(written.map((line) => [line.entry.rig, line]));
    const elsewhere = ({ rig, device }: Entry): number => rigs.get(rig)?.rows.find((r) => r.device === device)?.elsewhere ?? 0;
    await together(
      () => devices.put(own, OWN),
      ...written.map((line) => () => lines.add(rowOf(line))),
      ...[...last.values()].map(
        ({ entry, hash }) =>
          () =>
            chains.put({ rig: entry.rig, device: entry.device, counter: entry.counter, hash, elsewhere: elsewhere(entry) }),
      ),
    );
    return written;
  });
};

const OWN = 'own';
const forRig = (rig: RigId): string => `rig/${rig}`;

const takeOnce = (db: Database, all: readonly Line[]): Promise<readonly Line[]> => {
  const tx = db.transaction(['lines', 'chains'], 'readwrite', STRICT);
  return within(tx, async () => {
    const [lines, chains] = [tx.objectStore('lines'), tx.objectStore('chains')];
    const known = await Promise.all(all.map((l) => lines.getKey([l.entry.rig, l.hash])));
    const fresh = all.filter((_, i) => known[i] === undefined);
    const taken = [...new Map(fresh.map((l) => [l.hash, l])).values()];
    // Lines held already count too: that they came in a file shows that the file has them.
    const rows = new Map<string, ChainRow>();
    for (const { entry, hash } of all) {
      const key = JSON.stringify([entry.rig, entry.device]);
      const row = rows.get(key) ?? (await chains.get([entry.rig, entry.device]));
      const head = laterHead(row && headOf(row), { device: entry.device, counter: entry.counter, hash });
      rows.set(key, { rig: entry.rig, ...head, elsewhere: Math.max(row?.elsewhere ?? 0, entry.counter) });
    }
    await together(...taken.map((line) => () => lines.add(rowOf(line))), ...[...rows.values()].map((row) => () => chains.put(row)));
    return taken;
  });
};

const forgetOnce = (db: Database, rig: RigId, name: DeviceId): Promise<void> => {
  const tx = db.transaction(['lines', 'chains', 'devices', 'copied', 'drafts', 'photos'], 'readwrite', STRICT);
  return within(tx, async () => {
    const lines = tx.objectStore('lines');
    const photos = new Set((await lines.getAll(ofRig(rig))).flatMap((row) => row.photos));
    await lines.delete(ofRig(rig));
    // A photograph may belong to another rig's entry as well.
    for (const hash of photos) if ((await lines.index('by_photo').count(hash)) === 0) await tx.objectStore('photos').delete(hash);
    await together(
      () => tx.objectStore('chains').delete(ofRig(rig)),
      () => tx.objectStore('copied').delete(rig),
      () => tx.objectStore('drafts').delete(ofRig(rig)),
      // A new name for whatever is written next: the forgotten lines may come back from a file, and no counter is used twice.
      () => tx.objectStore('devices').put(name, forRig(rig)),
    );
  });
};
