import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { absolutePascals, kelvin, metres, type Result, relativeHumidity } from '../../units';
import { dewPoint, dewPointOfPressure, saturationPressure, standardPressure } from '.';

/**
 * The published tables are held in air.agreement.ts. Here: a library that others wrote, as a second witness of the same
 * equations over their whole range, and what must hold of any such law. The library cannot show that the equations are right.
 */
psychrolib.SetUnitSystem(psychrolib.SI);

const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};
const celsius = fc.double({ min: -99, max: 199, noNaN: true });

describe('saturation pressure', () => {
  it('is what the second witness gives, within a hundred-thousandth', () => {
    for (let t = -100; t <= 200; t += 0.5) {
      const ours = value(saturationPressure(kelvin(t + 273.15)));
      expect(Math.abs(ours / psychrolib.GetSatVapPres(t) - 1), `${t} °C`).toBeLessThan(1e-5);
    }
  });

  it('always rises with temperature, across the freezing point too', () => {
    fc.assert(
      fc.property(
        celsius,
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        (t, step) => value(saturationPressure(kelvin(t + step + 273.15))) > value(saturationPressure(kelvin(t + 273.15))),
      ),
    );
  });

  it.each([173.14, 473.16, Number.NaN, Number.POSITIVE_INFINITY])('refuses %s K, naming limits and source', (t) => {
    const r = saturationPressure(kelvin(t));
    expect(r.ok ? '' : r.refusals[0]?.code).toBe('outside-validity');
    expect(r.ok ? '' : r.refusals[0]?.expected).toContain('ASHRAE');
  });
});

describe('dew point', () => {
  it('undoes the saturation pressure', () => {
    fc.assert(fc.property(celsius, (t) => Math.abs(value(dewPointOfPressure(value(saturationPressure(kelvin(t + 273.15))))) - 273.15 - t) < 1e-4));
  });

  it('is what the second witness gives, within a hundredth of a degree', () => {
    for (let t = -40; t <= 60; t += 2.5)
      for (let h = 5; h <= 100; h += 5) {
        const ours = value(dewPoint(kelvin(t + 273.15), relativeHumidity(h / 100))) - 273.15;
        // Across the triple point the two equations leave a step of a few ten-thousandths; the witness stops a little short of it.
        expect(Math.abs(ours - psychrolib.GetTDewPointFromRelHum(t, h / 100)), `${t} °C, ${h} %`).toBeLessThan(0.011);
      }
  });

  it('equals the air temperature at 100 % and lies below it otherwise, rising with humidity', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 90, noNaN: true }), fc.double({ min: 0.05, max: 0.98, noNaN: true }), (t, h) => {
        const air = kelvin(t + 273.15);
        const at = (x: number) => value(dewPoint(air, relativeHumidity(x)));
        expect(at(1)).toBeCloseTo(air, 4);
        expect(at(h)).toBeLessThan(air);
        expect(at(h + 0.01)).toBeGreaterThan(at(h));
      }),
    );
  });

  it('refuses dry-as-nothing and more than full air, and says which parameter', () => {
    for (const h of [0, -0.1, 1.01, Number.NaN]) {
      const r = dewPoint(kelvin(293.15), relativeHumidity(h));
      expect(r.ok ? '' : r.refusals[0]?.path).toBe('relative_humidity');
    }
    const hot = dewPoint(kelvin(500), relativeHumidity(0.5));
    expect(hot.ok ? '' : hot.refusals[0]?.path).toBe('dry_bulb');
    expect(dewPointOfPressure(absolutePascals(1e-9)).ok).toBe(false);
  });
});

describe('standard atmosphere', () => {
  it('is what the second witness gives, within a thousandth', () => {
    for (let z = -5000; z <= 11_000; z += 250) expect(Math.abs(value(standardPressure(metres(z))) / psychrolib.GetStandardAtmPressure(z) - 1), `${z} m`).toBeLessThan(1e-3);
  });
  it('falls with height and refuses beyond its source', () => {
    fc.assert(fc.property(fc.double({ min: -5000, max: 10_000, noNaN: true }), (z) => value(standardPressure(metres(z + 1))) < value(standardPressure(metres(z)))));
    for (const z of [-5001, 11_001, Number.NaN]) expect(standardPressure(metres(z)).ok).toBe(false);
  });
});
