import type { Limits, QuantityId } from '../../units';
import type { ForecastHour } from './forecast-types';

export type LayerId = Exclude<keyof ForecastHour, 'at'> | 'humidity';

/** One thing that a forecast tells of every hour: the same list for every kind of file. */
export type Layer = {
  readonly id: LayerId;
  readonly words: string;
  readonly quantity: QuantityId;
  /** Units in which a column may stand, by their suffix; the first is the one to recommend. */
  readonly units: readonly string[];
  /** Wider than any weather. [SI] */
  readonly limits: Limits;
  /** Column name without its unit. */
  readonly column: string;
  /** Name of the layer in a gridpoint answer. */
  readonly grid: string;
  /** A total over its interval, spread evenly over its hours; all others hold for each hour. */
  readonly total?: true;
  /** A file that lacks it altogether is still of use. */
  readonly optional?: true;
};

/** −60 to 60 °C. */
const temperature: Limits = { least: 213.15, most: 333.15 };
const wind: Limits = { least: 0, most: 120 };
const percent: Limits = { least: 0, most: 1 };
/** A metre of water in one interval. */
const rain: Limits = { least: 0, most: 1 };

export const LAYERS: readonly Layer[] = [
  { id: 'air', words: 'air temperature', quantity: 'temperature', units: ['c', 'f'], limits: temperature, column: 'air_temperature', grid: 'temperature' },
  { id: 'dew_point', words: 'dew point', quantity: 'temperature', units: ['c', 'f'], limits: temperature, column: 'dew_point', grid: 'dewpoint' },
  { id: 'humidity', words: 'humidity', quantity: 'relative-humidity', units: ['percent'], limits: percent, column: 'relative_humidity', grid: 'relativeHumidity' },
  { id: 'wind', words: 'wind', quantity: 'speed', units: ['kmh', 'mph', 'ms'], limits: wind, column: 'wind', grid: 'windSpeed' },
  { id: 'gust', words: 'gusts', quantity: 'speed', units: ['kmh', 'mph', 'ms'], limits: wind, column: 'gust', grid: 'windGust', optional: true },
  { id: 'cover', words: 'cloud', quantity: 'share', units: ['percent'], limits: percent, column: 'cloud', grid: 'skyCover' },
  { id: 'rain_chance', words: 'chance of rain', quantity: 'share', units: ['percent'], limits: percent, column: 'rain_chance', grid: 'probabilityOfPrecipitation' },
  {
    id: 'rain',
    words: 'amount of rain',
    quantity: 'small-length',
    units: ['mm', 'in'],
    limits: rain,
    column: 'rain',
    grid: 'quantitativePrecipitation',
    total: true,
  },
];

/** Either of these two tells how damp the air is. */
export const DAMP: readonly LayerId[] = ['dew_point', 'humidity'];

/** What a file must hold beside: all that is neither optional nor one of two. */
export const needed = (): readonly Layer[] => LAYERS.filter((l) => !l.optional && !DAMP.includes(l.id));
