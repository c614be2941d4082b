import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kelvin, kilograms, moistureContent, type Result, relativeHumidity } from '../../units';
import { emcTerms, equilibriumHumidity, equilibriumMoisture, ovenDryMoisture, pinMeterLinear, pinMeterPfaffGarrahan } from '.';

/**
 * Table 4-2 and the pin meter chart are held in wood.agreement.ts. Here: the source's own Fahrenheit form of equation 4-5,
 * read apart from the Celsius form, must give the same coefficients; and what must hold of any such law.
 */
/** How far the source's two forms lie apart, by the rounding of their coefficients. */
const ROUNDED: Readonly<Record<string, number>> = { W: 0.0011, K: 0.0002, K1: 0.0002, K2: 0.0021 };

const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};

describe('equilibrium moisture content', () => {
  it('has the coefficients of the source in both its forms: W within 0.11 %, K and K₁ within 0.02 %, K₂ within 0.21 %, from 30 to 200 °F', () => {
    const rows = readFileSync(new URL('./equation-4-5.csv', import.meta.url), 'utf8')
      .trim()
      .split('\n')
      .slice(1);
    expect(rows).toHaveLength(8);
    const of = (parameter: string, unit: string, t: number): number => {
      const row = rows.map((r) => r.split(',')).find((r) => r[0] === parameter && r[1] === unit);
      const [, , c0, c1, c2] = row ?? [];
      return Number(c0) + Number(c1) * t + Number(c2) * t ** 2;
    };
    for (let f = 30; f <= 200; f += 5) {
      const c = ((f - 32) * 5) / 9;
      const ours = emcTerms(c);
      for (const [name, got] of Object.entries(ours)) {
        expect(Math.abs(got / of(name, 'C', c) - 1), `${name} in °C at ${f} °F`).toBeLessThan(1e-12);
        expect(Math.abs(got / of(name, 'F', f) - 1), `${name} in °F at ${f} °F`).toBeLessThan(ROUNDED[name] ?? 0);
      }
    }
  });

  it('rises with humidity and falls with warmth', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 90, noNaN: true }), fc.double({ min: 0.06, max: 0.93, noNaN: true }), (t, h) => {
        const at = (tt: number, hh: number) => value(equilibriumMoisture(kelvin(tt + 273.15), relativeHumidity(hh)));
        expect(at(t, h + 0.01)).toBeGreaterThan(at(t, h));
        // Below about 5 °C the source's own parabola is flat to its last digit.
        if (t > 5) expect(at(t + 1, h)).toBeLessThan(at(t, h));
      }),
    );
  });

  it('refuses beyond table 4-2 instead of answering', () => {
    for (const [t, h, path] of [
      [-2, 0.5, 'temperature'],
      [94, 0.5, 'temperature'],
      [20, 0.04, 'relative_humidity'],
      [20, 1, 'relative_humidity'],
      [Number.NaN, 0.5, 'temperature'],
    ] as const) {
      const r = equilibriumMoisture(kelvin(t + 273.15), relativeHumidity(h));
      expect(r.ok ? '' : `${r.refusals[0]?.code} ${r.refusals[0]?.path}`).toBe(`outside-validity ${path}`);
    }
  });
});

describe('humidity in equilibrium with a moisture content', () => {
  it('undoes the equilibrium moisture content, over all of table 4-2', () => {
    fc.assert(
      fc.property(fc.double({ min: -1, max: 93, noNaN: true }), fc.double({ min: 0.05, max: 0.95, noNaN: true }), (t, h) => {
        const m = value(equilibriumMoisture(kelvin(t + 273.15), relativeHumidity(h)));
        expect(value(equilibriumHumidity(kelvin(t + 273.15), m))).toBeCloseTo(h, 6);
      }),
    );
  });

  it('refuses wood drier or wetter than any air of the table makes it, and says what it would take', () => {
    for (const m of [0.005, 0.3, Number.NaN]) {
      const r = equilibriumHumidity(kelvin(293.15), moistureContent(m));
      expect(r.ok ? '' : `${r.refusals[0]?.code} ${r.refusals[0]?.path}`).toBe('outside-validity moisture_content');
    }
    const cold = equilibriumHumidity(kelvin(260), moistureContent(0.12));
    expect(cold.ok ? '' : cold.refusals[0]?.path).toBe('temperature');
  });
});

describe('oven-dry moisture content', () => {
  it('is 0 for a sample that lost nothing, and grows with what it lost', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1, noNaN: true }), fc.double({ min: 0, max: 2, noNaN: true }), (dry, part) => {
        expect(value(ovenDryMoisture(kilograms(dry * (1 + part)), kilograms(dry)))).toBeCloseTo(part, 9);
      }),
    );
  });

  it('refuses masses that cannot be', () => {
    const of = (wet: number, dry: number) => {
      const r = ovenDryMoisture(kilograms(wet), kilograms(dry));
      return r.ok ? 'answered' : `${r.refusals[0]?.code} ${r.refusals[0]?.path}`;
    };
    expect(of(0.05, 0.06)).toBe('heavier-when-dry dry_mass');
    expect(of(0.05, 0)).toBe('no-mass dry_mass');
    expect(of(0.05, Number.NaN)).toBe('no-mass dry_mass');
    expect(of(0.05, 0.05)).toBe('answered');
  });
});

describe('pin meter correction', () => {
  const reading = fc.double({ min: 0.08, max: 0.28, noNaN: true });
  const wood = fc.double({ min: 1, max: 49, noNaN: true });

  it('leaves a reading alone at calibration temperature', () => {
    fc.assert(fc.property(reading, (r) => Math.abs(value(pinMeterLinear(moistureContent(r), kelvin(293.15), kelvin(293.15))) - r) < 1e-12));
  });

  it('raises readings of cold wood and lowers those of warm wood, the more the farther, by either rule', () => {
    fc.assert(
      fc.property(reading, wood, (r, t) => {
        for (const rule of [
          (x: number) => value(pinMeterLinear(moistureContent(r), kelvin(x + 273.15), kelvin(293.15))),
          (x: number) => value(pinMeterPfaffGarrahan(moistureContent(r), kelvin(x + 273.15))),
        ])
          expect(rule(t + 1)).toBeLessThan(rule(t));
      }),
    );
  });

  it('keeps the two rules within 3 points of each other from 0 to 40 °C, readings 8 to 25 %', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.08, max: 0.25, noNaN: true }), fc.double({ min: 0, max: 40, noNaN: true }), (r, t) => {
        const a = value(pinMeterLinear(moistureContent(r), kelvin(t + 273.15), kelvin(293.15)));
        const b = value(pinMeterPfaffGarrahan(moistureContent(r), kelvin(t + 273.15)));
        return Math.abs(a - b) < 0.03;
      }),
    );
  });

  it('refuses frozen wood and readings that a pin meter cannot tell', () => {
    const of = (r: number, t: number) => {
      const result = pinMeterLinear(moistureContent(r), kelvin(t + 273.15), kelvin(293.15));
      return result.ok ? 'answered' : result.refusals[0]?.path;
    };
    expect(of(0.15, -1)).toBe('wood_temperature');
    expect(of(0.15, 51)).toBe('wood_temperature');
    expect(of(0.06, 20)).toBe('reading');
    expect(of(0.31, 20)).toBe('reading');
    expect(pinMeterPfaffGarrahan(moistureContent(0.31), kelvin(293.15)).ok).toBe(false);
  });
});
