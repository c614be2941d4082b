import type { Line } from '../../../src/logbook';

const numbered = ({ entry }: Line): string => JSON.stringify([entry.rig, entry.device, entry.counter]);

/**
 * How many of the lines just taken in stand at a number of a device at which another line stood already. A file may hold
 * together by itself and still disagree with what is here.
 *
 * @param held  the lines that are held now, with those taken in
 */
export const disagreeing = (held: readonly Line[], taken: readonly Line[]): number => {
  const arrived = new Set(taken.map((l) => l.hash));
  const before = new Set(held.filter((l) => !arrived.has(l.hash)).map(numbered));
  return taken.filter((l) => before.has(numbered(l))).length;
};

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

export type TakenIn = { readonly taken: number; readonly known: number; readonly refused: number; readonly disagreeing: number; readonly doubt: string | undefined };

/** What came of a file: what was taken in, what was left out and why, and that nothing here was lost by it. */
export const importWords = ({ taken, known, refused, disagreeing: differ, doubt }: TakenIn): string =>
  [
    taken === 0
      ? known > 0
        ? 'Nothing new: all of it is here already.'
        : 'Nothing was taken in.'
      : `${count(taken, 'entry was', 'entries were')} taken in${known > 0 ? `, ${known} were here already` : ''}.`,
    refused > 0 ? `${count(refused, 'line', 'lines')} could not be read and ${refused === 1 ? 'was' : 'were'} left out; what was recorded here is unchanged.` : '',
    differ > 0
      ? `${count(differ, 'entry of the file disagrees', 'entries of the file disagree')} with what is here: the same device wrote something else under the same number. Either a line was changed, or the device’s data was copied to a second device. Both are kept; nothing here was replaced.`
      : '',
    doubt ?? '',
  ]
    .filter((w) => w !== '')
    .join(' ');
