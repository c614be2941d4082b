import { accept, type GaugePascals, gaugePascals, type Kelvin, type Metres, type Result } from '../../units';
import { standardPressure } from '../air';
import { outsideValidity, type Validity } from '../validity';

export type TyreCondition = { readonly temperature: Kelvin; readonly altitude: Metres };

const notNegative: Validity = {
  of: 'set_pressure',
  least: 0,
  most: Number.POSITIVE_INFINITY,
  words: 'a tyre that still holds more than the air outside',
  source: 'ideal gas at constant volume',
};

const renamed = <T>(result: Result<T>, path: string): Result<T> => (result.ok ? result : { ok: false, refusals: result.refusals.map((r) => ({ ...r, path })) });

/**
 * What a gauge should show now on a tyre that lost nothing since it was set.
 *
 * @param set_pressure  gauge pressure when it was set, cold. [Pa]
 * @param set           temperature of the tyre and height above sea level at that time. [K, m]
 * @param now           the same now. [K, m]
 * @returns             gauge pressure now. [Pa]
 * @valid               heights of the standard atmosphere; a result below zero is refused
 * @agrees              0.1 psi against printed figures of two sources, and the tyre cases
 * @assumes             the tyre's volume stays as it is, its air is an ideal gas, and the weather is a standard day's
 * @source              1. Gay-Lussac's law: (p₂ + a₂) / T₂ = (p₁ + a₁) / T₁, with absolute pressures; standard atmosphere as in air/standard-atmosphere
 */
export const gaugeAfterChange = (set_pressure: GaugePascals, set: TyreCondition, now: TyreCondition): Result<GaugePascals> => {
  const before = renamed(standardPressure(set.altitude), 'set_altitude');
  const after = standardPressure(now.altitude);
  if (!before.ok || !after.ok) return { ok: false, refusals: [...(before.ok ? [] : before.refusals), ...(after.ok ? [] : after.refusals)] };
  const p = ((set_pressure + before.value) * now.temperature) / set.temperature - after.value;
  return p < 0 ? outsideValidity(notNegative, `${Math.round(p / 1000)} kPa against the air outside`) : accept(gaugePascals(p));
};
