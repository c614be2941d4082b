import { type ClockDoubt, fromTheFuture, type Line, type State } from '../../../src/logbook';
import type { Rig } from '../../../src/rig';
import type { EntryId } from '../../../src/terms';
import { civilDay, isoDay, lastDay, parseWhen } from '../../../src/units';

/** What the fold doubts by itself, and what only a clock can say: entries written after now. At most one doubt for each entry. */
export const doubtsNow = ({ clockDoubts, withdrawn, standing }: State<Rig>, lines: readonly Line[], now: string): readonly ClockDoubt[] => {
  const when = parseWhen(now);
  if (when?.form !== 'instant') return clockDoubts;
  const told = new Set([...clockDoubts.map((d) => d.entry), ...withdrawn]);
  // Days are compared as text first: a long logbook is asked after every tap.
  const yesterday = isoDay(civilDay(lastDay(when) - 1));
  const late = lines.flatMap(({ entry }) => (entry.recorded_at >= yesterday ? [entry] : []));
  /** A person has said when it was: that answers the doubt. */
  const answered = (id: EntryId): boolean => {
    const known = standing.get(id);
    return known !== undefined && known.observed_at !== known.entry.observed_at;
  };
  return [...clockDoubts, ...fromTheFuture(late, when.at).filter((d) => !told.has(d.entry) && !answered(d.entry))];
};
