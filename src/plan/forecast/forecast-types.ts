import type { Instant, Kelvin, Metres, MetresPerSecond, Share } from '../../units';

/** One hour of a forecast. What the source does not give is left out: it is missing, never nought. */
export type ForecastHour = {
  /** When the hour begins. */
  readonly at: Instant;
  /** In the shade. [K] */
  readonly air?: Kelvin;
  /** [K] */
  readonly dew_point?: Kelvin;
  /** Ten metres up, in the open. [m/s] */
  readonly wind?: MetresPerSecond;
  /** Of that wind. Many sources give none. [m/s] */
  readonly gust?: MetresPerSecond;
  /** Share of the sky that is covered. [1] */
  readonly cover?: Share;
  /** Chance of rain in the interval that holds this hour. [1] */
  readonly rain_chance?: Share;
  /** Rain, or snow as water, in this hour. [m] */
  readonly rain?: Metres;
};

/** Hours without a hole between them: an hour that no line speaks of is there, with nothing in it. */
export type Forecast = {
  /** What was read, in words. */
  readonly source: string;
  /** When it was made, where the source says so. */
  readonly issued?: Instant;
  /** Where it holds, where the source says so. [degrees] */
  readonly place?: { readonly latitude_deg: number; readonly longitude_deg: number };
  /** Above sea level, where the source says so. [m] */
  readonly altitude_m?: number;
  readonly hours: readonly ForecastHour[];
};

export const HOUR_MS = 3_600_000;
