import type { EntryId, Source, StationId, Urgency, Who } from '../terms';
import type { CivilDay } from '../units';
import type { Because, Finding } from './finding';

/** A figure with the worksheet and inputs it came from. */
export type Worked = { readonly worksheet: string; readonly inputs: Readonly<Record<string, number | string>> };

export type Material = {
  /** `lap-sealant`, `butyl-tape`, `cleaner` … a generic kind of product, never a brand. */
  readonly material: string;
  readonly words: string;
  readonly packages: number;
  readonly package_words: string;
  readonly because: string;
  readonly worked?: Worked;
};

export type Job = {
  readonly id: string;
  readonly title: string;
  readonly station?: StationId;
  readonly findings: readonly string[];
  readonly urgency: Urgency;
  readonly who: Who;
  readonly remedy?: string;
  readonly steps: readonly string[];
  readonly minutes?: readonly [number, number];
  readonly must_be_true?: string;
  readonly prove?: string;
  readonly cautions: readonly string[];
  readonly materials: readonly Material[];
  readonly bead_m?: number;
};

export type ReadyToRoll = {
  readonly answer: 'yes' | 'no' | 'not-known';
  readonly because: readonly { readonly text: string; readonly finding?: string; readonly station?: StationId; readonly entries: readonly EntryId[] }[];
};

export type NextRound = { readonly on: CivilDay; readonly because: string; readonly source: Source };

export type Counts = Readonly<Record<Urgency | 'sound' | 'not-seen', number>>;

/** The whole answer for one rig on one civil day. The same logbook and day give the same plan everywhere, byte for byte. */
export type Plan = {
  readonly on: CivilDay;
  readonly findings: readonly Finding[];
  readonly jobs: readonly Job[];
  readonly shopping: readonly Material[];
  readonly ready: ReadyToRoll;
  readonly not_seen: readonly { readonly station: StationId; readonly because: Because }[];
  readonly next_round: NextRound | undefined;
  readonly counts: Counts;
};
