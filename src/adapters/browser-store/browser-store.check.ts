import 'fake-indexeddb/auto';
import { IDBDatabase, IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readLogbook, writeLogbook } from '../../logbook';
import { acceptLogbookStore, acceptPhotoStore, draft, steadyStamp } from '../store-acceptance';
import { troubleOf } from '../trouble';
import { browserStore } from './index';

/**
 * The browser's store against what every store promises, on a stand-in for IndexedDB that follows the standard but has no disk:
 * it shows what one transaction holds together, not what survives a killed process (the journeys show that in a real browser)
 * and not what survives a power cut (nothing here shows that; the browser is asked for strict durability and taken at its word).
 */
let opened: { close: () => void }[] = [];
let n = 0;
const openStore = (name: string, seed = 1, options: Partial<Parameters<typeof browserStore>[0]> = {}) => {
  const store = browserStore({ name, stamp: steadyStamp(seed), ...options });
  opened.push(store);
  return store;
};
const fresh = (): string => {
  n += 1;
  return `check-${n}`;
};

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
afterEach(() => {
  vi.restoreAllMocks();
  for (const store of opened) store.close();
  opened = [];
});

acceptLogbookStore('browser', async (stamp, check) => {
  const options = { name: fresh(), stamp, ...(check && { check }) };
  const open = () => {
    const store = browserStore(options);
    opened.push(store);
    return store.logbooks;
  };
  return { store: open(), again: async () => open() };
});
acceptPhotoStore('browser', async () => openStore(fresh()).photos);

