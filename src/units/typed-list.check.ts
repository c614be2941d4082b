import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readQuantities } from '.';

/**
 * Lists as people type them. No published source: the rules are the house's own, and each way of writing has one meaning
 * or is refused. Every list that is written out with semicolons must come back figure for figure.
 */
const figures = (text: string): readonly number[] | string => {
  const read = readQuantities(text, 'number', 'number', {}, 'times');
  return read.ok ? read.value.map((t) => t.si) : read.refusals.map((r) => `${r.code} ${r.path}`).join(', ');
};

describe('a list of figures', () => {
  it.each([
    ['61, 63.5; 64', [61, 63.5, 64]],
    ['61; 63,5; 64', [61, 63.5, 64]],
    ['61 63,5 64', [61, 63.5, 64]],
    ['61,5, 63,5, 64', [61.5, 63.5, 64]],
    ['61\n63.5\n64\n', [61, 63.5, 64]],
    ['61;63.5;', [61, 63.5]],
    ['[61, 63.5]', [61, 63.5]],
    ['  61\t63.5 ', [61, 63.5]],
    ['1 234; 5', [1234, 5]],
    ['−3; –4; -5', [-3, -4, -5]],
    ['7', [7]],
    ['61 63,', [61, 63]],
    ['', []],
    ['  ', []],
  ])('%j is read', (text, expected) => expect(figures(text)).toEqual(expected));

  it.each([
    ['61,63', 'two-meanings times'],
    ['61,63,64', 'two-meanings times'],
    ['12 3/8 14', 'two-meanings times'],
    ['61; x; 64; y', 'not-a-number times[1], not-a-number times[3]'],
    ['61;; 64', 'not-a-number times[1]'],
    ['61 63; 64', 'not-a-number times[0]'],
    ['1,234; 5', 'two-meanings times[0]'],
  ])('%j is refused, and the figure is named', (text, expected) => expect(figures(text)).toBe(expected));

  it('says which figure is beyond its limits, counted as people count', () => {
    const read = readQuantities('11; 40; 12', 'moisture-content', 'percent', { least: 0.05, most: 0.3 }, 'readings_percent');
    expect(read).toMatchObject({ ok: false, refusals: [{ code: 'above-limit', path: 'readings_percent[1]', received: '“40”' }] });
    expect(read.ok ? '' : read.refusals[0]?.sentence).toMatch(/^Figure 2: /);
  });

  it('comes back as it was written out', () => {
    const list = fc.array(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((n) => Number(n.toFixed(3))),
      { minLength: 1 },
    );
    fc.assert(
      fc.property(list, fc.constantFrom('; ', ';', '\n', ', ', ' '), (ns, between) => {
        expect(figures(ns.join(between))).toEqual(ns.map((n) => n + 0));
      }),
    );
  });
});
