import { fallSpeed, rainRate, rainThroughPlane, relativeWind, STANDARD_SPRAY } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure, metresPerSecond } from '../units';
import { put, step } from './working';

export const rainThroughPlaneSheet = defineWorksheet({
  id: 'rain-through-plane',
  title: 'Rain against a forward face',
  tells: 'How much rain a face that looks into the wind of the road gets, beside what falls on the ground.',
  example: { rain_mmh: 5, wind_mph: 65 },
  inputs: {
    rain_mmh: { type: 'number', quantity: 'rain-rate', unit: 'mmh', meaning: 'rain on level ground', limits: { least: rainRate.least, most: rainRate.most } },
    wind_kmh: {
      type: 'number',
      quantity: 'speed',
      unit: 'kmh',
      meaning: 'speed of the rain against the face: that of the rig, and the head wind',
      limits: { least: relativeWind.least, most: relativeWind.most },
    },
    fall_speed_ms: {
      type: 'number',
      quantity: 'speed',
      unit: 'ms',
      meaning: 'how fast the drops fall: about 4 m/s at 1 mm, 6.5 at 2 mm, 8 at 3 mm',
      limits: { least: fallSpeed.least, most: fallSpeed.most },
      otherwise: 6,
    },
  },
  results: {
    through_mmh: { type: 'number', quantity: 'rain-rate', unit: 'mmh', meaning: 'water through the upright plane', decimals: 1 },
    through_lm2min: { type: 'number', quantity: 'rain-rate', unit: 'lm2min', meaning: 'the same, as a spray on the wall', decimals: 2 },
    of_standard_spray_percent: { type: 'number', quantity: 'share', unit: 'percent', meaning: 'of the spray of the standard wall test', decimals: 0 },
  },
  calculate: ({ rain_mmh: r, wind_kmh: V, fall_speed_ms: Vt }) => {
    const through = rainThroughPlane(metresPerSecond(r), metresPerSecond(V), metresPerSecond(Vt));
    if (!through.ok) return through;
    const mm = (si: number): string => put(si, 'rain-rate', 'mmh', 1);
    return accept({
      result: { through_mmh: through.value, through_lm2min: through.value, of_standard_spray_percent: through.value / STANDARD_SPRAY },
      working: [
        step('Through the plane', 'r_v = r V / V_t', `${mm(r)} mm/h × ${figure(V, 1)} m/s / ${figure(Vt, 1)} m/s`, `${mm(through.value)} mm/h`),
        step(
          'Beside the standard wall test',
          'r_v / (5 gal/(ft² h))',
          `${mm(through.value)} mm/h / ${mm(STANDARD_SPRAY)} mm/h`,
          `${put(through.value / STANDARD_SPRAY, 'share', 'percent', 0)} %`,
        ),
      ],
    });
  },
  sources: [
    seen('Closed form: drops move with the wind'),
    memory('Gunn and Kinzer 1949: fall speed of drops'),
    seen('ASTM E1105, spray of 5 gal/(ft² h), 3.4 L/(m² min): as quoted on a test service’s page'),
  ],
  limits: [
    'An upper guide: the air that flows round a face carries the small drops past it.',
    'For a parked rig take the wind at its height, which is less than a weather station’s.',
  ],
  cautions: [],
});
