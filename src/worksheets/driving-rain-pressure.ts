import { AIR_DENSITY, airDensity, drivingSpeed, stagnationPressure, WATER_DENSITY, waterHead } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, metresPerSecond, showIn } from '../units';
import { put, step } from './working';

export const drivingRainPressure = defineWorksheet({
  id: 'driving-rain-pressure',
  title: 'How hard the road presses rain into a forward seam',
  tells: 'The pressure of the air on a face that looks forward, and how high it pushes water up in a gap.',
  example: { speed_mph: 60 },
  inputs: {
    speed_kmh: {
      type: 'number',
      quantity: 'speed',
      unit: 'kmh',
      meaning: 'speed against the air: that of the rig, and the head wind',
      limits: { least: drivingSpeed.least, most: drivingSpeed.most },
    },
    air_density_kgm3: {
      type: 'number',
      quantity: 'density',
      unit: 'kgm3',
      meaning: 'density of the air',
      limits: { least: airDensity.least, most: airDensity.most },
      otherwise: AIR_DENSITY,
    },
  },
  results: {
    pressure_pa: { type: 'number', quantity: 'gauge-pressure', unit: 'pa', meaning: 'above that of the air around', decimals: 0 },
    water_head_mm: { type: 'number', quantity: 'small-length', unit: 'mm', meaning: 'height of water that it holds up', decimals: 0 },
    water_head_in: { type: 'number', quantity: 'small-length', unit: 'in', meaning: 'the same', decimals: 1 },
  },
  calculate: ({ speed_kmh: V, air_density_kgm3: rho }) => {
    const q = stagnationPressure(metresPerSecond(V), rho);
    if (!q.ok) return q;
    const h = waterHead(q.value);
    return accept({
      result: { pressure_pa: q.value, water_head_mm: h, water_head_in: h },
      working: [
        step('Speed in metres per second', '', showIn(V, 'speed', 'kmh'), `${figure(V, 1)} m/s`),
        step('Pressure where the air stops', 'q = ½ ρ V²', `½ × ${figure(rho, 3)} kg/m³ × (${figure(V, 1)} m/s)²`, `${put(q.value, 'gauge-pressure', 'pa', 0)} Pa`),
        step(
          'Height of water',
          'h = q / (ρ_w g)',
          `${put(q.value, 'gauge-pressure', 'pa', 0)} Pa / (${WATER_DENSITY} kg/m³ × 9.80665 m/s²)`,
          `${put(h, 'small-length', 'mm', 0)} mm`,
        ),
      ],
    });
  },
  sources: [seen('Bernoulli’s law, closed form; about 433 Pa at 60 mph is the figure that leak guidance gives')],
  limits: [
    'The middle of a flat face that looks forward. Towards its edges it is less; roof, sides and rear mostly feel suction.',
    'What the gap lets through depends on its width and on what lies behind; this is only the push.',
  ],
  cautions: [],
});
