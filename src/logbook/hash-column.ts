import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js';
import type { Hash } from '../terms';
import { digestOfSorted } from './digest';

/** Hashes in 32 bytes each, so that a very long logbook can be verified without holding its lines. */
export type HashColumn = {
  readonly add: (hash: Hash) => number;
  readonly at: (row: number) => Hash;
  readonly size: () => number;
  /** Digest and number of the different hashes in rows from `from` on. */
  readonly digest: (from: number) => { readonly digest: Hash; readonly count: number };
};

const BYTES = 32;
/** A hash's first four bytes and its row fit one exact number up to this many rows. */
const ROWS = 2 ** 21;

export const hashColumn = (): HashColumn => {
  let bytes = new Uint8Array(BYTES * 1024);
  let size = 0;
  const at = (row: number): Hash => bytesToHex(bytes.subarray(row * BYTES, (row + 1) * BYTES));
  const compare = (a: number, b: number): number => {
    for (let i = 0; i < BYTES; i += 1) {
      const difference = (bytes[a * BYTES + i] ?? 0) - (bytes[b * BYTES + i] ?? 0);
      if (difference !== 0) return difference;
    }
    return 0;
  };
  const first = (row: number): number =>
    ((bytes[row * BYTES] ?? 0) * 256 + (bytes[row * BYTES + 1] ?? 0)) * 65_536 + (bytes[row * BYTES + 2] ?? 0) * 256 + (bytes[row * BYTES + 3] ?? 0);

  /** Rows in the order of their hashes: by the first four bytes as plain numbers, then the few that share those by the rest. */
  const sorted = (from: number): Uint32Array => {
    if (size > ROWS) return Uint32Array.from({ length: size - from }, (_, i) => from + i).sort(compare);
    const keys = Float64Array.from({ length: size - from }, (_, i) => first(from + i) * ROWS + from + i).sort();
    const rows = Uint32Array.from(keys, (key) => key % ROWS);
    for (let i = 0; i + 1 < rows.length; ) {
      let end = i + 1;
      while (end < rows.length && first(rows[end] ?? 0) === first(rows[i] ?? 0)) end += 1;
      if (end - i > 1) rows.subarray(i, end).sort(compare);
      i = end;
    }
    return rows;
  };

  return {
    add: (hash) => {
      if ((size + 1) * BYTES > bytes.length) {
        const grown = new Uint8Array(bytes.length * 2);
        grown.set(bytes);
        bytes = grown;
      }
      bytes.set(hexToBytes(hash), size * BYTES);
      size += 1;
      return size - 1;
    },
    at,
    size: () => size,
    digest: (from) => {
      const rows = sorted(from);
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
