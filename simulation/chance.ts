/**
 * Chance for the simulated world: a small generator with a 32-bit state (mulberry32, public domain arithmetic), so that
 * every run of one seed gives the same rigs, leaks and readings on every machine.
 */
export type Chance = {
  /** Evenly between 0 and 1. */
  readonly even: () => number;
  readonly between: (low: number, high: number) => number;
  readonly whole: (low: number, high: number) => number;
  readonly happens: (probability: number) => boolean;
  /** Bell curve, by Box and Muller. */
  readonly bell: (mean: number, deviation: number) => number;
  /** Waiting length with this mean. */
  readonly waiting: (mean: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
  readonly weighted: <T>(from: readonly T[], weight: (item: T) => number) => T;
};

export const chance = (seed: number): Chance => {
  let state = seed >>> 0;
  const even = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  const pick = <T>(from: readonly T[]): T => {
    const found = from[Math.floor(even() * from.length)];
    if (found === undefined) throw new Error('nothing to pick from');
    return found;
  };
  return {
    even,
    between: (low, high) => low + even() * (high - low),
    whole: (low, high) => low + Math.floor(even() * (high - low + 1)),
    happens: (probability) => even() < probability,
    bell: (mean, deviation) => mean + deviation * Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even()),
    waiting: (mean) => -mean * Math.log(1 - even()),
    pick,
    weighted: (from, weight) => {
      const weights = from.map(weight);
      let left = even() * weights.reduce((a, b) => a + b, 0);
      for (const [i, item] of from.entries()) {
        left -= weights[i] ?? 0;
        if (left < 0) return item;
      }
      return pick(from);
    },
  };
};
