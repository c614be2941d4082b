import type { Hash } from '../terms';
import { digestOfSorted } from './digest';

/** Hashes in 32 bytes each, so that a very long logbook can be verified without holding its lines. */
export type HashColumn = {
  readonly add: (hash: Hash) => number;
  readonly at: (row: number) => Hash;
  readonly same: (row: number, hash: Hash) => boolean;
  readonly size: () => number;
  /** Digest and number of the different hashes in rows from `from` on. */
  readonly digest: (from: number) => { readonly digest: Hash; readonly count: number };
};

const WORDS = 8;
const DIGITS = 8;

export const hashColumn = (): HashColumn => {
  let words = new Uint32Array(WORDS * 1024);
  let size = 0;
  const word = (hash: Hash, i: number): number => Number.parseInt(hash.slice(i * DIGITS, (i + 1) * DIGITS), 16);
  const at = (row: number): Hash => {
    let hash = '';
    for (let i = 0; i < WORDS; i += 1) hash += (words[row * WORDS + i] ?? 0).toString(16).padStart(DIGITS, '0');
    return hash;
  };
  return {
    add: (hash) => {
      if ((size + 1) * WORDS > words.length) {
        const grown = new Uint32Array(words.length * 2);
        grown.set(words);
        words = grown;
      }
      for (let i = 0; i < WORDS; i += 1) words[size * WORDS + i] = word(hash, i);
      size += 1;
      return size - 1;
    },
    at,
    same: (row, hash) => words[row * WORDS] === word(hash, 0) && at(row) === hash,
    size: () => size,
    digest: (from) => {
      const compare = (a: number, b: number): number => {
        for (let i = 0; i < WORDS; i += 1) {
          const difference = (words[a * WORDS + i] ?? 0) - (words[b * WORDS + i] ?? 0);
          if (difference !== 0) return difference;
        }
        return 0;
      };
      const rows = Uint32Array.from({ length: size - from }, (_, i) => from + i).sort(compare);
      let count = 0;
      function* different(): Generator<Hash> {
        for (let i = 0; i < rows.length; i += 1) {
          if (i > 0 && compare(rows[i - 1] ?? 0, rows[i] ?? 0) === 0) continue;
          count += 1;
          yield at(rows[i] ?? 0);
        }
      }
      const digest = digestOfSorted(different());
      return { digest, count };
    },
  };
};
