import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inKnownOrder, knew, type Line } from './index';
import { type Deed, deeds, playOut } from './made-up-logbooks';

/**
 * What was known when, against what each made-up device really held when it wrote. The order must put every line after all that was held,
 * also when lines are missing, and must not depend on the order of arrival.
 */
const runs = { numRuns: 300 };

describe('what was known when', () => {
  it('is told by counters and heads alone', () => {
    fc.assert(
      fc.property(deeds(), (all) => {
        const written = playOut(all);
        for (const { line, held } of written) {
          const was = new Set(held);
          for (const other of written) if (other.line !== line) expect(knew(line.entry, other.line.entry)).toBe(was.has(other.line));
        }
      }),
      { numRuns: 100 },
    );
  });

  it('puts every line after all that its device held, whatever is missing and however the rest arrived', () => {
    fc.assert(
      fc.property(deeds(), fc.array(fc.nat(99), { minLength: 1, maxLength: 30 }), fc.nat(60), (all, keys, missing) => {
        const written = playOut(all);
        const here = written.filter((_, i) => (keys[i % keys.length] ?? 0) >= missing);
        const order = inKnownOrder(here.map((w) => w.line));
        const at = new Map<Line, number>(order.map((l, i) => [l, i]));
        for (const { line, held } of here) for (const earlier of held) if (at.has(earlier)) expect(at.get(earlier)).toBeLessThan(at.get(line) ?? -1);
        expect(inKnownOrder([...here].reverse().map((w) => w.line))).toEqual(order);
      }),
      runs,
    );
  });

  it('counts how often devices went back and forth, not how much each has written', () => {
    const turn = (i: number): readonly Deed[] => [
      { device: 1 + (i % 2), does: 'grade', what: 0, value: 1, hours: 0 },
      { device: 2 - (i % 2), does: 'hear', what: 1 + (i % 2), value: 0, hours: 0 },
    ];
    const there: readonly Deed[] = Array.from({ length: 20 }, (_, i) => turn(i)).flat();
    const lines = playOut([...there, { device: 0, does: 'hear', what: 1, value: 0, hours: 0 }, { device: 0, does: 'grade', what: 0, value: 1, hours: 0 }]).map((w) => w.line);
    expect(lines).toHaveLength(21);
    expect(inKnownOrder([...lines].reverse())).toEqual(lines);
  });

  it('says of two lines with one counter of one device that neither knew the other', () => {
    const [one, other] = [1, 2].map((value) => playOut([{ device: 0, does: 'grade', what: 0, value, hours: 0 }])[0]?.line.entry);
    if (!one || !other) throw new Error('nothing was written');
    expect([knew(one, other), knew(other, one)]).toEqual([false, false]);
  });

  it('holds for a very long chain', () => {
    const many = playOut(Array.from({ length: 12_000 }, (_, i) => ({ device: 0, does: 'grade', what: i, value: 1, hours: 0 }))).map((w) => w.line);
    expect(inKnownOrder([...many].reverse())).toEqual(many);
  });
});
