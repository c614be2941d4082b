/** How often each figure that comes more than once is there: of 22, 22, 20, 19, 19, 19 it is 2 and 3. */
export const ties = (values: readonly number[]): readonly number[] => {
  const counts = new Map<number, number>();
  for (const v of values) counts.set(v, (counts.get(v) ?? 0) + 1);
  return [...counts.values()].filter((n) => n > 1);
};

const pairs = (n: number): number => n * (n - 1) * (2 * n + 5);

/** Variance of Kendall's S for n readings; each group of equal readings, and of equal times, takes its part away. */
export const varianceOfS = (n: number, ...groups: readonly (readonly number[])[]): number => (pairs(n) - groups.flat().reduce((sum, t) => sum + pairs(t), 0)) / 18;
