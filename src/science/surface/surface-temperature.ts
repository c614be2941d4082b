import { accept, figure, type Kelvin, kelvin, type Radians, type Result, type Share } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

/** Stefan–Boltzmann constant, exact since 2019. [W/(m² K⁴)] */
const SIGMA = 5.670374419e-8;

export const airValidity: Validity = { of: 'air_temperature', least: 223.15, most: 333.15, words: 'air of −50 to 60 °C', source: 'ours' };
export const lightValidity: Validity = { of: 'irradiance', least: 0, most: 1500, words: '0 to 1 500 W/m² on the face', source: 'ours: more than the sun gives' };

/** What a thin, insulated face exchanges with the world in one hour. */
export type Surroundings = {
  readonly air: Kelvin;
  /** Sunlight on the face. [W/m²] */
  readonly irradiance: number;
  /** Film of moving air alone. [W/(m² K)] */
  readonly film: number;
  /** Of the sky, as a share of a black body as warm as the air. [1] */
  readonly sky_emissivity: number;
  /** How much of the sky counts for the face, see `skyShare`. [1] */
  readonly sky_share: number;
  readonly absorptance: Share;
  readonly emittance: Share;
};

export type SurfaceTemperature = {
  /** [K] */
  readonly surface: Kelvin;
  /** What the sun adds. [K] */
  readonly by_sun: number;
  /** What the sky takes; below 0. [K] */
  readonly by_sky: number;
  /** Either way, about one standard error. [K] */
  readonly uncertainty: number;
};

/** How far the rise by sun and the loss to the sky may be off. [1] The sun's part as the source says of its own formula; the sky's part ours. */
const PART = 0.3;
/** What is left open even when neither sun nor sky does anything. [K] Ours. */
const LEFT_OPEN = 1;

/**
 * How much of the cold sky counts for a face: all of it for a roof, a third for a wall, whose other view is ground and sky near the horizon, as warm as the air.
 *
 * @param tilt  0 a roof, π/2 a wall. [rad]
 * @returns     share. [1]
 * @source      1. McClellan and Pedersen, ASHRAE Transactions 103 (1997), as quoted in a public issue of a building model: (1 + cos s)/2 × cos(s/2).
 *                 The ASHRAE sol-air rule takes none at all for walls
 */
export const skyShare = (tilt: Radians): number => ((1 + Math.cos(tilt)) / 2) * Math.max(0, Math.cos(tilt / 2));

/** Four steps are usual. */
const MOST_STEPS = 20;
/** A hundred-millionth of a degree. [K] */
const NEAR = 1e-8;

const balance = ({ air, film, sky_emissivity, sky_share, emittance }: Surroundings, absorbed: number): number => {
  const gains = absorbed + emittance * SIGMA * (sky_share * sky_emissivity + 1 - sky_share) * air ** 4 + film * air;
  let T: number = air;
  // What leaves grows faster than in a straight line, so each step lands on the warm side of the answer and the next comes closer.
  for (let i = 0; i < MOST_STEPS; i++) {
    const cube = T * T * T;
    const off = (emittance * SIGMA * cube * T + film * T - gains) / (4 * emittance * SIGMA * cube + film);
    T -= off;
    if (Math.abs(off) < NEAR) break;
  }
  return T;
};

/**
 * How warm the outside of a face is in an hour of given weather, by day or by night.
 *
 * @param given  air, sunlight on the face, wind's film, sky, colour
 * @returns      temperature, what sun and sky do to it, and how far that may be off. [K]
 * @valid        air −50…60 °C, 0…1 500 W/m² (refused otherwise)
 * @agrees       0.4 K against the three worked surfaces of a solar reflectance calculator; 2 points of index against the closed form of ASTM E1980-11
 * @assumes      a thin skin with insulation behind it, settled within the hour: a metal or fibreglass skin takes minutes, a membrane on plywood a quarter of an hour.
 *               Heat from inside, dew that gives off heat as it forms, and reflecting neighbours are left out
 * @source       1. ASTM E1980-11: α I = ε σ (T⁴ − T_sky⁴) + h (T − T_air), as quoted on public pages
 *               2. Cool-roof definitions page of a national laboratory: the rise of a roof in sun is good to ±30 %
 */
export const surfaceTemperature = (given: Surroundings): Result<SurfaceTemperature> => {
  if (!holds(given.air, airValidity)) return outsideValidity(airValidity, `${figure(given.air - 273.15, 1)} °C`);
  if (!holds(given.irradiance, lightValidity)) return outsideValidity(lightValidity, `${figure(given.irradiance, 0)} W/m²`);
  const surface = balance(given, given.absorptance * given.irradiance);
  const shaded = balance(given, 0);
  const by_sun = surface - shaded;
  const by_sky = shaded - given.air;
  return accept({ surface: kelvin(surface), by_sun, by_sky, uncertainty: Math.hypot(PART * by_sun, PART * by_sky, LEFT_OPEN) });
};