describe('the browser’s store', () => {
  it('asks for strict durability in every transaction that writes', async () => {
    const asked = vi.spyOn(IDBDatabase.prototype, 'transaction');
    const store = openStore(fresh());
    await store.logbooks.append([draft('rig-1', 1)]);
    await store.photos.put(new Uint8Array(3), 'image/png');
    await store.drafts.save('rig-1', 'note', 'half a sen');
    await store.logbooks.take((await store.logbooks.lines('rig-1')).map((l) => l.text));
    const writing = asked.mock.calls.filter(([, mode]) => mode === 'readwrite');
    expect(writing).toHaveLength(4);
    for (const [, , options] of writing) expect(options).toEqual({ durability: 'strict' });
  });

  it('puts line, counter and hash into one transaction', async () => {
    const asked = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await openStore(fresh()).logbooks.append([draft('rig-1', 1), draft('rig-2', 1)]);
    expect(asked.mock.calls.filter(([, mode]) => mode === 'readwrite').map(([stores]) => stores)).toEqual([['lines', 'chains', 'devices']]);
  });

  it('opens the database anew when the browser has dropped the handle', async () => {
    const store = openStore(fresh());
    await store.logbooks.append([draft('rig-1', 1)]);
    const real = IDBDatabase.prototype.transaction;
    for (const [name, message] of [
      ['InvalidStateError', 'The database connection is closing.'],
      ['UnknownError', 'Connection to Indexed Database server lost. Refresh the page to try again'],
      ['AbortError', 'gone'],
    ]) {
      const lost = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementationOnce(() => {
        throw new DOMException(message, name);
      });
      await store.logbooks.append([draft('rig-1', 2)]);
      lost.mockRestore();
      expect(IDBDatabase.prototype.transaction).toBe(real);
    }
    const lines = await store.logbooks.lines('rig-1');
    expect(lines).toHaveLength(4);
    expect(readLogbook(writeLogbook(lines)).verification.whole).toBe(true);
    expect(store.trouble()).toBeUndefined();
  });

  it('does not go on with a handle that is dead for good', async () => {
    const store = openStore(fresh());
    const asked = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await store.logbooks.append([draft('rig-1', 1)]);
    (asked.mock.contexts[0] as IDBDatabase).close();
    await store.logbooks.append([draft('rig-1', 2)]);
    expect(await store.logbooks.lines('rig-1')).toHaveLength(2);
  });

  it('does not write twice when the handle is lost after the entry was kept', async () => {
    const store = openStore(fresh());
    await store.logbooks.append([draft('rig-1', 1)]);
    const real = IDBDatabase.prototype.transaction;
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementationOnce(function (this: IDBDatabase, ...args: Parameters<typeof real>) {
      const tx = real.apply(this, args);
      // The transaction commits, but the page hears of a failure instead.
      const listen = tx.addEventListener.bind(tx) as (type: string, listener: unknown) => void;
      tx.addEventListener = ((type: string, listener: unknown) => {
        if (type === 'abort') listen('complete', listener);
        if (type !== 'complete') listen(type, listener);
      }) as typeof tx.addEventListener;
      return tx;
    });
    const [line] = await store.logbooks.append([draft('rig-1', 2)]);
    const lines = await store.logbooks.lines('rig-1');
    expect(lines.map((l) => l.entry.counter).sort()).toEqual([1, 2]);
    expect(lines.map((l) => l.hash)).toContain(line?.hash);
  });

  it('says plainly when the handle cannot be had again, and loses nothing', async () => {
    const store = openStore(fresh());
    await store.logbooks.append([draft('rig-1', 1)]);
    const lost = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(() => {
      throw new DOMException('Connection to Indexed Database server lost', 'UnknownError');
    });
    const error: unknown = await store.logbooks.append([draft('rig-1', 2)]).catch((e: unknown) => e);
    expect(troubleOf(error)?.code).toBe('lost');
    expect(store.trouble()?.safe).toContain('still on this device');
    lost.mockRestore();
    await store.logbooks.append([draft('rig-1', 2)]);
    expect(store.trouble()).toBeUndefined();
    expect(await store.logbooks.lines('rig-1')).toHaveLength(2);
  });

  it('when there is no room keeps nothing of the batch and all from before, and goes on when there is room', async () => {
    const store = openStore(fresh());
    await store.logbooks.append([draft('rig-1', 1)]);
    const add = IDBObjectStore.prototype.add;
    let adds = 0;
    const full = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...args: Parameters<typeof add>) {
      adds += 1;
      if (adds === 2) throw new DOMException('no room', 'QuotaExceededError');
      return add.apply(this, args);
    });
    const error: unknown = await store.logbooks.append([draft('rig-1', 2), draft('rig-1', 3)]).catch((e: unknown) => e);
    expect(troubleOf(error)?.code).toBe('no-room');
    expect(store.trouble()?.happened).toContain('no room');
    full.mockRestore();
    expect(await store.logbooks.lines('rig-1')).toHaveLength(1);
    const [next] = await store.logbooks.append([draft('rig-1', 4)]);
    expect(next?.entry.counter).toBe(2);
    expect(store.trouble()).toBeUndefined();
  });

  it('says plainly that nothing can be kept where storage is denied', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    });
    const error: unknown = await openStore(fresh())
      .logbooks.append([draft('rig-1', 1)])
      .catch((e: unknown) => e);
    expect(troubleOf(error)?.code).toBe('not-allowed');
  });

  it('does not dress up its own mistakes as trouble with the browser', async () => {
    const error: unknown = await openStore(fresh())
      .logbooks.append([draft('rig-1', 1, { body: { x: Number.POSITIVE_INFINITY } })])
      .catch((e: unknown) => e);
    expect(error).toBeInstanceOf(Error);
    expect(troubleOf(error)).toBeUndefined();
  });

  it('opens what a newer version of the page has left, and lets go when a newer one wants to add', async () => {
    const name = fresh();
    const store = openStore(name);
    await store.logbooks.append([draft('rig-1', 1)]);
    const newer = await new Promise<{ close: () => void }>((resolve, reject) => {
      const request = indexedDB.open(name, 9);
      request.onupgradeneeded = () => request.result.createObjectStore('from-later');
      request.onblocked = () => reject(new Error('the older page holds on'));
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    await store.logbooks.append([draft('rig-1', 2)]);
    expect(await store.logbooks.lines('rig-1')).toHaveLength(2);
    newer.close();
    expect((await openStore(name).logbooks.append([draft('rig-1', 3)]))[0]?.entry.counter).toBe(3);
  });

  it('tells other windows, and its own', async () => {
    const name = fresh();
    const [one, two] = [openStore(name), openStore(name)];
    const heard: string[] = [];
    const hears = new Promise<void>((resolve) => {
      two.watch((rig) => {
        heard.push(`two ${rig}`);
        resolve();
      });
    });
    one.watch((rig) => heard.push(`one ${rig}`));
    await one.logbooks.append([draft('rig-1', 1), draft('rig-1', 2)]);
    await hears;
    expect(heard).toEqual(['one rig-1', 'two rig-1']);
  });

  it('counts what is only here', async () => {
    const store = openStore(fresh());
    const other = openStore(fresh(), 2);
    expect(await store.copies.of('rig-1')).toEqual({ only_here: 0 });
    await store.logbooks.append([draft('rig-1', 1), draft('rig-1', 2), draft('rig-10', 1)]);
    const theirs = await other.logbooks.append([draft('rig-1', 3)]);
    await store.logbooks.take(theirs.map((l) => l.text));
    expect(await store.copies.of('rig-1')).toEqual({ only_here: 2 });
    const [last] = (await store.logbooks.append([draft('rig-1', 4)])).map((l) => l.entry);
    await store.copies.mark('rig-1', [{ device: last?.device ?? '', counter: 2, hash: '0'.repeat(64) }], '2026-05-03T10:00:00Z');
    expect(await store.copies.of('rig-1')).toEqual({ only_here: 1, at: '2026-05-03T10:00:00Z' });
    expect(await store.copies.of('rig-10')).toEqual({ only_here: 1 });
    // Its own lines came back in a file: so that file has them.
    await store.logbooks.take((await store.logbooks.lines('rig-1')).map((l) => l.text));
    expect((await store.copies.of('rig-1')).only_here).toBe(0);
  });

  it('keeps half-finished input apart from the logbook, and forgets it with the rig', async () => {
    const name = fresh();
    await openStore(name).drafts.save('rig-1', 'station', { typed: '17,' });
    await openStore(name).drafts.save('rig-10', 'station', 'other');
    const store = openStore(name);
    expect(await store.drafts.load('rig-1', 'station')).toEqual({ typed: '17,' });
    expect(await store.logbooks.rigs()).toEqual([]);
    await store.logbooks.forget('rig-1');
    expect(await store.drafts.load('rig-1', 'station')).toBeUndefined();
    expect(await store.drafts.load('rig-10', 'station')).toBe('other');
    await store.drafts.drop('rig-10', 'station');
    expect(await store.drafts.load('rig-10', 'station')).toBeUndefined();
  });

  it('forgets the photographs of a rig, but not those another rig shows too', async () => {
    const store = openStore(fresh());
    const photo = async (byte: number) => ({ hash: await store.photos.put(Uint8Array.of(byte), 'image/jpeg'), media_type: 'image/jpeg', size_bytes: 1 });
    const [one, both] = [await photo(1), await photo(2)];
    await store.logbooks.append([draft('rig-1', 1, { photos: [one, both] }), draft('rig-2', 1, { photos: [both] })]);
    await store.logbooks.forget('rig-1');
    expect(await store.photos.hashes()).toEqual([both.hash]);
  });

  it('keeps the rest usable when one line was damaged on the disk', async () => {
    const name = fresh();
    const store = openStore(name);
    await store.logbooks.append([draft('rig-1', 1), draft('rig-1', 2)]);
    const request = indexedDB.open(name);
    await new Promise<void>((resolve) => {
      request.onsuccess = () => {
        const tx = request.result.transaction('lines', 'readwrite');
        const all = tx.objectStore('lines').getAll();
        all.onsuccess = () => tx.objectStore('lines').put({ ...all.result[0], text: all.result[0].text.slice(0, 30) });
        tx.oncomplete = () => resolve();
      };
    });
    request.result.close();
    expect(await store.logbooks.lines('rig-1')).toHaveLength(1);
    expect(store.trouble()?.code).toBe('unreadable');
  });
});
