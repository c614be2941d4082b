import { accept, type CivilDay, type Instant, instant, type Result, type Seconds, seconds } from '../../units';
import { outsideValidity } from '../validity';
import { sunYears } from './apparent-place';
import type { Site } from './site';
import { RIM, type Sun, sunOver } from './sun-position';

const DAY_MS = 86_400_000;

/** The sun's course over one place on one day. */
export type SunDay = {
  /** When it stands highest. */
  readonly noon: Instant;
  /** How high then, without air. [rad] */
  readonly highest: number;
  /** Undefined where it does not cross the horizon between the midnight before and noon: `highest` tells up from down. */
  readonly rise: Instant | undefined;
  readonly set: Instant | undefined;
  /** How long its upper rim is seen between the two midnights of the sun. [s] */
  readonly daylight: Seconds;
};

/** Halvings of twelve hours down to a millisecond. */
const HALVINGS = 26;

const crossing = (sun: (at: Instant) => Sun, down: number, up: number): Instant => {
  let [low, high] = [down, up];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (sun(instant(middle)).elevation < RIM) low = middle;
    else high = middle;
  }
  return instant(Math.round((low + high) / 2));
};

/**
 * Sunrise, noon and sunset of a civil day at a place, without time zones: the day is the one whose noon by the sun falls into it.
 *
 * @param day   civil day of the place
 * @param site  where
 * @returns     instants of noon, rise and set of the upper rim; rise or set undefined where there is none, as in polar summer and winter
 * @valid       1900…2100, any place (refused otherwise)
 * @agrees      1 minute against seven published mornings and evenings; 10 s against a second library to 60° of latitude, 40 s to 66°
 * @assumes     a flat horizon and ordinary air: a ridge, a hill or strange air may move it by minutes, near the poles by more
 * @source      1. position as `sunOver`; upper rim at −0.8333° (34′ of bending, 16′ half width), the usual convention
 */
export const sunDay = (day: CivilDay, site: Site): Result<SunDay> => {
  const mean = day * DAY_MS + DAY_MS / 2 - (site.longitude / (2 * Math.PI)) * DAY_MS;
  if (!(mean >= sunYears.least && mean <= sunYears.most)) return outsideValidity({ ...sunYears, of: 'day' }, Number.isFinite(day) ? `day ${day}` : 'no day');
  const over = sunOver(site);
  if (!over.ok) return over;
  const sun = over.value;
  let noon = mean;
  for (let i = 0; i < 3; i++) noon -= (sun(instant(noon)).hour_angle / (2 * Math.PI)) * DAY_MS;
  const highest = sun(instant(noon)).elevation;
  const before = noon - DAY_MS / 2;
  const after = noon + DAY_MS / 2;
  const upAt = (at: number): boolean => sun(instant(at)).elevation >= RIM;
  const [night, midday, evening] = [upAt(before), highest >= RIM, upAt(after)];
  const rise = night === midday ? undefined : crossing(sun, night ? noon : before, night ? before : noon);
  const set = evening === midday ? undefined : crossing(sun, evening ? noon : after, evening ? after : noon);
  const seen = midday ? (set ?? after) - (rise ?? before) : 0;
  return accept({ noon: instant(Math.round(noon)), highest, rise, set, daylight: seconds(seen / 1000) });
};
