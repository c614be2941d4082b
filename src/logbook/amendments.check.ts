import { describe, expect, it } from 'vitest';
import type { Entry, Head, Place } from '../terms';
import { placeKey } from '../terms';
import { advance, type Book, fold, type Line, lineOf } from './index';
import { BLANK, RIG, TOY_KINDS, type Toy } from './made-up-logbooks';

/**
 * What corrections, withdrawals and disagreements mean, one small story each. There is no outside source: these are the logbook's own rules,
 * as docs/logbook-format.md states them.
 */
const window: Place = { at: 'station', station: 'window', side: 'outside' };
let n = 0;

/** A device that writes; `hears` lines of others, which it then names as heads. */
const device = (name: string) => {
  let [counter, previous] = [0, null as string | null];
  const heads = new Map<string, Head>();
  const write = (kind: string, body: object, more: Partial<Entry> = {}): Line => {
    n += 1;
    counter += 1;
    const at = `2026-05-03T${String(10 + Math.floor(n / 60)).padStart(2, '0')}:${String(n % 60).padStart(2, '0')}:00Z`;
    const line = lineOf({
      id: `00000000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`,
      rig: RIG,
      kind,
      version: 1,
      observed_at: at,
      recorded_at: at,
      by: name,
      device: name,
      counter,
      previous,
      heads: [...heads.values()],
      place: window,
      body,
      ...more,
    });
    previous = line.hash;
    return line;
  };
  return {
    write,
    grade: (grade: string, more: Partial<Entry> = {}) => write('grade', { grade }, more),
    correct: (line: Line, changed: object) => write('correction', { changed }, { concerns: [line.entry.id] }),
    withdraw: (line: Line) => write('withdrawal', {}, { concerns: [line.entry.id] }),
    hears: (...lines: readonly Line[]) => {
      for (const { entry, hash } of lines) heads.set(entry.device, { device: entry.device, counter: entry.counter, hash });
    },
  };
};

const says = (lines: readonly Line[], book?: Book<Toy>) => advance(TOY_KINDS, BLANK, book, lines);
const latest = (lines: readonly Line[]) => fold(TOY_KINDS, BLANK, lines).latest.get(placeKey(window))?.get('grade');

