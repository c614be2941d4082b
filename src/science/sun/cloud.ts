import { accept, figure, type Result, type Share } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';
import type { Sky } from './clear-sky';

export const coverValidity: Validity = { of: 'cloud', least: 0, most: 1, words: '0 to 100 % of the sky covered', source: 'definition' };

/** What is left of the light of a clear sky under clouds over this share of it. [1] */
export const lightLeft = (cover: Share): number => 1 - 0.75 * cover ** 3.4;

/**
 * Sunlight of one hour under clouds.
 *
 * @param clear  the same hour under a clear sky
 * @param up     sine of the sun's height as it is seen. [1]
 * @param cover  share of the sky that is covered in THAT hour; a mean over days gives wrong answers, because the law bends. [1]
 * @returns      direct, diffuse and global light
 * @valid        0…1 (refused otherwise)
 * @agrees       0.0005 against three values of the closed form for the global light; the split is ours
 * @assumes      the scattered share goes from that of the clear sky to all of it with the square of the cover: ours, after the same authors.
 *               From hourly cover the year's light on a face comes out 11 % too low to 17 % too high in three weather files; a single hour may be far worse
 * @source       1. Kasten and Czeplak, Solar Energy 24 (1980), 177: G/G₀ = 1 − 0.75 (N/8)^3.4, as quoted in public documentation
 */
export const underCloud = (clear: Sky, up: number, cover: Share): Result<Sky> => {
  if (!holds(cover, coverValidity)) return outsideValidity(coverValidity, `${figure(cover * 100, 0)} %`);
  if (!(clear.global > 0)) return accept(clear);
  const global = clear.global * lightLeft(cover);
  const scattered = clear.diffuse / clear.global;
  const diffuse = global * (scattered + (1 - scattered) * cover * cover);
  return accept({ direct: (global - diffuse) / up, diffuse, global, air_mass: clear.air_mass });
};
