import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bond, bondSource, bonds, mayTouch, TOUCH_VERDICTS, TOUCHED, TOUCHING, type Touch } from '.';

/**
 * Eight published verdicts are held in src/worksheets/cases/touch.jsonl, exactly. Here: that the table is whole and leans on sources, and the
 * rules of counting, which are ours but for silicone film, butyl under polyurethane and petroleum on rubber, which were read.
 */
const touch = (over: Partial<Touch> = {}): Touch => ({
  material: 'hybrid',
  sides: ['fibreglass', 'fibreglass'],
  named: [false, false],
  there_now: 'nothing',
  silicone: 'no',
  patch: 'none',
  ...over,
});
const verdict = (over: Partial<Touch> = {}) => mayTouch(touch(over)).verdict;

const materials = TOUCHING.map((t) => t.id);
const surfaces = TOUCHED.map((t) => t.id);
const anyTouch: fc.Arbitrary<Touch> = fc.record({
  material: fc.constantFrom(...materials),
  sides: fc.tuple(fc.constantFrom(...surfaces), fc.constantFrom(...surfaces)),
  named: fc.tuple(fc.boolean(), fc.boolean()),
  there_now: fc.constantFrom('nothing', 'unknown', ...materials),
  silicone: fc.constantFrom('no', 'yes', 'unknown'),
  patch: fc.constantFrom('none', 'held', 'failed'),
});
const rank = (v: (typeof TOUCH_VERDICTS)[number]) => TOUCH_VERDICTS.indexOf(v);

describe('the table of what may touch what', () => {
  it('has every sealant on every known surface and residue, each pair once, each row with sources that exist', () => {
    const known = surfaces.filter((s) => s !== 'unknown' && s !== 'coated');
    const sealants = materials.filter((m) => m !== 'isopropyl-alcohol' && m !== 'petroleum-cleaner');
    for (const m of sealants) for (const s of [...known, 'old-silicone', 'asphalt']) expect(bond(m, s), `${m} on ${s}`).toBeDefined();
    expect(new Set(bonds.map((b) => `${b.family}/${b.surface}`)).size).toBe(bonds.length);
    expect(bonds).toHaveLength(186);
    for (const b of bonds) {
      expect(b.sources.length, `${b.family} on ${b.surface}`).toBeGreaterThan(0);
      for (const [key] of [...b.sources, ...(b.disagree ?? []).map((d) => [d.source] as const)]) expect(() => bondSource(key)).not.toThrow();
      expect(TOUCH_VERDICTS).toContain(b.verdict);
    }
  });

  it('is never sure of what is only common practice, but for what the trade agrees on about silicone, butyl and hybrids', () => {
    const sure = bonds.filter((b) => b.confidence === 'high' && b.sources.every(([key]) => key === 'CP'));
    expect(new Set(sure.map((b) => b.family))).toEqual(new Set(['butyl-tape', 'silicone', 'silicone-acetoxy', 'hybrid']));
  });

  it('refuses silicone on every roof sheet, and anything but silicone on a silicone film', () => {
    for (const s of ['epdm', 'tpo', 'pvc']) for (const m of ['silicone', 'silicone-acetoxy']) expect(bond(m, s)?.verdict).toBe('no');
    for (const b of bonds.filter((row) => row.surface === 'old-silicone')) expect(b.verdict, b.family).toBe(b.family.startsWith('silicone') ? 'test' : 'no');
  });

  it('refuses polysulphide on the plastics that it attacks', () => {
    for (const s of ['acrylic', 'polycarbonate', 'abs', 'pvc']) expect(bond('polysulphide', s)).toMatchObject({ verdict: 'no', confidence: 'high' });
  });

  it('gives each of the sources that disagree, and takes the side that asks for more care', () => {
    const rows = bonds.filter((b) => b.disagree !== undefined).map((b) => `${b.family}/${b.surface}`);
    expect(rows.sort()).toEqual(['lap-non-sag/epdm', 'lap-self-levelling/epdm', 'polyurethane/bare-aluminium', 'polyurethane/polycarbonate', 'silicone-acetoxy/bare-aluminium']);
    for (const b of bonds.filter((row) => row.disagree !== undefined)) expect(new Set(b.disagree?.map((d) => d.source)).size).toBe(2);
  });
});

