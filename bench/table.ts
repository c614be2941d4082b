/** One line of the table. */
export type Row = {
  readonly what: string;
  readonly goal: string;
  readonly reached: string;
  /** Against a plain piece of work in the same run. */
  readonly ratio: string;
  readonly met: boolean;
};

export const ms = (n: number): string => (n < 10 ? `${n.toFixed(1)} ms` : `${Math.round(n)} ms`);

export const table = (rows: readonly Row[]): string =>
  [
    '| what | goal | reached | against | |',
    '| --- | --- | --- | --- | --- |',
    ...rows.map((r) => `| ${r.what} | ${r.goal} | ${r.reached} | ${r.ratio} | ${r.met ? 'met' : 'not met'} |`),
  ].join('\n');