describe('a correction', () => {
  it('changes the fields it names, takes away those it puts to null, and leaves the rest', () => {
    const a = device('a');
    const first = a.write('grade', { grade: 'S1', gap: 2, card: true });
    const lines = [first, a.correct(first, { body: { grade: 'S3', gap: null } })];
    expect(latest(lines)).toMatchObject({ body: { grade: 'S3', card: true }, corrected_by: lines[1]?.entry.id });
    expect(latest(lines)?.entry).toBe(first.entry);
    expect(Object.keys(latest(lines)?.body as object)).toEqual(['grade', 'card']);
  });

  it('adds to an earlier one, and falls away alone when it is withdrawn', () => {
    const a = device('a');
    const first = a.write('grade', { grade: 'S1', gap: 2 });
    const one = a.correct(first, { body: { gap: 3 } });
    const two = a.correct(first, { body: { grade: 'S2' } });
    expect(latest([first, one, two])?.body).toEqual({ grade: 'S2', gap: 3 });
    expect(latest([first, one, two, a.withdraw(one)])?.body).toEqual({ grade: 'S2', gap: 2 });
  });

  it('moves an entry to another place and another time', () => {
    const a = device('a');
    const first = a.grade('S1');
    const inside: Place = { at: 'station', station: 'window', side: 'inside' };
    const state = fold(TOY_KINDS, BLANK, [first, a.correct(first, { place: inside, observed_at: '2022-03-01/2022-05-31' })]);
    expect(state.latest.get(placeKey(window))).toBeUndefined();
    expect(state.latest.get(placeKey(inside))?.get('grade')).toMatchObject({ place: inside, observed_at: '2022-03-01/2022-05-31', day: 19_143 });
  });

  it('of a description changes the rig as if it had been said so at first', () => {
    const a = device('a');
    const [one, two] = [a.write('describe', { says: 'one' }), a.write('describe', { says: 'two' })];
    expect(fold(TOY_KINDS, BLANK, [one, two, a.correct(one, { body: { says: 'first' } })]).subject.said).toEqual(['first', 'two']);
    expect(fold(TOY_KINDS, BLANK, [one, two, a.withdraw(one)]).subject.said).toEqual(['two']);
  });

  it('of a correction changes what that one says', () => {
    const a = device('a');
    const first = a.grade('S1');
    const one = a.correct(first, { body: { grade: 'S2' } });
    const two = a.correct(one, { body: { changed: { body: { grade: 'S4' } } } });
    expect(latest([first, one, two])?.body).toEqual({ grade: 'S4' });
  });

  it('in the terms of an older version is carried over; in newer terms it is put in as it is', () => {
    const a = device('a');
    const first = a.write('gap', { gap_mm: 20 }, { version: 1 });
    const now = (...more: readonly Line[]) => fold(TOY_KINDS, BLANK, [first, ...more]).standing.get(first.entry.id)?.body;
    expect(now()).toEqual({ gap_m: 0.02 });
    expect(now(a.correct(first, { body: { gap_mm: 30 } }))).toEqual({ gap_m: 0.03 });
    expect(now(a.correct(first, { of_version: 2, body: { gap_cm: 4 } }))).toEqual({ gap_m: 0.04 });
    expect(now(a.correct(first, { of_version: 3, body: { gap_m: 0.05 } }))).toEqual({ gap_m: 0.05 });
  });

  it('that cannot be read leaves the entry as it was, and is told', () => {
    const a = device('a');
    const first = a.grade('S1');
    for (const changed of [{ place: { at: 'moon' } }, { observed_at: '2026-02-30' }, { body: 5 }, 'x']) {
      const book = says([first, a.correct(first, changed as object)]);
      expect(book.state.standing.get(first.entry.id)).toMatchObject({ body: { grade: 'S1' }, place: window, observed_at: first.entry.observed_at });
      expect(book.disputes.map((d) => d.code)).toEqual(['misfit']);
    }
    const fits = (_kind: unknown, body: unknown) => (body as { grade?: string }).grade !== 'S9';
    const lines = [first, a.correct(first, { body: { grade: 'S9' } })];
    expect(advance(TOY_KINDS, BLANK, undefined, lines, { fits }).state.standing.get(first.entry.id)?.body).toEqual({ grade: 'S1' });
  });
});

describe('a withdrawal', () => {
  it('takes an entry out, and withdrawing the withdrawal brings it back, as often as one likes', () => {
    const a = device('a');
    const [first, second] = [a.grade('S1'), a.grade('S2')];
    const lines = [first, second];
    for (let i = 0; i < 6; i += 1) {
      const amended = lines.at(-1) as Line;
      lines.push(a.withdraw(amended));
      expect(latest(lines)?.body, `${i}`).toEqual({ grade: i % 2 === 0 ? 'S1' : 'S2' });
      expect(fold(TOY_KINDS, BLANK, lines).withdrawn.has(second.entry.id)).toBe(i % 2 === 0);
    }
  });

  it('does not touch what was written later with the same name in mind, nor itself', () => {
    const a = device('a');
    const first = a.grade('S1');
    const self = a.write('withdrawal', {}, { id: '00000000-0000-7000-8000-0000000fffff', concerns: ['00000000-0000-7000-8000-0000000fffff'] });
    expect(fold(TOY_KINDS, BLANK, [first, self]).withdrawn.size).toBe(0);
    const early = a.write('withdrawal', {}, { concerns: ['00000000-0000-7000-8000-0000000eeeee'] });
    const late = a.grade('S2', { id: '00000000-0000-7000-8000-0000000eeeee' });
    expect(latest([first, early, late])?.body).toEqual({ grade: 'S2' });
    expect(says([late], says([first, early])).state).toEqual(fold(TOY_KINDS, BLANK, [first, early, late]));
  });

  it('followed by a correction that knew of it lets the entry stand again', () => {
    const a = device('a');
    const first = a.grade('S1');
    expect(latest([first, a.withdraw(first), a.correct(first, { body: { grade: 'S2' } })])?.body).toEqual({ grade: 'S2' });
  });

  it('works on entries this version cannot read', () => {
    const a = device('a');
    const first = a.write('from-later', { x: 1 });
    const state = fold(TOY_KINDS, BLANK, [first, a.withdraw(first)]);
    expect(state.unknown).toEqual([first.entry]);
    expect([...state.withdrawn]).toEqual([first.entry.id]);
  });
});

