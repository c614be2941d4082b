import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cubicMetres, metres, share, squareMetres } from '../../units';
import { BEAD_PRACTICES, BEAD_SHAPES, beadLength, beadSection, RUN_DOWN, sealantVolume, tapeLength, wetSection, wholePackages } from '.';

/**
 * A coverage chart and the cases are held in sealant.agreement.ts and in the case files. Here: closed forms at figures that
 * anyone can reckon by hand, sections against a numerical integral, and what must hold of any need.
 */
describe('bead section', () => {
  it('of caps and fillets is what adding up thin strips gives, within 0.01 %', () => {
    const w = 0.025;
    const h = 0.006;
    const strips = 200_000;
    const R = (w ** 2 / 4 + h ** 2) / (2 * h);
    const height: Readonly<Record<string, (x: number) => number>> = {
      cap: (x) => Math.sqrt(R ** 2 - x ** 2) - (R - h),
      'levelled-cap': (x) => h * (1 - (2 * x) ** 2 / w ** 2),
      'half-round': (x) => Math.sqrt(w ** 2 / 4 - x ** 2),
    };
    for (const [shape, of] of Object.entries(height)) {
      let sum = 0;
      for (let i = 0; i < strips; i++) sum += of(-w / 2 + ((i + 0.5) * w) / strips) * (w / strips);
      expect(beadSection(shape as 'cap', metres(w), metres(h)) / sum, shape).toBeCloseTo(1, 4);
    }
  });

  it('of a cap half as high as wide is the half-round', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.1, noNaN: true }),
        (w) => Math.abs(beadSection('cap', metres(w), metres(w / 2)) / beadSection('half-round', metres(w), metres(0)) - 1) < 1e-9,
      ),
    );
  });

  it('of hollow and full fillet together is the square of the leg', () => {
    const leg = metres(0.008);
    expect(beadSection('hollow-fillet', leg, leg) + beadSection('full-fillet', leg, leg)).toBeCloseTo(leg ** 2, 15);
  });

  it('grows with its width, whatever the shape', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...BEAD_SHAPES),
        fc.double({ min: 0.005, max: 0.1, noNaN: true }),
        (shape, w) => beadSection(shape.id, metres(w * 1.01), metres(0.002)) > beadSection(shape.id, metres(w), metres(0.002)),
      ),
    );
  });

  it('laid wet is never less than the dry one', () => {
    fc.assert(fc.property(fc.double({ min: 0.2, max: 1, noNaN: true }), (solids) => wetSection(squareMetres(1e-4), share(solids)) >= 1e-4));
  });
});

describe('packages', () => {
  it('hold the need, and one fewer would not', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 0.1, noNaN: true }), fc.double({ min: 20e-6, max: 0.02, noNaN: true }), (need, one) => {
        const n = wholePackages(need, one);
        expect(Number.isInteger(n)).toBe(true);
        expect(n * one).toBeGreaterThanOrEqual(need * (1 - 1e-8));
        expect((n - 1) * one).toBeLessThan(need);
      }),
    );
  });

  it('stay eight when exactly eight are needed, and none when nothing is', () => {
    for (let n = 1; n <= 200; n++) expect(wholePackages((n * 298.7) / 1e6, 298.7 / 1e6)).toBe(n);
    expect(wholePackages(0, 0.3e-3)).toBe(0);
  });

  it('rise with length and allowance', () => {
    expect(sealantVolume(squareMetres(1e-4), metres(10), share(0.15))).toBeCloseTo(cubicMetres(1.15e-3), 12);
    expect(tapeLength(metres(10), share(0.1))).toBeCloseTo(11, 12);
  });
});

describe('bead length', () => {
  const box = (w: number, h: number) => ({ width: metres(w), height: metres(h), around: metres(2 * (w + h)) });
  it('runs along the top and a little way down on a wall, all round on a roof', () => {
    const window = box(0.76, 0.56);
    expect(beadLength('top-and-upper-sides', window, RUN_DOWN)).toBeCloseTo(0.76 + 2 * 0.15, 12);
    expect(beadLength('top-and-upper-sides', box(0.3, 0.1), RUN_DOWN)).toBeCloseTo(0.5, 12);
    expect(beadLength('all-round', window, RUN_DOWN)).toBeCloseTo(2 * (0.76 + 0.56), 12);
    expect(beadLength('upper-long-edge', box(2, 0.05), RUN_DOWN)).toBe(2);
    expect(beadLength('both-long-edges', box(2, 0.05), RUN_DOWN)).toBe(4);
    for (const rule of ['none', 'none-gasket', 'fastener-heads'] as const) expect(beadLength(rule, window, RUN_DOWN)).toBe(0);
  });

  it('never leaves the foot of a wall opening without a way to drain', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 2, noNaN: true }), fc.double({ min: 0.05, max: 2, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (w, h, s) => {
        return beadLength('top-and-upper-sides', box(w, h), metres(s)) <= beadLength('all-round', box(w, h), metres(s)) - w + 1e-12;
      }),
    );
  });

  it('has a practice for every rule, each named once', () => expect(new Set(BEAD_PRACTICES.map((p) => p.rule)).size).toBe(BEAD_PRACTICES.length));
});
