import { accept, figure, type MetresPerSecond, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

export const filmWind: Validity = {
  of: 'wind',
  least: 0,
  most: 25,
  words: 'a wind of 0 to 25 m/s at the face',
  source: 'ours: measured to about 7 m/s; in more wind the skin is near the air anyway',
};

/**
 * How much heat moving air takes from a face for each degree that the face is warmer. Radiation comes on top of it.
 *
 * @param wind  at the face, not ten metres up: a parked rig feels less than the forecast says. [m/s]
 * @returns     film coefficient. [W/(m² K)]
 * @valid       0…25 m/s (refused otherwise)
 * @agrees      30 % with the three bands of ASTM E1980 (5 up to 2 m/s, 12 up to 6, 30 up to 10) at the middle of each: as far as such laws agree
 * @source      1. Watmuff, Charters and Proctor 1977, h = 2.8 + 3.0 v, as used in a public building simulation
 */
export const windFilm = (wind: MetresPerSecond): Result<number> => (holds(wind, filmWind) ? accept(2.8 + 3 * wind) : outsideValidity(filmWind, `${figure(wind, 1)} m/s`));
