import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figure, fromSi, outsideLimits, type Preferences, type QuantityId, quantities, readQuantity, show, showIn, showTyped, type Typed, toSi, usualUnit } from '.';

/**
 * What people type, and what they read. No published source: the expected figures are what a person means by them.
 * The rule that must never break: the typed text is kept as it is, and no stored value drifts when units are switched.
 */
const read = (text: string, quantity: QuantityId, unit: string): Typed | string => {
  const r = readQuantity(text, quantity, unit);
  return r.ok ? r.value : (r.refusals[0]?.code ?? '');
};
const siOf = (text: string, quantity: QuantityId, unit: string): number => {
  const r = read(text, quantity, unit);
  return typeof r === 'string' ? Number.NaN : r.si;
};

describe('typed figures', () => {
  it.each([
    ['17.5', 17.5],
    ['17,5', 17.5],
    [' 17.5 ', 17.5],
    ['.5', 0.5],
    ['5.', 5],
    ['-3', -3],
    ['−3', -3],
    ['+3', 3],
    ['0,125', 0.125],
    ['1 234', 1234],
    ['1\u202f234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['1,234,567', 1_234_567],
    ['17.5 kg', 17.5],
    ['17.5kg', 17.5],
    ['17.5 KG', 17.5],
  ])('“%s” is read as %s', (text, n) => expect(siOf(text, 'mass', 'kg')).toBeCloseTo(n, 9));

  it.each([
    ['24 ft 6 in', 24.5],
    ['24ft6in', 24.5],
    [`24' 6"`, 24.5],
    [`24′ 6″`, 24.5],
    ['24-6', 24.5],
    [`24'`, 24],
    ['24 ft', 24],
    ['24.5', 24.5],
    ['24,5 ft', 24.5],
    [`24' 6 1/2"`, 24 + 6.5 / 12],
    ['24 1/2', 24.5],
    ['6 in', 0.5],
    [`6"`, 0.5],
  ])('“%s” is %s ft', (text, ft) => expect(siOf(text, 'length', 'ft')).toBeCloseTo(ft * 0.3048, 12));

  it.each([
    ['3/8', 0.375],
    ['1 1/2', 1.5],
    ['1-1/2', 1.5],
    ['1.5', 1.5],
    ['1 1/2 in', 1.5],
    [`3/8"`, Number.NaN],
  ])('“%s” is %s in', (text, inch) => {
    const si = siOf(text, 'small-length', 'in');
    if (Number.isNaN(inch)) expect(Number.isNaN(si)).toBe(true);
    else expect(si).toBeCloseTo(inch * 0.0254, 12);
  });

  it('reads tread in thirty-seconds with or without the line', () => {
    expect(siOf('4', 'small-length', '32in')).toBeCloseTo((4 * 0.0254) / 32, 12);
    expect(siOf('4/32', 'small-length', '32in')).toBeCloseTo((4 * 0.0254) / 32, 12);
  });

  it.each(['', ' ', 'abc', '1.2.3', '12..5', '1 23', '1,23,4', '--3', '1e5', 'NaN', 'Infinity', '3/0', `24' 13"`, '0x10', '٣'])('“%s” is not a number', (text) =>
    expect(read(text, 'length', 'ft')).toBe('not-a-number'),
  );

  it('asks about a figure that can mean two things', () => {
    for (const text of ['1,234', '12,345', '-1,234', '1,234 kg']) expect(read(text, 'mass', 'kg'), text).toBe('two-meanings');
  });

  it('never takes a figure for another unit than the one it names', () => {
    expect(read('550 kPa', 'gauge-pressure', 'psi')).toBe('other-unit');
    expect(read('80 psi', 'gauge-pressure', 'kpa')).toBe('other-unit');
    expect(read('80 psi', 'gauge-pressure', 'psi')).toMatchObject({ typed: '80 psi' });
    expect(siOf('5 kPa', 'gauge-pressure', 'kpa')).toBe(5000);
    expect(read('20 °F', 'temperature', 'c')).toBe('other-unit');
    expect(siOf('20 °C', 'temperature', 'c')).toBeCloseTo(293.15, 12);
    expect(siOf('20 C', 'temperature', 'c')).toBeCloseTo(293.15, 12);
    expect(read('20 mm', 'small-length', 'm')).toBe('other-unit');
    expect(read('2 m', 'length', 'mm')).toBe('other-unit');
    const r = readQuantity('550 kPa', 'gauge-pressure', 'psi', {}, 'pressure');
    expect(r.ok ? '' : r.refusals[0]?.sentence).toBe('“550 kPa” is in kPa, but the field is in psi. Choose the other unit, or type the figure in psi.');
  });

  it('never fails, and never gives anything but a finite number', () => {
    const units = Object.values(quantities).flatMap((q) => q.units.map((u) => [q.id, u.id] as const));
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[0-9 .,'"/+ftin-]{0,12}$/)), fc.constantFrom(...units), (text, [quantity, unit]) => {
        const r = readQuantity(text, quantity, unit);
        return r.ok ? Number.isFinite(r.value.si) : r.refusals.length === 1;
      }),
      { numRuns: 2000 },
    );
  });

  it('reads every figure that it shows', () => {
    const units = Object.values(quantities).flatMap((q) => q.units.map((u) => [q.id, u.id, u.decimals] as const));
    fc.assert(
      fc.property(fc.double({ min: -900, max: 900, noNaN: true }), fc.constantFrom(...units), (n, [quantity, unit, decimals]) => {
        const si = toSi(n, quantity, unit);
        expect(Math.abs(siOf(figure(n, decimals), quantity, unit) - si)).toBeLessThanOrEqual(
          Math.abs(toSi(1, quantity, unit) - toSi(0, quantity, unit)) * 0.51 * 10 ** -decimals + 1e-9,
        );
      }),
    );
  });
});

