import type { AnyKind, Entry, EntryId, Hash, Head, Place } from '../terms';
import type { CivilDay } from '../units';

/** An entry as it now stands: upcast to its kind's newest version, corrected, not withdrawn. */
export type Standing<Body = unknown> = {
  readonly entry: Entry;
  readonly body: Body;
  readonly place: Place;
  readonly observed_at: string;
  /** Civil day on which it was so at the latest. */
  readonly day: CivilDay;
  readonly corrected_by?: EntryId;
};

/** Two amendments of one entry, neither of which knew of the other. Both are kept; people settle it with a third entry. */
export type Fork = { readonly concerns: EntryId; readonly amendments: readonly EntryId[] };

/** A device clock that contradicts what was known when. Nothing is re-dated; people are asked. */
export type ClockDoubt = { readonly entry: EntryId; readonly sentence: string };

/** What the logbook says now. Maps are keyed by `placeKey`, then by kind. */
export type State<Subject> = {
  readonly subject: Subject;
  readonly standing: ReadonlyMap<EntryId, Standing>;
  /** Latest at a place: by observed_at, ties by what was known when, then by id. */
  readonly latest: ReadonlyMap<string, ReadonlyMap<string, Standing>>;
  /** All through time at a place, oldest first, for every kind. */
  readonly through: ReadonlyMap<string, ReadonlyMap<string, readonly Standing[]>>;
  readonly withdrawn: ReadonlySet<EntryId>;
  readonly forks: readonly Fork[];
  readonly clockDoubts: readonly ClockDoubt[];
  /** Entries of kinds this version does not know: kept byte for byte, not judged. */
  readonly unknown: readonly Entry[];
  /** The last line of every device. */
  readonly heads: readonly Head[];
  readonly count: number;
};

/** An entry with the line it was read from and that line's hash. */
export type Line = { readonly entry: Entry; readonly text: string; readonly hash: Hash };

export type Kinds<Subject> = readonly AnyKind<Subject>[];
