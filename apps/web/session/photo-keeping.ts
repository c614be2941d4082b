import { preparePhoto } from '../../../src/adapters/photo';
import type { PhotoStore } from '../../../src/logbook';
import type { PhotoRef } from '../../../src/terms';

/** Keeps a photograph, whole or reduced as the person chose; the reference that comes back goes into the entry. */
export const keepPhoto = async (store: PhotoStore, bytes: Uint8Array, reduce: boolean): Promise<PhotoRef> => {
  const prepared = await preparePhoto(bytes, reduce);
  if (!prepared.ok) throw new Error(prepared.refusals.map((r) => r.sentence).join(' '));
  await store.put(prepared.value.bytes, prepared.value.ref.media_type);
  return prepared.value.ref;
};
