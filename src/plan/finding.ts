import type { EntryId, Place, Source, StationId, Urgency, Who, WorksheetValue } from '../terms';
import type { CivilDay } from '../units';

/** A figure with the worksheet and inputs it came from. */
export type Worked = { readonly worksheet: string; readonly inputs: Readonly<Record<string, WorksheetValue>> };

/** One reason of a finding: a sentence, the entries it rests on, where the rule comes from, and the worksheet behind its figure. */
export type Because = {
  readonly text: string;
  readonly entries: readonly EntryId[];
  readonly source: Source;
  readonly worksheet?: { readonly id: string; readonly inputs: Readonly<Record<string, WorksheetValue>> };
};

/**
 * open → proof due (mended, not yet shown to hold) → proved; or reopened.
 * `put-off`, `declined`, `judged-otherwise` and `handed-over` stay on the plan with the decision.
 * `seen-sound`: a later look found it sound although no care names it; kept in the place's history, not on the plan.
 */
export type Life = 'open' | 'proof-due' | 'proved' | 'reopened' | 'put-off' | 'declined' | 'judged-otherwise' | 'handed-over' | 'seen-sound';

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
  /** Since when it has been as urgent as it is now. */
  readonly since: CivilDay;
  /** The latest look that still showed it. */
  readonly last_seen: CivilDay;
  /** What is wrong, in trade words: `Seal open`. */
  readonly title: string;
  readonly urgency: Urgency;
  readonly who: Who;
  readonly because: readonly Because[];
  /** For people: what would make it more urgent than it stands here. */
  readonly worse_if?: string;
  readonly life: Life;
  /** Care or decision that gave it its life, or the look that closed or reopened it. */
  readonly settled_by?: EntryId;
  /** Who judged it otherwise, and how; `urgency` stays that of the rule. */
  readonly judged?: { readonly urgency: Urgency | 'no-fault'; readonly by: string };
  /** When the proof or the put-off runs out, or when it is to be looked at again. */
  readonly due?: CivilDay;
  /** Day it was proved or seen sound. */
  readonly closed?: CivilDay;
  /** Remedy ids, the likeliest first. */
  readonly remedies: readonly string[];
  /** Caution ids. */
  readonly cautions: readonly string[];
  /** Where the water most likely comes from, the first suspect first. */
  readonly suspects?: readonly StationId[];
  /** What to do next, where the rule knows it better than the remedy's own row: the next water test, the next reading. */
  readonly steps?: readonly string[];
  /** The leak it is about, as the plan's water tells it. */
  readonly leak?: EntryId;
};

/** Still to be dealt with, decided about or proved. */
export const isOpen = (finding: Finding): boolean => finding.life !== 'proved' && finding.life !== 'seen-sound';

/** How urgent it is taken to be: as the rule says, or as a person judged otherwise. Something that is no fault in somebody's judgement is still watched. */
export const takenAs = (finding: Finding): Urgency => (finding.judged === undefined ? finding.urgency : finding.judged.urgency === 'no-fault' ? 'watch' : finding.judged.urgency);

/** How it is drawn, listed and counted: as urgent as it is taken to be; what was mended is watched until it is proved. */
export const shownAs = (finding: Finding): Urgency => (finding.life === 'proof-due' ? 'watch' : takenAs(finding));

/** There is work to do or to have done: a piece of work that was put off or declined is still work. */
export const isWork = (finding: Finding): boolean => isOpen(finding) && finding.life !== 'proof-due' && finding.judged?.urgency !== 'no-fault';
