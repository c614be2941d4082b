import { accept, outsideLimits, parseInstant, quantities, type Refusal, type Result, refuse, toSi } from '../../units';
import { type Forecast, HOUR_MS } from './forecast-types';
import { fewRefusals, forecastOf } from './hours';
import { readInterval } from './interval';
import { DAMP, LAYERS, type Layer, needed } from './layers';

/** The unit codes of the World Meteorological Organization that such answers use, and ours. */
const UNITS: Readonly<Record<string, string>> = { degC: 'c', degF: 'f', K: 'k', percent: 'percent', 'km_h-1': 'kmh', 'm_s-1': 'ms', mm: 'mm', m: 'm' };

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null && !Array.isArray(value);
const shown = (value: unknown): string => (value === undefined ? 'nothing' : JSON.stringify(value).slice(0, 60));

const SHAPE = 'the answer of a gridpoint forecast: a JSON object whose properties hold layers of values';
const said = (path: string, expected: string, received: string, sentence: string, code = 'not-as-expected'): Refusal => ({ code, path, expected, received, sentence });

type Read = { readonly values: ReadonlyMap<number, number>; readonly refusals: readonly Refusal[] };

/** The unit of a layer, if it is one that its quantity has. */
const unitIn = (layer: Layer, uom: unknown): string | undefined => {
  const unit = UNITS[String(uom).replace(/^(wmo)?unit:/i, '')];
  if (unit === undefined) return undefined;
  return quantities[layer.quantity].units.some((u) => u.id === unit) ? unit : undefined;
};

/** One value in SI, or none; and what is wrong with it. */
const readValue = (layer: Layer, value: unknown, unit: string, path: string): Result<number | undefined> => {
  if (value === null) return accept(undefined);
  if (typeof value !== 'number' || !Number.isFinite(value))
    return refuse(said(path, 'a number, or null where there is none', shown(value), `${shown(value)} is not a number.`, 'not-a-number'));
  const si = toSi(value, layer.quantity, unit);
  const refusal = outsideLimits(si, layer.quantity, unit, layer.limits, path, String(value));
  return refusal ? refuse(refusal) : accept(si);
};

/** One layer, hour by hour: a value holds for every hour of its interval, a total is spread evenly over them. */
const readLayer = (layer: Layer, given: unknown): Read => {
  const path = `properties.${layer.grid}`;
  const values = new Map<number, number>();
  const list = isRecord(given) ? given['values'] : undefined;
  if (!isRecord(given) || !Array.isArray(list)) return { values, refusals: [said(path, 'a list of values', shown(given), `The layer ${layer.grid} holds no list of values.`)] };
  const unit = unitIn(layer, given['uom']);
  if (unit === undefined && list.length > 0) {
    const uom = shown(given['uom']);
    return { values, refusals: [said(`${path}.uom`, `a unit of ${layer.words}`, uom, `The unit of ${layer.grid} is ${uom}, which is not known here.`, 'unknown-unit')] };
  }
  const refusals: Refusal[] = [];
  const told = new Set<number>();
  for (const [n, row] of list.entries() as ArrayIterator<[number, unknown]>) {
    const at = `${path}.values[${n}]`;
    const { validTime, value: written }: Readonly<Record<string, unknown>> = isRecord(row) ? row : {};
    const when = readInterval(validTime, `${at}.validTime`);
    const value = readValue(layer, written, unit ?? '', `${at}.value`);
    refusals.push(...(when.ok ? [] : when.refusals), ...(value.ok ? [] : value.refusals));
    if (!when.ok || !value.ok) continue;
    const { from, hours } = when.value;
    for (let h = from / HOUR_MS; h < from / HOUR_MS + hours; h += 1) {
      if (told.has(h)) {
        refusals.push(said(`${at}.validTime`, 'hours that no value before speaks of', shown(validTime), `Two values of ${layer.grid} speak of the same hour.`, 'given-twice'));
        break;
      }
      told.add(h);
      if (value.value !== undefined) values.set(h, layer.total ? value.value / hours : value.value);
    }
  }
  return { values, refusals };
};

/** The middle of the square the answer is for. */
const placeOf = (geometry: unknown): Forecast['place'] => {
  const ring: unknown = isRecord(geometry) && Array.isArray(geometry['coordinates']) ? geometry['coordinates'][0] : undefined;
  if (!Array.isArray(ring)) return undefined;
  // The last corner repeats the first.
  const corners = ring.slice(0, -1).flatMap((p: unknown) => (Array.isArray(p) && typeof p[0] === 'number' && typeof p[1] === 'number' ? [[p[0], p[1]] as const] : []));
  if (corners.length < 3) return undefined;
  const mean = (k: 0 | 1): number => corners.reduce((sum, c) => sum + c[k], 0) / corners.length;
  return { latitude_deg: mean(1), longitude_deg: mean(0) };
};

/**
 * Reads the answer of the US National Weather Service for one gridpoint: layers of values, each for an interval, which do not line up.
 *
 * @param text  JSON, as the service sent it
 * @returns     hours; or what is wrong, by path
 * @assumes     a total falls evenly over the hours of its interval; all else holds for each of them
 * @source      1. documentation of the service and its maintainers’ public answers: equal values are merged into longer intervals, amounts are totals, values may be null
 */
export const readGridpoint = (text: string): Result<Forecast> => {
  let given: unknown;
  try {
    given = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return refuse(said('', SHAPE, `“${text.trim().slice(0, 40)}”`, 'This is not JSON. Save the answer as it came.', 'not-json'));
  }
  const properties = isRecord(given) ? given['properties'] : undefined;
  if (!isRecord(given) || !isRecord(properties)) return refuse(said('properties', SHAPE, shown(given), 'This JSON is no gridpoint forecast: it has no properties.'));
  const has = (layer: Layer): boolean => properties[layer.grid] !== undefined;
  const lacking = needed()
    .filter((l) => !has(l))
    .map((l) => l.grid);
  if (!LAYERS.some((l) => DAMP.includes(l.id) && has(l))) lacking.push('dewpoint or relativeHumidity');
  if (lacking.length > 0)
    return refuse(
      said(
        'properties',
        `the layers ${needed()
          .map((l) => l.grid)
          .join(', ')}, dewpoint or relativeHumidity`,
        `none of ${lacking.join(', ')}`,
        `The answer lacks ${lacking.join(' and ')}.`,
        'layer-missing',
      ),
    );
  const read = LAYERS.filter(has).map((layer) => [layer.id, readLayer(layer, properties[layer.grid])] as const);
  const refusals = read.flatMap(([, r]) => r.refusals);
  if (refusals.length > 0) return fewRefusals(refusals, SHAPE);
  const issued = parseInstant(String(properties['updateTime'] ?? ''));
  const place = placeOf(given['geometry']);
  const elevation = isRecord(properties['elevation']) ? properties['elevation'] : {};
  const altitude_m = /unit:m$/i.test(String(elevation['unitCode'])) ? elevation['value'] : undefined;
  const about = {
    source: 'US National Weather Service, gridpoint forecast',
    ...(issued === undefined ? {} : { issued }),
    ...(place ? { place } : {}),
    ...(typeof altitude_m === 'number' && Number.isFinite(altitude_m) ? { altitude_m } : {}),
  };
  const forecast = forecastOf(about, new Map(read.map(([id, r]) => [id, r.values])));
  return forecast.ok ? accept(forecast.value) : forecast;
};
