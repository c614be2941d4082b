import { accept, type Kelvin, type MetresPerSecond, type Radians, type Result, type Share, share } from '../../units';
import type { SkinColour } from './skin-colour';
import { skyEmissivity } from './sky-emissivity';
import { type SurfaceTemperature, skyShare, surfaceTemperature } from './surface-temperature';
import { windFilm } from './wind-film';

/** One hour of weather at one face. */
export type FaceWeather = {
  readonly air: Kelvin;
  readonly dew_point: Kelvin;
  /** At the face. [m/s] */
  readonly wind: MetresPerSecond;
  /** Share of the sky that is covered. [1] */
  readonly cover: Share;
  /** Sunlight on the face, from `onFaces`. [W/m²] */
  readonly irradiance: number;
  readonly tilt: Radians;
  readonly colour: SkinColour;
};

export type FaceInWeather = SurfaceTemperature & {
  /** [W/(m² K)] */
  readonly film: number;
  /** [1] */
  readonly sky_emissivity: number;
  /** [1] */
  readonly sky_share: number;
};

/**
 * How warm a face is in an hour of weather as a forecast gives it: sky, wind and colour put together in one place for all who ask.
 *
 * @param weather  air, dew point, wind, cloud, sunlight on the face, tilt, colour
 * @returns        temperature and its parts; or the first refusal
 * @valid          as `skyEmissivity`, `windFilm` and `surfaceTemperature`
 * @agrees         as they do
 * @assumes        as they do; the wind is that at the face
 * @source         1. as they say
 */
export const faceInWeather = ({ air, dew_point, wind, cover, irradiance, tilt, colour }: FaceWeather): Result<FaceInWeather> => {
  const sky = skyEmissivity(dew_point, cover);
  if (!sky.ok) return sky;
  const film = windFilm(wind);
  if (!film.ok) return film;
  const parts = { film: film.value, sky_emissivity: sky.value, sky_share: skyShare(tilt) };
  const found = surfaceTemperature({ air, irradiance, absorptance: share(colour.absorptance), emittance: share(colour.emittance), ...parts });
  return found.ok ? accept({ ...found.value, ...parts }) : found;
};
