import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kelvin, type Result, relativeHumidity } from '../../units';
import { criticalHumidity, largestMouldIndex, type MouldClassId, type MouldSpell, mouldClass, mouldClasses, mouldRisk, mouldThrough, mouldWords, weeksToFirstMould } from '.';

/**
 * Values of the published equations and of another implementation run through the worksheets, in the cases. Here: the
 * constants against the table as read, and what must hold of the model whoever writes it: damper is never better, a dry
 * spell never adds, an hourly record is the same as its spells, and the index keeps within its scale.
 */
const c = (t: number) => kelvin(t + 273.15);
const h = relativeHumidity;
const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};
const path = (result: Result<unknown>): string => (result.ok ? 'answered' : `${result.refusals[0]?.code} ${result.refusals[0]?.path}`);
const spell = (hours: number, t: number, rh: number): MouldSpell => ({ hours, temperature: c(t), relative_humidity: h(rh) });

const ids = mouldClasses.map((m) => m.id);
const anyClass = fc.constantFrom(...ids);
const anySpell = fc.tuple(fc.integer({ min: 0, max: 400 }), fc.double({ min: -20, max: 60, noNaN: true }), fc.double({ min: 0.2, max: 1, noNaN: true })).map((s) => spell(...s));

describe('sensitivity classes', () => {
  it('have the constants of the table', () => {
    const [head = '', ...rows] = readFileSync(new URL('./vtt-mould-classes.csv', import.meta.url), 'utf8')
      .trim()
      .split('\n');
    expect(rows).toHaveLength(4);
    for (const row of rows) {
      const cells = row.split(',');
      const of = mouldClass(cells[0] as MouldClassId);
      expect([of.k1_below, of.k1_from, of.A, of.B, of.C, of.humidity_least], head).toEqual(cells.slice(1).map(Number));
    }
  });
});

describe('critical humidity', () => {
  it('falls with warmth until it meets the floor of the class near 15 °C, and has no step at 20 °C worth a twentieth of a point', () => {
    for (let t = 0; t < 14.5; t += 0.5) expect(value(criticalHumidity(c(t + 0.5), 'very-sensitive'))).toBeLessThan(value(criticalHumidity(c(t), 'very-sensitive')));
    expect(value(criticalHumidity(c(20), 'very-sensitive')) - value(criticalHumidity(c(20.01), 'very-sensitive'))).toBeCloseTo(0.0004, 6);
    for (const t of [21, 30, 45, 50]) {
      expect(value(criticalHumidity(c(t), 'sensitive'))).toBe(0.8);
      expect(value(criticalHumidity(c(t), 'resistant'))).toBe(0.85);
    }
    expect(path(criticalHumidity(c(-1), 'sensitive'))).toBe('outside-validity temperature');
  });
});

