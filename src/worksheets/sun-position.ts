import { sunAt } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure } from '../units';
import { inDegrees, SUN_LIMITS, siteFrom, siteInputs, timeFrom, timeInput } from './sun-inputs';
import { step } from './working';

const angle = (meaning: string, decimals = 2) => ({ type: 'number', quantity: 'angle', unit: 'deg', meaning, decimals }) as const;

export const sunPosition = defineWorksheet({
  id: 'sun-position',
  title: 'Where the sun stands',
  tells: 'How high the sun is and in which direction, at a place and a time.',
  example: { latitude_deg: 33.45, longitude_deg: -112.07, altitude_m: 340, utc: '2026-06-21T16:00:00Z' },
  inputs: { ...siteInputs, utc: timeInput('the time', '2026-06-21T09:00:00-07:00') },
  results: {
    apparent_elevation_deg: angle('above the horizon as it is seen, light bent by the air; below 0 it is down'),
    azimuth_deg: angle('direction, clockwise from true north'),
    elevation_deg: angle('above the horizon as it stands'),
    declination_deg: angle('north of the equator'),
    right_ascension_deg: angle('among the stars'),
    hour_angle_deg: angle('past the meridian; before it below 0'),
    equation_of_time_min: { type: 'number', quantity: 'duration', unit: 'min', meaning: 'how far a sundial is ahead of even time', decimals: 1 },
    extraterrestrial_wm2: { type: 'number', quantity: 'irradiance', unit: 'wm2', meaning: 'sunlight outside the air, on a plane that faces the sun', decimals: 0 },
  },
  calculate: (given) => {
    const at = timeFrom('utc', given.utc);
    if (!at.ok) return at;
    const found = sunAt(at.value, siteFrom(given));
    if (!found.ok) return found;
    const s = found.value;
    const turn = (rad: number): number => (rad < 0 ? rad + 2 * Math.PI : rad);
    return accept({
      result: {
        apparent_elevation_deg: s.apparent_elevation,
        azimuth_deg: s.azimuth,
        elevation_deg: s.elevation,
        declination_deg: s.place.declination,
        right_ascension_deg: turn(s.place.right_ascension),
        hour_angle_deg: s.hour_angle,
        equation_of_time_min: s.place.equation_of_time,
        extraterrestrial_wm2: s.extraterrestrial,
      },
      working: [
        step(
          'Place of the sun among the stars',
          'yearly path with aberration and nutation',
          given.utc.trim(),
          `declination ${inDegrees(s.place.declination)}, right ascension ${inDegrees(turn(s.place.right_ascension))}`,
        ),
        step(
          'Turned to the horizon',
          'sin h = sin φ sin δ + cos φ cos δ cos H',
          `H = ${inDegrees(s.hour_angle)}`,
          `${inDegrees(s.elevation)} high, towards ${inDegrees(s.azimuth)}`,
        ),
        step('Lifted by the air', 'h + 1.02′ / tan(h + 10.3/(h + 5.11))', 'standard pressure for the altitude, 12 °C', inDegrees(s.apparent_elevation)),
        step('Sundial ahead of even time', 'L₀ − α', '', `${figure(s.place.equation_of_time / 60, 1)} min`),
      ],
      remarks: s.apparent_elevation < 0 ? ['The sun is below the horizon.'] : [],
    });
  },
  sources: [
    memory('Meeus, Astronomical Algorithms, 2nd ed. (1998), chapters 12, 16, 22, 25 and 28'),
    seen('Reda and Andreas, Solar Position Algorithm, NREL/TP-560-34302 (2008), table A5.1 as quoted in public code; 420 instants by an independent implementation'),
  ],
  limits: [...SUN_LIMITS, 'Years 1900 to 2100. Near the horizon cold or warm air lifts the sun by some hundredths of a degree more or less.'],
  cautions: [],
});
