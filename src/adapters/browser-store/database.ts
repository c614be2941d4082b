import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { DeviceId, EntryId, Hash, Head, RigId } from '../../terms';
import { type Trouble, withTrouble } from '../trouble';
import { HELD_BY_OLDER, isLostHandle, isStorageFailure, storageTrouble } from './storage-trouble';

/**
 * The database in the browser. Stores are only ever added: no row of the logbook is rewritten by a newer version,
 * and an older version of the page can go on using what a newer one left.
 */
export type LineRow = { readonly rig: RigId; readonly hash: Hash; readonly id: EntryId; readonly text: string; readonly photos: readonly Hash[] };
/** The last line of one device for one rig; `elsewhere`: up to this counter its lines came from a file, so that file has them. */
export type ChainRow = { readonly rig: RigId; readonly device: DeviceId; readonly counter: number; readonly hash: Hash; readonly elsewhere: number };
export type CopiedRow = { readonly rig: RigId; readonly heads: readonly Head[]; readonly at: string };
export type DraftRow = { readonly rig: RigId; readonly name: string; readonly value: unknown };
export type PhotoRow = { readonly hash: Hash; readonly bytes: Uint8Array<ArrayBuffer>; readonly media_type: string };

type Schema = DBSchema & {
  lines: { key: [RigId, Hash]; value: LineRow; indexes: { by_id: [RigId, EntryId]; by_photo: Hash } };
  chains: { key: [RigId, DeviceId]; value: ChainRow };
  /** This browser's own name as a device; under a rig's id, the name it goes by for that rig. */
  devices: { key: string; value: DeviceId };
  copied: { key: RigId; value: CopiedRow };
  drafts: { key: [RigId, string]; value: DraftRow };
  photos: { key: Hash; value: PhotoRow };
};

export type Database = IDBPDatabase<Schema>;

const VERSION = 1;

/** All rows of one rig in a store whose keys begin with the rig: arrays sort above every text, so no other rig's key lies between. */
export const ofRig = (rig: RigId): IDBKeyRange => IDBKeyRange.bound([rig], [rig, []]);

export type Handle = {
  /**
   * Works on the database; when the browser has dropped the handle, opens another and works again. The work must bear repetition:
   * `attempt` tells it that an earlier try may have been kept without a word.
   */
  readonly use: <T>(work: (database: Database, attempt: number) => Promise<T>) => Promise<T>;
  readonly close: () => void;
};

type Transaction = { readonly done: Promise<void>; readonly error: DOMException | null; readonly abort: () => void };

/**
 * Works within a transaction and resolves only when it is durable. When the work fails, nothing of it is kept;
 * and what stopped the transaction is told rather than that it was stopped.
 */
export const within = async <T>(tx: Transaction, work: () => Promise<T>): Promise<T> => {
  try {
    const result = await work();
    await tx.done;
    return result;
  } catch (error) {
    try {
      tx.abort();
    } catch {
      // Over already.
    }
    await tx.done.catch((stopped: unknown) => {
      if (tx.error) throw stopped;
    });
    throw error;
  }
};

/** Starts requests side by side. One that fails while others are under way leaves none of them unheard. */
export const together = async (...starts: readonly (() => Promise<unknown>)[]): Promise<void> => {
  await Promise.all(starts.map(async (start) => start()));
};

const ATTEMPTS = 4;
const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** @param tell  what people should know about the database now; undefined when all is well again */
export const openHandle = (name: string, tell: (trouble: Trouble | undefined) => void): Handle => {
  let opened: Promise<Database> | undefined;

  const drop = async (): Promise<void> => {
    const old = opened;
    opened = undefined;
    (await old?.catch(() => undefined))?.close();
  };

  const handle = (): Promise<Database> => {
    opened ??= open(name, drop, tell);
    return opened;
  };

  return {
    use: async (work) => {
      for (let attempt = 0; ; attempt += 1) {
        try {
          const result = await work(await handle(), attempt);
          if (attempt > 0) tell(undefined);
          return result;
        } catch (error) {
          if (!isStorageFailure(error)) throw error;
          await drop();
          if (!isLostHandle(error) || attempt + 1 >= ATTEMPTS) {
            const trouble = storageTrouble(error);
            tell(trouble);
            throw withTrouble(trouble, error);
          }
          await pause(20 * 4 ** attempt);
        }
      }
    },
    close: () => void drop(),
  };
};

const open = async (name: string, drop: () => Promise<void>, tell: (trouble: Trouble | undefined) => void): Promise<Database> => {
  if (typeof indexedDB === 'undefined') throw Object.assign(new Error('no IndexedDB'), { name: 'ReferenceError-indexedDB' });
  const callbacks = {
    blocked: () => tell(HELD_BY_OLDER),
    /** A newer page wants to add to the database: let go, so that it can. The next use opens whatever is there then. */
    blocking: () => void drop(),
    terminated: () => void drop(),
  };
  try {
    return await openDB<Schema>(name, VERSION, {
      ...callbacks,
      upgrade: (database, from) => {
        if (from < 1) {
          const lines = database.createObjectStore('lines', { keyPath: ['rig', 'hash'] });
          lines.createIndex('by_id', ['rig', 'id']);
          lines.createIndex('by_photo', 'photos', { multiEntry: true });
          database.createObjectStore('chains', { keyPath: ['rig', 'device'] });
          database.createObjectStore('devices');
          database.createObjectStore('copied', { keyPath: 'rig' });
          database.createObjectStore('drafts', { keyPath: ['rig', 'name'] });
          database.createObjectStore('photos', { keyPath: 'hash' });
        }
      },
    });
  } catch (error) {
    // A newer version of this page was here before. It has only added; without a version the browser opens what is there.
    if ((error as { name?: unknown }).name === 'VersionError') return openDB<Schema>(name, undefined, callbacks);
    throw error;
  }
};
