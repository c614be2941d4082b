import { readFile } from 'node:fs/promises';
import { type Clock, type Conditions, type Forecast, isColour, midnightBefore, type Plan, parkedOn, readForecast, USUAL_CONDITIONS, weatherWindows } from '../../../src/plan';
import { windowsDocument, windowsText } from '../../../src/report';
import type { Site } from '../../../src/science';
import { type CivilDay, instant, metres, type Preferences, parseDay, parseInstant, radians, readQuantity, share } from '../../../src/units';
import { cannotRead, type OpenLogbook } from '../logbook-file';
import { EXIT, refused, Stop } from '../outcome';

export type WindowOptions = {
  readonly forecast?: string;
  readonly place?: string;
  readonly departure?: string;
  readonly zone?: string;
  readonly drySince?: string;
  readonly rainChance?: string;
  readonly rainAmount?: string;
  readonly colour?: string;
};

const wrong = (option: string, expected: string, received: string): Stop => new Stop(`--${option}: expected ${expected}; received “${received}”`, EXIT.refused);

const DEGREES = Math.PI / 180;
const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/** Where the rig stands: as told, else where the forecast is for. */
const siteFrom = (text: string | undefined, forecast: Forecast): Site => {
  const altitude = metres(forecast.altitude_m ?? 0);
  if (text === undefined) {
    const { place } = forecast;
    if (!place) throw new Stop('--place: this forecast does not say where it holds; give --place LATITUDE,LONGITUDE, as 36.08,-79.95', EXIT.refused);
    return { latitude: radians(place.latitude_deg * DEGREES), longitude: radians(place.longitude_deg * DEGREES), altitude };
  }
  const parts = text.split(',').map((p) => p.trim());
  const [latitude, longitude, height] = parts.map(Number);
  if (parts.length < 2 || parts.length > 3 || !parts.every((p) => NUMBER.test(p)) || latitude === undefined || longitude === undefined)
    throw wrong('place', 'latitude and longitude in degrees, west negative, and metres above sea level where known, as 36.08,-79.95,270', text);
  return { latitude: radians(latitude * DEGREES), longitude: radians(longitude * DEGREES), altitude: height === undefined ? altitude : metres(height) };
};

/** The clock of a time zone: this machine’s own where none is named. */
const clockOf = (zone: string | undefined): Clock => {
  if (zone === undefined) return (at) => -new Date(at).getTimezoneOffset();
  let format: Intl.DateTimeFormat;
  try {
    format = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'longOffset' });
  } catch {
    throw wrong('zone', 'a time zone, as America/New_York', zone);
  }
  return (at) => {
    const name = format.formatToParts(new Date(at)).find((p) => p.type === 'timeZoneName')?.value ?? '';
    const m = /([+-])(\d{2}):(\d{2})/.exec(name);
    return m ? (m[1] === '-' ? -1 : 1) * (Number(m[2]) * 60 + Number(m[3])) : 0;
  };
};

const conditionsFrom = ({ rainChance, rainAmount }: WindowOptions): Conditions => {
  const { rain_amount: usual, ...rest } = USUAL_CONDITIONS;
  const chance = rainChance === undefined ? undefined : readQuantity(rainChance, 'share', 'percent', { least: 0, most: 1 }, '--rain-chance');
  if (chance && !chance.ok) throw refused(chance.refusals);
  const amount = rainAmount === undefined || rainAmount === 'any' ? undefined : readQuantity(rainAmount, 'small-length', 'mm', { least: 0, most: 0.1 }, '--rain-amount');
  if (amount && !amount.ok) throw refused(amount.refusals);
  const mm = rainAmount === 'any' ? undefined : (amount?.value.si ?? usual);
  return { ...rest, ...(chance ? { rain_chance: share(chance.value.si) } : {}), ...(mm === undefined ? {} : { rain_amount: metres(mm) }) };
};

const dayIn = (text: string): CivilDay => {
  const day = parseDay(text);
  if (day === undefined) throw wrong('departure', 'a day that exists, as 2026-10-11', text);
  return day;
};

const OF_THE_WEATHER = ['place', 'departure', 'zone', 'drySince', 'rainChance', 'rainAmount', 'colour'] as const;

/** What speaks of the weather is of no use without a forecast. */
export const withForecastOnly = (options: WindowOptions): void => {
  const alone = options.forecast === undefined ? OF_THE_WEATHER.find((o) => options[o] !== undefined) : undefined;
  if (alone !== undefined) throw new Stop(`--${alone.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)}: expected --forecast with it`, EXIT.refused);
};

/** The windows of the plan’s jobs in a forecast file, in words or as JSON. */
export const windowsFor = async (
  { rig, state }: OpenLogbook,
  plan: Plan,
  path: string,
  options: WindowOptions & { readonly json?: boolean; readonly on?: string },
  preferences: Preferences,
): Promise<string> => {
  const text = await readFile(path, 'utf8').catch((error: unknown) => {
    throw cannotRead(path, error);
  });
  const read = readForecast(text);
  if (!read.ok) throw refused(read.refusals);
  const forecast = read.value;
  const clock = clockOf(options.zone);
  const now = options.on === undefined ? instant(Date.now()) : instant(midnightBefore(plan.on, clock));
  const departure = options.departure === undefined ? undefined : dayIn(options.departure);
  const dry_since = options.drySince === undefined ? undefined : parseInstant(options.drySince);
  if (options.drySince !== undefined && dry_since === undefined) throw wrong('dry-since', 'a time with its offset, as 2026-10-04T06:00:00-04:00', options.drySince);
  if (options.colour !== undefined && !isColour(options.colour)) throw wrong('colour', 'white, light, medium, dark, black or aluminium-coat', options.colour);
  const conditions = conditionsFrom(options);
  const found = weatherWindows(
    rig,
    {
      jobs: plan.jobs,
      hours: forecast.hours,
      now,
      clock,
      parked: parkedOn(state, plan.on),
      conditions,
      ...(departure === undefined ? {} : { departure }),
      ...(dry_since === undefined ? {} : { dry_since }),
      ...(options.colour === undefined ? {} : { colour: options.colour }),
    },
    siteFrom(options.place, forecast),
  );
  if (!found.ok) throw refused(found.refusals);
  if (options.json) return windowsDocument(found.value, rig);
  const told = {
    now,
    clock,
    conditions,
    source: forecast.source,
    ...(forecast.issued === undefined ? {} : { issued: forecast.issued }),
    ...(departure === undefined ? {} : { departure }),
  };
  return windowsText(found.value, rig, told, preferences);
};
