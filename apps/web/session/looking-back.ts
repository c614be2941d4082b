import { kindById } from '../../../src/entries';
import type { Line } from '../../../src/logbook';
import { type Planned, planAfter } from '../../../src/plan';
import type { Rig } from '../../../src/rig';
import type { Entry, RigId } from '../../../src/terms';
import { type CivilDay, lastDay, parseWhen } from '../../../src/units';
import { rigBook } from '../../rig-book';

/** What describes the rig, and what amends other entries, counts whatever the day: it says how the older lines are to be read. */
const counts = (entry: Entry, on: CivilDay): boolean => {
  const kind = kindById(entry.kind);
  if (kind?.group === 'description' || kind?.fold.mode === 'amends') return true;
  const when = parseWhen(entry.observed_at);
  return when === undefined || lastDay(when) <= on;
};

/**
 * The rig as it stood on an earlier day: what had been so by then, read as it is known today, and planned for that day.
 *
 * @returns  the drawn rig of today with the plan of that day
 */
export const lookBack = (rig: RigId, lines: readonly Line[], on: CivilDay): { readonly subject: Rig; readonly planned: Planned } => {
  const then = lines.filter((l) => counts(l.entry, on));
  const { state } = rigBook(rig, undefined, then);
  return { subject: state.subject, planned: planAfter(undefined, state.subject, state, on) };
};
