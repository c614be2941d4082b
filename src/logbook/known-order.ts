import type { DeviceId, Entry } from '../terms';
import { type Instant, parseInstant, parseWhen, type When } from '../units';
import type { Line } from './state';

/**
 * What was known when. Each entry names its device's previous entry and, for every other device, the last line held from it when the
 * entry was written. Clocks play no part.
 *
 * `depth` is the length of the longest chain of entries that had to be written before this one. If one entry was known when another was
 * written, it is the less deep; so depth, then id, is one total order that never puts a correction before what it corrects. Where
 * entries are missing, their counters stand in for them.
 */
export type Known = {
  readonly line: Line;
  readonly depth: number;
  /** The device clock's claim, read once. */
  readonly recorded: Instant;
  readonly when: When;
};

/** Every device's entries by counter; entries that share a counter (a device's chain forked) by hash. */
export type Chains = ReadonlyMap<DeviceId, readonly Known[]>;

/** Whether `earlier` was held when `later` was written, by the later entry's own word. */
export const knew = (later: Entry, earlier: Entry): boolean => {
  if (later.device === earlier.device) return earlier.counter < later.counter;
  for (const head of later.heads) if (head.device === earlier.device) return head.counter >= earlier.counter;
  return false;
};

/** Orders by what was known when, then by id. */
export const byKnown = (a: Known, b: Known): number => a.depth - b.depth || compareText(a.line.entry.id, b.line.entry.id) || compareText(a.line.hash, b.line.hash);

export const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const byCounter = (a: Known, b: Known): number => a.line.entry.counter - b.line.entry.counter || compareText(a.line.hash, b.line.hash);

/** Where a chain's last entry with at most this counter stands; -1 when there is none. */
const lastUpTo = (chain: readonly Known[], counter: number): number => {
  let [low, high] = [0, chain.length];
  if ((chain[high - 1]?.line.entry.counter ?? 0) <= counter) return high - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((chain[middle]?.line.entry.counter ?? 0) <= counter) low = middle + 1;
    else high = middle;
  }
  return low - 1;
};

type Ranking = { -readonly [K in keyof Known]: Known[K] };
const UNRANKED = -1;
const BEING_RANKED = -2;

/**
 * Adds lines to chains and finds how deep each stands. Only right when no earlier entry waits for one of them; see `knownUpTo`.
 * Lines that name each other in a circle (only a made-up file does) are cut at the one that stands first by device and counter.
 */
export const rank = (chains: Chains, lines: readonly Line[]): { readonly chains: Chains; readonly fresh: readonly Known[] } => {
  const next = new Map<DeviceId, Known[]>(chains as ReadonlyMap<DeviceId, Known[]>);
  const touched = new Set<DeviceId>();
  const fresh: Ranking[] = [];
  for (const line of lines) {
    const { device } = line.entry;
    if (!touched.has(device)) next.set(device, [...(next.get(device) ?? [])]);
    touched.add(device);
    const known: Ranking = { line, depth: UNRANKED, ...timesOf(line) };
    next.get(device)?.push(known);
    fresh.push(known);
  }
  for (const device of touched) next.get(device)?.sort(byCounter);
  fresh.sort((a, b) => compareText(a.line.entry.device, b.line.entry.device) || byCounter(a, b));
  for (const known of fresh) if (known.depth === UNRANKED) dig(next, known);
  return { chains: next, fresh: fresh.sort(byKnown) };
};

const timesOf = ({ entry }: Line): { readonly recorded: Instant; readonly when: When } => {
  const recorded = parseInstant(entry.recorded_at);
  const when = parseWhen(entry.observed_at);
  if (recorded === undefined || when === undefined) throw new Error(`${entry.id} was let in with a time that cannot be read`);
  return { recorded, when };
};

/** Depth of one entry, after the depth of all it rests on; with a stack of its own, since a chain can be very long. */
const dig = (chains: Chains, first: Ranking): void => {
  const stack = [first];
  for (let top = stack.at(-1); top !== undefined; top = stack.at(-1)) {
    top.depth = BEING_RANKED;
    const { entry } = top.line;
    let depth = 0;
    let waiting: Ranking | undefined;
    const restsOn = (device: DeviceId, counter: number): void => {
      const chain = (chains.get(device) ?? []) as readonly Ranking[];
      const last = lastUpTo(chain, counter);
      const nearest = chain[last]?.line.entry.counter ?? 0;
      depth = Math.max(depth, counter);
      // One entry as a rule; several where the chain forked, and then the deepest counts.
      for (let i = last, below = chain[i]; below?.line.entry.counter === nearest; i -= 1, below = chain[i]) {
        if (below.depth === UNRANKED) waiting = below;
        depth = Math.max(depth, below.depth + counter - nearest);
      }
    };
    restsOn(entry.device, entry.counter - 1);
    for (const head of entry.heads) if (waiting === undefined) restsOn(head.device, head.counter);
    if (waiting !== undefined) {
      stack.push(waiting);
      continue;
    }
    top.depth = depth + 1;
    stack.pop();
  }
};

/** The highest counter of each device that any of the lines holds or names. A line at or below it may be one that others wait for. */
export const knownUpTo = (before: ReadonlyMap<DeviceId, number>, lines: readonly Line[]): ReadonlyMap<DeviceId, number> => {
  const upTo = new Map(before);
  const raise = (device: DeviceId, counter: number): void => {
    if (counter > (upTo.get(device) ?? 0)) upTo.set(device, counter);
  };
  for (const { entry } of lines) {
    raise(entry.device, entry.counter);
    for (const head of entry.heads) raise(head.device, head.counter);
  }
  return upTo;
};

/** Lines in the order of what was known when: the same set gives the same order, however it arrived. */
export const inKnownOrder = (lines: readonly Line[]): readonly Line[] => rank(new Map(), lines).fresh.map((k) => k.line);
