import type { DeviceId, EntryId, Hash } from '../terms';
import { compareText } from './known-order';
import type { Line } from './state';

/**
 * Lines that cannot all be what they say. Nothing is thrown away: every line stays in the logbook and in its exports;
 * the same one is read everywhere, and people are told.
 *
 * `same-id`       lines with one id and different content
 * `same-counter`  a device used a counter twice, so its chain has forked: two copies of one device, or a made-up line
 * `misfit`        a correction whose result its kind cannot read; the entry is read without it
 */
export type Dispute = { readonly code: 'same-id' | 'same-counter' | 'misfit'; readonly entries: readonly EntryId[]; readonly hashes: readonly Hash[]; readonly sentence: string };

export type Sorted = { readonly read: readonly Line[]; readonly aside: readonly Line[]; readonly disputes: readonly Dispute[] };

const groupsOf = <K>(lines: readonly Line[], key: (line: Line) => K): readonly (readonly Line[])[] => {
  const groups = new Map<K, Line[]>();
  for (const line of lines) {
    const group = groups.get(key(line));
    if (group) group.push(line);
    else groups.set(key(line), [line]);
  }
  return [...groups.values()];
};

/** Hashes that some line names as its previous or as a head: somebody saw that very line. */
const vouchedFor = (lines: readonly Line[]): ReadonlySet<Hash> => {
  const hashes = new Set<Hash>();
  for (const { entry } of lines) {
    if (entry.previous !== null) hashes.add(entry.previous);
    for (const head of entry.heads) hashes.add(head.hash);
  }
  return hashes;
};

/** Whether no id and no counter is there twice: so it is with every honest logbook, and then there is nothing to choose. */
const isPlainlySorted = (lines: readonly Line[]): boolean => {
  const ids = new Set<EntryId>();
  const counters = new Map<DeviceId, Set<number>>();
  for (const { entry } of lines) {
    let used = counters.get(entry.device);
    if (used === undefined) {
      used = new Set();
      counters.set(entry.device, used);
    }
    ids.add(entry.id);
    used.add(entry.counter);
  }
  let places = 0;
  for (const used of counters.values()) places += used.size;
  return ids.size === lines.length && places === lines.length;
};

/**
 * Chooses between lines that share an id: the one that another line vouches for, else the one whose hash comes first.
 * Depends on the set of lines alone, not on their order.
 *
 * @param lines  each once
 */
export const sortOut = (lines: readonly Line[]): Sorted => {
  if (isPlainlySorted(lines)) return { read: lines, aside: [], disputes: [] };
  const byId = groupsOf(lines, (l) => l.entry.id);
  const read: Line[] = [];
  const aside: Line[] = [];
  const disputes: Dispute[] = [];
  const vouched = byId.length < lines.length ? vouchedFor(lines) : new Set<Hash>();
  for (const group of byId) {
    const inOrder = group.length === 1 ? group : [...group].sort((a, b) => Number(vouched.has(b.hash)) - Number(vouched.has(a.hash)) || compareText(a.hash, b.hash));
    inOrder.forEach((line, i) => {
      (i === 0 ? read : aside).push(line);
    });
    const first = group[0];
    if (group.length > 1 && first)
      disputes.push({
        code: 'same-id',
        entries: [first.entry.id],
        hashes: inOrder.map((l) => l.hash).sort(compareText),
        sentence: `${group.length} different lines carry the same id. One of them was changed after it was written. All are kept; one is read. Compare the files they came from.`,
      });
  }
  for (const group of groupsOf(read, (l) => `${l.entry.device}\n${l.entry.counter}`)) {
    const first = group[0];
    if (group.length > 1 && first)
      disputes.push({
        code: 'same-counter',
        entries: group.map((l) => l.entry.id).sort(compareText),
        hashes: group.map((l) => l.hash).sort(compareText),
        sentence: `One device wrote ${group.length} entries as its number ${first.entry.counter}. Its data was probably copied to a second device. All entries are kept and read.`,
      });
  }
  return { read, aside, disputes: inOrderOf(disputes) };
};

export const inOrderOf = (disputes: readonly Dispute[]): readonly Dispute[] =>
  [...disputes].sort((a, b) => compareText(a.code, b.code) || compareText(a.hashes.join(), b.hashes.join()) || compareText(a.entries.join(), b.entries.join()));

export const misfitOf = (target: EntryId, correction: Line): Dispute => ({
  code: 'misfit',
  entries: [target, correction.entry.id],
  hashes: [correction.hash],
  sentence: 'A correction does not fit the entry it names, and is not read. Both are kept. Write the correction again.',
});
