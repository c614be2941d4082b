import { hashOfBytes, type PhotoStore } from '../../logbook';
import { type Handle, within } from './database';

/**
 * Photographs under the hash of their bytes, apart from the entries: an entry never waits for its photograph,
 * and a photograph that does not fit costs no entry.
 */
export const browserPhotos = (handle: Handle): PhotoStore => ({
  put: async (bytes, media_type) => {
    const hash = hashOfBytes(bytes);
    await handle.use((db) => {
      const tx = db.transaction('photos', 'readwrite', { durability: 'strict' });
      return within(tx, async () => {
        if ((await tx.store.getKey(hash)) === undefined) await tx.store.put({ hash, bytes: new Uint8Array(bytes), media_type });
      });
    });
    return hash;
  },
  get: (hash) =>
    handle.use(async (db) => {
      const row = await db.get('photos', hash);
      return row && { bytes: row.bytes, media_type: row.media_type };
    }),
  has: (hash) => handle.use(async (db) => (await db.getKey('photos', hash)) !== undefined),
  hashes: () => handle.use((db) => db.getAllKeys('photos')),
});
