import { type ApplicationGate, applicationGate, type FaceSpan, type LayingLimits } from '../../science';
import type { ForecastHour } from '../forecast/forecast-types';
import { HOUR_MS } from '../forecast/forecast-types';
import type { Rain } from './rain';
import type { Conditions, Gate, Need, Parked } from './windows-types';

/** Everything that the gates of one job look at. */
export type Scene = {
  readonly need: Need;
  readonly limits: LayingLimits;
  readonly hours: readonly ForecastHour[];
  readonly faces: readonly (FaceSpan | undefined)[];
  readonly light: readonly boolean[];
  readonly rain: Rain;
  readonly conditions: Conditions;
  readonly parked: Parked;
  readonly now: number;
  /** Midnight before the day the wheels turn. */
  readonly departs: number | undefined;
};

type Asks = Pick<Scene, 'need' | 'conditions'>;

/** What a job needs to know of an hour. */
const KNOWN: readonly { readonly of: Exclude<keyof ForecastHour, 'at'>; readonly words: string; readonly asked: (asks: Asks) => boolean }[] = [
  { of: 'air', words: 'air temperature', asked: ({ need }) => need.dry_surface },
  { of: 'dew_point', words: 'dew point', asked: ({ need }) => need.dry_surface },
  { of: 'wind', words: 'wind', asked: ({ need }) => need.dry_surface || need.climbs },
  { of: 'cover', words: 'cloud', asked: ({ need }) => need.dry_surface },
  { of: 'rain_chance', words: 'chance of rain', asked: () => true },
  { of: 'rain', words: 'amount of rain', asked: ({ conditions }) => conditions.rain_amount !== undefined },
];

const lacks = (asks: Asks, hour: ForecastHour): boolean => KNOWN.some((k) => hour[k.of] === undefined && k.asked(asks));

/** What the forecast does not say of an hour that this job needs to know. */
export const lacking = (asks: Asks, hour: ForecastHour): readonly string[] => KNOWN.filter((k) => hour[k.of] === undefined && k.asked(asks)).map((k) => k.words);

/** One hour of a scene. */
type Asked = {
  readonly scene: Scene;
  readonly i: number;
  readonly hour: ForecastHour;
  /** How the surface stands against product and dew point, where it counts and the hour tells enough. */
  readonly surface: ApplicationGate | undefined;
};

export const askedOf = (scene: Scene, hour: ForecastHour, i: number): Asked => {
  const face = scene.need.dry_surface ? scene.faces[i] : undefined;
  const found = face && hour.dew_point !== undefined ? applicationGate(face, hour.dew_point, scene.limits) : undefined;
  return { scene, i, hour, surface: found?.ok ? found.value : undefined };
};

const before = ({ scene, i }: Asked) => scene.rain.over(i - scene.need.dry_before_h, i);
const after = ({ scene, i }: Asked) => scene.rain.over(i + 1, i + 1 + scene.need.rain_free_h);

/** Each reason by itself: what closes an hour. */
export const JUDGES: Readonly<Record<Gate, (asked: Asked) => boolean>> = {
  past: ({ scene, hour }) => hour.at < scene.now,
  missing: ({ scene, hour, surface }) => lacks(scene, hour) || (scene.need.dry_surface && surface === undefined),
  indoors: ({ scene }) => scene.parked.cover === 'indoors' && scene.need.for === 'laying',
  dark: ({ scene, i }) => !scene.light[i],
  rain: ({ scene, i }) => scene.rain.at(i) === 'rain',
  'too-cold': ({ surface }) => surface?.cold === 'broken',
  dew: ({ surface }) => surface?.dew === 'wet' || surface?.dew === 'too-near',
  'too-warm': ({ surface }) => surface?.warm === 'broken',
  'too-close': ({ surface }) => surface !== undefined && (surface.cold === 'too-close' || surface.warm === 'too-close' || surface.dew === 'too-close'),
  wind: ({ scene, hour }) => scene.need.climbs && ((hour.wind ?? 0) > scene.conditions.wind || (hour.gust ?? 0) > scene.conditions.gust),
  'not-dry-before': (asked) => before(asked) === 'rain',
  'before-unknown': (asked) => before(asked) === 'unknown',
  'rain-after': (asked) => after(asked) === 'rain',
  'after-unknown': (asked) => after(asked) === 'unknown',
  departure: ({ scene, hour }) => scene.departs !== undefined && scene.need.cure_h > 0 && hour.at + HOUR_MS * (1 + scene.need.cure_h) > scene.departs,
};

/** What closes an hour for stripping, cleaning and priming; on the roof, dew as well. */
export const PREPARING: readonly Gate[] = ['past', 'missing', 'dark', 'rain', 'wind'];
export const PREPARING_ON_THE_ROOF: readonly Gate[] = [...PREPARING, 'dew'];
