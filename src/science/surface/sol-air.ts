import { accept, figure, type Kelvin, kelvin, type Result, type Share } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

export const filmValidity: Validity = { of: 'film', least: 1, most: 200, words: 'a film coefficient of 1 to 200 W/(m² K)', source: 'ours' };

export type SolAir = {
  readonly air: Kelvin;
  /** On the face. [W/m²] */
  readonly irradiance: number;
  /** Share of sunlight that the colour takes up. [1] */
  readonly absorptance: Share;
  /** Share of heat radiation that the skin gives off. [1] */
  readonly emittance: Share;
  /** Air and radiation together. [W/(m² K)] */
  readonly film: number;
  /** How much less the surroundings shine back than a black body as warm as the air: 63 for a roof, 0 for a wall. [W/m²] */
  readonly deficit: number;
};

/**
 * Sol-air temperature: the handbook's plain rule for how warm the sun makes an insulated face.
 *
 * @param given  air, sunlight on the face, colour, film, long-wave deficit
 * @returns      temperature. [K]
 * @valid        film 1…200 W/(m² K) (refused otherwise)
 * @agrees       0.05 K against thirteen worked values of three sources
 * @assumes      nothing gets through the skin: insulation behind it, and a skin so thin that an hour finds it settled
 * @source       1. ASHRAE Handbook – Fundamentals, sol-air equation (chapter 18 in 2009 to 2021), as quoted on public pages: t = tₒ + α I/h − ε ΔR/h
 */
export const solAir = ({ air, irradiance, absorptance, emittance, film, deficit }: SolAir): Result<Kelvin> =>
  holds(film, filmValidity) ? accept(kelvin(air + (absorptance * irradiance - emittance * deficit) / film)) : outsideValidity(filmValidity, `${figure(film, 1)} W/(m² K)`);
