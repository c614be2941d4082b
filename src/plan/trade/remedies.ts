import { ownRemedies } from './own-remedies';
import rows from './remedies.json';
import type { Remedy } from './trade-types';

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

/** Ways of putting right. Each step stands alone in a list, and so begins like one. */
export const remedies: readonly Remedy[] = [...(rows as unknown as readonly Remedy[]), ...ownRemedies].map((row) => ({ ...row, steps: row.steps.map(sentence) }));

const byId = new Map(remedies.map((row) => [row.id, row]));

export const remedy = (id: string): Remedy | undefined => byId.get(id);
