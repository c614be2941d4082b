import { type AbsolutePascals, absolutePascals, accept, figure, type Kelvin, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

const SOURCE = 'ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6';

/** Where ice and water meet in the source: the triple point of water. [K] */
export const TRIPLE_POINT = 273.16;

export const saturationValidity: Validity = { of: 'temperature', least: 173.15, most: 473.15, words: '−100 to 200 °C', source: SOURCE };

/** Over ice. T in K, pressure in Pa. */
const overIce = (T: number): number =>
  Math.exp(-5674.5359 / T + 6.3925247 - 0.009677843 * T + 6.2215701e-7 * T ** 2 + 2.0747825e-9 * T ** 3 - 9.484024e-13 * T ** 4 + 4.1635019 * Math.log(T)); // eq. 5

/** Over liquid water. T in K, pressure in Pa. */
const overWater = (T: number): number => Math.exp(-5800.2206 / T + 1.3914993 - 0.048640239 * T + 4.1764768e-5 * T ** 2 - 1.4452093e-8 * T ** 3 + 6.5459673 * Math.log(T)); // eq. 6

/** The bare law, for those who have already checked its validity. */
export const saturationLaw = (T: number): number => (T <= TRIPLE_POINT ? overIce(T) : overWater(T));

/**
 * The most water vapour that air at this temperature can hold, as a pressure; over ice below the triple point.
 *
 * @param temperature  of the air or of a surface. [K]
 * @returns            saturation pressure of water vapour. [Pa]
 * @valid              −100…200 °C (source 1); outside: a refusal `outside-validity`
 * @agrees             0.03 % against saturation-pressure.csv, 8 rows without the one at −60 °C, which is printed with three digits (0.5 %)
 * @assumes            pure water vapour: the enhancement by air, below 0.5 %, is left out
 * @source             1. ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6; coefficients read in an open library's source
 */
export const saturationPressure = (temperature: Kelvin): Result<AbsolutePascals> =>
  holds(temperature, saturationValidity) ? accept(absolutePascals(saturationLaw(temperature))) : outsideValidity(saturationValidity, `${figure(temperature - 273.15, 1)} °C`);
