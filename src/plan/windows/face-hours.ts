import type { Rig } from '../../rig';
import {
  clearSkyOver,
  type Face,
  type FaceLight,
  type FaceSpan,
  faceInWeather,
  faceOf,
  onFaces,
  RIM,
  type RigSide,
  type Site,
  SKIN_COLOURS,
  type SkinColour,
  type Sun,
  sideAzimuths,
  skinColour,
  sunAt,
  sunOver,
  USUAL_TURBIDITY,
  underCloud,
} from '../../science';
import type { FaceId } from '../../terms';
import { accept, instant, metresPerSecond, type Radians, type Result, radians, type Share } from '../../units';
import { type ForecastHour, HOUR_MS } from '../forecast/forecast-types';
import type { Parked } from './windows-types';

/** What all faces share: sun and sky of every hour. */
export type SkyHours = {
  readonly hours: readonly ForecastHour[];
  /** The sun is up from the hour's beginning to its end. */
  readonly light: readonly boolean[];
  readonly suns: readonly Sun[];
  readonly on: readonly (((face: Face) => FaceLight) | undefined)[];
};

/**
 * Of the wind ten metres up, what reaches a parked rig three metres up among trees and other rigs: half of it, ours, near the handbook’s
 * rule for towns and woods (0.55; from memory, unconfirmed). Less wind is the cautious side both ways: colder by night, hotter in the sun.
 */
const AT_THE_RIG = 0.5;
/** Of ordinary ground: grass. [1] */
const ALBEDO = 0.2;

/**
 * Sun and sky over a place for every hour of a forecast, at the middle of the hour.
 *
 * @returns  refused for a place or a time that there is not
 */
export const skyHours = (hours: readonly ForecastHour[], site: Site): Result<SkyHours> => {
  const over = sunOver(site);
  if (!over.ok) return over;
  for (const hour of [hours[0], hours.at(-1)]) {
    const real = hour && sunAt(hour.at, site);
    if (real && !real.ok) return real;
  }
  const clear = clearSkyOver({ altitude: site.altitude, turbidity: USUAL_TURBIDITY });
  if (!clear.ok) return clear;
  const up = hours.map(({ at }) => over.value(at).elevation >= RIM);
  const last = hours.at(-1);
  const after = last !== undefined && over.value(instant(last.at + HOUR_MS)).elevation >= RIM;
  const suns = hours.map(({ at }) => over.value(instant(at + HOUR_MS / 2)));
  const on = hours.map(({ cover }, i) => {
    const sun = suns[i];
    if (!sun || cover === undefined) return undefined;
    const sky = underCloud(clear.value(sun), sun.up, cover);
    return sky.ok ? onFaces(sun, sky.value, ALBEDO, 'hay-davies') : undefined;
  });
  return accept({ hours, light: up.map((is, i) => is && (i + 1 < up.length ? (up[i + 1] ?? false) : after)), suns, on });
};

const LEVEL = radians(0);
const WALL = radians(Math.PI / 2);
const UNDERSIDE = radians(Math.PI);
const SIDES: Readonly<Record<string, RigSide>> = { front: 'front', step: 'front', curb: 'curb', rear: 'rear', road: 'road' };

/** How a face lies, and which way it looks; faces that lie alike share their hours. */
export type Lie = { readonly tilt: Radians; readonly side?: RigSide };

export const lieOf = (face: FaceId, rig: Pick<Rig, 'slides'>): Lie => {
  const [slide, wall] = face.split('-');
  if (face === 'under') return { tilt: UNDERSIDE };
  const outer = wall === 'outer' ? rig.slides.find((s) => s.id === slide)?.face : undefined;
  const side = SIDES[outer ?? wall ?? face];
  return side ? { tilt: WALL, side } : { tilt: LEVEL };
};

const colours = (id: string | undefined): readonly SkinColour[] => (id === undefined ? ['white', 'dark'] : [id]).flatMap((c) => skinColour(c) ?? []);

/** A colour that people may name. */
export const isColour = (id: string): boolean => SKIN_COLOURS.some((c) => c.id === id);

/** Faces to reckon with in one hour: the one it is; or, where nobody knows the heading, one that looks at the sun and one that looks away. */
const looking = (lie: Lie, parked: Parked): ((sun: Sun) => readonly Face[]) => {
  const face = (azimuth: Radians): readonly Face[] => {
    const found = faceOf(lie.tilt, azimuth);
    return found.ok ? [found.value] : [];
  };
  if (lie.side === undefined) {
    const [level] = [face(radians(0))];
    return () => level;
  }
  if (parked.heading !== undefined) {
    const one = face(sideAzimuths(parked.heading)[lie.side]);
    return () => one;
  }
  return (sun) => [...face(sun.azimuth as Radians), ...face(radians((sun.azimuth + Math.PI) % (2 * Math.PI)))];
};

/**
 * How cold and how warm a face may be in every hour: of the colours and headings that may be so, the coldest and the warmest.
 *
 * @returns  nothing for a dark hour, for one of which the forecast lacks something, and for one outside what the laws cover
 * @assumes  under a roof or a cover, and where nobody knows, the sun may reach the face or may not
 */
export const faceHours = (sky: SkyHours, lie: Lie, parked: Parked, colour: string | undefined): readonly (FaceSpan | undefined)[] => {
  const skins = colours(colour);
  const faces = looking(lie, parked);
  const shade = parked.cover !== 'open';
  return sky.hours.map(({ air, dew_point, wind, cover }, i) => {
    const [sun, on] = [sky.suns[i], sky.on[i]];
    if (!sky.light[i] || air === undefined || dew_point === undefined || wind === undefined || cover === undefined || !sun || !on) return undefined;
    const lights = faces(sun).map((f) => on(f).total);
    const [least, most] = [shade ? 0 : Math.min(...lights), Math.max(...lights)];
    let found: FaceSpan | undefined;
    for (const skin of skins)
      for (const irradiance of least === most ? [least] : [least, most]) {
        const t = faceInWeather({ air, dew_point, wind: metresPerSecond(wind * AT_THE_RIG), cover: cover as Share, irradiance, tilt: lie.tilt, colour: skin });
        if (!t.ok) return undefined;
        const { surface, uncertainty } = t.value;
        const colder = !found || surface - uncertainty < found.coldest - found.cold_open;
        const warmer = !found || surface + uncertainty > found.warmest + found.warm_open;
        found = {
          coldest: colder || !found ? surface : found.coldest,
          cold_open: colder || !found ? uncertainty : found.cold_open,
          warmest: warmer || !found ? surface : found.warmest,
          warm_open: warmer || !found ? uncertainty : found.warm_open,
        };
      }
    return found;
  });
};
