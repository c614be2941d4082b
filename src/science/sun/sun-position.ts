import { accept, type Instant, type Metres, type Result } from '../../units';
import { standardPressure } from '../air';
import { holds, outsideValidity } from '../validity';
import { type ApparentPlace, apparentPlace, sunYears } from './apparent-place';
import { DEGREE, realSite, type Site } from './site';

/** Sunlight on a plane that faces the sun outside the air, at the mean distance. [W/m²] Kopp and Lean 2011: from memory, unconfirmed. */
export const SOLAR_CONSTANT = 1361;

/** Half the sun's own width and the bending of light at the horizon: the upper rim is seen until the middle is this far down. */
export const RIM = -0.8333 * DEGREE;

/** How much lower the sun stands from the ground than from the middle of the earth, on the horizon at the mean distance: 8.794″. */
const PARALLAX = (8.794 / 3600) * DEGREE;

/** The sun over one place at one instant. Angles in rad. */
export type Sun = {
  /** Unit vector to where the sun is seen, light bent by the air: faces need only a dot product. */
  readonly east: number;
  readonly north: number;
  readonly up: number;
  /** Above the horizon, as it stands. */
  readonly elevation: number;
  /** Above the horizon, as it is seen. */
  readonly apparent_elevation: number;
  /** Clockwise from true north, 0 to 2π. */
  readonly azimuth: number;
  /** Past the meridian, −π to π. */
  readonly hour_angle: number;
  /** On a plane that faces the sun outside the air. [W/m²] */
  readonly extraterrestrial: number;
  readonly place: ApparentPlace;
};

/**
 * By how much the air lifts the sun.
 *
 * @param elevation  without air. [rad]
 * @param pressure   of the air. [Pa]
 * @returns          lift. [rad] None once the upper rim is below the horizon
 * @agrees           within solar-position-spa.csv
 * @assumes          air of 12 °C, as the reference does; 30 K more or less move a sun on the horizon by 0.06°
 * @source           1. Meeus, Astronomical Algorithms, equation 16.4, and Reda and Andreas, NREL/TP-560-34302 (2008), equation 42: from memory, unconfirmed
 */
const lift = (elevation: number, pressure: number): number => {
  const h = elevation / DEGREE;
  if (elevation < RIM) return 0;
  return ((pressure / 101_000) * (283 / 285) * 1.02 * DEGREE) / 60 / Math.tan((h + 10.3 / (h + 5.11)) * DEGREE);
};

/** Direction from latitude, declination and hour angle: east, north, up. */
export const horizonVector = (latitude: number, declination: number, hour_angle: number): { readonly east: number; readonly north: number; readonly up: number } => {
  const [sl, cl, sd, cd, ch] = [Math.sin(latitude), Math.cos(latitude), Math.sin(declination), Math.cos(declination), Math.cos(hour_angle)];
  return { east: -cd * Math.sin(hour_angle), north: sd * cl - cd * ch * sl, up: sd * sl + cd * ch * cl };
};

const over = ({ latitude, longitude }: Site, pressure: number, at: Instant): Sun => {
  const place = apparentPlace(at);
  const round = place.greenwich_hour_angle + longitude;
  const hour_angle = round - 2 * Math.PI * Math.round(round / (2 * Math.PI));
  const v = horizonVector(latitude, place.declination, hour_angle);
  const across = Math.hypot(v.east, v.north);
  const elevation = Math.atan2(v.up, across) - (PARALLAX / place.distance) * across;
  const apparent_elevation = elevation + lift(elevation, pressure);
  const level = across === 0 ? 0 : Math.cos(apparent_elevation) / across;
  const azimuth = Math.atan2(v.east, v.north);
  return {
    east: v.east * level,
    north: v.north * level,
    up: Math.sin(apparent_elevation),
    elevation,
    apparent_elevation,
    azimuth: azimuth < 0 ? azimuth + 2 * Math.PI : azimuth,
    hour_angle,
    extraterrestrial: SOLAR_CONSTANT / place.distance ** 2,
    place,
  };
};

/**
 * The sun over one place, ready for many instants: the place is checked once, each hour costs well under a microsecond.
 *
 * @param site  where the rig stands
 * @returns     the sun at an instant; or a refusal where there is no such place
 * @valid       latitudes ±90°, longitudes ±180°, −450…6 000 m; instants of 1900…2100, which callers check (`sunYears`) or `sunAt` does
 * @agrees      0.011° of direction against solar-position-spa.csv, 420 instants by day and night in seven places from 65° north to 34° south;
 *              0.011° against a second library over the whole earth, poles included, 1950 to 2050
 * @assumes     a flat horizon at the place itself; standard pressure for the altitude, 12 °C
 * @source      1. as `apparentPlace`, turned to the horizon by the usual rotation
 */
export const sunOver = (site: Site): Result<(at: Instant) => Sun> => {
  const real = realSite(site);
  if (!real.ok) return real;
  const pressure = standardPressure(site.altitude as Metres);
  return pressure.ok ? accept((at) => over(site, pressure.value, at)) : pressure;
};

/** The sun over one place at one instant, both checked; see `sunOver`. */
export const sunAt = (at: Instant, site: Site): Result<Sun> => {
  if (!holds(at, sunYears)) return outsideValidity(sunYears, Number.isFinite(at) ? `${String(Math.floor(at / 31_556_952_000) + 1970)}` : 'no instant');
  const sun = sunOver(site);
  return sun.ok ? accept(sun.value(at)) : sun;
};