describe('a fork', () => {
  const story = () => {
    const [a, b] = [device('a'), device('b')];
    const first = a.grade('S1');
    b.hears(first);
    return { a, b, first };
  };

  it('is two corrections of which neither knew the other: both are kept and shown', () => {
    const { a, b, first } = story();
    const [one, two] = [a.correct(first, { body: { grade: 'S2' } }), b.correct(first, { body: { grade: 'S4' } })];
    const state = fold(TOY_KINDS, BLANK, [first, one, two]);
    expect(state.forks).toEqual([{ concerns: first.entry.id, amendments: [one, two].map((l) => l.entry.id) }]);
    expect(state.standing.get(one.entry.id)).toBeDefined();
    expect(state.standing.get(two.entry.id)).toBeDefined();
  });

  it('is settled by a third that knew both, whoever writes it', () => {
    for (const who of ['a', 'b', 'c'] as const) {
      const { a, b, first } = story();
      const [one, two] = [a.correct(first, { body: { grade: 'S2' } }), b.correct(first, { body: { grade: 'S4' } })];
      const settler = { a, b, c: device('c') }[who];
      settler.hears(...[one, two].filter((l) => l.entry.device !== who));
      const third = settler.correct(first, { body: { grade: 'S3' } });
      const state = fold(TOY_KINDS, BLANK, [third, two, one, first]);
      expect(state.forks).toEqual([]);
      expect(state.standing.get(first.entry.id)?.body).toEqual({ grade: 'S3' });
    }
  });

  it('is not settled by a third that knew only one', () => {
    const { a, b, first } = story();
    const [one, two] = [a.correct(first, { body: { grade: 'S2' } }), b.correct(first, { body: { grade: 'S4' } })];
    const third = a.correct(first, { body: { grade: 'S3' } });
    expect(fold(TOY_KINDS, BLANK, [first, one, two, third]).forks[0]?.amendments.toSorted()).toEqual([two, third].map((l) => l.entry.id).toSorted());
  });

  it('goes away when one side is withdrawn', () => {
    const { a, b, first } = story();
    const [one, two] = [a.correct(first, { body: { grade: 'S2' } }), b.correct(first, { body: { grade: 'S4' } })];
    const state = fold(TOY_KINDS, BLANK, [first, one, two, b.withdraw(two)]);
    expect(state.forks).toEqual([]);
    expect(state.standing.get(first.entry.id)?.body).toEqual({ grade: 'S2' });
  });

  it('between a withdrawal and a correction lets the entry stand: no defect is lost to a disagreement', () => {
    for (const order of [0, 1]) {
      const { a, b, first } = story();
      const [one, two] = order === 0 ? [a.withdraw(first), b.correct(first, { body: { grade: 'S4' } })] : [b.withdraw(first), a.correct(first, { body: { grade: 'S4' } })];
      const state = fold(TOY_KINDS, BLANK, [first, one, two]);
      expect(state.forks).toHaveLength(1);
      expect(state.standing.get(first.entry.id)?.body).toEqual({ grade: 'S4' });
    }
  });

  it('is none when both say the same', () => {
    const { a, b, first } = story();
    expect(fold(TOY_KINDS, BLANK, [first, a.withdraw(first), b.withdraw(first)])).toMatchObject({ forks: [] });
    const twice = story();
    const change = { body: { grade: 'S4' } };
    expect(fold(TOY_KINDS, BLANK, [twice.first, twice.a.correct(twice.first, change), twice.b.correct(twice.first, change)]).forks).toEqual([]);
  });
});

