/**
 * A refusal: what a person or a file gave cannot be used, and why.
 * It is data, never thrown, so that a form, a command line and an import can each show it in their own place.
 */
export type Refusal = {
  /** Stable word for programs, kebab-case: `not-a-number`, `above-limit`, `unknown-unit`. */
  readonly code: string;
  /** Where in what was given: `pressure_kpa`, `body.grade`, `line 12`. */
  readonly path: string;
  readonly expected: string;
  readonly received: string;
  /** One sentence for people: what is wrong and what to do. */
  readonly sentence: string;
};

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly refusals: readonly Refusal[] };

export const accept = <T>(value: T): Result<T> => ({ ok: true, value });

export const refuse = (...refusals: readonly Refusal[]): Result<never> => ({ ok: false, refusals });
