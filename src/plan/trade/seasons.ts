import rows from './seasons.json';
import type { SeasonItem } from './trade-types';

/** Putting away, keeping, and bringing out. */
export const seasons = rows as unknown as readonly SeasonItem[];
