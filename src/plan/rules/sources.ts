import { COMMON_PRACTICE, ours, seen } from '../../terms';
import { sourceOf } from '../trade';

/** Sources that several rules lean on. */
export const PRACTICE = COMMON_PRACTICE;
export const SEAL_SCALE = ours('our own scale S0 to S5, on the pattern of ISO 4628-1; not a published scale, to be tried by two people on one rig');
export const SEALANT_CHEMISTRY = sourceOf('SEALCHEM');
export const OPEN_SEAL = COMMON_PRACTICE;
export const ROAD_WIND = sourceOf('MOISTLK', 'about 433 Pa of wind pressure at 60 mph');
export const TYRE_80 = sourceOf('TYRE80');
export const TYRE_AGE = sourceOf('TYREAGE');
export const TYRE_CRACK = sourceOf('TYRECRK');
export const TYRE_TREAD = sourceOf('TYRETRD');
export const MOISTURE_BANDS = sourceOf('MOISTBD');
export const DELAMINATION = sourceOf('DELAM');
export const LEAK_PATHS = sourceOf('MOISTLK');
export const GAS_SMELL = sourceOf('LPSOAP');
export const THREE_DIGITS = seen('64 FR 36807, 8 July 1999: four-digit date codes since July 2000');