describe('a seam', () => {
  it('is as bad as the worse of its sides', () => {
    expect(verdict()).toBe('yes');
    expect(verdict({ sides: ['fibreglass', 'bare-aluminium'] })).toBe('prep');
    expect(verdict({ sides: ['epdm', 'bare-aluminium'] })).toBe('test');
    expect(verdict({ material: 'polysulphide', sides: ['fibreglass', 'abs'] })).toBe('no');
  });

  it('is refused as surely as the surest reason, and allowed only as surely as the least sure', () => {
    const sure = (over: Partial<Touch>) => mayTouch(touch(over)).confidence;
    expect(sure({ material: 'polysulphide', sides: ['epdm', 'abs'] })).toBe('high');
    expect(sure({ material: 'butyl-tape', sides: ['epdm', 'abs'] })).toBe('medium');
    expect(sure({ material: 'butyl-tape', sides: ['epdm', 'painted-aluminium'] })).toBe('high');
  });

  it('where nobody knows whether silicone was used counts as one where it was, until a test patch holds', () => {
    for (const silicone of ['yes', 'unknown'] as const) {
      expect(verdict({ silicone })).toBe('no');
      expect(verdict({ silicone, patch: 'held' })).toBe('prep');
      expect(verdict({ silicone, patch: 'failed' })).toBe('no');
    }
    expect(verdict({ there_now: 'unknown' })).toBe('no');
    expect(verdict({ there_now: 'silicone' })).toBe('no');
    expect(verdict({ material: 'silicone', silicone: 'unknown', sides: ['glass', 'glass'] })).toBe('test');
  });

  it('of which a patch held is still refused where the product harms the surface', () => {
    expect(verdict({ material: 'polysulphide', sides: ['polycarbonate', 'polycarbonate'], patch: 'held' })).toBe('no');
    expect(verdict({ sides: ['epdm', 'epdm'], patch: 'held' })).toBe('prep');
  });

  it('keeps what is there in mind: butyl comes off before polyurethane, the same family may stay, what no source speaks of is tried', () => {
    expect(verdict({ material: 'polyurethane', there_now: 'butyl-tape' })).toBe('no');
    expect(verdict({ there_now: 'hybrid' })).toBe('prep');
    expect(verdict({ there_now: 'polyurethane' })).toBe('test');
    expect(verdict({ material: 'lap-non-sag', there_now: 'bitumen', sides: ['epdm', 'epdm'] })).toBe('no');
  });

  it('takes a lap sealant whose own sheet names the membrane, petroleum carrier or not', () => {
    for (const material of ['lap-self-levelling', 'lap-non-sag'] as const) {
      expect(verdict({ material, sides: ['epdm', 'epdm'] })).toBe('yes');
      expect(verdict({ material, sides: ['tpo', 'tpo'] })).toBe('test');
      expect(verdict({ material, sides: ['tpo', 'tpo'], named: [true, false] })).toBe('yes');
      expect(verdict({ material, sides: ['tpo', 'acrylic'], named: [true, true] })).toBe('no');
    }
    expect(verdict({ sides: ['epdm', 'epdm'], named: [true, true] })).toBe('prep');
  });

  it('on any rubber roof, and on one that nobody knows, is never wiped with petroleum; what lies under a wipe does not matter', () => {
    for (const s of ['epdm', 'tpo', 'pvc', 'coated', 'unknown'] as const)
      expect(verdict({ material: 'petroleum-cleaner', sides: [s, s], named: [true, true], patch: 'held' }), s).toBe('no');
    expect(verdict({ material: 'isopropyl-alcohol', sides: ['epdm', 'epdm'], silicone: 'unknown', there_now: 'unknown' })).toBe('yes');
  });

  it('goes by a person’s own rule, and still says what the table would', () => {
    const found = mayTouch(touch({ material: 'silicone', sides: ['epdm', 'epdm'], own: { verdict: 'prep', source: 'manual, p. 41' } }));
    expect([found.verdict, found.by_table, found.confidence]).toEqual(['prep', 'no', undefined]);
    expect(found.reasons.length).toBeGreaterThan(0);
  });
});

describe('any seam', () => {
  it('is as bad as its worst reason, and each reason has words or a row, and sources', () => {
    fc.assert(
      fc.property(anyTouch, (t) => {
        const found = mayTouch(t);
        expect(rank(found.verdict)).toBe(Math.max(...found.reasons.map((r) => rank(r.verdict))));
        for (const r of found.reasons) expect(r.sources.length).toBeGreaterThan(0);
      }),
    );
  });

  it('is never judged better for knowing less, nor worse for a patch that held', () => {
    fc.assert(
      fc.property(anyTouch, (t) => {
        const at = (over: Partial<Touch>) => rank(mayTouch({ ...t, ...over }).verdict);
        expect(at({ silicone: 'unknown' })).toBe(at({ silicone: 'yes' }));
        expect(at({ silicone: 'unknown' })).toBeGreaterThanOrEqual(at({ silicone: 'no' }));
        expect(at({ patch: 'held' })).toBeLessThanOrEqual(at({ patch: 'none' }));
        expect(at({ there_now: 'unknown' })).toBeGreaterThanOrEqual(at({ there_now: 'nothing' }));
        expect(at({ sides: [t.sides[0], t.sides[0]] })).toBeLessThanOrEqual(at({}));
      }),
    );
  });
});
