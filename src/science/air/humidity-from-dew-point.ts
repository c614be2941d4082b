import { accept, figure, type Kelvin, type RelativeHumidity, type Result, refuse, relativeHumidity } from '../../units';
import { saturationPressure } from './saturation-pressure';

/**
 * Relative humidity of air whose temperature and dew point are known, as weather stations report them.
 *
 * @param dry_bulb   temperature of the air. [K]
 * @param dew_point  of that air; frost point below the triple point. [K]
 * @returns          relative humidity. [1]
 * @valid            −100…200 °C, the dew point not above the air (source 1); otherwise a refusal
 * @agrees           0.1 point against one ratio of two table values; undoes the dew point to a millionth
 * @assumes          the pressure of the air plays no part
 * @source           1. ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6
 */
export const humidityFromDewPoint = (dry_bulb: Kelvin, dew_point: Kelvin): Result<RelativeHumidity> => {
  const full = saturationPressure(dry_bulb);
  if (!full.ok) return { ok: false, refusals: full.refusals.map((r) => ({ ...r, path: 'dry_bulb' })) };
  const held = saturationPressure(dew_point);
  if (!held.ok) return { ok: false, refusals: held.refusals.map((r) => ({ ...r, path: 'dew_point' })) };
  if (dew_point > dry_bulb) {
    const [air, dew] = [dry_bulb, dew_point].map((t) => `${figure(t - 273.15, 1)} °C`);
    return refuse({
      code: 'dew-point-above-air',
      path: 'dew_point',
      expected: `not above the air, ${air}`,
      received: dew ?? '',
      sentence: `The dew point ${dew} lies above the air, ${air}. Air cannot hold that much; check which figure is which.`,
    });
  }
  return accept(relativeHumidity(held.value / full.value));
};
