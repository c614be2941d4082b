import type { Agreement, AgreementRow, PublishedRow } from '../src/terms';
import { readRows } from './agreement';
import { caseRuns } from './case-runs';
import type { Values } from './case-through';

const CASES: Readonly<Record<string, number>> = {
  'src/worksheets/cases/air.jsonl': 33,
  'src/worksheets/cases/drying.jsonl': 5,
  'src/worksheets/cases/geometry.jsonl': 4,
  'src/worksheets/cases/joints.jsonl': 34,
  'src/worksheets/cases/kriging.jsonl': 42,
  'src/worksheets/cases/ladder.jsonl': 5,
  'src/worksheets/cases/leak.jsonl': 4,
  'src/worksheets/cases/mould.jsonl': 25,
  'src/worksheets/cases/rain.jsonl': 6,
  'src/worksheets/cases/sealant.jsonl': 24,
  'src/worksheets/cases/statistics.jsonl': 26,
  'src/worksheets/cases/sun.jsonl': 71,
  'src/worksheets/cases/surface.jsonl': 19,
  'src/worksheets/cases/touch.jsonl': 8,
  'src/worksheets/cases/tyre.jsonl': 75,
  'src/worksheets/cases/wood.jsonl': 37,
};

export const caseFiles: readonly string[] = Object.keys(CASES);

/** Exact, but for what is lost in the last binary digit. */
const EXACT = 1e-9;

/** The part of the words that speaks of this value: `volume ±0.5 %` names it in front, `±0.005 (variance)` behind. */
const clauseFor = (words: string, key: string): string => {
  const front = words.split(';').find((c) => key.startsWith(c.trim().split(' ')[0] || ';'));
  const behind = words.split(/[;,]\s/).find((c) => key.includes(/\((\w+)\)/.exec(c)?.[1] ?? ';'));
  return front ?? behind ?? words;
};

/** `±0.1`, `±0.03 %`, `exact`; `volume ±0.5 %; packages exact` speaks of each expected value by name. */
export const toleranceOf = (words: string, key: string, expected: number): number => {
  const clause = clauseFor(words, key);
  if (/\bexact\b/.test(clause)) return EXACT * Math.max(1, Math.abs(expected));
  const found = /±\s*([\d.]+(?:e[-+]?\d+)?)\s*(%?)/.exec(clause);
  if (found === null) throw new Error(`no tolerance in “${words}”`);
  return found[2] === '%' ? (Number(found[1]) / 100) * Math.abs(expected) : Number(found[1]);
};

const isFigures = (value: unknown): value is readonly number[] => Array.isArray(value) && value.length > 0 && value.every((n) => typeof n === 'number');

/** Every expected value of a case beside what its worksheet gives, lists figure by figure. Words, other lists and yes-or-no are compared as text. */
export const compareCase = (c: PublishedRow): readonly AgreementRow[] => {
  const expected = c.expected as Values;
  const run = caseRuns[String(c.quantity)];
  const got = run?.(c.inputs as Values, expected) ?? {};
  const one = (label: string, key: string, value: number, answer: unknown): AgreementRow => ({
    label,
    expected: value,
    got: typeof answer === 'number' ? answer : 'nothing',
    tolerance: toleranceOf(String(c.tolerance), key, value),
  });
  return Object.entries(expected).flatMap(([key, value]) => {
    const label = `${c.id} ${key}`;
    const answer = got[key];
    if (typeof value === 'number') return [one(label, key, value, answer)];
    // A list of another length is wrong as a whole.
    if (isFigures(value) && isFigures(answer) && answer.length === value.length) return value.map((n, i) => one(`${label} ${i + 1}`, key, n, answer[i]));
    return [{ label, expected: JSON.stringify(value), got: JSON.stringify(answer) ?? 'nothing' }];
  });
};

/** How many values the cases of one file hold in all. */
const values = (rows: readonly PublishedRow[]): number =>
  rows.reduce((sum, c) => sum + Object.values(c.expected as Values).reduce((n: number, v) => n + (isFigures(v) ? v.length : 1), 0), 0);

/** Cases of one file, as one line of the table; each case keeps its own tolerance and its own source. */
export const caseAgreements: readonly Agreement[] = Object.entries(CASES).map(([table, cases]) => {
  const rows = readRows(table);
  if (rows.length !== cases) throw new Error(`${table} holds ${rows.length} cases, ${cases} expected`);
  const unread = rows.filter((c) => c.seen !== true).length;
  return {
    quantity: `Cases, ${table.split('/').at(-1)?.replace('.jsonl', '')}`,
    source: `${cases} cases, each with its own source in ${table}${unread > 0 ? `; ${unread} closed forms or from memory, unconfirmed` : ''}`,
    table,
    rows: values(rows),
    allowed: { by: 'own', most: 1, unit: 'of its tolerance' },
    remark: 'Each through its worksheet, within the tolerance that stands in the case.',
    measure: (published) => published.flatMap(compareCase),
  };
});
