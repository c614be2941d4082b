import type { Rig } from '../rig';
import type { Place, StationId } from '../terms';

/** The openings from which water most likely comes to a place: above and up-slope, the nearest first, windows and water heater before others. */
export const suspectsAt = (_place: Place, _rig: Rig): readonly StationId[] => [];
