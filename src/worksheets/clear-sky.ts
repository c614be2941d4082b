import { barometerValidity, clearSkyOver, lightLeft, SOLAR_CONSTANT, siteAltitude, underCloud } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { absolutePascals, accept, figure, metres, share } from '../units';
import { cloudInput, turbidityInput, watts } from './sun-inputs';
import { step } from './working';

const light = (meaning: string) => ({ type: 'number', quantity: 'irradiance', unit: 'wm2', meaning, decimals: 0 }) as const;

export const clearSky = defineWorksheet({
  id: 'clear-sky',
  title: 'Sunlight through the air',
  tells: 'How much sunlight comes straight from the sun and how much from the whole sky, without clouds or under them.',
  example: { sun_elevation_deg: 45, altitude_m: 340, cloud_percent: 50 },
  inputs: {
    sun_elevation_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'how high the sun is seen above the horizon', limits: { least: 0, most: Math.PI / 2 } },
    altitude_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'height above sea level', limits: { least: siteAltitude.least, most: siteAltitude.most }, otherwise: 0 },
    turbidity_number: turbidityInput,
    cloud_percent: cloudInput,
    extraterrestrial_wm2: {
      type: 'number',
      quantity: 'irradiance',
      unit: 'wm2',
      meaning: 'sunlight outside the air that day: about 1408 in January, 1316 in July',
      limits: { least: 1300, most: 1430 },
      otherwise: SOLAR_CONSTANT,
    },
    barometer_hpa: {
      type: 'number',
      quantity: 'absolute-pressure',
      unit: 'hpa',
      meaning: 'barometer reduced to sea level, as the weather report gives it',
      limits: { least: barometerValidity.least, most: barometerValidity.most },
      otherwise: 1013.25,
    },
  },
  results: {
    global_wm2: light('on level ground'),
    direct_wm2: light('straight from the sun, on a plane that faces it'),
    diffuse_wm2: light('from the whole sky, on level ground'),
    air_mass_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'how many times the air overhead the light crosses', decimals: 2 },
    left_percent: { type: 'number', quantity: 'share', unit: 'percent', meaning: 'what clouds leave of the light on level ground', decimals: 0 },
  },
  calculate: (i) => {
    const over = clearSkyOver({ altitude: metres(i.altitude_m), turbidity: i.turbidity_number, barometer: absolutePascals(i.barometer_hpa) });
    if (!over.ok) return over;
    // A millionth of a degree is not worth a refusal: a sun on the very horizon counts as up.
    const up = Math.max(Math.sin(i.sun_elevation_deg), 1e-12);
    const clear = over.value({ up, apparent_elevation: i.sun_elevation_deg, extraterrestrial: i.extraterrestrial_wm2 });
    const clouded = underCloud(clear, up, share(i.cloud_percent));
    if (!clouded.ok) return clouded;
    const s = clouded.value;
    const left = lightLeft(share(i.cloud_percent));
    return accept({
      result: { global_wm2: s.global, direct_wm2: s.direct, diffuse_wm2: s.diffuse, air_mass_number: s.air_mass, left_percent: left },
      working: [
        step('Air crossed', 'm = 1 / (sin h + 0.50572 (h + 6.07995)^−1.6364)', `h = ${figure((i.sun_elevation_deg * 180) / Math.PI, 1)}°`, figure(clear.air_mass, 2)),
        step(
          'Level ground, no cloud',
          'G = c₁ E sin h exp(−c₂ m (f₁ + f₂ (T − 1)))',
          `T = ${figure(i.turbidity_number, 1)}, E = ${watts(i.extraterrestrial_wm2)}`,
          watts(clear.global),
        ),
        step('Straight from the sun, no cloud', 'B = E b exp(−0.09 m (T − 1)), held to what the ground gets', '', watts(clear.direct)),
        step(
          'Under cloud',
          'G × (1 − 0.75 N^3.4)',
          `N = ${figure(i.cloud_percent, 2)}`,
          `${watts(s.global)}, straight from the sun ${watts(s.direct)}, from the sky ${watts(s.diffuse)}`,
        ),
      ],
    });
  },
  sources: [
    seen('Ineichen and Perez, Solar Energy 73 (2002), 151, and Kasten and Young, Applied Optics 28 (1989), 4735, as in public code'),
    seen('Kasten and Czeplak, Solar Energy 24 (1980), 177, as quoted in public documentation'),
    ours('Under cloud the scattered share grows from that of the clear sky to all of it with the square of the cover'),
  ],
  limits: [
    'Haze is a guess by climate: one step of turbidity moves the light from the sun by about a tenth.',
    'Cloud cover of one hour only; a mean over a day or a month put in here gives wrong answers. A single hour under broken cloud may be off by half.',
  ],
  cautions: [],
});
