import type { Option } from '../terms';
import { type Preferences, type QuantityId, show, showTyped, type Typed, usualUnit } from '../units';

/** The word of an option, or the id itself where a newer version wrote one that is not known here. */
export const wordOf = (options: readonly Option[], id: string | undefined): string | undefined => (id === undefined ? undefined : (options.find((o) => o.id === id)?.word ?? id));

/** Several answers in one breath: `edge lifts, piece missing`. */
export const wordsOf = (options: readonly Option[], ids: readonly string[] | undefined): string | undefined =>
  ids === undefined || ids.length === 0 ? undefined : ids.map((id) => lower(wordOf(options, id) ?? id)).join(', ');

/** A reading in the person's unit; in the unit it was typed in, the very characters that were typed. */
export const reading = (value: Typed, quantity: QuantityId, preferences: Preferences): string =>
  value.unit === usualUnit(quantity, preferences) ? showTyped(value, quantity) : show(value.si, quantity, preferences);

/** The same for a reading that may be missing, with words before it. */
export const readingIf = (before: string, value: Typed | undefined, quantity: QuantityId, preferences: Preferences, after = ''): string | undefined =>
  value === undefined ? undefined : `${before}${reading(value, quantity, preferences)}${after}`;

/** Joins what is there into one line with a capital at its head. */
export const line = (...parts: readonly (string | undefined | false)[]): string => {
  const text = parts.filter((p): p is string => typeof p === 'string' && p !== '').join(', ');
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
};

/** Lower-cases a word that stands inside a line, but leaves an abbreviation such as `S4` or `EPDM` alone. */
const lower = (word: string): string => (/^[A-Z][a-z]/.test(word) || /^[A-Z] /.test(word) ? `${word.charAt(0).toLowerCase()}${word.slice(1)}` : word);

/** `roof-field.soft-deck` read aloud where no table of defects is at hand. */
export const defectWords = (ids: readonly string[] | undefined): string | undefined =>
  ids === undefined || ids.length === 0 ? undefined : ids.map((id) => (id.split('.')[1] ?? id).replaceAll('-', ' ')).join(', ');
