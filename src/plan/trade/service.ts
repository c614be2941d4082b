import rows from './service.json';
import type { ServiceItem } from './trade-types';

/** Recurring care. */
export const service = rows as unknown as readonly ServiceItem[];

const byId = new Map(service.map((row) => [row.id, row]));

export const serviceItem = (id: string): ServiceItem | undefined => byId.get(id);
