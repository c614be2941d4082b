import { kinds, readBody } from '../../../src/entries';
import { advance, type Book, type Line, type LogbookStore } from '../../../src/logbook';
import { blankRig, type Rig } from '../../../src/rig';
import type { RigId } from '../../../src/terms';

/** A rig's logbook, folded, with the lines it was folded from. */
export type RigBook = { readonly book: Book<Rig>; readonly lines: readonly Line[] };

/** Bodies that this version's own kinds cannot read stay in the record and are not judged. */
const fits = (kind: Parameters<typeof readBody>[0], body: unknown): boolean => readBody(kind, body).ok;

const folded = (rig: RigId, before: RigBook | undefined, lines: readonly Line[]): RigBook => ({
  book: advance(kinds, blankRig(rig), before?.book, lines, { fits }),
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
