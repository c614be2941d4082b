import type { Book, Line, LogbookStore } from '../../../src/logbook';
import type { Rig } from '../../../src/rig';
import type { RigId } from '../../../src/terms';
import { rigBook } from '../../rig-book';

/** A rig's logbook, folded, with the lines it was folded from. Bodies are judged where they come in: by the store, and in `keep`. */
export type RigBook = { readonly book: Book<Rig>; readonly lines: readonly Line[] };

const folded = (rig: RigId, before: RigBook | undefined, lines: readonly Line[]): RigBook => ({
  book: rigBook(rig, before?.book, lines),
  lines: [...(before?.lines ?? []), ...lines],
});

/**
 * The folded logbooks of this device, each read once and then moved on line by line.
 * Another tab may write too: `renew` takes in what it wrote.
 */
export const rigBooks = (store: LogbookStore) => {
  const held = new Map<RigId, Promise<RigBook>>();

  const of = (rig: RigId): Promise<RigBook> => {
    const known = held.get(rig);
    if (known) return known;
    const read = store.lines(rig).then((lines) => folded(rig, undefined, lines));
    held.set(rig, read);
    read.catch(() => held.delete(rig));
    return read;
  };

  const change = (rig: RigId, to: (before: RigBook) => RigBook): Promise<RigBook> => {
    const next = of(rig).then(to);
    held.set(rig, next);
    next.catch(() => held.delete(rig));
    return next;
  };

  return {
    of,
    take: (rig: RigId, lines: readonly Line[]): Promise<RigBook> =>
      change(rig, (before) => {
        const known = new Set(before.lines.map((l) => l.hash));
        const fresh = lines.filter((l) => !known.has(l.hash));
        return fresh.length === 0 ? before : folded(rig, before, fresh);
      }),
    renew: async (rig: RigId): Promise<RigBook> => {
      const lines = await store.lines(rig);
      return change(rig, (before) => {
        const known = new Set(before.lines.map((l) => l.hash));
        const fresh = lines.filter((l) => !known.has(l.hash));
        return fresh.length === 0 && lines.length === before.lines.length
          ? before
          : lines.length < before.lines.length
            ? folded(rig, undefined, lines)
            : folded(rig, before, fresh);
      });
    },
    drop: (rig: RigId): void => {
      held.delete(rig);
    },
  };
};

export type RigBooks = ReturnType<typeof rigBooks>;
