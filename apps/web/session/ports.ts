import type { Line, PhotoStore, State } from '../../../src/logbook';
import type { Plan } from '../../../src/plan';
import type { Rig } from '../../../src/rig';
import type { Head, PhotoRef, RigId } from '../../../src/terms';
import type { Refusal } from '../../../src/units';
import type { Overview, PaperWish } from './session';

/** Unfinished input and small facts of this device, each under a name. Durable when a put resolves; undefined takes it away. */
export type Drafts = { readonly get: (name: string) => Promise<unknown>; readonly put: (name: string, value: unknown) => Promise<void> };

/** A file as it was read: the lines to take in, photographs, and what could not be read. */
export type ReadFile = {
  readonly lines: readonly string[];
  readonly photos: readonly { readonly bytes: Uint8Array; readonly media_type: string }[];
  readonly refused: readonly { readonly line: number; readonly refusals: readonly Refusal[] }[];
  /** What is wrong with the file as a whole: cut, or its closing line does not agree. */
  readonly doubt?: string;
};

/** Files out and in. The heavy parts are loaded when they are first wanted. */
export type Files = {
  readonly logbook: (lines: readonly Line[]) => Promise<string>;
  readonly archive: (lines: readonly Line[], photos: PhotoStore) => Promise<Uint8Array>;
  readonly plan: (plan: Plan, rig: Rig) => Promise<string>;
  readonly paper: (
    state: State<Rig>,
    lines: readonly Line[],
    answer: { readonly plan: Plan; readonly marks: Overview['marks'] },
    wish: PaperWish,
    photos: PhotoStore,
  ) => Promise<string>;
  readonly read: (name: string, bytes: Uint8Array) => Promise<ReadFile>;
  readonly demo: () => Promise<string>;
};

export type Photos = { readonly keep: (bytes: Uint8Array, reduce: boolean) => Promise<PhotoRef> };

/** What of a rig's logbook has been copied off this device, as far as this device knows. */
export type Copies = {
  readonly mark: (rig: RigId, heads: readonly Head[], at: string) => Promise<void>;
  readonly of: (rig: RigId) => Promise<{ readonly only_here: number; readonly at?: string }>;
};

export type Trouble = { readonly code: string; readonly happened: string; readonly safe: string; readonly todo: string };
