import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readQuantity } from '../units';
import { doubts, kindById, readBody } from '.';

/**
 * Slips of unit are asked about and never refused. The usual ranges are ours: common practice, no published source.
 * Each figure below is one that a person would type in good faith under the wrong unit.
 */
const ask = (kind: string, field: string, typed: string, unit: string) => {
  const declared = kindById(kind);
  const f = declared?.fields[field];
  if (!declared || f?.type !== 'number') throw new Error(`${kind} has no number ${field}`);
  const read = readQuantity(typed, f.quantity, unit, f.limits);
  if (!read.ok) throw new Error(read.refusals[0]?.sentence);
  const body = { [field]: read.value };
  return { read: readBody(declared, body), doubts: doubts(declared, body) };
};

describe('unit slips', () => {
  it.each([
    ['tyre-pressure', 'pressure', '450', 'psi', '450 kPa'],
    ['tyre-pressure', 'pressure', '4.5', 'psi', '4.5 bar'],
    ['tyre-pressure', 'pressure', '65', 'bar', '65 psi'],
    ['tyre-pressure', 'pressure', '110', 'kpa', '110 psi'],
    ['pressure-set', 'pressure', '4.5', 'kpa', '4.5 bar'],
    ['set-pressure', 'pressure', '450', 'psi', '450 kPa'],
    ['tyre-tread', 'depth', '3', 'cm', '3 mm'],
  ])('%s, %s: %s typed as %s is asked about, with %s offered, and still read', (kind, field, typed, unit, other) => {
    const { read, doubts: found } = ask(kind, field, typed, unit);
    if (kind !== 'set-pressure') expect(read.ok).toBe(true);
    expect(found).toHaveLength(1);
    expect(found[0]?.code).toBe('other-unit-likely');
    expect(found[0]?.sentence).toContain(other);
  });

  it('a shade temperature of 72 °C is asked about, with 72 °F offered', () => {
    const [doubt] = ask('tyre-pressure', 'tyre_temperature', '72', 'c').doubts;
    expect(doubt?.sentence).toBe('72 °C is unusual here. Did you mean 72 °F?');
    expect(doubt?.instead[0]).toMatchObject({ typed: '72', unit: 'f' });
  });

  it('a flat tyre is asked about once and can be kept', () => {
    const { read, doubts: found } = ask('tyre-pressure', 'pressure', '0', 'psi');
    expect(read.ok).toBe(true);
    expect(found.map((d) => d.code)).toEqual(['unusual']);
    expect(found[0]?.instead).toEqual([]);
  });

  it('negative and absurd readings are refused, not asked', () => {
    const kind = kindById('tyre-pressure');
    for (const [typed, si] of [
      ['-5', -5 * 6894.757293168361],
      ['2000', 2000 * 6894.757293168361],
    ] as const)
      expect(kind && readBody(kind, { pressure: { typed, unit: 'psi', si } }).ok).toBe(false);
  });

  it('asks nothing about pressures that rigs run on, in any unit, and asks about nearly every one mistaken for another', () => {
    fc.assert(
      fc.property(fc.integer({ min: 35, max: 110 }), (psi) => {
        expect(ask('tyre-pressure', 'pressure', String(psi), 'psi').doubts).toEqual([]);
        const kpa = Math.round(psi * 6.895);
        expect(ask('tyre-pressure', 'pressure', String(kpa), 'kpa').doubts).toEqual([]);
        expect(ask('tyre-pressure', 'pressure', String(kpa), 'psi').doubts).toHaveLength(1);
        expect(ask('tyre-pressure', 'pressure', String(psi), 'kpa').doubts).toHaveLength(1);
      }),
    );
  });
});
