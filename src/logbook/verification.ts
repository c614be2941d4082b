import type { Hash, Head, RigId } from '../terms';
import type { Refusal } from '../units';
import type { Breach, Chain } from './chain-ledger';

/** The last line of an export: how many entries it has, the last of each device, and one hash for all of them. */
export type Trailer = { readonly count: number; readonly heads: readonly Head[]; readonly digest: Hash };

/** A line that could not be read as an entry. It is set aside with its number, and nothing else is touched. */
export type Quarantined = { readonly line: number; readonly text: string; readonly refusals: readonly Refusal[] };

/**
 * `right`    the closing line agrees with the entries
 * `wrong`    it does not: entries were changed, lost or added
 * `missing`  there is none: the file was cut off at a line end, or is not a whole export
 * `cut`      there is none, and the last line is broken off
 */
export type Closing = 'right' | 'wrong' | 'missing' | 'cut';

export type Verification = {
  /** Nothing is wrong: every line can be read, every chain holds, the closing line agrees. */
  readonly whole: boolean;
  readonly entries: number;
  readonly repeated: number;
  readonly rigs: readonly RigId[];
  readonly chains: readonly Chain[];
  readonly digest: Hash;
  readonly closing: Closing;
  readonly trailer?: Trailer;
  /** The first thousand; `set_aside` counts them all. */
  readonly quarantined: readonly Quarantined[];
  readonly set_aside: number;
  readonly breaches: readonly Breach[];
  /** What is wrong and what is safe, in sentences; the first one sums up. */
  readonly sentences: readonly string[];
};
