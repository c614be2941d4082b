import { type Fits, readerFor } from './as-written';
import { type Book, emptyBook, type Inner } from './book';
import { sortOut } from './disputes';
import { enter } from './enter';
import { look, sizeOf, valuesOf } from './layers';
import type { Kinds, Line, State } from './state';

export type FoldOptions = {
  /** Judges each body against its kind. Without it bodies are taken to have been judged where they came in. */
  readonly fits?: Fits;
};

/**
 * What one rig's logbook says now. Pure; the same set of lines gives the same state, whatever the order and however often each line comes.
 *
 * @param kinds  the kinds of entry this version knows
 * @param blank  the rig before anything has been described
 * @param lines  of one rig
 */
export const fold = <Subject>(kinds: Kinds<Subject>, blank: Subject, lines: readonly Line[], options: FoldOptions = {}): State<Subject> =>
  advance(kinds, blank, undefined, lines, options).state;

/**
 * Takes more lines into a book. The result is the same as folding all lines anew; only what the new lines touch is worked out again.
 * Lines on which earlier ones were waiting, and lines that contradict others, cause a new fold of all.
 *
 * @param book  undefined for an empty one; it is not changed
 */
export const advance = <Subject>(kinds: Kinds<Subject>, blank: Subject, book: Book<Subject> | undefined, lines: readonly Line[], options: FoldOptions = {}): Book<Subject> => {
  const old = book ?? emptyBook(blank);
  const { inner } = old;
  const fresh = freshOf(inner, lines);
  if (fresh.length === 0) return old;
  const reader = readerFor(kinds, options.fits);
  if (sizeOf(inner.byId) > 0 && isPlain(inner, fresh)) return enter(blank, old, fresh, reader);
  const all = [...[...valuesOf(inner.byId)].map((k) => k.line), ...inner.aside, ...fresh];
  const sorted = sortOut(all);
  const empty = emptyBook(blank);
  return enter(blank, { ...empty, inner: { ...empty.inner, aside: sorted.aside, sortedOut: sorted.disputes } }, sorted.read, reader);
};

/** Lines not held yet, each once. */
const freshOf = (inner: Inner, lines: readonly Line[]): readonly Line[] => {
  const aside = new Set(inner.aside.map((l) => l.hash));
  const fresh = new Map<string, Line>();
  for (const line of lines) if (look(inner.byId, line.entry.id)?.line.hash !== line.hash && !aside.has(line.hash)) fresh.set(line.hash, line);
  const rig = inner.rig ?? lines[0]?.entry.rig;
  for (const line of fresh.values()) if (line.entry.rig !== rig) throw new Error('a book holds the lines of one rig; sort them by rig first');
  return [...fresh.values()];
};

/** Whether the lines come after everything held or awaited from their devices and contradict nothing, so that all else stays as it is. */
const isPlain = (inner: Inner, fresh: readonly Line[]): boolean => {
  if (inner.sortedOut.length > 0) return false;
  const seen = new Set<string>();
  for (const { entry } of fresh) {
    const at = `${entry.device}\n${entry.counter}`;
    if (entry.counter <= (inner.upTo.get(entry.device) ?? 0) || look(inner.byId, entry.id) || seen.has(at) || seen.has(entry.id)) return false;
    seen.add(at).add(entry.id);
  }
  return true;
};
