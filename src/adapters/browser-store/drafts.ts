import type { RigId } from '../../terms';
import { type Handle, within } from './database';

/** Half-finished input, so that the page can be killed by the camera and come back where it was. Not part of the logbook. */
export type Drafts = {
  readonly save: (rig: RigId, name: string, value: unknown) => Promise<void>;
  readonly load: (rig: RigId, name: string) => Promise<unknown>;
  readonly drop: (rig: RigId, name: string) => Promise<void>;
};

export const browserDrafts = (handle: Handle): Drafts => ({
  save: (rig, name, value) =>
    handle.use((db) => {
      const tx = db.transaction('drafts', 'readwrite', { durability: 'strict' });
      return within(tx, async () => {
        await tx.store.put({ rig, name, value });
      });
    }),
  load: (rig, name) => handle.use(async (db) => (await db.get('drafts', [rig, name]))?.value),
  drop: (rig, name) => handle.use((db) => db.delete('drafts', [rig, name])),
});
