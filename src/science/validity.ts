import { type Refusal, type Result, refuse } from '../units';

/** A span for which a source speaks, as the source writes it. */
export type Validity = {
  /** The name of the parameter; a worksheet's key adds the unit. */
  readonly of: string;
  /** In SI. */
  readonly least: number;
  readonly most: number;
  /** The limits in words and units of the source: `−100 to 200 °C`. */
  readonly words: string;
  readonly source: string;
};

/** Slack for limits that are exact in another unit, so that 30 °F passes a limit written as 30 °F. */
const ROUNDING = 1e-9;

export const holds = (value: number, { least, most }: Validity): boolean => {
  if (!Number.isFinite(value)) return false;
  const slack = ROUNDING * Math.max(1, Math.abs(value));
  return value >= least - slack && value <= most + slack;
};

const outside = (validity: Validity, received: string): Refusal => ({
  code: 'outside-validity',
  path: validity.of,
  expected: `${validity.words} (${validity.source})`,
  received,
  sentence: `The source speaks only for ${validity.words}. There is no answer outside it.`,
});

/** The refusal for a value beyond what the source covers. `received` is the value in the source's own unit. */
export const outsideValidity = (validity: Validity, received: string): Result<never> => refuse(outside(validity, received));
