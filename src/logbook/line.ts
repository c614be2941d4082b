import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Entry, EntryId, Hash } from '../terms';
import { accept, type Refusal, type Result, refuse } from '../units';
import { envelopeRefusals, LONGEST_LINE } from './envelope';
import type { Line } from './state';

/** Order in which an entry's parts are written; a reader takes any order, and keeps it. */
const PARTS = [
  'id',
  'rig',
  'kind',
  'version',
  'observed_at',
  'recorded_at',
  'by',
  'device',
  'counter',
  'previous',
  'heads',
  'place',
  'body',
  'concerns',
  'round',
  'spent_s',
  'note',
  'photos',
] as const satisfies readonly (keyof Entry)[];

const finite = (key: string, value: unknown): unknown => {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${key} is ${value}: a number that cannot be written must be refused before it reaches the logbook`);
  return value;
};

/** An entry as one line of JSON, without the line break. Unicode's own line and paragraph separators are escaped: some readers break lines there. */
export const writeLine = (entry: Entry): string => {
  const parts: Record<string, unknown> = {};
  for (const key of PARTS) if (entry[key] !== undefined) parts[key] = entry[key];
  return JSON.stringify(parts, finite).replace(/[\u2028\u2029]/g, (c) => (c === '\u2028' ? '\\u2028' : '\\u2029'));
};

/** SHA-256 over bytes, in lower-case hexadecimal. FIPS 180-4; synchronous, so that a database transaction is not left while it is worked out. */
export const hashOfBytes = (bytes: Uint8Array): Hash => bytesToHex(sha256(bytes));

/** SHA-256 over the UTF-8 bytes of a stored line, without its line break. */
export const hashOf = (text: string): Hash => hashOfBytes(utf8ToBytes(text));

const hex = (n: number, digits: number): string => n.toString(16).padStart(digits, '0');

/**
 * An id that sorts roughly by time: 48 bits of milliseconds, then chance. RFC 9562, section 5.7.
 *
 * @param ms      the device clock; before 1970 counts as 1970, which costs order but not uniqueness. [ms]
 * @param random  10 bytes of chance
 */
export const uuidV7 = (ms: number, random: Uint8Array): EntryId => {
  const time = hex(Math.min(Math.max(0, Math.floor(ms)), 2 ** 48 - 1), 12);
  const r = bytesToHex(random.subarray(0, 10));
  if (r.length !== 20) throw new Error('an id needs 10 bytes of chance');
  const variant = hex((Number.parseInt(r.slice(3, 5), 16) & 0x3f) | 0x80, 2);
  return `${time.slice(0, 8)}-${time.slice(8)}-7${r.slice(0, 3)}-${variant}${r.slice(5, 7)}-${r.slice(7, 19)}`;
};

/** Says no more about a line than its envelope: the body is judged by whoever knows the kinds. */
export type BodyCheck = (entry: Entry) => readonly Refusal[];

/**
 * Reads one stored line. The text is kept as it came, byte for byte; the hash is over it.
 *
 * @param check  judges the body as well, when the caller knows the kinds
 * @param hash   another way to the same SHA-256, where the surroundings have a faster one
 */
export const readLine = (text: string, check?: BodyCheck, hash: (text: string) => Hash = hashOf): Result<Line> => {
  if (text.length > LONGEST_LINE)
    return refuse({ code: 'too-long', path: '', expected: `at most ${LONGEST_LINE} characters`, received: `${text.length}`, sentence: 'This line is too long to be an entry.' });
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refuse({
      code: 'not-json',
      path: '',
      expected: 'one entry, as JSON',
      received: excerpt(text),
      sentence: `This line cannot be read: ${excerpt(text)}. It is cut off or damaged.`,
    });
  }
  const refusals = envelopeRefusals(value);
  if (refusals.length > 0) return refuse(...refusals);
  const entry = value as Entry;
  const about = check?.(entry) ?? [];
  return about.length > 0 ? refuse(...about) : accept({ entry, text, hash: hash(text) });
};

const excerpt = (text: string): string => (text.length > 40 ? `“${text.slice(0, 40)}…”` : `“${text}”`);

/** The line of an entry that this device has just made. Throws when the entry could not be read back: that is our own mistake. */
export const lineOf = (entry: Entry): Line => {
  const read = readLine(writeLine(entry));
  if (!read.ok) throw new Error(`not an entry: ${read.refusals.map((r) => r.sentence).join(' ')}`);
  return read.value;
};
