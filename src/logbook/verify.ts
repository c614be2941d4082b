import type { DeviceId, Hash, Head, RigId } from '../terms';
import type { Refusal, Result } from '../units';
import { chainLedger } from './chain-ledger';
import { isHash, isRecord } from './envelope';
import { type BodyCheck, readLine } from './line';
import type { Line } from './state';
import type { Closing, Quarantined, Trailer, Verification } from './verification';
import { inWords } from './verify-words';

export type VerifyOptions = {
  readonly check?: BodyCheck;
  /** A faster way to the same SHA-256. */
  readonly hash?: (text: string) => Hash;
};

const MOST_KEPT = 1000;

const isTrailer = (v: unknown): v is Trailer =>
  isRecord(v) &&
  Number.isSafeInteger(v['count']) &&
  isHash(v['digest']) &&
  Array.isArray(v['heads']) &&
  v['heads'].every((h) => isRecord(h) && typeof h['device'] === 'string' && typeof h['counter'] === 'number' && isHash(h['hash']));

/** A closing line, if the text is one. */
const trailerOf = (text: string): Trailer | undefined => {
  if (!/^\s*\{\s*"trailer"\s*:/.test(text)) return undefined;
  try {
    const value: unknown = JSON.parse(text);
    return isRecord(value) && isTrailer(value['trailer']) ? value['trailer'] : undefined;
  } catch {
    return undefined;
  }
};

/** Whether a line of a file is a closing line, and so not an entry. */
export const isTrailerLine = (text: string): boolean => trailerOf(text) !== undefined;

/**
 * Verifies a logbook line by line, without holding it.
 *
 * `line` takes the next line of the file, without its line break, and gives back the entry when there is one; `unreadable` takes one
 * that is not even text; `end` sums up. What this shows is damage. Whoever can write the whole file can also write all hashes anew:
 * that is shown only by a digest which somebody else holds.
 */
export const verifier = ({ check, hash }: VerifyOptions = {}) => {
  const ledger = chainLedger();
  const rigs = new Set<RigId>();
  const quarantined: Quarantined[] = [];
  let [number, repeated, setAside, lastSetAside, segment, closingsWrong] = [0, 0, 0, 0, 0, 0];
  let trailer: Trailer | undefined;
  /** Digest of all lines, when one closing line stands at the end of them all. */
  let closed: { readonly digest: Hash; readonly count: number } | undefined;
  let heads = new Map<DeviceId, Head>();
  let lastWasTrailer = false;

  const setAsideLine = (text: string, refusals: readonly Refusal[]): undefined => {
    setAside += 1;
    lastSetAside = number;
    lastWasTrailer = false;
    if (quarantined.length < MOST_KEPT) quarantined.push({ line: number, text, refusals });
  };

  const close = (closing: Trailer): void => {
    const found = ledger.hashes.digest(segment);
    closed = segment === 0 ? found : undefined;
    const same = closing.heads.length === heads.size && closing.heads.every((h) => heads.get(h.device)?.counter === h.counter && heads.get(h.device)?.hash === h.hash);
    if (found.count !== closing.count || found.digest !== closing.digest || !same) closingsWrong += 1;
    trailer = closing;
    segment = ledger.hashes.size();
    heads = new Map();
    lastWasTrailer = true;
  };

  const take = (line: Line): Line => {
    lastWasTrailer = false;
    const { entry } = line;
    rigs.add(entry.rig);
    if (!ledger.take(line, number)) repeated += 1;
    const before = heads.get(entry.device);
    if (before === undefined || entry.counter > before.counter || (entry.counter === before.counter && line.hash < before.hash))
      heads.set(entry.device, { device: entry.device, counter: entry.counter, hash: line.hash });
    return line;
  };

  return {
    line: (raw: string): Line | undefined => {
      number += 1;
      const text = stripped(raw, number);
      if (text.trim() === '') return undefined;
      const closing = trailerOf(text);
      if (closing) return void close(closing);
      const read: Result<Line> = readLine(text, check, hash);
      return read.ok ? take(read.value) : setAsideLine(text, read.refusals);
    },
    /** @param why  the bytes are no text, or there are more of them than any entry has */
    unreadable: (why: 'no-text' | 'too-long'): void => {
      number += 1;
      setAsideLine('', [why === 'no-text' ? NO_TEXT : TOO_LONG]);
    },
    /** @param broken  the last line did not end with a line break */
    end: (broken: boolean): Verification => {
      const all = segment === ledger.hashes.size() && closed ? closed : ledger.hashes.digest(0);
      const cut = broken && setAside > 0 && lastSetAside === number;
      const closing: Closing = cut ? 'cut' : !lastWasTrailer ? 'missing' : closingsWrong > 0 ? 'wrong' : 'right';
      const breaches = [...ledger.breaches, ...ledger.gaps()];
      const facts = {
        whole: closing === 'right' && setAside === 0 && breaches.every((b) => b.code === 'repeated'),
        entries: all.count,
        repeated,
        rigs: [...rigs].sort(),
        chains: ledger.chains(),
        digest: all.digest,
        closing,
        ...(trailer && { trailer }),
        quarantined,
        set_aside: setAside,
        breaches,
      };
      return { ...facts, sentences: inWords(facts, number, ledger.unlisted()) };
    },
  };
};

const NO_TEXT: Refusal = { code: 'not-text', path: '', expected: 'text in UTF-8', received: 'other bytes', sentence: 'This line holds bytes that are not text. It is damaged.' };
const TOO_LONG: Refusal = { code: 'too-long', path: '', expected: 'one entry', received: 'a line without an end', sentence: 'This line is too long to be an entry.' };

/** Without a byte order mark at the start and without the carriage return that some systems put before a line break: neither is part of the stored line. */
const stripped = (raw: string, number: number): string => {
  const text = number === 1 && raw.startsWith('\ufeff') ? raw.slice(1) : raw;
  return text.endsWith('\r') ? text.slice(0, -1) : text;
};
