import type { AnyKind, Entry, EntryId, Head } from '../terms';
import { lastDay, sortInstant } from '../units';
import { type Amendment, type Settled, settle } from './amendments';
import type { AsWritten, Reader } from './as-written';
import type { Book } from './book';
import { clockDoubt } from './clock-doubts';
import { type Dispute, inOrderOf, misfitOf } from './disputes';
import { byKnown, type Chains, type Known, knownUpTo, rank } from './known-order';
import { type Layers, look, sizeOf, withMore } from './layers';
import type { Line, Standing } from './state';
import { type Move, moved } from './through-time';
import { laterHead } from './writing';

/** Takes lines into a book; only for lines that no earlier one waits for and that contradict none. The old book stays as it is. */
export const enter = <Subject>(blank: Subject, old: Book<Subject>, lines: readonly Line[], reader: Reader): Book<Subject> => {
  const { state, inner } = old;
  const { chains, fresh } = rank(inner.chains, lines);
  const byId = withMore(inner.byId, pairs(fresh));
  const reads = new Map<Known, AsWritten | undefined>();
  const read = (known: Known): AsWritten | undefined => {
    if (!reads.has(known)) reads.set(known, reader.read(known.line.entry));
    return reads.get(known);
  };

  const amendments = new Map(inner.amendments);
  for (const known of fresh) if (formOf(read(known))) for (const target of new Set(known.line.entry.concerns)) amendments.set(target, [...(amendments.get(target) ?? []), known]);

  const [forks, doubts, misfits, withdrawn] = [new Map(inner.forks), new Map(inner.doubts), new Map(inner.misfits), new Set(state.withdrawn)];
  const changes = new Map<Known, Move>();
  const standingOf = (known: Known): Standing | undefined => (changes.get(known) ?? { after: state.standing.get(known.line.entry.id) }).after;
  const counting = (known: Known): readonly Amendment[] =>
    (amendments.get(known.line.entry.id) ?? []).flatMap((by) => {
      const [stands, form] = [standingOf(by), formOf(read(by))];
      return stands && form && byKnown(by, known) > 0 ? [{ known: by, form, body: stands.body }] : [];
    });

  // From the last known to the first: an amendment is settled before what it amends.
  const waiting = [...fresh];
  for (let known = waiting.pop(); known !== undefined; known = waiting.pop()) {
    if (changes.has(known)) continue;
    const { entry } = known.line;
    const as = read(known);
    const settled = settle(known, as, counting(known), reader);
    changes.set(known, { known, at: sortInstant(settled.when), before: state.standing.get(entry.id), after: as && !settled.withdrawn ? stand(entry, settled) : undefined });
    if (settled.withdrawn) withdrawn.add(entry.id);
    else withdrawn.delete(entry.id);
    note(forks, entry.id, settled.fork);
    note(doubts, entry.id, clockDoubt(known, settled, chains));
    note(misfits, entry.id, misfitsOf(byId, entry.id, settled));
    if (formOf(as)) for (const id of entry.concerns ?? []) queue(waiting, look(byId, id), known);
  }

  const moves = [...changes.values()].reverse();
  const standing = restood(state.standing, moves, byId, inner.last);
  const describing = [...inner.describing, ...fresh.filter((k) => read(k)?.kind.fold.mode === 'describes')].sort(byKnown);
  const unknown = [...inner.unknown, ...fresh.filter((k) => read(k) === undefined)].sort(byKnown);
  const listed = <V>(map: ReadonlyMap<EntryId, V>): readonly V[] => idsInOrder(map.keys(), byId).map((id) => map.get(id) as V);
  const places = moved(
    state,
    moves.filter((m) => formOf(read(m.known)) === undefined),
    inner.ranks,
  );
  const last = fresh.at(-1);
  return {
    state: {
      subject: described(blank, old, describing, moves, standing, (k) => read(k)?.kind),
      standing,
      ...places,
      withdrawn: new Set(idsInOrder(withdrawn, byId)),
      forks: listed(forks),
      clockDoubts: listed(doubts),
      unknown: unknown.map((k) => k.line.entry),
      heads: headsOfChains(chains),
      count: sizeOf(byId) + inner.aside.length,
    },
    disputes: inOrderOf([...inner.sortedOut, ...[...misfits.values()].flat()]),
    inner: {
      ...inner,
      rig: inner.rig ?? lines[0]?.entry.rig,
      byId,
      chains,
      upTo: knownUpTo(inner.upTo, lines),
      last: inner.last && last && byKnown(inner.last, last) > 0 ? inner.last : last,
      amendments,
      describing,
      unknown,
      forks,
      doubts,
      misfits,
    },
  };
};

