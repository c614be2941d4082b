import { dewPoint } from '../../science';
import { accept, type Instant, instant, kelvin, metres, metresPerSecond, type Refusal, type Result, refuse, relativeHumidity, share } from '../../units';
import { type Forecast, type ForecastHour, HOUR_MS } from './forecast-types';
import type { LayerId } from './layers';

/** Values by layer, each by the hour it belongs to, counted from 1970. [SI] */
export type Columns = ReadonlyMap<LayerId, ReadonlyMap<number, number>>;

/** Three weeks: further ahead no forecast speaks of hours. [h] */
const HOURS_MOST = 504;
/** Enough to see what is wrong with a file; more of the same does not help. */
const SAID_MOST = 12;

/** The first of them, and how many more there are. */
export const fewRefusals = (refusals: readonly Refusal[], expected: string): Result<never> => {
  if (refusals.length <= SAID_MOST) return refuse(...refusals);
  const more = refusals.length - SAID_MOST;
  return refuse(...refusals.slice(0, SAID_MOST), { code: 'and-more', path: '', expected, received: `${more} more`, sentence: `${more} more values cannot be read.` });
};

const hourOf = (at: Instant, i: number, columns: Columns): ForecastHour => {
  const of = (id: LayerId): number | undefined => columns.get(id)?.get(i);
  const [air, given, humidity, wind, gust, cover, chance, rain] = [of('air'), of('dew_point'), of('humidity'), of('wind'), of('gust'), of('cover'), of('rain_chance'), of('rain')];
  // Air without any vapour has no dew point: such an hour lacks one.
  const found = given === undefined && air !== undefined && humidity !== undefined ? dewPoint(kelvin(air), relativeHumidity(humidity)) : undefined;
  const dew = given ?? (found?.ok ? found.value : undefined);
  return {
    at,
    ...(air === undefined ? {} : { air: kelvin(air) }),
    ...(dew === undefined ? {} : { dew_point: kelvin(dew) }),
    ...(wind === undefined ? {} : { wind: metresPerSecond(wind) }),
    ...(gust === undefined ? {} : { gust: metresPerSecond(gust) }),
    ...(cover === undefined ? {} : { cover: share(cover) }),
    ...(chance === undefined ? {} : { rain_chance: share(chance) }),
    ...(rain === undefined ? {} : { rain: metres(rain) }),
  };
};

/**
 * Hours from the columns of whatever file was read: from the first hour spoken of to the last, with nothing in those between that no line speaks of.
 *
 * @param columns  SI values by layer and by hour since 1970
 * @returns        the forecast; or why it is none
 * @assumes        a dew point that is not given is that of the air and its humidity
 */
export const forecastOf = (about: Omit<Forecast, 'hours'>, columns: Columns): Result<Forecast> => {
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const column of columns.values())
    for (const i of column.keys()) {
      first = Math.min(first, i);
      last = Math.max(last, i);
    }
  if (!(last >= first))
    return refuse({
      code: 'nothing-in-it',
      path: '',
      expected: 'at least one hour with a value',
      received: 'none',
      sentence: 'There is not one hour with a value in this forecast.',
    });
  const length = last - first + 1;
  if (length > HOURS_MOST)
    return refuse({
      code: 'above-limit',
      path: '',
      expected: `${HOURS_MOST} hours or fewer`,
      received: `${length} hours`,
      sentence: `From the first hour to the last there are ${length}. A forecast by the hour reaches three weeks at most; check the years.`,
    });
  return accept({ ...about, hours: Array.from({ length }, (_, k) => hourOf(instant((first + k) * HOUR_MS), first + k, columns)) });
};
