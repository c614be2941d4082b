import { type AbsolutePascals, accept, figure, type Metres, type Result } from '../../units';
import { SEA_LEVEL_PRESSURE, standardPressure } from '../air';
import { holds, outsideValidity, type Validity } from '../validity';
import { relativeAirMass } from './air-mass';
import { siteAltitude } from './site';
import type { Sun } from './sun-position';

/** Sunlight under one sky. [W/m²] */
export type Sky = {
  /** On a plane that faces the sun, from the sun itself. */
  readonly direct: number;
  /** On level ground, from the whole sky. */
  readonly diffuse: number;
  /** On level ground, both together. */
  readonly global: number;
  /** Relative air mass the light has crossed; 0 by night. [1] */
  readonly air_mass: number;
};

export const NIGHT: Sky = { direct: 0, diffuse: 0, global: 0, air_mass: 0 };

const SOURCE = 'Ineichen and Perez, Solar Energy 73 (2002)';
export const turbidityValidity: Validity = { of: 'turbidity', least: 1, most: 10, words: 'a turbidity of 1 (clean, dry) to 10 (thick haze)', source: SOURCE };
export const barometerValidity: Validity = { of: 'barometer', least: 85_000, most: 110_000, words: 'a barometer of 850 to 1 100 hPa, reduced to sea level', source: 'ours' };

/** Haze in an ordinary place of the United States: 2 in clean cold or high desert air, 4 to 5 in humid summer or over towns. From memory, unconfirmed. */
export const USUAL_TURBIDITY = 3;

export type ClearAir = {
  /** Above sea level. [m] */
  readonly altitude: Metres;
  /** Linke turbidity: how many times clean, dry air dims the sun as much. [1] */
  readonly turbidity: number;
  /** As the weather report gives it, reduced to sea level. [Pa] */
  readonly barometer?: AbsolutePascals;
};

/** What a clear sky needs of the sun. */
export type SunHeight = Pick<Sun, 'up' | 'apparent_elevation' | 'extraterrestrial'>;

/**
 * Sunlight under a cloudless sky, ready for many hours.
 *
 * @param air  altitude, haze, barometer
 * @returns    direct, diffuse and global light for a sun; none while it is below the horizon; or a refusal
 * @valid      −450…6 000 m, turbidity 1…10, barometer 850…1 100 hPa
 * @agrees     0.2 % against six published or independently worked values; 1 % over 51 hours and 84 months of faces
 * @assumes    no cloud and a flat horizon. The haze is a guess by climate: one step of turbidity moves the direct light by about a tenth
 * @source     1. Ineichen and Perez, Solar Energy 73 (2002), 151; equations as in public code
 */
export const clearSkyOver = ({ altitude, turbidity, barometer = SEA_LEVEL_PRESSURE }: ClearAir): Result<(sun: SunHeight) => Sky> => {
  if (!holds(altitude, siteAltitude)) return outsideValidity(siteAltitude, `${figure(altitude, 0)} m`);
  if (!holds(turbidity, turbidityValidity)) return outsideValidity(turbidityValidity, figure(turbidity, 1));
  if (!holds(barometer, barometerValidity)) return outsideValidity(barometerValidity, `${figure(barometer / 100, 0)} hPa`);
  const standard = standardPressure(altitude);
  if (!standard.ok) return standard;
  const pressure = (standard.value / SEA_LEVEL_PRESSURE) * (barometer / SEA_LEVEL_PRESSURE);
  const fh1 = Math.exp(-altitude / 8000);
  const fh2 = Math.exp(-altitude / 1250);
  const cg1 = 5.09e-5 * altitude + 0.868;
  const cg2 = 3.92e-5 * altitude + 0.0387;
  const b = 0.664 + 0.163 / fh1;
  const ceiling = 1 - (0.1 - 0.2 * Math.exp(-turbidity)) / (0.1 + 0.882 / fh1);
  return accept(({ up, apparent_elevation, extraterrestrial: E }) => {
    if (!(up > 0)) return NIGHT;
    const air_mass = relativeAirMass(apparent_elevation);
    const m = air_mass * pressure;
    const global = cg1 * E * up * Math.exp(-cg2 * m * (fh1 + fh2 * (turbidity - 1)));
    const direct = Math.min(E * b * Math.exp(-0.09 * m * (turbidity - 1)), (global * ceiling) / up);
    return { direct, diffuse: global - direct * up, global, air_mass };
  });
};
