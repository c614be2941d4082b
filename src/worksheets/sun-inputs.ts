import { type Face, faceOf, type RigSide, type Site, SKY_MODELS, type SkyModel, sideAzimuths, siteAltitude, turbidityValidity, USUAL_TURBIDITY } from '../science';
import type { Input, Step } from '../terms';
import { accept, civilDay, figure, type Instant, isoDay, metres, parseInstant, type Radians, type Result, radians, refuse } from '../units';
import { step } from './working';

/** Where a rig stands, as every worksheet about the sun asks for it. */
export const siteInputs = {
  latitude_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'latitude, north positive', limits: { least: -Math.PI / 2, most: Math.PI / 2 } },
  longitude_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'longitude, east positive: America has minus', limits: { least: -Math.PI, most: Math.PI } },
  altitude_m: {
    type: 'number',
    quantity: 'length',
    unit: 'm',
    meaning: 'height above sea level',
    limits: { least: siteAltitude.least, most: siteAltitude.most },
    otherwise: 0,
  },
} as const satisfies Record<string, Input>;

export const timeInput = (meaning: string, example: string) => ({ type: 'text', meaning: `${meaning}, with its offset from UTC`, example }) as const;

export const headingInput = {
  type: 'number',
  quantity: 'angle',
  unit: 'deg',
  meaning: 'where the nose points, clockwise from true north; a compass shows magnetic north',
  limits: { least: 0, most: 2 * Math.PI },
} as const satisfies Input;

export const turbidityInput = {
  type: 'number',
  quantity: 'number',
  unit: 'number',
  meaning: 'haze as Linke turbidity: 2 clean and cold or high desert, 3 ordinary, 4 to 5 humid summer or over towns',
  limits: { least: turbidityValidity.least, most: turbidityValidity.most },
  otherwise: USUAL_TURBIDITY,
} as const satisfies Input;

export const cloudInput = {
  type: 'number',
  quantity: 'share',
  unit: 'percent',
  meaning: 'how much of the sky is covered in that hour',
  limits: { least: 0, most: 1 },
  otherwise: 0,
} as const satisfies Input;

/** How the ground and the sky throw light on a face. */
export const lightInputs = {
  ground_percent: {
    type: 'number',
    quantity: 'share',
    unit: 'percent',
    meaning: 'light that the ground throws back: asphalt 12, grass 20, concrete 30, sand 40, snow 65',
    limits: { least: 0, most: 1 },
    otherwise: 20,
  },
  sky: { type: 'word', meaning: 'how the light of the sky is spread', words: SKY_MODELS, otherwise: 'hay-davies' },
} as const satisfies Record<string, Input>;

export const siteFrom = (i: { readonly latitude_deg: number; readonly longitude_deg: number; readonly altitude_m: number }): Site => ({
  latitude: radians(i.latitude_deg),
  longitude: radians(i.longitude_deg),
  altitude: metres(i.altitude_m),
});

/** A time as typed; refused under its key where there is none such. */
export const timeFrom = (path: string, text: string): Result<Instant> => {
  const at = parseInstant(text.trim());
  if (at !== undefined) return accept(at);
  return refuse({
    code: 'no-such-time',
    path,
    expected: 'a time such as 2026-06-21T09:30:00-07:00',
    received: `“${text}”`,
    sentence: `“${text}” is not a time. Type day, time and offset from UTC: 2026-06-21T09:30:00-07:00.`,
  });
};

/** `2026-06-21T16:30Z`, to the minute. */
export const showTime = (at: Instant): string => {
  const minute = Math.round(at / 60_000);
  const day = Math.floor(minute / 1440);
  const two = (n: number): string => String(n).padStart(2, '0');
  const of = minute - day * 1440;
  return `${isoDay(civilDay(day))}T${two(Math.floor(of / 60))}:${two(of % 60)}Z`;
};

export const inDegrees = (rad: number, decimals = 2): string => `${figure((rad * 180) / Math.PI, decimals)}°`;
export const watts = (w: number): string => `${figure(w, 0)} W/m²`;

const WALL = radians(Math.PI / 2);
const certain = (face: Result<Face>): Face => {
  if (!face.ok) throw new Error(JSON.stringify(face.refusals));
  return face.value;
};

/** Roof and four upright sides, in the order of `RIG_FACES`. */
export const rigFaces = (heading: Radians): { readonly looks: Readonly<Record<RigSide, Radians>>; readonly faces: readonly Face[] } => {
  const looks = sideAzimuths(heading);
  const wall = (side: RigSide): Face => certain(faceOf(WALL, looks[side]));
  return { looks, faces: [certain(faceOf(radians(0), radians(0))), wall('front'), wall('curb'), wall('rear'), wall('road')] };
};

const SPREAD: Readonly<Record<SkyModel, { readonly words: string; readonly formula: string }>> = {
  even: { words: 'Light of the sky, spread evenly', formula: 'D (1 + cos s)/2' },
  'hay-davies': { words: 'Light of the sky, brighter round the sun', formula: 'D [A cos θ / cos z + (1 − A)(1 + cos s)/2], A = direct / outside the air' },
  perez: { words: 'Light of the sky, brighter round the sun and along the horizon', formula: 'D [(1 − F₁)(1 + cos s)/2 + F₁ a/b + F₂ sin s]' },
};

export const spreadStep = (model: SkyModel, numbers: string, gives: string): Step => step(SPREAD[model].words, SPREAD[model].formula, numbers, gives);

export const SUN_LIMITS = ['A flat horizon: hills, trees and neighbours are not known. The sun itself is good to a hundredth of a degree.'] as const;