describe('the latest at a place', () => {
  it('goes by when it was so, not by when it was written: old papers do not hide what is new', () => {
    const a = device('a');
    const now = a.grade('S3');
    expect(latest([now, a.grade('S0', { observed_at: '2022-03-01/2022-05-31' })])?.body).toEqual({ grade: 'S3' });
    expect(latest([now, a.grade('S4', { observed_at: '2026-05-03T23:59:59Z' })])?.body).toEqual({ grade: 'S4' });
  });

  it('goes by what was known when if both were so at the same time, and by id if neither knew the other', () => {
    const at = { observed_at: '2026-05-03T09:00:00Z' };
    const [a, b] = [device('a'), device('b')];
    const first = a.grade('S1', { ...at, id: 'ffffffff-ffff-7fff-bfff-ffffffffffff' });
    b.hears(first);
    expect(latest([b.grade('S2', at), first])?.body).toEqual({ grade: 'S2' });
    const [c, d] = [device('c'), device('d')];
    expect(latest([c.grade('S1', at), d.grade('S2', at)])?.body).toEqual({ grade: 'S2' });
  });

  it('reads 11 in one zone and 8 in another by the same clock', () => {
    const a = device('a');
    expect(latest([a.grade('S1', { observed_at: '2026-05-03T11:00:00Z' }), a.grade('S2', { observed_at: '2026-05-03T08:00:00-04:00' })])?.body).toEqual({ grade: 'S2' });
  });
});

describe('lines that cannot all be what they say', () => {
  it('with one id: both are noticed and kept, the one another line vouches for is read, wherever it stands', () => {
    const a = device('a');
    const first = a.grade('S1');
    const second = a.grade('S2', { observed_at: '2020-01-01' });
    // One whose hash comes first, so that only the vouching speaks for the other.
    const forged = Array.from({ length: 20 }, (_, i) => lineOf({ ...first.entry, body: { grade: `S1${i}` } })).find((l) => l.hash < first.hash);
    const changed = forged as Line;
    expect(forged).toBeDefined();
    for (const lines of [
      [first, changed, second],
      [changed, second, first],
      [second, changed, first],
    ]) {
      const book = lines.reduce<Book<Toy> | undefined>((b, l) => says([l], b), undefined);
      expect(book?.disputes.map((d) => [d.code, d.hashes.length])).toEqual([['same-id', 2]]);
      expect(book?.state.standing.get(first.entry.id)?.body).toEqual({ grade: 'S1' });
      expect(book?.state.count).toBe(3);
    }
  });

  it('with one counter of one device: both are read, and the copied device is told of', () => {
    const [one, copy] = [device('a'), device('a')];
    const book = says([one.grade('S1'), copy.grade('S2')]);
    expect(book.disputes.map((d) => d.code)).toEqual(['same-counter']);
    expect(book.state.standing.size).toBe(2);
  });

  it('that name each other in a circle are read all the same, in one order', () => {
    const head = (d: string): Head => ({ device: d, counter: 1, hash: '0'.repeat(64) });
    const [a, b] = [device('a'), device('b')];
    const [one, two] = [a.write('describe', { says: 'one' }, { heads: [head('b')] }), b.write('describe', { says: 'two' }, { heads: [head('a')] })];
    const said = fold(TOY_KINDS, BLANK, [one, two]).subject.said;
    expect(said).toHaveLength(2);
    expect(fold(TOY_KINDS, BLANK, [two, one]).subject.said).toEqual(said);
    expect(says([two], says([one])).state.subject.said).toEqual(said);
  });

  it('of another rig are not taken in', () => {
    const a = device('a');
    expect(() => fold(TOY_KINDS, BLANK, [a.grade('S1'), a.grade('S1', { rig: 'rig-10' })])).toThrow('one rig');
  });
});