const pairs = (fresh: readonly Known[]): readonly (readonly [EntryId, Known])[] => fresh.map((k) => [k.line.entry.id, k]);

const formOf = (as: AsWritten | undefined): Amendment['form'] | undefined => {
  const fold: AnyKind['fold'] | undefined = as?.kind.fold;
  return fold?.mode === 'amends' ? fold.amendment : undefined;
};

const note = <V>(map: Map<EntryId, V>, id: EntryId, value: V | undefined): void => {
  if (value === undefined) map.delete(id);
  else map.set(id, value);
};

const misfitsOf = (byId: Layers<EntryId, Known>, target: EntryId, { misfits }: Settled): readonly Dispute[] | undefined =>
  misfits.length === 0 ? undefined : misfits.flatMap((id) => look(byId, id)?.line ?? []).map((line) => misfitOf(target, line));

const stand = (entry: Entry, { body, place, observed_at, when, corrected_by }: Settled): Standing => {
  const standing = { entry, body, place, observed_at, day: lastDay(when) };
  return corrected_by === undefined ? standing : { ...standing, corrected_by };
};

/** Puts what an amendment concerns in line to be settled again, in its place; what was known after the amendment is not touched by it. */
const queue = (waiting: Known[], target: Known | undefined, by: Known): void => {
  if (target === undefined || byKnown(target, by) >= 0) return;
  let [low, high] = [0, waiting.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (byKnown(waiting[middle] as Known, target) < 0) low = middle + 1;
    else high = middle;
  }
  if (waiting[low] !== target) waiting.splice(low, 0, target);
};

const idsInOrder = (ids: Iterable<EntryId>, byId: Layers<EntryId, Known>): readonly EntryId[] =>
  [...ids]
    .flatMap((id) => look(byId, id) ?? [])
    .sort(byKnown)
    .map((k) => k.line.entry.id);

/** The standings after the moves, in the order of what was known when. */
const restood = (old: ReadonlyMap<EntryId, Standing>, moves: readonly Move[], byId: Layers<EntryId, Known>, last: Known | undefined): ReadonlyMap<EntryId, Standing> => {
  const standing = new Map(old);
  let atTheEnd = true;
  for (const { known, before, after } of moves) {
    const { id } = known.line.entry;
    if (after === undefined) standing.delete(id);
    else standing.set(id, after);
    if (before === undefined && after && last && byKnown(last, known) >= 0) atTheEnd = false;
  }
  return atTheEnd ? standing : new Map(idsInOrder(standing.keys(), byId).map((id) => [id, standing.get(id) as Standing]));
};

/**
 * What the rig is, by every describing entry that stands, in the order of what was known when.
 * New descriptions at the end are put on top; anything else starts from the blank rig.
 */
const described = <Subject>(
  blank: Subject,
  old: Book<Subject>,
  describing: readonly Known[],
  moves: readonly Move[],
  standing: ReadonlyMap<EntryId, Standing>,
  kindOf: (known: Known) => AnyKind<Subject> | undefined,
): Subject => {
  const held = old.inner.describing;
  const touched = new Set(moves.map((m) => m.known));
  const ontoOld = held.every((k, i) => k === describing[i] && !touched.has(k));
  let subject = ontoOld ? old.state.subject : blank;
  for (const known of ontoOld ? describing.slice(held.length) : describing) {
    const fold = kindOf(known)?.fold;
    const stands = standing.get(known.line.entry.id);
    if (fold?.mode === 'describes' && stands) subject = fold.apply(subject, stands.body, stands.place, asRead(stands));
  }
  return subject;
};

/** The entry with its amendments put in. */
const asRead = ({ entry, body, place, observed_at }: Standing): Entry =>
  body === entry.body && place === entry.place && observed_at === entry.observed_at ? entry : { ...entry, body, place, observed_at };

const headsOfChains = (chains: Chains): readonly Head[] =>
  [...chains]
    .map(([device, chain]) => {
      let head: Head | undefined;
      const last = chain.at(-1)?.line.entry.counter;
      for (let i = chain.length - 1; chain[i]?.line.entry.counter === last && i >= 0; i -= 1)
        head = laterHead(head, { device, counter: last ?? 0, hash: chain[i]?.line.hash ?? '' });
      return head;
    })
    .filter((h) => h !== undefined)
    .sort((a, b) => (a.device < b.device ? -1 : 1));
