import { COMMON_PRACTICE, type Source } from '../../terms';
import rows from './sources.json';
import type { Lean, SourceRow } from './trade-types';

/** Everything the trade data leans on, in the order of the file. */
export const sources = rows as readonly SourceRow[];

const byKey = new Map(sources.map((row) => [row.key, row]));

/** One source by its key, with what it covers of the row that names it. */
export const sourceOf = (key: string, covers?: string): Source => {
  const row = byKey.get(key);
  if (!row) throw new Error(`no source ${key}`);
  if (row.status === 'practice') return COMMON_PRACTICE;
  const said = row.status === 'memory' && !row.title.includes('from memory') ? `${row.title}, from memory` : row.title;
  const text = `${said}${covers === undefined ? '' : ` (covers: ${covers})`}${row.status === 'memory' ? ', unconfirmed' : ''}`;
  return row.address === undefined ? { status: row.status, text } : { status: row.status, text, address: row.address };
};

const made = new WeakMap<readonly Lean[], Source>();

/** The source that carries a row: its first. */
export const firstSource = (leans: readonly Lean[]): Source => {
  const known = made.get(leans);
  if (known) return known;
  const lean = leans[0];
  const source = lean ? sourceOf(lean[0], lean[1]) : COMMON_PRACTICE;
  made.set(leans, source);
  return source;
};
