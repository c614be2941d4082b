import type { Input } from '../terms';
import { toSi } from '../units';

const temperature = { least: toSi(-50, 'temperature', 'c'), most: toSi(80, 'temperature', 'c') };
const altitude = { least: -430, most: 5500 };
/** No road tyre is set above 1 000 kPa (145 psi). */
const pressure = { least: 0, most: 1_000_000 };

/** What both pressure worksheets ask for. Limits are this project's own: what happens on roads. */
export const pressureInputs = {
  set_pressure_kpa: {
    type: 'number',
    quantity: 'gauge-pressure',
    unit: 'kpa',
    meaning: 'cold pressure that was set, as the gauge showed it',
    limits: { ...pressure, least: 50_000 },
  },
  set_temperature_c: { type: 'number', quantity: 'temperature', unit: 'c', meaning: 'temperature of the tyre when it was set', limits: temperature, otherwise: 20 },
  set_altitude_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'height above sea level where it was set', limits: altitude, otherwise: 0 },
  temperature_c: { type: 'number', quantity: 'temperature', unit: 'c', meaning: 'temperature of the tyre now', limits: temperature },
  altitude_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'height above sea level now', limits: altitude, otherwise: 0 },
} as const satisfies Record<string, Input>;

export const readingInput = {
  type: 'number',
  quantity: 'gauge-pressure',
  unit: 'kpa',
  meaning: 'cold pressure now, as the gauge shows it',
  limits: pressure,
} as const satisfies Input;
