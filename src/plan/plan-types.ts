import type { EntryId, Source, StationId, Urgency, Who } from '../terms';
import type { CivilDay } from '../units';
import type { Because, Finding, Worked } from './finding';
import type { Water } from './water/water-types';

export type { Worked };

export type Material = {
  /** `lap-sealant-self-levelling`, `butyl-tape`, `cleaner` … a generic kind of product, never a brand. */
  readonly material: string;
  readonly words: string;
  readonly packages: number;
  /** `cartridges of 10.1 fl oz (299 mL)`, in the number that goes with `packages`. */
  readonly package_words: string;
  /** How much of it is laid, waste not counted. [m] */
  readonly length_m?: number;
  readonly because: string;
  readonly worked?: Worked;
};

export type Job = {
  readonly id: string;
  readonly title: string;
  readonly station?: StationId;
  readonly findings: readonly string[];
  /** Other jobs at the same station that may have the same cause. */
  readonly belongs_with?: readonly string[];
  readonly urgency: Urgency;
  readonly who: Who;
  readonly remedy?: string;
  readonly steps: readonly string[];
  readonly minutes?: readonly [number, number];
  readonly must_be_true?: string;
  readonly prove?: string;
  /** When it is for a professional after all. */
  readonly hand_over?: string;
  readonly cautions: readonly string[];
  readonly materials: readonly Material[];
  /** Materials and tools in the trade table's words. */
  readonly needs?: string;
  readonly tools?: string;
  readonly bead_m?: number;
  /** Day from which it is to be done: a reading taken again. */
  readonly due?: CivilDay;
};

export type ReadyReason = {
  readonly text: string;
  readonly finding?: string;
  /** Where it is; a reason that stands for several places names them all under `stations`. */
  readonly station?: StationId;
  readonly stations?: readonly StationId[];
  /** Nobody knows, rather than that something is wrong. */
  readonly unknown?: boolean;
  readonly entries: readonly EntryId[];
};

export type ReadyToRoll = {
  readonly answer: 'yes' | 'no' | 'not-known';
  /** All of them, the most urgent first. */
  readonly because: readonly ReadyReason[];
};

export type NextRound = { readonly on: CivilDay; readonly because: string; readonly source: Source };

/** A station that nobody can vouch for: it could not be seen, or a full round passed it by. Never treated as sound. */
export type NotSeen = {
  /** not-seen + station + the entry that says so. */
  readonly id: string;
  readonly station: StationId;
  /** The round on which it was not seen. */
  readonly round?: EntryId;
  readonly since: CivilDay;
  readonly because: Because;
};

/** A recurring piece of care that is due, or was never recorded. */
export type ServiceDue = {
  readonly item: string;
  readonly words: string;
  readonly stations: readonly StationId[];
  readonly due?: CivilDay;
  readonly who: Who;
  readonly because: Because;
};

/** Urgencies count findings, mended ones whose proof is due under watch; sound and not seen count stations. */
export type Counts = Readonly<Record<Urgency | 'sound' | 'not-seen', number>>;

/** The whole answer for one rig on one civil day. The same logbook and day give the same plan everywhere, byte for byte. */
export type Plan = {
  readonly on: CivilDay;
  /** Everything open, and what was proved within the last year. */
  readonly findings: readonly Finding[];
  readonly jobs: readonly Job[];
  /** What to buy for all jobs that are one's own, on one visit. */
  readonly shopping: readonly Material[];
  readonly ready: ReadyToRoll;
  readonly not_seen: readonly NotSeen[];
  readonly next_round: NextRound | undefined;
  readonly service_due: readonly ServiceDue[];
  readonly counts: Counts;
  readonly water: Water;
};
