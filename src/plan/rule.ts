import type { Standing } from '../logbook';
import type { Rig } from '../rig';
import type { EntryId, Source, Station, StationId, Urgency, Who } from '../terms';
import type { CivilDay } from '../units';
import type { Because } from './finding';

/** What one look shows, before anything is known about care and decisions. */
export type Verdict = {
  /** Tells findings of one rule at one place apart: the defect's id; empty where there can be only one. */
  readonly key: string;
  readonly title: string;
  readonly urgency: Urgency;
  readonly who: Who;
  readonly because: readonly Because[];
  readonly defect?: string;
  readonly worse_if?: string;
  readonly remedies?: readonly string[];
  readonly cautions?: readonly string[];
  readonly suspects?: readonly StationId[];
  /** Seen under conditions that tell little: it does not make an earlier verdict of the same place less urgent. */
  readonly weak?: boolean;
  /** Days after the care at which a look first counts as proof. [d] */
  readonly proof_days?: number;
  /** The next thing to do, where the rule knows it better than the remedy's own row. */
  readonly steps?: readonly string[];
  /** Day from which it is looked at again. */
  readonly due?: CivilDay;
  /** What shows that a repair held, in one sentence, where a look alone does not; and the day from which that is so. */
  readonly proof?: { readonly text: string; readonly due: CivilDay };
  /** The leak it is about; findings of one leak are settled together. */
  readonly leak?: EntryId;
  /** For what comes true by the calendar, after the look: the first day of it, and the first day on which it was as urgent as now. */
  readonly from?: { readonly first: CivilDay; readonly as_urgent: CivilDay };
};

/** What a rule may look at. One scene is one station, or one side of one face for points and outlines. */
export type Scene = {
  readonly rig: Rig;
  readonly on: CivilDay;
  readonly station: Station | undefined;
  /** Every entry of a kind at this place, oldest first. */
  readonly through: (kind: string) => readonly Standing[];
  /** Entries of a kind that concern the whole rig: stays, legs. Oldest first. */
  readonly ofRig: (kind: string) => readonly Standing[];
};

/** What every rule says of itself. */
export type RuleHead = {
  readonly id: string;
  readonly title: string;
  /** In one sentence, with figures: what it takes and what it says. */
  readonly says: string;
  readonly sources: readonly Source[];
  /** Kinds it judges. */
  readonly reads: readonly string[];
  /** Whether care that names a finding of this rule settles it. Left out: it does. */
  readonly settles?: (care: Standing, verdict: Verdict) => boolean;
  /** Rules that it took over from: care and decisions that name a finding of theirs speak of its own. */
  readonly formerly?: readonly string[];
};

/**
 * One judgement, one file. `judge` is asked about every look of the kinds it reads, in the order in which it was so;
 * no verdict means that the look shows nothing wrong by this rule, and closes what the rule had raised at the place.
 */
export type Rule = RuleHead & {
  /** Kinds of the whole rig that it also looks at. */
  readonly alsoReads?: readonly string[];
  /** One entry's body and what comes of it: read by the check and shown in the docs. */
  readonly example: { readonly kind: string; readonly body: Readonly<Record<string, unknown>>; readonly looks?: string; readonly gives: Urgency | 'sound' };
  readonly judge: (seen: Standing, scene: Scene) => readonly Verdict[];
  /** Kinds whose answer "sound" proves care about what this rule raised; for rules whose own kind has no such answer. */
  readonly provedBy?: readonly string[];
  /** Care after which the part is another one: it ends everything the rule had raised here, named or not. */
  readonly endedBy?: readonly string[];
  /** All kinds it reads speak of the same thing, so that a look of one answers for the others. */
  readonly together?: boolean;
  /** Whether a look of the same kind with no verdict for this key says that it is gone. Left out: it does. */
  readonly closes?: (seen: Standing, key: string) => boolean;
};

export const defineRule = (rule: Rule): Rule => rule;
