import type { Draft, Entry, Hash, RigId } from '../terms';
import type { Refusal } from '../units';
import type { Line } from './state';

/** Supplies what only the outside world knows: who, when, chance. */
export type Stamp = { readonly now: () => string; readonly random: (bytes: number) => Uint8Array };

export type Kept = { readonly line: Line };

/**
 * Where lines are kept. An append is acknowledged only once it is durable; counter, previous hash and line
 * are decided in one transaction, so that two writers cannot fork a device's chain.
 */
export type LogbookStore = {
  readonly rigs: () => Promise<readonly RigId[]>;
  readonly lines: (rig: RigId) => Promise<readonly Line[]>;
  /** Writes this device's next entries, in order, all or none. */
  readonly append: (drafts: readonly Draft[]) => Promise<readonly Line[]>;
  /** Takes in lines from elsewhere. Lines already held are passed over; a line that is refused does not stop the others. */
  readonly take: (lines: readonly string[]) => Promise<{
    readonly taken: readonly Line[];
    readonly known: number;
    readonly refused: readonly { readonly line: number; readonly text: string; readonly refusals: readonly Refusal[] }[];
  }>;
  /** Forgets a rig altogether: only for the demo and for a person who asks twice. */
  readonly forget: (rig: RigId) => Promise<void>;
};

/** Photographs under the hash of their bytes. */
export type PhotoStore = {
  readonly put: (bytes: Uint8Array, media_type: string) => Promise<Hash>;
  readonly get: (hash: Hash) => Promise<{ readonly bytes: Uint8Array; readonly media_type: string } | undefined>;
  readonly has: (hash: Hash) => Promise<boolean>;
  readonly hashes: () => Promise<readonly Hash[]>;
};

export type { Entry };
