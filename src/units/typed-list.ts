import type { QuantityId } from './quantities';
import { accept, type Refusal, type Result, refuse } from './refusal';
import { type Limits, readQuantity, type Typed } from './typed';

/** Where a list may be broken when it holds any of these: semicolon, line break, comma followed by a space. */
const BREAKS = /;|\r?\n|,(?=\s)/;
const SPACES = /\s+/;
/** `61,63`: two figures to one reader, one with a decimal comma to another. */
const COMMAS_ONLY = /\d,\d/;
/** `12 3/8` with nothing but spaces about it: one figure or two. */
const FRACTION_AFTER_WHOLE = /\d\s+\d+\/\d/;

/** A list may be given in brackets, as programs write it. */
const bare = (text: string): string =>
  text
    .trim()
    .replace(/^\[|\]$/g, '')
    .trim();

/** One figure of a list, by its place in it: programs count from 0, the sentence counts from 1. */
export const itemPath = (path: string, index: number): string => `${path}[${index}]`;

const inItem = (refusals: readonly Refusal[], index: number): readonly Refusal[] => refusals.map((r) => ({ ...r, sentence: `Figure ${index + 1}: ${r.sentence}` }));

const twoMeanings = (path: string, text: string): Refusal => ({
  code: 'two-meanings',
  path,
  expected: 'figures with a semicolon or a space between them, such as 61; 63.5; 64',
  received: `“${text.trim()}”`,
  sentence: 'This can be read in more than one way. Put a semicolon between the figures: 61; 63.5; 64.',
});

/** The pieces of a list, or the refusal of one that could be cut in two ways. */
const pieces = (text: string, path: string): Result<readonly string[]> => {
  const inside = bare(text);
  if (inside === '') return accept([]);
  if (BREAKS.test(inside)) {
    const parts = inside.split(BREAKS).map((p) => p.trim());
    return accept(parts.at(-1) === '' ? parts.slice(0, -1) : parts);
  }
  const parts = inside.split(SPACES);
  if ((parts.length === 1 && COMMAS_ONLY.test(inside)) || FRACTION_AFTER_WHOLE.test(inside)) return refuse(twoMeanings(path, text));
  const last = parts.at(-1) ?? '';
  return accept(last.endsWith(',') ? [...parts.slice(0, -1), last.slice(0, -1)] : parts);
};

/**
 * Reads a list of figures as people type it: `61; 63.5; 64`, `61, 63.5, 64`, `61 63,5 64`, one a line.
 * A semicolon, a line break, or a comma with a space after it ends a figure; where none of these stands, a space does.
 * A comma between digits is a decimal comma; `61,63` alone is refused, because it could be either.
 *
 * @param text    the characters, as typed
 * @param unit    the unit's id that stood beside the field
 * @param limits  of each figure, in SI
 * @param path    where it stands; what is wrong with the fourth figure is told at `path[3]`
 * @returns       each figure with its SI value; or everything that is wrong
 */
export const readQuantities = (text: string, quantity: QuantityId, unit: string, limits: Limits = {}, path = quantity as string): Result<readonly Typed[]> => {
  const found = pieces(text, path);
  if (!found.ok) return found;
  const read = found.value.map((piece, i) => readQuantity(piece, quantity, unit, limits, itemPath(path, i)));
  const refusals = read.flatMap((r, i) => (r.ok ? [] : inItem(r.refusals, i)));
  return refusals.length > 0 ? { ok: false, refusals } : accept(read.flatMap((r) => (r.ok ? [r.value] : [])));
};
