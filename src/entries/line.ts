import type { Option } from '../terms';
import { figure, fromSi, type Preferences, type QuantityId, show, showTyped, type Typed, usualUnit } from '../units';

/** The word of an option, or the id itself where a newer version wrote one that is not known here. */
export const wordOf = (options: readonly Option[], id: string | undefined): string | undefined => (id === undefined ? undefined : (options.find((o) => o.id === id)?.word ?? id));

/** The word of an option as it stands inside a line; nothing where the answer was “not known”. */
export const wordIn = (options: readonly Option[], id: string | undefined): string | undefined => {
  const word = wordOf(options, known(id));
  return word === undefined ? undefined : lower(word);
};

/** Several answers in one breath: `edge lifts, piece missing`. */
export const wordsOf = (options: readonly Option[], ids: readonly string[] | undefined): string | undefined =>
  ids === undefined || ids.length === 0 ? undefined : ids.map((id) => lower(wordOf(options, id) ?? id)).join(', ');

/** Lengths of one family: whoever reads one of them reads the others. */
const FAMILIES: readonly (readonly string[])[] = [
  ['in', 'ft', '32in'],
  ['mm', 'cm', 'm'],
];

const asReadable = (typed: string, usual: string): boolean => typed === usual || FAMILIES.some((family) => family.includes(typed) && family.includes(usual));

/** Typed as figures alone; `3 ft 2 in` carries its unit already. */
const PLAIN = /^[+-]?[\d.,\s]+$/;

/**
 * A reading as it stands in a line. The very characters that were typed, where the person reads that unit: 7/32 in
 * stays 7/32 in. Otherwise in the unit the person chose.
 */
export const reading = (value: Typed, quantity: QuantityId, preferences: Preferences): string =>
  asReadable(value.unit, usualUnit(quantity, preferences)) && PLAIN.test(value.typed)
    ? showTyped({ ...value, typed: value.typed.replace(/^-/, '−') }, quantity)
    : show(value.si, quantity, preferences);

/** The same for a reading that may be missing, with words before it. */
export const readingIf = (before: string, value: Typed | undefined, quantity: QuantityId, preferences: Preferences, after = ''): string | undefined =>
  value === undefined ? undefined : `${before}${reading(value, quantity, preferences)}${after}`;

/** A height above the sea in whole metres or feet: nobody knows it closer. */
export const altitudeIf = (value: Typed | undefined, preferences: Preferences): string | undefined => {
  if (value === undefined) return undefined;
  const unit = usualUnit('length', preferences) === 'm' ? 'm' : 'ft';
  return `${figure(fromSi(value.si, 'length', unit), 0)} ${unit} above the sea`;
};

/** An answer that says nothing is left out of a line. */
export const known = (id: string | undefined): string | undefined => (id === 'unknown' || id === 'not-known' ? undefined : id);

/** Joins what is there into one line with a capital at its head. */
export const line = (...parts: readonly (string | undefined | false)[]): string => {
  const text = parts.filter((p): p is string => typeof p === 'string' && p !== '').join(', ');
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
};

/** Lower-cases a word that stands inside a line, and leaves an abbreviation such as `S4` or `EPDM` alone. */
export const lower = (word: string): string => (/^[A-Z][a-z]/.test(word) || /^[A-Z] /.test(word) ? `${word.charAt(0).toLowerCase()}${word.slice(1)}` : word);

/** `roof-field.soft-deck` read aloud where no table of defects is at hand. */
export const defectWords = (ids: readonly string[] | undefined): string | undefined =>
  ids === undefined || ids.length === 0 ? undefined : ids.map((id) => (id.split('.')[1] ?? id).replaceAll('-', ' ')).join(', ');
