import type { Entry } from '../terms';
import { parseInstant, parseWhen, type Refusal } from '../units';

/**
 * What every line must be before it is an entry, whatever its kind. Kinds this version does not know pass through here too,
 * so nothing is said about the body except that it is an object.
 */
type Rule = { readonly key: keyof Entry; readonly expected: string; readonly optional?: true; readonly holds: (value: unknown) => boolean };

/** Longer lines are refused before they are read: the largest honest line, a whole rig with its stations, is about 100,000 characters. */
export const LONGEST_LINE = 4_000_000;
/** Deeper nesting is refused: no kind nests deeper than a dozen levels, and hostile files nest without end. */
const DEEPEST = 64;

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
const HASH = /^[0-9a-f]{64}$/;

export const isRecord = (v: unknown): v is Readonly<Record<string, unknown>> => typeof v === 'object' && v !== null && !Array.isArray(v);
export const isHash = (v: unknown): v is string => typeof v === 'string' && HASH.test(v);
const isUuid = (v: unknown): boolean => typeof v === 'string' && UUID.test(v);
const isText =
  (most: number, least = 1) =>
  (v: unknown): boolean =>
    typeof v === 'string' && v.length >= least && v.length <= most;
const isCount =
  (least: number) =>
  (v: unknown): v is number =>
    Number.isSafeInteger(v) && (v as number) >= least;
const isListOf =
  (holds: (v: unknown) => boolean, most: number) =>
  (v: unknown): boolean =>
    Array.isArray(v) && v.length <= most && v.every(holds);
const isMetres = (v: unknown): boolean => Number.isFinite(v);
const isPoint = (v: unknown): boolean => Array.isArray(v) && v.length === 2 && v.every(isMetres);
const isSide = (v: unknown): boolean => v === 'outside' || v === 'inside';
const isName = isText(200);

const isHead = (v: unknown): boolean => isRecord(v) && isName(v['device']) && isCount(1)(v['counter']) && isHash(v['hash']);

const isPhoto = (v: unknown): boolean =>
  isRecord(v) &&
  isHash(v['hash']) &&
  isText(100)(v['media_type']) &&
  isCount(0)(v['size_bytes']) &&
  (v['taken_at'] === undefined || isText(40)(v['taken_at'])) &&
  (v['taken_offset'] === undefined || isText(10)(v['taken_offset'])) &&
  (v['original_hash'] === undefined || isHash(v['original_hash']));

/** Whether a value names a place, without asking whether the rig has it. */
export const isPlace = (v: unknown): boolean => {
  if (!isRecord(v)) return false;
  switch (v['at']) {
    case 'rig':
      return true;
    case 'station':
      return isName(v['station']) && isSide(v['side']);
    case 'point':
      return isName(v['face']) && isSide(v['side']) && isPoint(v['point_m']);
    case 'outline':
      return isName(v['face']) && isSide(v['side']) && isListOf(isPoint, 10_000)(v['outline_m']);
    case 'stretch':
      return isName(v['station']) && isSide(v['side']) && isMetres(v['from_m']) && isMetres(v['to_m']);
    default:
      return false;
  }
};

export const isWhen = (v: unknown): v is string => typeof v === 'string' && parseWhen(v) !== undefined;

const RULES: readonly Rule[] = [
  { key: 'id', expected: 'an id of the form 01234567-89ab-7cde-8f01-23456789abcd', holds: isUuid },
  { key: 'rig', expected: 'the id of a rig', holds: isName },
  { key: 'kind', expected: 'the name of a kind of entry', holds: isName },
  { key: 'version', expected: 'a version number from 1', holds: isCount(1) },
  { key: 'observed_at', expected: 'an instant such as 2026-09-19T10:12:00-04:00, or days such as 2022-03-01/2022-05-31', holds: isWhen },
  { key: 'recorded_at', expected: 'an instant such as 2026-09-19T10:12:00-04:00', holds: (v) => typeof v === 'string' && parseInstant(v) !== undefined },
  { key: 'by', expected: 'who wrote it', holds: isText(200, 0) },
  { key: 'device', expected: 'the id of a device', holds: isName },
  { key: 'counter', expected: 'a whole number from 1', holds: isCount(1) },
  { key: 'previous', expected: 'the hash of the previous line, or null', holds: (v) => v === null || isHash(v) },
  { key: 'heads', expected: 'a list of device, counter and hash', holds: isListOf(isHead, 1000) },
  { key: 'place', expected: 'a place', holds: isPlace },
  { key: 'body', expected: 'an object', holds: isRecord },
  { key: 'concerns', expected: 'a list of ids', optional: true, holds: isListOf(isText(400), 1000) },
  { key: 'round', expected: 'the id of a round', optional: true, holds: isUuid },
  { key: 'spent_s', expected: 'seconds from 0', optional: true, holds: (v) => Number.isFinite(v) && (v as number) >= 0 },
  { key: 'note', expected: 'text', optional: true, holds: isText(100_000, 0) },
  { key: 'photos', expected: 'a list of photographs with their hashes', optional: true, holds: isListOf(isPhoto, 1000) },
];

const received = (v: unknown): string => {
  if (v === undefined) return 'nothing';
  const text = typeof v === 'string' ? `“${v}”` : JSON.stringify(v);
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
};

const tooDeep = (v: unknown, left = DEEPEST): boolean => {
  if (typeof v !== 'object' || v === null) return false;
  if (left === 0) return true;
  for (const key in v) if (tooDeep((v as Record<string, unknown>)[key], left - 1)) return true;
  return false;
};

const refusal = (code: string, path: string, expected: string, got: string, sentence: string): Refusal => ({ code, path, expected, received: got, sentence });

/** Everything that keeps a value from being an entry, all at once; empty when it is one. */
export const envelopeRefusals = (value: unknown): readonly Refusal[] => {
  if (!isRecord(value)) return [refusal('not-an-entry', '', 'an entry', received(value), 'This line is not an entry.')];
  if (tooDeep(value)) return [refusal('too-deep', '', `at most ${DEEPEST} levels`, 'more', 'This line is nested too deeply to be an entry.')];
  const found: Refusal[] = [];
  for (const rule of RULES) {
    const v = Object.hasOwn(value, rule.key) ? value[rule.key] : undefined;
    if (v === undefined && rule.optional) continue;
    if (!rule.holds(v))
      found.push(refusal(v === undefined ? 'missing' : 'not-usable', rule.key, rule.expected, received(v), `${rule.key}: expected ${rule.expected}, found ${received(v)}.`));
  }
  if (found.length === 0 && (value['counter'] === 1) !== (value['previous'] === null))
    found.push(
      refusal(
        'chain-start',
        'previous',
        'null for a device’s first entry, a hash for every other',
        received(value['previous']),
        'Only a device’s first entry has no previous line.',
      ),
    );
  return found;
};
