import { accept, figure, type Kelvin, type Result, type Share } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

const SOURCE = 'Clark and Allen 1978 and Walton 1983, in a building simulation’s engineering reference';

export const skyDewPoint: Validity = {
  of: 'dew_point',
  least: 233.15,
  most: 303.15,
  words: 'air with a dew point of −40 to 30 °C',
  source: 'ours: the law was fitted to ordinary air',
};
export const cloudCover: Validity = { of: 'cloud', least: 0, most: 1, words: '0 to 100 % of the sky covered', source: SOURCE };

/**
 * How strongly the sky shines in heat radiation, as a share of what a black body as warm as the air would.
 *
 * @param dew_point  of the air near the ground. [K]
 * @param cover      share of the sky that is covered. [1]
 * @returns          emissivity, at most 1. [1]
 * @valid            dew points −40…30 °C, cover 0…1; otherwise a refusal
 * @agrees           0.001 against the reference's worked sky, 20 °C with a dew point of 10 °C: 0.815
 * @assumes          low, opaque clouds count fully. Very damp air under full cover would come out a little above 1: the sky is then taken as warm as the air
 * @source           1. Clark and Allen 1978, cloud factor of Walton 1983, as printed in the engineering reference of a public building simulation, chapter Climate Calculations
 */
export const skyEmissivity = (dew_point: Kelvin, cover: Share): Result<number> => {
  if (!holds(dew_point, skyDewPoint)) return outsideValidity(skyDewPoint, `${figure(dew_point - 273.15, 1)} °C`);
  if (!holds(cover, cloudCover)) return outsideValidity(cloudCover, `${figure(cover * 100, 0)} %`);
  const N = 10 * cover;
  return accept(Math.min(1, (0.787 + 0.764 * Math.log(dew_point / 273)) * (1 + 0.0224 * N - 0.0035 * N ** 2 + 0.00028 * N ** 3)));
};
