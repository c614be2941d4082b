import type { Urgency, Who } from '../../terms';

/** A source key, and what that source covers of the row when it does not cover all of it. */
export type Lean = readonly [key: string, covers?: string];

/** Status is that of the first source; `extent` says how far it was read for this row. */
export type Backing = { readonly sources: readonly Lean[]; readonly status: 'seen' | 'practice' | 'memory'; readonly extent: 'main' | 'part' | 'none' };

/** What to look at, feel and measure at one kind of station, and how a sound one looks. */
export type Look = Backing & {
  readonly id: string;
  /** The wider kind whose looks and defects also hold. */
  readonly also?: string;
  readonly name: string;
  readonly look?: string;
  readonly feel?: string;
  readonly measure?: string;
  readonly sound?: string;
  readonly defects: readonly string[];
};

/** A typical defect at a kind of station. `worse_if` is for people; escalations are for rules. */
export type Defect = Backing & {
  readonly id: string;
  readonly name: string;
  /** What is wrong, with its subject, where the name stands only beside its kind of station. */
  readonly title?: string;
  readonly recognise?: string;
  readonly cause?: string;
  readonly leads_to?: string;
  readonly how_fast?: string;
  readonly urgency: Urgency;
  readonly why: string;
  readonly who: Who;
  readonly worse_if?: string;
  readonly recheck?: string;
  readonly remedies: readonly string[];
};

/** Conditions a rule can decide. Without `if` the condition is shown to people as it stands. */
export type EscalationIf = {
  /** One of these defects also stands open at the same station, or on the same face next to it. */
  readonly defects?: readonly string[];
  readonly gap_over_mm?: number;
  readonly pin_over_percent?: number;
  readonly wet_inside?: boolean;
};

export type Escalation = {
  readonly defect: string;
  readonly when: string;
  readonly urgency: Urgency;
  readonly who: Who;
  readonly because: string;
  readonly status: 'seen' | 'practice' | 'memory';
  readonly source?: string;
  readonly if?: EscalationIf;
};

export type Remedy = Backing & {
  readonly id: string;
  readonly for: readonly string[];
  readonly steps: readonly string[];
  readonly materials?: string;
  readonly tools?: string;
  /** One opening or about 3 m of seam, ready on site, curing not counted; estimates. [min] */
  readonly minutes: readonly [least: number, most: number];
  readonly skill: 'handy' | 'practised' | 'professional';
  readonly must_be_true?: string;
  readonly prove?: string;
  readonly cautions: readonly string[];
  readonly hand_over?: string;
};

export type Caution = Backing & { readonly id: string; readonly trigger: string; readonly warning: string; readonly do: string; readonly basis?: string };

export type ServiceItem = Backing & {
  readonly id: string;
  readonly item: string;
  readonly kinds: readonly string[];
  /** Months, or words: `each trip`, `by condition`, `1 in use`. */
  readonly months?: string;
  readonly event?: string;
  readonly season?: string;
  readonly salt?: string;
  readonly how?: string;
  readonly material?: string;
  readonly avoid?: string;
  readonly who: Who;
  readonly notes?: string;
};

export type SeasonItem = Backing & {
  readonly id: string;
  readonly phase: 'put-away' | 'mid-store' | 'bring-out';
  readonly order: number;
  readonly item: string;
  readonly freezing: 'yes' | 'no' | 'any';
  readonly covered: 'yes' | 'no' | 'any';
  readonly stored_months: number;
  /** Kinds of station; `all` for every one. */
  readonly kinds: readonly string[];
  readonly cautions: readonly string[];
  readonly done?: string;
};

export type SourceRow = { readonly key: string; readonly title: string; readonly address?: string; readonly status: 'seen' | 'practice' | 'memory' };
