import rows from './looks.json';
import type { Look } from './trade-types';

/** What to look at, by kind of station. */
export const looks = rows as unknown as readonly Look[];

const byId = new Map(looks.map((row) => [row.id, row]));

/** The looks of one kind of station; undefined when no such row exists. */
export const look = (kind: string): Look | undefined => byId.get(kind);

/** The looks of a kind and of every wider kind that also holds: `window-exit`, `window`, `opening-wall`. */
export const looksChain = (kind: string): readonly Look[] => {
  const chain: Look[] = [];
  for (let row = byId.get(kind); row && !chain.includes(row); row = row.also === undefined ? undefined : byId.get(row.also)) chain.push(row);
  return chain;
};

/** Is this kind of station one of a wider kind: a `skylight` is an `opening-roof`. */
export const isA = (kind: string, wider: string): boolean => looksChain(kind).some((row) => row.id === wider);
