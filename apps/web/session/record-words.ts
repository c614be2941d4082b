import { parseDay, showDay } from '../../../src/units';
import type { Copies, Trouble } from './ports';
import type { RecordStatus } from './session';

/** The state of the record in words, and about the record only: never that the rig is safe. */
export const recordWords = ({ only_here, at }: Awaited<ReturnType<Copies['of']>>, trouble?: Trouble): RecordStatus => {
  if (trouble) return { state: 'problem', words: PROBLEM[trouble.code] ?? 'storage', happened: trouble.happened, safe: trouble.safe, todo: trouble.todo };
  const day = at === undefined ? undefined : parseDay(at.slice(0, 10));
  const copied = day === undefined ? '' : `, copied ${showDay(day, true)}`;
  if (only_here === 0) return { state: 'kept', words: `All kept${copied}` };
  return { state: 'not-copied', count: only_here, words: day === undefined ? 'All kept, not copied yet' : `All kept, ${only_here} not copied yet` };
};

const PROBLEM: Readonly<Record<string, string>> = {
  'no-room': 'no room',
  'not-allowed': 'nothing is kept here',
  lost: 'logbook closed',
  'held-by-older': 'older window open',
  unreadable: 'entries damaged',
};
