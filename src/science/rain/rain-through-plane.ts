import { accept, figure, type MetresPerSecond, metresPerSecond, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

const MM_PER_HOUR = 1e-3 / 3600;

export const rainRate: Validity = {
  of: 'rain',
  least: 0,
  most: 300 * MM_PER_HOUR,
  words: 'rain of 0 to 300 mm/h',
  source: 'our own limit; a cloudburst and the spray of a wall test are below it',
};
export const relativeWind: Validity = { of: 'wind', least: 0, most: 45, words: 'relative wind up to 45 m/s (100 mph)', source: 'our own limit' };
export const fallSpeed: Validity = {
  of: 'fall_speed',
  least: 1,
  most: 9.5,
  words: 'fall speeds of 1 to 9.5 m/s, drizzle to the largest drops',
  source: 'Gunn and Kinzer 1949; from memory, unconfirmed',
};

/** Spray of the standard wall test, as rain. [m/s] */
export const STANDARD_SPRAY = metresPerSecond((5 * 231 * 0.0254 ** 3) / 0.3048 ** 2 / 3600);

/**
 * Rain that goes through an upright plane facing the relative wind: what a forward face gets on the road, or a wall in a storm.
 *
 * @param rain        on level ground, as a depth per time. [m/s]
 * @param wind        of the rain against the face. [m/s]
 * @param fall_speed  of the drops. [m/s]
 * @returns           water through the plane, as a depth per time. [m/s]
 * @valid             rain to 300 mm/h, wind to 45 m/s, fall speeds 1…9.5 m/s; outside: a refusal `outside-validity`
 * @agrees            0.1 % against two cases (worksheets/cases/rain.jsonl)
 * @assumes           drops move with the wind; the flow round the face carries none of them past it, so that it is an upper guide
 * @source            1. r_v = r_h V / V_t, closed form
 */
export const rainThroughPlane = (rain: MetresPerSecond, wind: MetresPerSecond, fall_speed: MetresPerSecond): Result<MetresPerSecond> => {
  if (!holds(rain, rainRate)) return outsideValidity(rainRate, `${figure(rain / MM_PER_HOUR, 1)} mm/h`);
  if (!holds(wind, relativeWind)) return outsideValidity(relativeWind, `${figure(wind, 1)} m/s`);
  if (!holds(fall_speed, fallSpeed)) return outsideValidity(fallSpeed, `${figure(fall_speed, 1)} m/s`);
  return accept(metresPerSecond((rain * wind) / fall_speed));
};
