import { digestOf } from './digest';
import { inKnownOrder } from './known-order';
import type { Line } from './state';
import type { Verification } from './verification';
import { type VerifyOptions, verifier } from './verify';
import { headsOf } from './writing';

/**
 * One rig's logbook as text: its lines in the order of what was known when, each once and exactly as stored, then one closing line.
 * The same set of lines always gives the same text.
 */
export const writeLogbook = (lines: readonly Line[]): string => [...logbookLines(lines)].map((l) => `${l}\n`).join('');

/** The lines of that text, without line breaks, for writing a long logbook piece by piece. */
export function* logbookLines(lines: readonly Line[]): Generator<string> {
  const once = [...new Map(lines.map((l) => [l.hash, l])).values()];
  if (once.some((l) => l.entry.rig !== once[0]?.entry.rig)) throw new Error('a logbook file holds the lines of one rig');
  for (const line of inKnownOrder(once)) yield line.text;
  yield JSON.stringify({ trailer: { count: once.length, heads: headsOf(once), digest: digestOf(once.map((l) => l.hash)) } });
}

export type ReadLogbook = { readonly lines: readonly Line[]; readonly verification: Verification };

/** Reads a logbook file: every line that can be read, and what is wrong with the rest. Never throws, whatever the file holds. */
export const readLogbook = (text: string, options: VerifyOptions = {}): ReadLogbook => {
  const verify = verifier(options);
  const lines = new Map<string, Line>();
  let from = 0;
  while (from < text.length) {
    const found = text.indexOf('\n', from);
    const to = found < 0 ? text.length : found;
    const line = verify.line(text.slice(from, to));
    if (line) lines.set(line.hash, line);
    from = to + 1;
  }
  return { lines: [...lines.values()], verification: verify.end(text !== '' && !text.endsWith('\n')) };
};

/** Verifies lines that come one after another, without holding them. */
export const verifyLines = (lines: Iterable<string>, options: VerifyOptions = {}): Verification => {
  const verify = verifier(options);
  for (const line of lines) verify.line(line);
  return verify.end(false);
};
