import type { DeviceId, EntryId, RigId } from '../terms';
import type { Dispute } from './disputes';
import type { Chains, Known } from './known-order';
import { type Layers, noLayers } from './layers';
import type { ClockDoubt, Fork, Line, State } from './state';
import type { Ranks } from './through-time';

/**
 * A folded logbook that can take in more lines. `state` is what the logbook says; `inner` is what the fold must remember
 * to take in one more line without reading all again.
 */
export type Book<Subject> = {
  readonly state: State<Subject>;
  readonly disputes: readonly Dispute[];
  readonly inner: Inner;
};

export type Inner = {
  readonly rig: RigId | undefined;
  readonly byId: Layers<EntryId, Known>;
  /** Lines that share an id with one that is read. */
  readonly aside: readonly Line[];
  readonly sortedOut: readonly Dispute[];
  readonly chains: Chains;
  /** The highest counter of each device that is held or named. */
  readonly upTo: ReadonlyMap<DeviceId, number>;
  /** The last in the order of what was known when. */
  readonly last: Known | undefined;
  /** By the entry they concern. */
  readonly amendments: ReadonlyMap<EntryId, readonly Known[]>;
  readonly describing: readonly Known[];
  readonly unknown: readonly Known[];
  readonly forks: ReadonlyMap<EntryId, Fork>;
  readonly doubts: ReadonlyMap<EntryId, ClockDoubt>;
  readonly misfits: ReadonlyMap<EntryId, readonly Dispute[]>;
  readonly ranks: Ranks;
};

export const emptyBook = <Subject>(blank: Subject): Book<Subject> => ({
  state: { subject: blank, standing: new Map(), latest: new Map(), through: new Map(), withdrawn: new Set(), forks: [], clockDoubts: [], unknown: [], heads: [], count: 0 },
  disputes: [],
  inner: {
    rig: undefined,
    byId: noLayers(),
    aside: [],
    sortedOut: [],
    chains: new Map(),
    upTo: new Map(),
    last: undefined,
    amendments: new Map(),
    describing: [],
    unknown: [],
    forks: new Map(),
    doubts: new Map(),
    misfits: new Map(),
    ranks: new WeakMap(),
  },
});
