import type { DeviceId, Hash, Head, RigId } from '../terms';
import { type HashColumn, hashColumn } from './hash-column';
import type { Line } from './state';

/** A link of a device's chain that does not hold, or an entry that is named but not here. */
export type Breach =
  | { readonly code: 'repeated'; readonly rig: RigId; readonly device: DeviceId; readonly counter: number; readonly line: number }
  | { readonly code: 'same-counter'; readonly rig: RigId; readonly device: DeviceId; readonly counter: number; readonly line: number }
  /** The entry `counter` names another previous line than the one that is here; `line` is where it stands, `previous_line` where its previous stands. */
  | { readonly code: 'broken-link'; readonly rig: RigId; readonly device: DeviceId; readonly counter: number; readonly line: number; readonly previous_line: number }
  /** Another device saw this entry as a different line. */
  | { readonly code: 'seen-otherwise'; readonly rig: RigId; readonly device: DeviceId; readonly counter: number; readonly line: number }
  /** Entries `from` to `to` of a device are not here. */
  | { readonly code: 'gap'; readonly rig: RigId; readonly device: DeviceId; readonly from: number; readonly to: number };

export type Chain = { readonly rig: RigId; readonly device: DeviceId; readonly entries: number; readonly head: Head };

type Held = {
  readonly rig: RigId;
  readonly device: DeviceId;
  /** Row of each counter's hash. */
  readonly rows: Map<number, number>;
  highest: number;
  /** Highest counter that anyone names. */
  named: number;
  /** What its last entry held from others: a head named by a thousand entries in a row is looked at once. */
  heads: readonly Head[];
};
type Waiting = { readonly hash: Hash; readonly line: number };

const MOST_LISTED = 1000;

/**
 * Checks each line of a logbook against its device's chain as it goes by, in any order. Keeps under 100 bytes of each line,
 * and more only of lines that come before those they rest on.
 */
export const chainLedger = () => {
  const hashes: HashColumn = hashColumn();
  /** The line of the file on which each row stood. */
  let lines = new Uint32Array(1024);
  const chains = new Map<RigId, Map<DeviceId, Held>>();
  /** What is claimed of an entry that has not gone by yet: by its next entry, or by another device. */
  const awaited = new Map<string, Waiting[]>();
  const same = (row: number, hash: Hash): boolean => hashes.at(row) === hash;
  const breaches: Breach[] = [];
  let unlisted = 0;
  const note = (breach: Breach): void => {
    if (breaches.length < MOST_LISTED) breaches.push(breach);
    else unlisted += 1;
  };

  const chainOf = (rig: RigId, device: DeviceId): Held => {
    let devices = chains.get(rig);
    if (devices === undefined) {
      devices = new Map();
      chains.set(rig, devices);
    }
    let chain = devices.get(device);
    if (chain === undefined) {
      chain = { rig, device, rows: new Map(), highest: 0, named: 0, heads: [] };
      devices.set(device, chain);
    }
    return chain;
  };
  const allChains = (): readonly Held[] => [...chains.values()].flatMap((devices) => [...devices.values()]);

  const breach = (chain: Held, counter: number, row: number, claim: Waiting & { readonly own: boolean }): Breach => {
    const { rig, device } = chain;
    return claim.own
      ? { code: 'broken-link', rig, device, counter: counter + 1, line: claim.line, previous_line: lines[row] ?? 0 }
      : { code: 'seen-otherwise', rig, device, counter, line: lines[row] ?? 0 };
  };

  const key = (chain: Held, counter: number, own: boolean): string => JSON.stringify([chain.rig, chain.device, counter, own]);

  /** Somebody says that entry `counter` of a chain has this hash. */
  const claim = (chain: Held, counter: number, hash: Hash, line: number, own: boolean): void => {
    chain.named = Math.max(chain.named, counter);
    const row = chain.rows.get(counter);
    if (row !== undefined) {
      if (!same(row, hash)) note(breach(chain, counter, row, { hash, line, own }));
      return;
    }
    const k = key(chain, counter, own);
    const list = awaited.get(k);
    if (list === undefined) awaited.set(k, [{ hash, line }]);
    else if (!list.some((w) => w.hash === hash)) list.push({ hash, line });
  };

  const settle = (chain: Held, counter: number, row: number): void => {
    if (awaited.size === 0) return;
    for (const own of [true, false]) {
      const k = key(chain, counter, own);
      for (const waiting of awaited.get(k) ?? []) if (!same(row, waiting.hash)) note(breach(chain, counter, row, { ...waiting, own }));
      awaited.delete(k);
    }
  };

  return {
    breaches,
    /** Breaches beyond the first thousand, counted only. */
    unlisted: () => unlisted,
    hashes,
    /** Takes one line; false when it had gone by before. */
    take: ({ entry, hash }: Line, line: number): boolean => {
      const { rig, device, counter } = entry;
      const chain = chainOf(rig, device);
      const earlier = chain.rows.get(counter);
      const row = hashes.add(hash);
      if (row >= lines.length) {
        const grown = new Uint32Array(lines.length * 2);
        grown.set(lines);
        lines = grown;
      }
      lines[row] = line;
      if (earlier !== undefined && same(earlier, hash)) {
        note({ code: 'repeated', rig, device, counter, line });
        return false;
      }
      if (earlier !== undefined) note({ code: 'same-counter', rig, device, counter, line });
      else {
        chain.rows.set(counter, row);
        chain.highest = Math.max(chain.highest, counter);
        chain.named = Math.max(chain.named, counter);
        settle(chain, counter, row);
      }
      if (entry.previous !== null) claim(chain, counter - 1, entry.previous, line, true);
      for (const head of entry.heads) {
        const seen = chain.heads.some((h) => h.device === head.device && h.hash === head.hash && h.counter === head.counter);
        if (!seen && head.device !== device) claim(chainOf(rig, head.device), head.counter, head.hash, line, false);
      }
      chain.heads = entry.heads;
      return true;
    },
    /** Runs of entries that are not here, though a later one of the same device is, or another device names them. */
    gaps: (): readonly Breach[] => {
      const gaps: Breach[] = [];
      for (const { rig, device, rows, named } of allChains()) {
        let next = 1;
        for (const counter of [...[...rows.keys()].sort((a, b) => a - b), named + 1]) {
          if (counter > next) gaps.push({ code: 'gap', rig, device, from: next, to: counter - 1 });
          next = counter + 1;
        }
      }
      return gaps;
    },
    chains: (): readonly Chain[] =>
      allChains()
        .filter((c) => c.rows.size > 0)
        .map((c) => ({ rig: c.rig, device: c.device, entries: c.rows.size, head: { device: c.device, counter: c.highest, hash: hashes.at(c.rows.get(c.highest) ?? 0) } }))
        .sort((a, b) => (a.rig < b.rig || (a.rig === b.rig && a.device < b.device) ? -1 : 1)),
  };
};
