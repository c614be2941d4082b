import { faceOf, onFaces, relativeAirMass, SOLAR_CONSTANT, towards } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, radians, refuse } from '../units';
import { inDegrees, lightInputs, spreadStep, watts } from './sun-inputs';
import { step } from './working';

const light = (meaning: string) => ({ type: 'number', quantity: 'irradiance', unit: 'wm2', meaning, decimals: 0 }) as const;
const given = (meaning: string, most: number) => ({ type: 'number', quantity: 'irradiance', unit: 'wm2', meaning, limits: { least: 0, most } }) as const;

export const sunOnFace = defineWorksheet({
  id: 'sun-on-face',
  title: 'Sunlight on a face',
  tells: 'How much sunlight a roof, a wall or a sloping front gets, and where it comes from.',
  example: { sun_elevation_deg: 35, sun_azimuth_deg: 120, direct_wm2: 700, diffuse_wm2: 90, tilt_deg: 90, azimuth_deg: 90 },
  inputs: {
    sun_elevation_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'how high the sun is seen above the horizon', limits: { least: 0, most: Math.PI / 2 } },
    sun_azimuth_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'its direction, clockwise from true north', limits: { least: 0, most: 2 * Math.PI } },
    direct_wm2: given('sunlight straight from the sun, on a plane that faces it', 1400),
    diffuse_wm2: given('sunlight from the whole sky, on level ground', 800),
    tilt_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'tilt of the face: 0 a roof, 90 a wall, more where it overhangs', limits: { least: 0, most: Math.PI } },
    azimuth_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'the way the face looks, clockwise from true north', limits: { least: 0, most: 2 * Math.PI } },
    extraterrestrial_wm2: {
      type: 'number',
      quantity: 'irradiance',
      unit: 'wm2',
      meaning: 'sunlight outside the air that day',
      limits: { least: 1300, most: 1430 },
      otherwise: SOLAR_CONSTANT,
    },
    ...lightInputs,
  },
  results: {
    total_wm2: light('on the face'),
    direct_part_wm2: light('of it straight from the sun'),
    sky_part_wm2: light('of it from the sky'),
    ground_part_wm2: light('of it thrown back by the ground'),
    incidence_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'between the sun and straight onto the face; above 90 the sun is behind it', decimals: 1 },
  },
  calculate: (i) => {
    const face = faceOf(radians(i.tilt_deg), radians(i.azimuth_deg));
    if (!face.ok) return face;
    if (i.direct_wm2 > i.extraterrestrial_wm2)
      return refuse({
        code: 'brighter-than-outside-the-air',
        path: 'direct',
        expected: `not more than ${watts(i.extraterrestrial_wm2)}, what there is outside the air`,
        received: watts(i.direct_wm2),
        sentence: 'No more light can come from the sun than there is outside the air. Check the figure and its unit.',
      });
    const [h, a] = [i.sun_elevation_deg, i.sun_azimuth_deg];
    const up = Math.sin(h);
    const sun = { east: Math.cos(h) * Math.sin(a), north: Math.cos(h) * Math.cos(a), up, apparent_elevation: h, extraterrestrial: i.extraterrestrial_wm2 };
    const sky = { direct: i.direct_wm2, diffuse: i.diffuse_wm2, global: i.direct_wm2 * up + i.diffuse_wm2, air_mass: relativeAirMass(h) };
    const on = onFaces(sun, sky, i.ground_percent, i.sky)(face.value);
    const cos = Math.min(1, Math.max(-1, towards(sun, face.value)));
    return accept({
      result: { total_wm2: on.total, direct_part_wm2: on.direct, sky_part_wm2: on.sky, ground_part_wm2: on.ground, incidence_deg: Math.acos(cos) },
      working: [
        step(
          'Angle between sun and face',
          'cos θ = cos z cos s + sin z sin s cos(a − a_f)',
          `sun ${inDegrees(h, 1)} high towards ${inDegrees(a, 1)}`,
          `${inDegrees(Math.acos(cos), 1)}, cos θ = ${figure(cos, 3)}`,
        ),
        step('Straight from the sun', 'B × cos θ, none from behind', `B = ${watts(i.direct_wm2)}`, watts(on.direct)),
        spreadStep(i.sky, `D = ${watts(i.diffuse_wm2)}`, watts(on.sky)),
        step('Thrown back by the ground', '(B sin h + D) × albedo × (1 − cos s)/2', `albedo ${figure(i.ground_percent, 2)}`, watts(on.ground)),
        step('Together', 'sum of the three', '', watts(on.total)),
      ],
    });
  },
  sources: [
    seen('Duffie and Beckman, Solar Engineering of Thermal Processes, 4th ed. (2013), sections 1.6, 2.15 and 2.16, as quoted in public code'),
    seen('Perez and others, Solar Energy 44 (1990), 271; coefficients from a building simulation’s engineering reference, table 22'),
  ],
  limits: ['Nothing stands round the rig, and the ground is even. In shade take the part from the sun away, and about half of that from the sky.'],
  cautions: [],
});
