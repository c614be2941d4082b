import { accept, figure, type Kelvin, type RelativeHumidity, type Result, relativeHumidity } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';
import { dewPoint } from './dew-point';

/** `sweats`: colder than the dew point for certain. `too-close`: within what the instruments leave open. `dry`: warmer for certain. */
export type Sweating = 'sweats' | 'too-close' | 'dry';

export type Condensation = {
  /** [K] */
  readonly dew_point: Kelvin;
  /** How much warmer the skin is than the dew point; below 0 it is colder. [K] */
  readonly margin: number;
  /** What humidity sensor and thermometer leave open in the margin. [K] */
  readonly uncertainty: number;
  readonly skin: Sweating;
};

/** What a small hygrometer may be off by. [1] */
export const HYGROMETER = 0.05;
/** What a surface thermometer may be off by on paint or vinyl. [K] */
export const SURFACE_THERMOMETER = 1;

export const condensationHumidity: Validity = { of: 'relative_humidity', least: 0.06, most: 1, words: '6 to 100 %, so that the sensor’s own error leaves some', source: 'ours' };
const skinTemperature: Validity = { of: 'skin_temperature', least: 173.15, most: 373.15, words: 'surfaces from −100 to 100 °C', source: 'ours' };

/**
 * Whether a surface sweats by itself, with no leak: its temperature against the dew point of the air that touches it.
 *
 * @param air_temperature    of the room's air, not of the weather. [K]
 * @param relative_humidity  of that air. [1]
 * @param skin_temperature   of the surface itself. [K]
 * @returns                  dew point, margin, what is uncertain in it, and which of three it is
 * @valid                    as the dew point; humidity from 6 %, so that the sensor's own error leaves some; otherwise a refusal
 * @agrees                   the dew point as in air.agreement.ts; the verdict is ours
 * @assumes                  humidity good to 5 points, the surface to 1 K: ours, common for hand instruments. The two are added as squares,
 *                           because they have nothing to do with each other
 * @source                   1. ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6
 */
export const condensation = (air_temperature: Kelvin, relative_humidity: RelativeHumidity, skin_temperature: Kelvin): Result<Condensation> => {
  if (!holds(relative_humidity, condensationHumidity)) return outsideValidity(condensationHumidity, `${figure(relative_humidity * 100, 1)} %`);
  if (!holds(skin_temperature, skinTemperature)) return outsideValidity(skinTemperature, `${figure(skin_temperature - 273.15, 1)} °C`);
  const [point, dryer, damper] = [0, -HYGROMETER, HYGROMETER].map((off) => dewPoint(air_temperature, relativeHumidity(Math.min(1, relative_humidity + off))));
  if (!point?.ok || !dryer?.ok || !damper?.ok) {
    const refusals = [point, dryer, damper].flatMap((r) => (r && !r.ok ? r.refusals : []));
    return { ok: false, refusals: refusals.slice(0, 1).map((r) => (r.path === 'dry_bulb' ? { ...r, path: 'air_temperature' } : r)) };
  }
  const margin = skin_temperature - point.value;
  // The dew point of dry air gives way faster than that of damp air: the wider side counts.
  const humidity = Math.max(point.value - dryer.value, damper.value - point.value);
  const uncertainty = Math.hypot(humidity, SURFACE_THERMOMETER);
  return accept({ dew_point: point.value, margin, uncertainty, skin: Math.abs(margin) <= uncertainty ? 'too-close' : margin < 0 ? 'sweats' : 'dry' });
};
