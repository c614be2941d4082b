import type { Instant } from '../../units';
import type { Validity } from '../validity';
import { DEGREE } from './site';

/** 1 January 2000, 12:00. [ms] */
const J2000 = 946_728_000_000;
const DAY_MS = 86_400_000;
/** How far clocks lag behind the even time of the planets, about the middle of this century; 40 s of error move the sun by 0.0005°. [s] */
const CLOCK_LAG = 69;

export const sunYears: Validity = {
  of: 'utc',
  least: Date.UTC(1900, 0, 1),
  most: Date.UTC(2100, 11, 31),
  words: 'the years 1900 to 2100',
  source: 'ours: the series drifts slowly beyond',
};

/** Where the sun stands among the stars, seen from the middle of the earth. Angles in rad. */
export type ApparentPlace = {
  /** Along its yearly path, aberration and nutation included. */
  readonly longitude: number;
  readonly right_ascension: number;
  readonly declination: number;
  /** In mean distances. [AU] */
  readonly distance: number;
  /** How far Greenwich has turned past the sun. */
  readonly greenwich_hour_angle: number;
  /** Sundial before clock. [s] */
  readonly equation_of_time: number;
};

/** Into −π…π. */
const turned = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

/**
 * The place of the sun by the short series, the same for everybody on earth.
 *
 * @param at   instant. [ms since 1970]
 * @returns    ecliptic longitude, right ascension, declination, distance, hour angle at Greenwich, equation of time
 * @valid      1900…2100 (`sunYears`), which callers check
 * @agrees     0.01° against the worked example 25.a; 0.011° against solar-position-spa.csv once it is turned to the horizon
 * @assumes    clocks 69 s behind the even time of the planets
 * @source     1. Meeus, Astronomical Algorithms, 2nd ed. (1998), chapters 12, 22, 25 and equation 28.1: from memory, unconfirmed; example 25.a read as quoted
 */
export const apparentPlace = (at: Instant): ApparentPlace => {
  const days = (at - J2000) / DAY_MS;
  const T = (days + CLOCK_LAG / 86_400) / 36_525;
  const L0 = 280.46646 + 36000.76983 * T + 0.0003032 * T * T;
  const M = (357.52911 + 35999.05029 * T - 0.0001537 * T * T) * DEGREE;
  const e = 0.016708634 - 0.000042037 * T;
  const C = (1.914602 - 0.004817 * T) * Math.sin(M) + (0.019993 - 0.000101 * T) * Math.sin(2 * M) + 0.000289 * Math.sin(3 * M);
  const distance = (1.000001018 * (1 - e * e)) / (1 + e * Math.cos(M + C * DEGREE));
  const node = (125.04 - 1934.136 * T) * DEGREE;
  const nutation = -0.00478 * Math.sin(node);
  const longitude = (L0 + C - 0.00569 + nutation) * DEGREE;
  const tilt = (23.4392911 - 0.0130042 * T + 0.00256 * Math.cos(node)) * DEGREE;
  const right_ascension = Math.atan2(Math.cos(tilt) * Math.sin(longitude), Math.cos(longitude));
  const equinoxes = nutation * Math.cos(tilt);
  const greenwich = (280.46061837 + 360.98564736629 * days + 0.000387933 * T * T + equinoxes) * DEGREE;
  return {
    longitude,
    right_ascension,
    declination: Math.asin(Math.sin(tilt) * Math.sin(longitude)),
    distance,
    greenwich_hour_angle: turned(greenwich - right_ascension),
    equation_of_time: (turned((L0 - 0.0057183 + equinoxes) * DEGREE - right_ascension) / (2 * Math.PI)) * 86_400,
  };
};
