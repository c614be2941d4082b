import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { advance, type Book, fold } from './index';
import { BLANK, deeds, play, TOY_KINDS, type Toy } from './made-up-logbooks';
import type { Line, State } from './state';

/**
 * The fold against its own promise: a set of lines has one state. Logbooks are made up by four devices that write, hear of each other,
 * correct, withdraw, withdraw withdrawals and disagree; the state must be the same to the last byte, order of maps included,
 * for every order of arrival, every repetition and every way of cutting the arrival into pieces.
 */
const runs = { numRuns: 300 };

/** Everything of a state as text, maps in the order in which a reader walks them. */
const asText = (state: State<Toy>): string =>
  JSON.stringify(state, (_key, value) => (value instanceof Map ? { map: [...value] } : value instanceof Set ? { set: [...value] } : value), 1);

const shuffled = <T>(list: readonly T[], keys: readonly number[]): readonly T[] =>
  list
    .map((v, i) => [keys[i % Math.max(1, keys.length)] ?? 0, i, v] as const)
    .sort((a, b) => a[0] - b[0] || b[1] - a[1])
    .map(([, , v]) => v);

const chance = fc.array(fc.nat(1000), { minLength: 1, maxLength: 60 });

describe('the fold', () => {
  it('does not depend on order or repetition of arrival', () => {
    fc.assert(
      fc.property(deeds(), chance, (all, keys) => {
        const lines = play(all);
        const once = asText(fold(TOY_KINDS, BLANK, lines));
        expect(asText(fold(TOY_KINDS, BLANK, shuffled([...lines, ...lines.slice(0, 7)], keys)))).toBe(once);
      }),
      runs,
    );
  });

  it('taken in piece by piece is the same as taken in at once', () => {
    fc.assert(
      fc.property(deeds(), chance, fc.boolean(), (all, keys, inOrder) => {
        const lines = play(all);
        const arriving = inOrder ? lines : shuffled(lines, keys);
        let book: Book<Toy> | undefined;
        let at = 0;
        for (let piece = 0; at < arriving.length; piece += 1) {
          const size = 1 + ((keys[piece % keys.length] ?? 0) % 4);
          const before = book && asText(book.state);
          const next: Book<Toy> = advance(TOY_KINDS, BLANK, book, arriving.slice(at, at + size));
          if (book) expect(asText(book.state)).toBe(before);
          book = next;
          at += size;
          expect(asText(book.state)).toBe(asText(fold(TOY_KINDS, BLANK, arriving.slice(0, at))));
        }
      }),
      runs,
    );
  });

  it('stays one and the same when lines are damaged, doubled or a device was copied', () => {
    fc.assert(
      fc.property(deeds(25), deeds(25), chance, (one, two, keys) => {
        const lines: readonly Line[] = [...play(one), ...play(two)];
        const whole = advance(TOY_KINDS, BLANK, undefined, lines);
        let book: Book<Toy> | undefined;
        for (const line of shuffled(lines, keys)) book = advance(TOY_KINDS, BLANK, book, [line]);
        expect(book && asText(book.state)).toBe(lines.length === 0 ? undefined : asText(whole.state));
        expect(book?.disputes ?? []).toEqual(whole.disputes);
        expect(whole.state.count).toBe(new Set(lines.map((l) => l.hash)).size);
      }),
      runs,
    );
  });
});
