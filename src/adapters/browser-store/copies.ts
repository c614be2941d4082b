import type { Head, RigId } from '../../terms';
import { type Handle, ofRig } from './database';

/** What of a rig's logbook has been copied off this device, as far as this device knows. */
export type Copied = {
  /** Entries that are only here. */
  readonly only_here: number;
  /** When it was last copied off. */
  readonly at?: string;
};

export type Copies = {
  /** A copy with these heads has been handed over. Whether the person then kept the file is theirs to know. */
  readonly mark: (rig: RigId, heads: readonly Head[], at: string) => Promise<void>;
  readonly of: (rig: RigId) => Promise<Copied>;
};

export const browserCopies = (handle: Handle): Copies => ({
  mark: (rig, heads, at) =>
    handle.use(async (db) => {
      await db.put('copied', { rig, heads, at });
    }),
  of: (rig) =>
    handle.use(async (db) => {
      const tx = db.transaction(['chains', 'copied']);
      const [chains, copied] = await Promise.all([tx.objectStore('chains').getAll(ofRig(rig)), tx.objectStore('copied').get(rig)]);
      const upTo = (device: string): number => copied?.heads.find((h) => h.device === device)?.counter ?? 0;
      const only_here = chains.reduce((sum, c) => sum + Math.max(0, c.counter - Math.max(c.elsewhere, upTo(c.device))), 0);
      return copied === undefined ? { only_here } : { only_here, at: copied.at };
    }),
});
