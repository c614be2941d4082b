import type { Construction, Rig } from '../rig';
import type { Station } from '../terms';
import { isA } from './trade';

/** How this wall is built: by its station where it has one, else as the rig is described. What nobody knows is judged as bonded. */
export const builtAs = (station: Station | undefined, rig: Rig): Construction => {
  if (station !== undefined && (isA(station.looks, 'wall-corrugated') || isA(station.looks, 'wall-sheet'))) return 'hung';
  if (station !== undefined && (isA(station.looks, 'wall-laminated') || isA(station.looks, 'wall-moulded'))) return 'bonded';
  return rig.construction;
};
