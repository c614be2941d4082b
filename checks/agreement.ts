import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Agreement, AgreementRow, PublishedRow } from '../src/terms';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Rows of a published file of this repository: a table with a head, or one case a line. */
export const readRows = (path: string): readonly PublishedRow[] => {
  const lines = readFileSync(join(root, path), 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '');
  if (path.endsWith('.jsonl')) return lines.map((line) => JSON.parse(line) as PublishedRow);
  const [head = '', ...body] = lines;
  const columns = head.split(',');
  return body.map((line) => {
    const cells = line.split(',');
    if (cells.length !== columns.length) throw new Error(`${path}: ${line} has ${cells.length} cells, ${columns.length} expected`);
    return Object.fromEntries(columns.map((column, i) => [column, cells[i]]));
  });
};

export type Measured = {
  readonly agreement: Agreement;
  readonly rows: number;
  readonly worst: number;
  readonly worst_at: string;
  readonly passes: boolean;
};

/** How far apart one row is; words that differ, refusals and NaN are infinitely far. */
const deviation = (row: AgreementRow, by: Agreement['allowed']['by']): number => {
  if (typeof row.expected === 'string' || typeof row.got === 'string') return row.expected === row.got ? 0 : Number.POSITIVE_INFINITY;
  const d = Math.abs(row.got - row.expected);
  if (!Number.isFinite(d)) return Number.POSITIVE_INFINITY;
  if (by === 'ratio') return d / Math.abs(row.expected);
  if (by === 'difference' || d === 0) return d;
  return d / (row.tolerance ?? 0);
};

/** Slack for a deviation that equals the limit, lost in the last binary digit. */
const AT_LIMIT = 1 + 1e-9;

/** The one measurer: the gate and the printed table both read what it finds. */
export const measureAgreement = (agreement: Agreement, rows: readonly PublishedRow[] = readRows(agreement.table)): Measured => {
  const compared = agreement.measure(rows).map((row) => ({ row, by: deviation(row, agreement.allowed.by) }));
  const worst = compared.reduce<{ readonly at: string; readonly by: number }>((w, c) => (c.by > w.by ? { at: c.row.label, by: c.by } : w), { at: '', by: 0 });
  return { agreement, rows: compared.length, worst: worst.by, worst_at: worst.at, passes: compared.length === agreement.rows && worst.by <= agreement.allowed.most * AT_LIMIT };
};
