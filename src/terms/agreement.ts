/** One published value beside what the calculation gives for it. */
export type AgreementRow = {
  readonly label: string;
  readonly expected: number | string;
  readonly got: number | string;
  /** The row's own tolerance, where each has one. */
  readonly tolerance?: number;
};

/** One row of a published file: columns of a table, or fields of a case. */
export type PublishedRow = Readonly<Record<string, unknown>>;

/**
 * How a calculation is held against something that this project did not write.
 * One declaration has two readers: a check that fails, and the table that `npm run scores` prints.
 */
export type Agreement = {
  /** What is compared, in trade words. */
  readonly quantity: string;
  /** Title, edition, table or page; `from memory, unconfirmed` where it was not read in its source. */
  readonly source: string;
  /** The published rows, a file of this repository: a table (`.csv`) or cases (`.jsonl`). */
  readonly table: string;
  /** How many values must be compared. One fewer fails: a dropped row is a hidden disagreement. */
  readonly rows: number;
  /**
   * The worst deviation that passes. `difference` in `unit`; `ratio` relatively, 0.001 is 0.1 %;
   * `own` as a multiple of each row's own tolerance. Words must be equal.
   */
  readonly allowed: { readonly by: 'difference' | 'ratio' | 'own'; readonly most: number; readonly unit: string };
  /** How well it should agree, and where it does not. */
  readonly remark: string;
  readonly measure: (rows: readonly PublishedRow[]) => readonly AgreementRow[];
};
