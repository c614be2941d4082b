import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Hash } from '../terms';

/**
 * One hash for a whole set of lines: SHA-256 over their hashes, each once, sorted, each followed by a line break.
 * Order and repetition make no difference; any other change does.
 *
 * @param hashes  sorted, each once
 */
export const digestOfSorted = (hashes: Iterable<Hash>): Hash => {
  const sum = sha256.create();
  let part = '';
  for (const hash of hashes) {
    part += `${hash}\n`;
    if (part.length > 60_000) {
      sum.update(utf8ToBytes(part));
      part = '';
    }
  }
  return bytesToHex(sum.update(utf8ToBytes(part)).digest());
};

export const digestOf = (hashes: Iterable<Hash>): Hash => digestOfSorted([...new Set(hashes)].sort());
