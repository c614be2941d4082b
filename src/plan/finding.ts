import type { EntryId, Place, Source, StationId, Urgency, Who } from '../terms';
import type { CivilDay } from '../units';

/** One reason of a finding: a sentence, the entries it rests on, where the rule comes from, and the worksheet behind its figure. */
export type Because = {
  readonly text: string;
  readonly entries: readonly EntryId[];
  readonly source: Source;
  readonly worksheet?: { readonly id: string; readonly inputs: Readonly<Record<string, number | string>> };
};

/** open → proof due (mended, not yet shown to hold) → proved; or reopened. `put-off`, `declined` and `judged-otherwise` stay on the plan with the decision. */
export type Life = 'open' | 'proof-due' | 'proved' | 'reopened' | 'put-off' | 'declined' | 'judged-otherwise' | 'handed-over';

/** What a rule says about a place. */
export type Finding = {
  /** rule + place + the entry that raised it: stable across re-judging and across versions of the rule. */
  readonly id: string;
  readonly rule: string;
  readonly place: Place;
  readonly station?: StationId;
  /** Row of the defects table, where one fits. */
  readonly defect?: string;
  readonly raised_by: EntryId;
  readonly since: CivilDay;
  /** What is wrong, in trade words: `Seal open`. */
  readonly title: string;
  readonly urgency: Urgency;
  readonly who: Who;
  readonly because: readonly Because[];
  readonly life: Life;
  /** Care or decision that gave it its life. */
  readonly settled_by?: EntryId;
  /** When the proof or the put-off runs out. */
  readonly due?: CivilDay;
  /** Remedy ids, the likeliest first. */
  readonly remedies: readonly string[];
  /** Caution ids. */
  readonly cautions: readonly string[];
};
