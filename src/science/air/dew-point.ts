import { type AbsolutePascals, absolutePascals, accept, figure, type Kelvin, kelvin, type RelativeHumidity, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';
import { saturationLaw, saturationPressure, saturationValidity } from './saturation-pressure';

const SOURCE = 'ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6';

export const humidityValidity: Validity = { of: 'relative_humidity', least: 1e-6, most: 1, words: 'above 0 to 100 % relative humidity', source: SOURCE };

const pressureValidity: Validity = {
  of: 'vapour_pressure',
  least: saturationLaw(saturationValidity.least),
  most: saturationLaw(saturationValidity.most),
  words: 'vapour pressures whose dew point lies between −100 and 200 °C',
  source: SOURCE,
};

/** Halvings of 300 K down to a ten-millionth: finer than any table. */
const HALVINGS = 32;

/**
 * The temperature at which air holding this much vapour begins to wet a surface.
 *
 * @param vapour_pressure  partial pressure of the water vapour. [Pa]
 * @returns                dew point, or frost point below the triple point. [K]
 * @valid                  dew points of −100…200 °C (source 1); outside: a refusal `outside-validity`
 * @agrees                 0.01 K against the published inverse of one table value; a second witness in dew-point.check.ts
 * @assumes                saturation pressure rises with temperature all the way, so that halving finds the one answer
 * @source                 1. ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6, solved for the temperature
 */
export const dewPointOfPressure = (vapour_pressure: AbsolutePascals): Result<Kelvin> => {
  if (!holds(vapour_pressure, pressureValidity)) return outsideValidity(pressureValidity, `${figure(vapour_pressure, 5)} Pa`);
  let low = saturationValidity.least;
  let high = saturationValidity.most;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (saturationLaw(middle) < vapour_pressure) low = middle;
    else high = middle;
  }
  return accept(kelvin((low + high) / 2));
};

/**
 * The temperature to which a surface must stay warmer, or it will be wet with no leak at all.
 *
 * @param dry_bulb           temperature of the air. [K]
 * @param relative_humidity  of that air, over water; over ice below the triple point. [1]
 * @returns                  dew point, or frost point below the triple point. [K]
 * @valid                    air −100…200 °C, above 0…100 % (source 1); outside: a refusal `outside-validity`
 * @agrees                   3 °F against the coarse chart dew-point-coating-f.csv (whole degrees, 143 cells); 0.01 K with a second library
 * @assumes                  the pressure of the air plays no part
 * @source                   1. ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6
 */
export const dewPoint = (dry_bulb: Kelvin, relative_humidity: RelativeHumidity): Result<Kelvin> => {
  if (!holds(relative_humidity, humidityValidity)) return outsideValidity(humidityValidity, `${figure(relative_humidity * 100, 4)} %`);
  const saturated = saturationPressure(dry_bulb);
  if (!saturated.ok) return { ok: false, refusals: saturated.refusals.map((r) => ({ ...r, path: 'dry_bulb' })) };
  const point = dewPointOfPressure(absolutePascals(saturated.value * relative_humidity));
  return point.ok ? point : { ok: false, refusals: point.refusals.map((r) => ({ ...r, path: 'relative_humidity' })) };
};
