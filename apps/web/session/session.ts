import type { ClockDoubt, Dispute, Fork, Standing } from '../../../src/logbook';
import type { FieldOptions, Finding, MoistureField, Plan } from '../../../src/plan';
import type { Answers, Rig, Stop } from '../../../src/rig';
import type { Draft, Entry, EntryId, Mark, Option, PhotoRef, RigId, Side, StationId } from '../../../src/terms';
import type { Preferences, Refusal } from '../../../src/units';

/** A rig in the plain list. */
export type RigLine = { readonly id: RigId; readonly name: string; readonly words: string; readonly open: number; readonly last_seen: string | undefined; readonly demo: boolean };

/** What the page says about the record, and only about the record. */
export type RecordStatus =
  | { readonly state: 'kept'; readonly words: string }
  | { readonly state: 'not-copied'; readonly count: number; readonly words: string }
  | { readonly state: 'problem'; readonly words: string; readonly happened: string; readonly safe: string; readonly todo: string };

/** One step of a round: a station, on one side. */
export type RoundStep = { readonly station: StationId; readonly side: Side; readonly answered: 'no' | 'sound' | 'finding' | 'not-seen'; readonly group: string };

export type RoundView = {
  readonly id: EntryId;
  readonly form: 'full' | 'partial' | 'pre-trip';
  readonly begun: string;
  readonly steps: readonly RoundStep[];
  readonly at: number;
  /** At today's pace; undefined before there is a pace. [s] */
  readonly left_s: number | undefined;
  /** Kinds that this round asks of the whole rig and that have no answer in it yet. */
  readonly asked_of_rig: readonly string[];
  readonly ended: boolean;
};

/** Everything a page about one rig needs at once; the worker sends it anew after each change. */
export type Overview = {
  readonly rig: Rig;
  readonly plan: Plan;
  /** The most urgent standing of each station, for marks. */
  readonly marks: Readonly<Record<StationId, Mark>>;
  readonly record: RecordStatus;
  readonly round: RoundView | undefined;
  readonly forks: readonly Fork[];
  /** Clocks that contradict the order of writing, or this device's own clock now. */
  readonly clockDoubts: readonly ClockDoubt[];
  /** Lines that cannot all be what they say; all are kept. */
  readonly disputes: readonly Dispute[];
  /** When findings opened, rounds were walked and care was given: for walking back through the logbook. */
  readonly timeline: readonly { readonly day: number; readonly what: 'round' | 'care' | 'findings'; readonly open: number; readonly words: string }[];
  readonly entries: number;
};

/** What is known about one station or place, newest last. */
export type StationView = {
  readonly through: readonly { readonly kind: string; readonly side: Side; readonly entries: readonly Standing[] }[];
  readonly findings: readonly Finding[];
  /** What to look at, feel and measure here, and how a sound one looks; from the trade tables. */
  readonly looks: readonly { readonly verb: 'Look' | 'Feel' | 'Measure' | 'Sound'; readonly line: string }[];
  /** Typical defects of this kind of station, for `defects-of-station` fields. */
  readonly defects: readonly Option[];
};

export type LogbookPage = {
  readonly total: number;
  readonly lines: readonly {
    readonly entry: Entry;
    /** The body as it now stands: upcast, corrected. */
    readonly body: unknown;
    readonly words: string;
    readonly withdrawn: boolean;
    readonly corrected_by: EntryId | undefined;
  }[];
};

export type Imported = {
  readonly taken: number;
  readonly known: number;
  readonly rigs: readonly RigId[];
  readonly refused: readonly { readonly line: number; readonly refusals: readonly Refusal[] }[];
  readonly words: string;
};

/** Which sheet of paper is wanted, and how. */
export type PaperWish = {
  readonly what: 'walk-sheet' | 'condition-record' | 'plan';
  readonly paper: 'A4' | 'Letter';
  readonly preferences: Preferences;
  readonly by?: string;
  /** Which round a walk sheet is for. */
  readonly form?: 'full' | 'pre-trip';
};

/** A verdict while the person still types: what stands open at the place with the drafts in it, the most urgent first. */
export type Judged = { readonly findings: readonly Finding[] };

/** How a map of readings is wanted: another threshold than the panel's own, another way of guessing, as things stood on a day. */
export type FieldWish = FieldOptions & { readonly on?: number };

/** What the page asks of the worker. Every `keep` resolves only when the entry is durable on this device. */
export interface Session {
  rigs(): Promise<readonly RigLine[]>;
  newRig(answers: Answers, by: string): Promise<RigId>;
  overview(rig: RigId, on?: number): Promise<Overview>;
  station(rig: RigId, station: StationId): Promise<StationView>;
  logbook(rig: RigId, from: number, count: number): Promise<LogbookPage>;
  /** The stops of a round that would begin now, in walking order, each with the place to stand. */
  stops(rig: RigId, form: RoundView['form'], faces?: readonly string[]): Promise<readonly Stop[]>;
  keep(drafts: readonly Draft[]): Promise<readonly Entry[]>;
  /** What the rules would say of these drafts if they were kept now: the findings they raise, keep open or settle. Nothing is written. */
  judge(rig: RigId, drafts: readonly Draft[], on?: number): Promise<Judged>;
  /** The map of one panel (`Panel.id`) with what is measured there and where to read next; undefined where nothing was metered. Worked out here, never by the page. */
  moistureField(rig: RigId, panel: string, wish?: FieldWish): Promise<MoistureField | undefined>;
  /** Unfinished input, under `<rig>/<name>` or `/<name>`. Durable when it resolves; `undefined` drops it. Goes with its rig. */
  saveDraft(name: string, value: unknown): Promise<void>;
  draft(name: string): Promise<unknown>;
  /** Withdraws the entry, by a new entry that names it. */
  undo(rig: RigId, entry: EntryId, by: string): Promise<void>;
  keepPhoto(bytes: Uint8Array, media_type: string, reduce: boolean): Promise<PhotoRef>;
  photo(hash: string): Promise<Blob | undefined>;
  exportLogbook(rig: RigId): Promise<{ readonly name: string; readonly text: string }>;
  exportArchive(rig: RigId): Promise<{ readonly name: string; readonly bytes: Uint8Array }>;
  exportPlan(rig: RigId, on: number): Promise<{ readonly name: string; readonly text: string }>;
  /** A sheet of paper as a page of its own, ready to be printed. */
  paper(rig: RigId, wish: PaperWish): Promise<string>;
  importFile(name: string, bytes: Uint8Array): Promise<Imported>;
  loadDemo(): Promise<RigId>;
  forget(rig: RigId): Promise<void>;
  /** Calls back after every change, from this tab or another. */
  watch(changed: (rig: RigId) => void): Promise<void>;
  storage(): Promise<{ readonly persisted: boolean | undefined; readonly used_bytes: number; readonly room_bytes: number }>;
}

export type { Preferences };
