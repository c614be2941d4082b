import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaugePascals, metresPerSecond, type Result } from '../../units';
import { AIR_DENSITY, rainThroughPlane, STANDARD_SPRAY, stagnationPressure, waterHead } from '.';

/**
 * Closed forms, held against five cases through their worksheets (worksheets/cases/rain.jsonl, 0.1 %) and here against
 * the round figures of the trade: about 433 Pa and 44 mm of water at 60 mph. Then what must hold of any such law.
 */
const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};
const MPH = 0.44704;
const MM_PER_HOUR = 1e-3 / 3600;

describe('rain pressed in on the road', () => {
  it('is about 433 Pa at 60 mph, which holds up 44 mm of water', () => {
    const q = value(stagnationPressure(metresPerSecond(60 * MPH), AIR_DENSITY));
    expect(q).toBeCloseTo(433.1, 1);
    expect(waterHead(q) * 1000).toBeCloseTo(44.2, 1);
  });

  it('grows with the square of the speed and in step with the density', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 22, noNaN: true }), fc.double({ min: 0.75, max: 1.5, noNaN: true }), (v, rho) => {
        const at = (speed: number, density: number) => value(stagnationPressure(metresPerSecond(speed), density));
        expect(at(2 * v, rho) / at(v, rho)).toBeCloseTo(4, 9);
        expect(at(v, rho) / at(v, AIR_DENSITY)).toBeCloseTo(rho / AIR_DENSITY, 9);
        expect(waterHead(gaugePascals(2 * at(v, rho))) / waterHead(at(v, rho))).toBeCloseTo(2, 9);
      }),
    );
  });

  it('refuses speeds and air that the law does not cover', () => {
    const path = (speed: number, density: number) => {
      const r = stagnationPressure(metresPerSecond(speed), density);
      return r.ok ? 'answered' : r.refusals[0]?.path;
    };
    expect(path(46, 1.2)).toBe('speed');
    expect(path(-1, 1.2)).toBe('speed');
    expect(path(20, 0.2)).toBe('air_density');
    expect(path(Number.NaN, 1.2)).toBe('speed');
  });
});

describe('rain through an upright plane', () => {
  it('equals the rain on the ground when wind and fall are equally fast, and grows in step with each', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 90, noNaN: true }), fc.double({ min: 1, max: 9, noNaN: true }), (mm, v) => {
        const rain = metresPerSecond(mm * MM_PER_HOUR);
        const at = (wind: number, fall: number) => value(rainThroughPlane(rain, metresPerSecond(wind), metresPerSecond(fall)));
        expect(at(v, v) / rain).toBeCloseTo(1, 9);
        expect(at(3 * v, v) / rain).toBeCloseTo(3, 9);
      }),
    );
  });

  it('knows the spray of the standard wall test as 3.4 litres on a square metre in a minute', () => expect(STANDARD_SPRAY * 60 * 1000).toBeCloseTo(3.3955, 3));

  it('refuses what no rain and no road bring', () => {
    const path = (mm: number, wind: number, fall: number) => {
      const r = rainThroughPlane(metresPerSecond(mm * MM_PER_HOUR), metresPerSecond(wind), metresPerSecond(fall));
      return r.ok ? 'answered' : r.refusals[0]?.path;
    };
    expect(path(5, 29, 6)).toBe('answered');
    expect(path(400, 29, 6)).toBe('rain');
    expect(path(5, 60, 6)).toBe('wind');
    expect(path(5, 29, 0)).toBe('fall_speed');
  });
});
