import { type Book, lineOf } from '../../../src/logbook';
import { type Finding, isOpen } from '../../../src/plan';
import type { Rig } from '../../../src/rig';
import { byUrgency, type Draft, type EntryId, type RigId } from '../../../src/terms';
import { rigBook } from '../../rig-book';

const SUPPOSED = 'supposed';

/**
 * The book as it would be with these drafts in it. They stand on a device of their own, after everything that is known
 * here, and are never written.
 */
export const supposing = (rig: RigId, book: Book<Rig>, drafts: readonly Draft[], now: string): { readonly book: Book<Rig>; readonly ids: ReadonlySet<EntryId> } => {
  const ids = drafts.map((_, i) => `ffffffff-ffff-7fff-bfff-${i.toString(16).padStart(12, '0')}`);
  let previous: string | null = null;
  const lines = drafts.map((draft, i) => {
    const line = lineOf({ ...draft, id: ids[i] ?? '', recorded_at: now, device: SUPPOSED, counter: i + 1, previous, heads: i === 0 ? book.state.heads : [] });
    previous = line.hash;
    return line;
  });
  return { book: rigBook(rig, book, lines), ids: new Set(ids) };
};

/** Open findings that rest on the drafts, the most urgent first: raised by one of them, or with one of them among the reasons. */
export const restingOn = (findings: readonly Finding[], ids: ReadonlySet<EntryId>): readonly Finding[] =>
  findings.filter((f) => isOpen(f) && (ids.has(f.raised_by) || f.because.some((b) => b.entries.some((e) => ids.has(e))))).sort((a, b) => byUrgency(a.urgency, b.urgency));
