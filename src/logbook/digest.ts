import type { Hash } from '../terms';
import { hashOf } from './line';

/**
 * One hash for a whole set of lines: SHA-256 over their hashes, each once, sorted, each followed by a line break.
 * Order and repetition make no difference; any other change does.
 */
export const digestOf = (hashes: Iterable<Hash>): Hash =>
  hashOf(
    [...new Set(hashes)]
      .sort()
      .map((h) => `${h}\n`)
      .join(''),
  );
