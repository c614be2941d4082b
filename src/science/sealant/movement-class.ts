/** What a movement class promises: how far a cured bead may be pulled and squeezed, of its width as installed. [1] */
export type MovementClass = { readonly id: string; readonly extension: number; readonly compression: number; readonly words: string };

/**
 * Classes as they stand on tubes and sheets. Letters after an ISO class (LM, HM low or high modulus; E elastic, P plastic) do not change the movement.
 * ASTM C920 as explained in a trade guide; ISO 11600 as in the guide of the British Adhesives and Sealants Association, 1999: both read.
 */
export const MOVEMENT_CLASSES = [
  { id: '7.5', extension: 0.075, compression: 0.075, words: 'ISO 11600 class 7.5P; gun butyl and solvent acrylic, below the lowest class of ASTM C920' },
  { id: '12.5', extension: 0.125, compression: 0.125, words: 'ASTM C920 class 12.5; ISO 11600 12.5E or 12.5P' },
  { id: '20', extension: 0.2, compression: 0.2, words: 'ISO 11600 20LM or 20HM' },
  { id: '25', extension: 0.25, compression: 0.25, words: 'ASTM C920 class 25; ISO 11600 25LM or 25HM' },
  { id: '35', extension: 0.35, compression: 0.35, words: 'ASTM C920 class 35' },
  { id: '50', extension: 0.5, compression: 0.5, words: 'ASTM C920 class 50' },
  { id: '100/50', extension: 1, compression: 0.5, words: 'ASTM C920 class 100/50: doubles when pulled, halves when squeezed' },
] as const satisfies readonly MovementClass[];

export type MovementClassId = (typeof MOVEMENT_CLASSES)[number]['id'];

export const movementClass = (id: MovementClassId): MovementClass => {
  const found = MOVEMENT_CLASSES.find((c) => c.id === id);
  if (found === undefined) throw new Error(`no movement class ${id}`);
  return found;
};
