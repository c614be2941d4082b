import type { Place } from './place';

export type EntryId = string;
export type RigId = string;
export type DeviceId = string;
/** SHA-256 of a stored line's own bytes, 64 lower-case hexadecimal digits. */
export type Hash = string;

/** The last line seen from another device when this entry was written. */
export type Head = { readonly device: DeviceId; readonly counter: number; readonly hash: Hash };

/** A photograph is kept apart, under the hash of its own bytes. */
export type PhotoRef = {
  readonly hash: Hash;
  readonly media_type: string;
  readonly size_bytes: number;
  /** Capture time as the camera wrote it; without an offset it is the phone's local time. */
  readonly taken_at?: string;
  readonly taken_offset?: string;
  /** Set when a reduced copy was kept: the hash of the original's bytes. */
  readonly original_hash?: Hash;
};

/**
 * One line of the logbook, immutable.
 *
 * `observed_at` says when it was so (an instant, or a span `2022-03-01/2022-05-31`); the person can set it back.
 * `recorded_at` is the device clock's claim. What was known when is told by `counter`, `previous` and `heads` alone.
 * `body` holds what was typed and its SI value, never a derived result.
 */
export type Entry<Body = unknown> = {
  readonly id: EntryId;
  readonly rig: RigId;
  readonly kind: string;
  readonly version: number;
  readonly observed_at: string;
  readonly recorded_at: string;
  readonly by: string;
  readonly device: DeviceId;
  /** 1, 2, 3 … for each device and rig, without a gap. */
  readonly counter: number;
  /** Hash of this device's previous line for this rig; null for its first. */
  readonly previous: Hash | null;
  readonly heads: readonly Head[];
  readonly place: Place;
  readonly body: Body;
  /** The entries or findings this one settles, corrects, withdraws or decides about. */
  readonly concerns?: readonly string[];
  /** The `round-begun` entry of the round this belongs to. */
  readonly round?: EntryId;
  /** Time spent at the place before the answer was given. [s] */
  readonly spent_s?: number;
  readonly note?: string;
  readonly photos?: readonly PhotoRef[];
};

/** What an app hands over to be kept: everything of an entry that the store does not fill in itself. */
export type Draft<Body = unknown> = Omit<Entry<Body>, 'id' | 'recorded_at' | 'device' | 'counter' | 'previous' | 'heads'>;
