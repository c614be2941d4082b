import type { Preferences, Refusal } from '../units';
import type { Entry } from './entry';
import type { BodyOf, Fields } from './field';
import type { Place, PlaceForm, Side } from './place';
import type { Station } from './station';

export type KindGroup = 'observation' | 'care' | 'whereabouts' | 'description' | 'decision';

/**
 * How entries of a kind become present state.
 *
 * `latest`     the latest at a place counts; earlier ones stay as its history
 * `series`     every one counts, through time
 * `describes`  changes what the rig is: `apply` is run in order of what was known when
 * `amends`     changes other entries: correction, withdrawal
 */
export type Fold<Body, Subject> =
  | { readonly mode: 'latest' }
  | { readonly mode: 'series' }
  | { readonly mode: 'describes'; readonly apply: (subject: Subject, body: Body, place: Place, entry: Entry<Body>) => Subject }
  | { readonly mode: 'amends'; readonly amendment: 'correction' | 'withdrawal' };

/** The declaration of one kind of logbook entry. `Subject` is what description entries describe: the rig. */
export type Kind<Id extends string = string, F extends Fields = Fields, Subject = unknown, Body = BodyOf<F>> = {
  readonly id: Id;
  readonly group: KindGroup;
  readonly version: number;
  readonly title: string;
  /** One sentence: what it records, and what it is not. */
  readonly meaning: string;
  readonly places: readonly PlaceForm[];
  readonly sides: readonly Side[];
  /** At which stations a round asks for it. Absent: never asked in a round, only recorded by choice. */
  readonly suits?: (station: Station, side: Side) => boolean;
  /** At which stations a round before a trip asks for it. */
  readonly before_trip?: (station: Station, side: Side) => boolean;
  /** At which stations a person may add it to what the round asks there. */
  readonly adds?: (station: Station, side: Side) => boolean;
  /** A round asks for it only while the place has no answer: a fact that does not change by itself. */
  readonly once?: boolean;
  /** The one answer that says that nothing is wrong here. Alone it makes a whole body, so that a screen can offer it in one tap. */
  readonly sound?: { readonly field: string; readonly answer: string };
  /** How many entries or findings it must name in its envelope's `concerns`. Absent: it need name none. */
  readonly concerns?: 'one' | 'some';
  readonly fields: F;
  /** "Same as last round" may repeat it in one tap. Never true for readings. */
  readonly repeatable: boolean;
  /** Cross-field checks beyond each field's own limits. */
  readonly refuse?: (body: Body) => readonly Refusal[];
  readonly fold: Fold<Body, Subject>;
  /** The record in one line, in the person's units. */
  readonly line: (body: Body, preferences: Preferences) => string;
  /** From an older version's body to the next. Keyed by the version it starts from. */
  readonly upcasts?: Readonly<Record<number, (body: never) => unknown>>;
  /** The worksheet that makes its reading comparable, if one does. */
  readonly worksheet?: string;
};

/** A kind with its types forgotten, for lists. */
// biome-ignore lint/suspicious/noExplicitAny: a list of kinds must hold every body type; each is checked by its own schema before use
export type AnyKind<Subject = any> = Kind<string, Fields, Subject, any>;

/** Declares a kind; the body type follows from the fields. Kinds that describe name their subject. */
export const defineKind =
  // biome-ignore lint/suspicious/noExplicitAny: a kind that describes nothing may stand in a list for any subject
    <Subject = any>() =>
    <const Id extends string, const F extends Fields>(kind: Kind<Id, F, Subject>): Kind<Id, F, Subject> =>
      kind;