describe('mould index', () => {
  it('never goes backwards in what it says: damper is never better, and a more sensitive surface never does better', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 49, noNaN: true }), fc.double({ min: 0.5, max: 0.98, noNaN: true }), anyClass, (t, rh, id) => {
        const at = (x: number, m: MouldClassId) => value(mouldThrough([spell(600, t, x)], m)).index;
        expect(at(rh + 0.02, id)).toBeGreaterThanOrEqual(at(rh, id));
        expect(at(rh, 'very-sensitive')).toBeGreaterThanOrEqual(at(rh, 'resistant'));
      }),
      { numRuns: 40 },
    );
  });

  it('is the same hour by hour as in one stretch, and stays between 0 and 6', () => {
    fc.assert(
      fc.property(fc.array(anySpell, { minLength: 1, maxLength: 6 }), anyClass, (spells, id) => {
        const whole = value(mouldThrough(spells, id));
        const hourly = value(
          mouldThrough(
            spells.flatMap((s) => Array.from({ length: s.hours }, () => ({ ...s, hours: 1 }))),
            id,
          ),
        );
        expect(hourly.index).toBeCloseTo(whole.index, 12);
        expect(whole.highest).toBeGreaterThanOrEqual(whole.index);
        expect(whole.after).toHaveLength(spells.length);
        for (const m of whole.after) {
          expect(m).toBeGreaterThanOrEqual(0);
          expect(m).toBeLessThanOrEqual(6);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('takes part of an hour as part of its step', () => {
    const at = (hours: number) => value(mouldThrough([spell(hours, 22, 0.97)], 'very-sensitive')).index;
    expect(at(10.5)).toBeCloseTo((at(10) + at(11)) / 2, 9);
  });

  it('comes to its largest and no further', () => {
    for (const id of ids) {
      const limit = value(largestMouldIndex(c(22), h(0.97), id));
      const end = value(mouldThrough([spell(24 * 365 * 8, 22, 0.97)], id)).index;
      expect(end, id).toBeLessThanOrEqual(limit);
      expect(end, id).toBeGreaterThan(limit - 0.2);
    }
  });

  it('takes the weeks to index 1 that the equation says, less the braking near the limit', () => {
    const weeks = value(weeksToFirstMould(c(22), h(0.97))) ?? 0;
    expect(value(mouldThrough([spell(Math.round(weeks * 168), 22, 0.97)], 'very-sensitive')).index).toBeCloseTo(1, 1);
  });

  it('takes off 0.008 in the first six dry hours, nothing until the day is over, and 0.016 a day after', () => {
    const taken = (hours: number) => 3 - value(mouldThrough([spell(hours, 22, 0.5)], 'very-sensitive', 1, 3)).index;
    expect(taken(6)).toBeCloseTo(0.008, 9);
    expect(taken(24)).toBeCloseTo(0.008, 9);
    expect(taken(48)).toBeCloseTo(0.024, 9);
    expect(3 - value(mouldThrough([spell(48, 22, 0.5)], 'very-sensitive', 0.1, 3)).index).toBeCloseTo(0.0024, 9);
  });

  it('does not grow in frost, in heat, or in dry air, and says of what never comes that it does not', () => {
    for (const [t, rh] of [
      [-5, 0.98],
      [55, 0.98],
      [22, 0.7],
    ] as const)
      expect(value(mouldThrough([spell(2000, t, rh)], 'very-sensitive')).highest).toBe(0);
    expect(value(weeksToFirstMould(c(22), h(0.7)))).toBeUndefined();
    expect(value(largestMouldIndex(c(22), h(0.7), 'sensitive'))).toBe(0);
  });

  it('of no time at all is where it began', () => expect(value(mouldThrough([], 'sensitive', 1, 2.5))).toEqual({ index: 2.5, highest: 2.5, after: [] }));

  it('is refused for what cannot be, and the spell is named', () => {
    expect(path(mouldThrough([spell(1, 20, 0.9), spell(1, 20, 1.2)], 'sensitive'))).toBe('outside-validity humidities[1]');
    expect(path(mouldThrough([spell(1, Number.NaN, 0.9)], 'sensitive'))).toBe('outside-validity temperatures[0]');
    expect(path(mouldThrough([spell(-1, 20, 0.9)], 'sensitive'))).toBe('outside-validity hours[0]');
    expect(path(mouldThrough([], 'sensitive', 1, 7))).toBe('outside-validity start');
    expect(path(mouldThrough([], 'sensitive', -1))).toBe('outside-validity decline');
  });
});

describe('in words', () => {
  it('has a step for every index and a risk that rises with it', () => {
    expect([0, 0.9, 1, 2.9, 3, 4, 5.5, 6].map(mouldRisk)).toEqual(['low', 'low', 'middle', 'middle', 'high', 'high', 'high', 'high']);
    for (let m = 0; m <= 6; m += 0.25) expect(mouldWords(m)).not.toBe('');
    expect(mouldWords(0.99)).toBe('none');
    expect(mouldWords(3)).toMatch(/^to be seen/);
  });
});
