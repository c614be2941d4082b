import rows from './cautions.json';
import type { Caution } from './trade-types';

/** Short warnings for where the hand is about to move. */
export const cautions = rows as unknown as readonly Caution[];

const byId = new Map(cautions.map((row) => [row.id, row]));

export const caution = (id: string): Caution | undefined => byId.get(id);
