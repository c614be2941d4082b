import { accept, figure, type GaugePascals, gaugePascals, type Metres, type MetresPerSecond, metres, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

/** Air of 20 °C at sea level. [kg/m³] */
export const AIR_DENSITY = 1.2041;
/** Water of 20 °C. [kg/m³] */
export const WATER_DENSITY = 998.2;
const G = 9.80665;

export const drivingSpeed: Validity = {
  of: 'speed',
  least: 0,
  most: 45,
  words: 'speeds up to 45 m/s (100 mph), where air does not yet compress',
  source: 'our own limit; Bernoulli’s law for still density',
};
export const airDensity: Validity = { of: 'air_density', least: 0.7, most: 1.6, words: 'air of 0.7 to 1.6 kg/m³', source: 'our own limit: from high passes to hard frost' };

/**
 * Pressure at which the air of the road stops at a face that looks forward.
 *
 * @param speed        of the rig against the air: its own speed and the head wind. [m/s]
 * @param air_density  [kg/m³]
 * @returns            pressure above that of the air around. [Pa]
 * @valid              up to 45 m/s, 0.7…1.6 kg/m³; outside: a refusal `outside-validity`
 * @agrees             0.1 % against three cases (worksheets/cases/rain.jsonl)
 * @assumes            the middle of the face, where the air stops; toward its edges and on other faces it is less, or suction
 * @source             1. Bernoulli: q = ½ ρ V², closed form
 */
export const stagnationPressure = (speed: MetresPerSecond, air_density: number): Result<GaugePascals> => {
  if (!holds(speed, drivingSpeed)) return outsideValidity(drivingSpeed, `${figure(speed, 1)} m/s`);
  if (!holds(air_density, airDensity)) return outsideValidity(airDensity, `${figure(air_density, 2)} kg/m³`);
  return accept(gaugePascals(0.5 * air_density * speed ** 2));
};

/**
 * Height of water that a pressure holds up in a gap: how high rain can be pushed over an upstand.
 *
 * @param pressure  above that of the air behind the gap. [Pa]
 * @returns         [m]
 * @agrees          0.1 % against three cases (worksheets/cases/rain.jsonl)
 * @assumes         water of 20 °C, 998.2 kg/m³
 * @source          1. h = p / (ρ g), closed form
 */
export const waterHead = (pressure: GaugePascals): Metres => metres(pressure / (WATER_DENSITY * G));
