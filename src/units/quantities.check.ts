import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromSi, type QuantityId, quantities, toSi, unitOf } from '.';

/**
 * Factors against NIST Special Publication 811 (2008), appendix B.8, printed with seven digits: they must agree in all
 * seven. Temperatures against fixed points that everybody knows. Then what must hold of any units.
 */
const all = Object.values(quantities).flatMap((q) => q.units.map((u) => ({ quantity: q.id, unit: u.id })));

describe('factors', () => {
  const rows = readFileSync(new URL('./factors.csv', import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(',') as [QuantityId, string, string]);

  it('are compared in full', () => expect(rows).toHaveLength(20));
  it.each(rows)('%s in %s', (quantity, unit, printed) => expect(toSi(1, quantity, unit).toExponential(6)).toBe(Number(printed).toExponential(6)));

  it('of a thirty-second of an inch and of mixed metric units are plain decimals', () => {
    expect(toSi(32, 'small-length', '32in')).toBeCloseTo(0.0254, 15);
    expect(toSi(1, 'length', 'cm')).toBe(0.01);
    expect(toSi(1, 'small-length', 'mm')).toBe(0.001);
    expect(toSi(1, 'absolute-pressure', 'hpa')).toBe(100);
    expect(toSi(1, 'area', 'cm2')).toBe(1e-4);
    expect(toSi(1, 'area', 'mm2')).toBe(1e-6);
    expect(toSi(1, 'volume', 'ml')).toBe(1e-6);
  });

  it('of temperature go through the fixed points: ice 32 °F, steam 212 °F, equal at −40', () => {
    expect(toSi(0, 'temperature', 'c')).toBeCloseTo(273.15, 12);
    expect(toSi(32, 'temperature', 'f')).toBeCloseTo(273.15, 9);
    expect(toSi(212, 'temperature', 'f')).toBeCloseTo(373.15, 9);
    expect(toSi(-40, 'temperature', 'f')).toBeCloseTo(toSi(-40, 'temperature', 'c'), 9);
  });

  it('of a difference have no zero: 9 °F of difference are 5 K', () => {
    expect(toSi(9, 'temperature-difference', 'df')).toBeCloseTo(5, 12);
    expect(unitOf('temperature-difference', 'df').offset).toBeUndefined();
  });
});

describe('every unit', () => {
  it('goes to SI and back to the same figure', () => {
    fc.assert(
      fc.property(fc.constantFrom(...all), fc.double({ min: -1e6, max: 1e6, noNaN: true }), ({ quantity, unit }, n) => {
        const back = fromSi(toSi(n, quantity, unit), quantity, unit);
        return Math.abs(back - n) <= 1e-9 * Math.max(1, Math.abs(n));
      }),
    );
  });

  it('keeps the order of figures', () => {
    fc.assert(
      fc.property(fc.constantFrom(...all), fc.double({ min: -1e6, max: 1e6, noNaN: true }), ({ quantity, unit }, n) => toSi(n + 1, quantity, unit) > toSi(n, quantity, unit)),
    );
  });

  it('is named once in its quantity, and each system’s usual unit exists', () => {
    for (const q of Object.values(quantities)) {
      expect(new Set(q.units.map((u) => u.id)).size).toBe(q.units.length);
      expect(q.units.map((u) => u.id)).toContain(q.usual.us);
      expect(q.units.map((u) => u.id)).toContain(q.usual.metric);
      for (const u of q.units) expect(u.id).toMatch(/^[a-z0-9]+$/);
    }
  });

  it('that does not exist is our own mistake and throws', () => expect(() => unitOf('length', 'psi')).toThrow('length has no unit psi'));
});