describe('what is stored', () => {
  const entered = fc.constantFrom(
    ...([
      ['62', 'gauge-pressure', 'psi'],
      ['17,5', 'moisture-content', 'percent'],
      [`24' 6"`, 'length', 'ft'],
      ['-4.5', 'temperature', 'f'],
      ['3/8', 'small-length', 'in'],
      ['4', 'small-length', '32in'],
      ['2 830', 'mass', 'lb'],
    ] as const),
  );
  const preferences: fc.Arbitrary<Preferences> = fc.record({
    system: fc.constantFrom('us' as const, 'metric' as const),
    units: fc.record(
      { length: fc.constantFrom('m', 'ft', 'in', 'cm'), 'gauge-pressure': fc.constantFrom('kpa', 'psi', 'bar'), temperature: fc.constantFrom('c', 'f', 'k') },
      { requiredKeys: [] },
    ),
  });

  it('does not drift, however often units are switched and the value is shown', () => {
    fc.assert(
      fc.property(entered, fc.array(preferences, { minLength: 1, maxLength: 30 }), ([text, quantity, unit], switches) => {
        const r = readQuantity(text, quantity, unit);
        if (!r.ok) throw new Error(text);
        const stored = Object.freeze(r.value);
        const before = JSON.stringify(stored);
        const first = switches[0] as Preferences;
        const shown = show(stored.si, quantity, first);
        for (const p of switches) show(stored.si, quantity, p);
        expect(JSON.stringify(stored)).toBe(before);
        expect(show(stored.si, quantity, first)).toBe(shown);
        expect(stored.typed).toBe(text);
        expect(readQuantity(stored.typed, quantity, stored.unit)).toEqual(r);
      }),
    );
  });

  it('is shown as it was typed, with its unit once', () => {
    const shown = (text: string, quantity: QuantityId, unit: string) => {
      const r = readQuantity(text, quantity, unit);
      return r.ok ? showTyped(r.value, quantity) : '';
    };
    expect(shown('17.5', 'moisture-content', 'percent')).toBe('17.5 %');
    expect(shown('17,5', 'moisture-content', 'percent')).toBe('17,5 %');
    expect(shown('62', 'gauge-pressure', 'psi')).toBe('62 psi');
    expect(shown('62 psi', 'gauge-pressure', 'psi')).toBe('62 psi');
    expect(shown('24 ft 6 in', 'length', 'ft')).toBe('24 ft 6 in');
    expect(shown(`24' 6"`, 'length', 'ft')).toBe(`24' 6"`);
    expect(shown('4', 'small-length', '32in')).toBe('4/32 in');
    expect(shown('4/32', 'small-length', '32in')).toBe('4/32 in');
    expect(shown('75', 'angle', 'deg')).toBe('75°');
    expect(shown('40', 'relative-scale', 'points')).toBe('40 of 100');
    expect(shown('3', 'count', 'count')).toBe('3');
  });
});

