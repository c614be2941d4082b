import { MOVEMENT_CLASSES } from '../science';
import { type Source, seen } from '../terms';
import type { Limits } from '../units';

/** Inputs of the worksheets about moving joints. */
export const movementInput = (meaning: string, most = 0.5) =>
  ({ type: 'number', quantity: 'small-length', unit: 'mm', meaning, limits: { least: 0, most } as Limits, otherwise: 0 }) as const;

export const classInput = {
  type: 'word',
  meaning: 'movement class as printed on the tube or sheet: for 25LM, 25HM or “±25 %” take 25',
  words: MOVEMENT_CLASSES.map((c) => c.id),
} as const;

export const widthOutput = (meaning: string) => ({ type: 'number', quantity: 'small-length', unit: 'mm', meaning, decimals: 1 }) as const;
export const shareOutput = (meaning: string) => ({ type: 'number', quantity: 'share', unit: 'percent', meaning, decimals: 0 }) as const;

export const CLASS_SOURCES: readonly Source[] = [
  seen('ASTM C920 classes 12.5, 25, 35, 50 and 100/50, as explained in a trade guide'),
  seen('ISO 11600 classes, guide of the British Adhesives and Sealants Association, 1999'),
  seen('Gun butyl and solvent acrylic about ±7.5 %: BuildingGreen, How to choose a sealant that works', 'https://www.buildinggreen.com/blog/how-choose-sealant-works'),
];

export const CLASS_LIMITS: readonly string[] = [
  'The class is that of a cured bead when new, bonded on two sides only and of the right depth. Lap sealants mostly print none: then there is no answer.',
  'A bead that is driven on before it has cured does not reach its class.',
];
