import type { Limits, QuantityId, Result } from '../units';
import type { Source } from './source';

/** One input of a worksheet. The key ends in the unit in which programs give it: `dry_bulb_c`. */
export type Input =
  | {
      readonly type: 'number';
      readonly quantity: QuantityId;
      /** Unit id; equals the key's suffix. */
      readonly unit: string;
      readonly meaning: string;
      /** In SI. */
      readonly limits: Limits;
      /** Used when the input is left out, in the input's own unit; says so in the working. */
      readonly otherwise?: number;
    }
  | {
      readonly type: 'numbers';
      readonly quantity: QuantityId;
      /** Unit id of every figure in the list; equals the key's suffix. */
      readonly unit: string;
      readonly meaning: string;
      /** Of each figure, in SI. */
      readonly limits: Limits;
      /** Fewest and most figures. */
      readonly least: number;
      readonly most: number;
      /** In the input's own unit. */
      readonly otherwise?: readonly number[];
    }
  | { readonly type: 'word'; readonly meaning: string; readonly words: readonly string[]; readonly otherwise?: string }
  | { readonly type: 'text'; readonly meaning: string; readonly example: string; readonly otherwise?: string };

export type Inputs = Readonly<Record<string, Input>>;

/** What an input or a result can be: a figure, a list of figures, or words. */
export type WorksheetValue = number | string | readonly number[];

type Value<I extends Input> = I extends { type: 'number' }
  ? number
  : I extends { type: 'numbers' }
    ? readonly number[]
    : I extends { type: 'word'; words: readonly (infer W)[] }
      ? W
      : string;

/** What `calculate` receives: numbers in SI, under the input's own keys. */
export type Given<I extends Inputs> = { readonly [K in keyof I]: Value<I[K]> };

export type Output =
  | { readonly type: 'number' | 'numbers'; readonly quantity: QuantityId; readonly unit: string; readonly meaning: string; readonly decimals: number }
  | { readonly type: 'text'; readonly meaning: string };

/** One line of the working: what is worked out, the formula, and the same with numbers put in. */
export type Step = { readonly what: string; readonly formula: string; readonly numbers: string; readonly gives: string };

export type Outcome<R extends string> = {
  /** Numbers in SI, under the result's own keys; lists of them; or words. */
  readonly result: Readonly<Record<R, WorksheetValue>>;
  readonly working: readonly Step[];
  /** Sentences a person must read beside this very result. */
  readonly remarks?: readonly string[];
};

/**
 * One calculation laid open. From this declaration come the command line, the page behind a figure and the docs.
 * `calculate` is pure, gets SI, and refuses what lies beyond its sources; it never clamps and never answers NaN.
 */
export type Worksheet<Id extends string = string, I extends Inputs = Inputs, R extends string = string> = {
  readonly id: Id;
  readonly title: string;
  /** What it tells you, in trade words. */
  readonly tells: string;
  readonly inputs: I;
  /** Inputs under their keys that give an answer: shown in help and docs, and where a page starts. */
  readonly example: Readonly<Record<string, WorksheetValue>>;
  readonly results: Readonly<Record<R, Output>>;
  readonly calculate: (given: Given<I>) => Result<Outcome<R>>;
  readonly sources: readonly Source[];
  /** Where it holds and what would change the answer. */
  readonly limits: readonly string[];
  readonly cautions: readonly string[];
};

// biome-ignore lint/suspicious/noExplicitAny: a list of worksheets must hold every input type; inputs are checked by `evaluate` before use
export type AnyWorksheet = Worksheet<string, any, any>;

export const defineWorksheet = <const Id extends string, const I extends Inputs, const R extends string>(worksheet: Worksheet<Id, I, R>): Worksheet<Id, I, R> => worksheet;
