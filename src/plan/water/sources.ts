import { COMMON_PRACTICE, memory, ours, seen } from '../../terms';
import { sourceOf } from '../trade';

/** What the judgement of water leans on. */
export const DRY_REFERENCE = memory('dry reference of the same wall, meter and day, median and scaled median deviation: common practice of moisture surveys');
export const SCORE = ours('more than 3 spreads above the dry places is damp, more than 6 is wet: our proposal, not a standard');
export const EQUILIBRIUM = seen('Wood Handbook, FPL-GTR-282 (2021), chapter 4, equation 4-5: what sound wood takes on in air');
export const HYSTERESIS = ours('2 points above equilibrium still count as dry: sound wood lies up to some points either side of it');
export const METER_MANUAL = seen('two resistance-meter manuals: usable from about 7 % to fibre saturation; kind of wood first, then temperature');
export const FROZEN = memory('wood at or below freezing, or with water or frost on it, gives no reading: moisture meter manuals');
export const WOOD_FREE = memory('percentages of moisture mean nothing without wood, and metal or foil in reach pins a pinless meter high');
export const DEW_POINT = seen('ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6: a surface colder than the dew point of the air is wet');
export const TREND = ours('drying or rising is said only when the order of the readings would come by chance once in twenty times or less (Theil–Sen, Mann–Kendall, one-sided)');
export const TREND_DRY = ours('dry: within 2 points of the dry places twice, a week apart; wetting also after any rise of more than 3 points after rain');
export const LEAK_STOPPED = ours('a leak counts as stopped after two real rains, or a repeated hose test, without a rise against the dry places');
export const LEAK_PATHS = sourceOf('MOISTLK');
export const RULED_OUT_FIRST = sourceOf('MOISTLK', 'condensation, plumbing, air conditioner and weep holes are ruled out before a leak is named');
export const BONDED_DRYING = ours('a bonded wall dries only through its edges, and the time grows with the square of the way: it does not dry by itself in a season');
export const PRACTICE = COMMON_PRACTICE;
