import { accept, figure, type Radians, type Result, radians } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';
import { DEGREE } from './site';

/** A face by its outward direction. */
export type Face = {
  /** Unit vector outward. */
  readonly east: number;
  readonly north: number;
  readonly up: number;
  /** Sine of the tilt. */
  readonly steep: number;
};

export const tiltValidity: Validity = { of: 'tilt', least: 0, most: Math.PI, words: '0° (a roof) to 180° (an underside); a wall has 90°', source: 'definition' };
export const azimuthValidity: Validity = { of: 'azimuth', least: -2 * Math.PI, most: 2 * Math.PI, words: '−360 to 360°, clockwise from true north', source: 'definition' };

/**
 * A face from its tilt and the way it looks.
 *
 * @param tilt     from lying flat: 0 a roof, π/2 a wall, more where it overhangs. [rad]
 * @param azimuth  the way it looks, clockwise from true north. [rad]
 * @returns        the face; or a refusal
 */
export const faceOf = (tilt: Radians, azimuth: Radians): Result<Face> => {
  if (!holds(tilt, tiltValidity)) return outsideValidity(tiltValidity, `${figure(tilt / DEGREE, 1)}°`);
  if (!holds(azimuth, azimuthValidity)) return outsideValidity(azimuthValidity, `${figure(azimuth / DEGREE, 1)}°`);
  const steep = Math.sin(tilt);
  return accept({ east: steep * Math.sin(azimuth), north: steep * Math.cos(azimuth), up: Math.cos(tilt), steep });
};

export type RigSide = 'front' | 'curb' | 'rear' | 'road';

const QUARTERS: Readonly<Record<RigSide, number>> = { front: 0, curb: 1, rear: 2, road: 3 };

/**
 * The way each side of a rig looks: the front with the nose, the curb side to the right of it.
 *
 * @param heading  of the nose, clockwise from TRUE north; a compass shows magnetic north. [rad]
 * @returns        azimuth of each side, 0 to 2π. [rad]
 */
export const sideAzimuths = (heading: Radians): Readonly<Record<RigSide, Radians>> => {
  const side = (s: RigSide): Radians => {
    const turned = (heading + (QUARTERS[s] * Math.PI) / 2) % (2 * Math.PI);
    return radians(turned < 0 ? turned + 2 * Math.PI : turned);
  };
  return { front: side('front'), curb: side('curb'), rear: side('rear'), road: side('road') };
};

/** Cosine of the angle between sun and the face's outward direction; below 0 the sun is behind it. */
export const towards = (sun: { readonly east: number; readonly north: number; readonly up: number }, face: Face): number =>
  sun.east * face.east + sun.north * face.north + sun.up * face.up;
