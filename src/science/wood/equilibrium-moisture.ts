import { accept, figure, type Kelvin, type MoistureContent, moistureContent, type RelativeHumidity, type Result, toSi } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

const SOURCE = 'Wood Handbook, FPL-GTR-282 (2021), equation 4-5 and table 4-2';

export const emcTemperature: Validity = {
  of: 'temperature',
  least: toSi(30, 'temperature', 'f'),
  most: toSi(200, 'temperature', 'f'),
  words: '30 to 200 °F (−1 to 93 °C)',
  source: SOURCE,
};
export const emcHumidity: Validity = { of: 'relative_humidity', least: 0.05, most: 0.95, words: '5 to 95 % relative humidity', source: SOURCE };

export type EmcTerms = { readonly W: number; readonly K: number; readonly K1: number; readonly K2: number };

/** The four coefficients, T in °C. */
export const emcTerms = (T: number): EmcTerms => ({
  W: 349 + 1.29 * T + 0.0135 * T ** 2,
  K: 0.805 + 0.000736 * T - 0.00000273 * T ** 2,
  K1: 6.27 - 0.00938 * T - 0.000303 * T ** 2,
  K2: 1.91 + 0.0407 * T - 0.000293 * T ** 2,
});

/**
 * The moisture that sound wood takes on by itself in air like this, with no leak: what a dry wall should read.
 *
 * @param temperature        of the air the wood has lived in for weeks. [K]
 * @param relative_humidity  of that air. [1]
 * @returns                  equilibrium moisture content. [kg/kg]
 * @valid                    30…200 °F, 5…95 % (source 1, table 4-2 as read); outside: a refusal `outside-validity`
 * @agrees                   0.07 point against equilibrium-moisture.csv, 342 values printed to 0.1
 * @assumes                  solid wood, midway between wetting and drying; plywood and fibre board sit somewhat lower
 * @source                   1. Glass and Zelinka, Wood Handbook, chapter 4, FPL-GTR-282 (2021), equation 4-5, p. 4-3; same in FPL-GTR-190 (2010)
 */
export const equilibriumMoisture = (temperature: Kelvin, relative_humidity: RelativeHumidity): Result<MoistureContent> => {
  const T = temperature - 273.15;
  if (!holds(temperature, emcTemperature)) return outsideValidity(emcTemperature, `${figure(T, 1)} °C`);
  if (!holds(relative_humidity, emcHumidity)) return outsideValidity(emcHumidity, `${figure(relative_humidity * 100, 1)} %`);
  const h = relative_humidity;
  const { W, K, K1, K2 } = emcTerms(T);
  const dissolved = (K * h) / (1 - K * h);
  const bound = (K1 * K * h + 2 * K1 * K2 * K ** 2 * h ** 2) / (1 + K1 * K * h + K1 * K2 * K ** 2 * h ** 2);
  return accept(moistureContent(((1800 / W) * (dissolved + bound)) / 100)); // eq. 4-5
};
