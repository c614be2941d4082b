/** Milliseconds of one run of `work`, several times over: the median and the range. Interleave what is compared; one machine's noise then hits both. */
export type Timing = { readonly median: number; readonly least: number; readonly most: number; readonly runs: number };

export const summary = (values: readonly number[]): Timing => {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { median: at(0.5), least: sorted[0] ?? Number.NaN, most: sorted.at(-1) ?? Number.NaN, runs: sorted.length };
};

export const p95 = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(0.95 * sorted.length) - 1)] ?? Number.NaN;
};

/** Runs the works in turn, `rounds` times, after one unmeasured turn each. */
export const interleaved = (works: Readonly<Record<string, () => void>>, rounds: number): Readonly<Record<string, Timing>> => {
  const times: Record<string, number[]> = Object.fromEntries(Object.keys(works).map((name) => [name, []]));
  for (let round = -1; round < rounds; round += 1)
    for (const [name, work] of Object.entries(works)) {
      const since = performance.now();
      work();
      const took = performance.now() - since;
      if (round >= 0) times[name]?.push(took);
    }
  return Object.fromEntries(Object.entries(times).map(([name, values]) => [name, summary(values)]));
};
