import rows from './defects.json';
import escalationRows from './escalations.json';
import { looksChain } from './looks';
import type { Defect, Escalation } from './trade-types';

/** Typical defects by kind of station. */
export const defects = rows as unknown as readonly Defect[];
/** What raises a defect's urgency or hands it over. */
export const escalations = escalationRows as unknown as readonly Escalation[];

const byId = new Map(defects.map((row) => [row.id, row]));
const byDefect = new Map(defects.map((row) => [row.id, escalations.filter((e) => e.defect === row.id)]));

/** What is wrong in words that stand alone: `Latch does not hold`, where a list at the latch says `Does not hold`. */
export const defectTitle = (row: Defect): string => row.title ?? row.name;

/** One defect by its id (`window.weep-blocked`); undefined when no such row exists. */
export const defect = (id: string): Defect | undefined => byId.get(id);

export const escalationsOf = (id: string): readonly Escalation[] => byDefect.get(id) ?? [];

const known = new Map<string, readonly Defect[]>();

/** The defects of a kind of station, its own first, then those of the wider kinds. */
export const defectsOf = (kind: string): readonly Defect[] => {
  const made = known.get(kind);
  if (made) return made;
  const all = looksChain(kind).flatMap((look) => look.defects.flatMap((id) => byId.get(id) ?? []));
  known.set(kind, all);
  return all;
};
