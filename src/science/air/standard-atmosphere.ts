import { type AbsolutePascals, absolutePascals, accept, figure, type Metres, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

export const atmosphereValidity: Validity = {
  of: 'altitude',
  least: -5000,
  most: 11_000,
  words: '−5 000 to 11 000 m above sea level',
  source: 'ASHRAE Handbook – Fundamentals (2017), chapter 1, equation 3',
};

/** Pressure at sea level in the standard atmosphere. [Pa] */
export const SEA_LEVEL_PRESSURE = absolutePascals(101_325);

/**
 * The pressure of the air at a height above sea level on a standard day; weather moves it by up to about 3 %.
 *
 * @param altitude  height above sea level. [m]
 * @returns         pressure of the air. [Pa]
 * @valid           −5 000…11 000 m (source 1); outside: a refusal `outside-validity`
 * @agrees          1 Pa against standard-atmosphere.csv, 3 rows
 * @assumes         the standard atmosphere; today's barometer is not known
 * @source          1. ASHRAE Handbook – Fundamentals (2017), chapter 1, equation 3; form read in a public page, constants checked by table 1
 */
export const standardPressure = (altitude: Metres): Result<AbsolutePascals> =>
  holds(altitude, atmosphereValidity)
    ? accept(absolutePascals(SEA_LEVEL_PRESSURE * (1 - 2.25577e-5 * altitude) ** 5.2559)) // eq. 3
    : outsideValidity(atmosphereValidity, `${figure(altitude, 0)} m`);