describe('limits', () => {
  const limits = { least: toSi(10, 'gauge-pressure', 'psi'), most: toSi(80, 'gauge-pressure', 'psi') };
  it('let their own value through in every unit, and nothing beyond', () => {
    for (const unit of ['psi', 'kpa', 'bar']) {
      for (const edge of [limits.least, limits.most])
        expect(outsideLimits(toSi(fromSi(edge, 'gauge-pressure', unit), 'gauge-pressure', unit), 'gauge-pressure', unit, limits, 'p', '')).toBeUndefined();
    }
    expect(readQuantity('81', 'gauge-pressure', 'psi', limits, 'pressure')).toMatchObject({
      ok: false,
      refusals: [{ code: 'above-limit', path: 'pressure', expected: '10 psi to 80 psi', received: '“81”' }],
    });
    expect(readQuantity('9', 'gauge-pressure', 'psi', limits)).toMatchObject({ ok: false, refusals: [{ code: 'below-limit' }] });
    expect(readQuantity('9', 'gauge-pressure', 'psi', { least: limits.least })).toMatchObject({ ok: false, refusals: [{ expected: '10 psi or more' }] });
    expect(readQuantity('81', 'gauge-pressure', 'psi', { most: limits.most })).toMatchObject({ ok: false, refusals: [{ expected: '80 psi or less' }] });
  });
});

describe('what is shown', () => {
  const us: Preferences = { system: 'us', units: {} };
  it('has a true minus sign and never a minus zero', () => {
    expect(figure(-4, 0)).toBe('−4');
    expect(figure(-0.04, 1)).toBe('0.0');
    expect(figure(-0, 0)).toBe('0');
    expect(showIn(toSi(-4, 'temperature', 'c'), 'temperature', 'c')).toBe('−4 °C');
  });

  it('writes feet and inches, and carries twelve inches over', () => {
    expect(show(7.4676, 'length', us)).toBe('24 ft 6 in');
    expect(show(0.15, 'length', us)).toBe('6 in');
    expect(show(0.3046, 'length', us)).toBe('1 ft 0 in');
    expect(show(-0.15, 'length', us)).toBe('−6 in');
    expect(show(-0.001, 'length', us)).toBe('0 in');
  });

  it('follows the system, and a single unit set apart from it', () => {
    expect(show(toSi(62, 'gauge-pressure', 'psi'), 'gauge-pressure', us)).toBe('62 psi');
    expect(show(toSi(62, 'gauge-pressure', 'psi'), 'gauge-pressure', { system: 'metric', units: {} })).toBe('427 kPa');
    expect(show(toSi(62, 'gauge-pressure', 'psi'), 'gauge-pressure', { system: 'us', units: { 'gauge-pressure': 'bar' } })).toBe('4.3 bar');
    expect(usualUnit('temperature', us)).toBe('f');
  });
});
