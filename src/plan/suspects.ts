import { openingsAboveAndUpslope, type Rig } from '../rig';
import type { Place, StationId } from '../terms';

/** More than this many suspects help nobody (our choice). */
const MOST = 3;

/** The openings and seams from which water most likely comes to a place: above and up-slope, windows and water heater first, then the nearest. */
export const suspectsAt = (place: Place, rig: Rig): readonly StationId[] => openingsAboveAndUpslope(rig, place, MOST).map((s) => s.station);

/** The same in words: `Window 2, roof vent 1`. */
export const suspectWords = (suspects: readonly StationId[], rig: Rig): string => suspects.map((id) => rig.stations.find((s) => s.id === id)?.name ?? id).join(', ');
