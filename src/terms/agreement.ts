/** One row of a published table beside what the calculation gives for it. */
export type AgreementRow = { readonly label: string; readonly expected: number | string; readonly got: number | string };

/**
 * How a calculation is held against something that this project did not write.
 * One declaration has two readers: a check that fails, and the table that `npm run scores` prints.
 */
export type Agreement = {
  /** What is compared, in trade words. */
  readonly quantity: string;
  /** Title, edition, table or page; `from memory, unconfirmed` where it was not read in its source. */
  readonly source: string;
  /** The published rows, as a file of this repository. */
  readonly table: string;
  /** How many rows must be compared. One fewer fails: a dropped row is a hidden disagreement. */
  readonly rows: number;
  /** The worst deviation that passes. `ratio` compares relatively (0.001 is 0.1 %), `difference` in `unit`; words must be equal. */
  readonly allowed: { readonly by: 'difference' | 'ratio'; readonly most: number; readonly unit: string };
  /** How well it should agree, and where it does not. */
  readonly remark: string;
  readonly measure: (table: string) => readonly AgreementRow[];
};
