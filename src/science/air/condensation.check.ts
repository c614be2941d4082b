import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { kelvin, type Result, relativeHumidity } from '../../units';
import { condensation, dewPoint, humidityFromDewPoint } from '.';

/**
 * The law underneath is held in air.agreement.ts. Here: a library that others wrote as a second witness of the humidity,
 * within a ten-thousandth; and that the verdict turns at the dew point, with room on both sides for what the instruments leave open.
 */
psychrolib.SetUnitSystem(psychrolib.SI);

const c = (t: number) => kelvin(t + 273.15);
const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};
const path = (result: Result<unknown>): string => (result.ok ? 'answered' : `${result.refusals[0]?.code} ${result.refusals[0]?.path}`);

describe('humidity from the dew point', () => {
  it('is what the second witness gives', () => {
    for (let t = -30; t <= 50; t += 5)
      for (let d = t - 25; d <= t; d += 2.5) expect(Math.abs(value(humidityFromDewPoint(c(t), c(d))) - psychrolib.GetRelHumFromTDewPoint(t, d)), `${t}, ${d}`).toBeLessThan(1e-4);
  });

  it('undoes the dew point', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 90, noNaN: true }), fc.double({ min: 0.05, max: 1, noNaN: true }), (t, h) => {
        const point = value(dewPoint(c(t), relativeHumidity(h)));
        // At the full the halving may end a hair above the air itself.
        if (point <= c(t)) expect(value(humidityFromDewPoint(c(t), point))).toBeCloseTo(h, 5);
      }),
    );
  });

  it('is refused for a dew point above the air, and beyond the source', () => {
    expect(path(humidityFromDewPoint(c(20), c(21)))).toBe('dew-point-above-air dew_point');
    expect(path(humidityFromDewPoint(c(300), c(21)))).toBe('outside-validity dry_bulb');
    expect(path(humidityFromDewPoint(c(20), c(-150)))).toBe('outside-validity dew_point');
  });
});

describe('whether a skin sweats', () => {
  it('turns from sweating through too close to dry as the skin warms, never back', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 35, noNaN: true }), fc.double({ min: 0.1, max: 1, noNaN: true }), (t, h) => {
        const order = ['sweats', 'too-close', 'dry'];
        let before = 0;
        for (let skin = t - 45; skin <= t + 15; skin += 0.5) {
          const now = order.indexOf(value(condensation(c(t), relativeHumidity(h), c(skin))).skin);
          expect(now).toBeGreaterThanOrEqual(before);
          before = now;
        }
        expect(before).toBe(2);
      }),
    );
  });

  it('carries 5 points of humidity and 1 K: at 20 °C and 60 % about 1.7 K, more where the air is dry', () => {
    const at = (h: number) => value(condensation(c(20), relativeHumidity(h), c(10))).uncertainty;
    expect(at(0.6)).toBeGreaterThan(1.5);
    expect(at(0.6)).toBeLessThan(1.9);
    expect(at(0.2)).toBeGreaterThan(at(0.6));
  });

  it('knows a cold night: a wall at 6 °C in a room of 20 °C and 65 % sweats, one at 17 °C does not', () => {
    expect(value(condensation(c(20), relativeHumidity(0.65), c(6))).skin).toBe('sweats');
    expect(value(condensation(c(20), relativeHumidity(0.65), c(17))).skin).toBe('dry');
    expect(value(condensation(c(20), relativeHumidity(0.65), c(13))).skin).toBe('too-close');
  });

  it('is refused where the sensor’s own error would leave nothing, and for figures that are none', () => {
    expect(path(condensation(c(20), relativeHumidity(0.05), c(6)))).toBe('outside-validity relative_humidity');
    expect(path(condensation(c(20), relativeHumidity(0.5), c(Number.NaN)))).toBe('outside-validity skin_temperature');
    expect(path(condensation(c(250), relativeHumidity(0.5), c(6)))).toBe('outside-validity air_temperature');
  });
});
