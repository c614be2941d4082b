import { accept, type Kilograms, kilograms, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

/** Load index 60 to 170, ten a line; the first index of each line stands behind it. [kg] */
// biome-ignore format: a table is read by its lines
const MAX_LOAD_KG: readonly number[] = [
  250, 257, 265, 272, 280, 290, 300, 307, 315, 325, // 60
  335, 345, 355, 365, 375, 387, 400, 412, 425, 437, // 70
  450, 462, 475, 487, 500, 515, 530, 545, 560, 580, // 80
  600, 615, 630, 650, 670, 690, 710, 730, 750, 775, // 90
  800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030, // 100
  1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360, // 110
  1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850, // 120
  1900, 1950, 2000, 2060, 2120, 2180, 2240, 2300, 2360, 2430, // 130
  2500, 2575, 2650, 2725, 2800, 2900, 3000, 3075, 3150, 3250, // 140
  3350, 3450, 3550, 3650, 3750, 3875, 4000, 4125, 4250, 4375, // 150
  4500, 4625, 4750, 4875, 5000, 5150, 5300, 5450, 5600, 5800, // 160
  6000, // 170
];
const FIRST = 60;
/** Indices above this one were not read in a printed table. */
const LAST_READ = 150;
/** Printed tables disagree: 2180 or 2190 kg. The lower one is used. */
const DISPUTED = 135;

const SOURCE = 'load index table, ISO 4000-1 and tyre makers, as printed on two public pages';

export const loadIndexValidity: Validity = { of: 'load_index', least: FIRST, most: FIRST + MAX_LOAD_KG.length - 1, words: 'load index 60 to 170', source: SOURCE };

export type IndexedLoad = { readonly load: Kilograms; readonly certainty: 'read' | 'disputed' | 'from-memory' };

/**
 * The most one tyre may carry at the pressure moulded beside it, from its load index.
 *
 * @param load_index  the number before the speed symbol; after a slash, for a tyre of a dual pair
 * @returns           load on one tyre. [kg]
 * @valid             60…170, whole numbers; outside: a refusal `outside-validity`
 * @agrees            1.8 % against the series 45 × 10^(n/80) from which the table is rounded; printed cases exactly
 * @assumes           151 to 170 are from memory, unconfirmed, and follow the decade rule
 * @source            1. Load index tables printed by a tyre maker (75 to 150) and on a public page (60 to 119), as read
 */
export const loadOfIndex = (load_index: number): Result<IndexedLoad> => {
  const kg = Number.isInteger(load_index) && holds(load_index, loadIndexValidity) ? MAX_LOAD_KG[load_index - FIRST] : undefined;
  if (kg === undefined) return outsideValidity(loadIndexValidity, String(load_index));
  return accept({ load: kilograms(kg), certainty: load_index === DISPUTED ? 'disputed' : load_index > LAST_READ ? 'from-memory' : 'read' });
};
