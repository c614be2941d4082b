import type { Result } from '../../units';
import type { Forecast } from './forecast-types';
import { readGridpoint } from './gridpoint';
import { readHourlyForecast } from './hourly-csv';

/** Reads a forecast in whichever of the two shapes it comes: JSON begins with a brace, a table does not. */
export const readForecast = (text: string): Result<Forecast> =>
  text
    .replace(/^\uFEFF/, '')
    .trimStart()
    .startsWith('{')
    ? readGridpoint(text)
    : readHourlyForecast(text);
