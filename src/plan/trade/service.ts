import rows from './service.json';
import type { ServiceItem } from './trade-types';

/** Recurring care. */
export const service = rows as unknown as readonly ServiceItem[];
