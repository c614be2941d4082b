import { ownRemedies } from './own-remedies';
import rows from './remedies.json';
import type { Remedy } from './trade-types';

/** Ways of putting right. */
export const remedies: readonly Remedy[] = [...(rows as unknown as readonly Remedy[]), ...ownRemedies];

const byId = new Map(remedies.map((row) => [row.id, row]));

export const remedy = (id: string): Remedy | undefined => byId.get(id);
