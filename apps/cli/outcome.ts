import type { Refusal } from '../../src/units';

/** Exit statuses, the same for every command. */
export const EXIT = {
  /** Done; for `verify` sound, for `plan` printed. */
  ok: 0,
  /** It could not be done: no such file, no room, port in use. */
  failed: 1,
  /** What was given cannot be used. */
  refused: 2,
  /** `verify` found damage. */
  damaged: 3,
} as const;

/** Ends a command with a sentence on standard error; never a stack trace. */
export class Stop extends Error {
  readonly status: number;

  constructor(sentence: string, status: number = EXIT.failed) {
    super(sentence);
    this.status = status;
  }
}

export const refusalText = (refusals: readonly Refusal[]): string => refusals.map((r) => `${r.path}: ${r.sentence} (expected ${r.expected}; received ${r.received})`).join('\n');

export const refused = (refusals: readonly Refusal[]): Stop => new Stop(refusalText(refusals), EXIT.refused);

export const print = (text: string): void => {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
};

export const printJson = (value: unknown): void => print(JSON.stringify(value, null, 2));
