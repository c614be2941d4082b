import { type Line, type ReadLogbook, type VerifyOptions, verifier } from '../logbook';
import type { Hash } from '../terms';

/**
 * Reads a logbook from a file's bytes. Lines are cut at the byte, before they are read as text, so that one damaged character
 * spoils one line and is never quietly replaced.
 */
export const readLogbookBytes = (bytes: Uint8Array, options: VerifyOptions = {}): ReadLogbook => {
  const verify = verifier(options);
  const lines = new Map<Hash, Line>();
  for (let from = 0; from < bytes.length; ) {
    const found = bytes.indexOf(LINE_BREAK, from);
    const to = found < 0 ? bytes.length : found;
    const text = textOf(bytes.subarray(from, to));
    if (text === undefined) verify.unreadable('no-text');
    else {
      const line = verify.line(text);
      if (line) lines.set(line.hash, line);
    }
    from = to + 1;
  }
  return { lines: [...lines.values()], verification: verify.end(bytes.length > 0 && bytes.at(-1) !== LINE_BREAK) };
};

/** The byte between two lines. */
export const LINE_BREAK = 0x0a;

const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/** A line's bytes as text; undefined when they are not UTF-8. */
export const textOf = (bytes: Uint8Array): string | undefined => {
  try {
    return decoder.decode(bytes);
  } catch {
    return undefined;
  }
};
