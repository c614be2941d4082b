import { openingsAboveAndUpslope, type Rig } from '../rig';
import type { Place, StationId } from '../terms';

/** More than this many suspects help nobody (our choice). */
export const MOST_SUSPECTS = 3;

/**
 * The openings and seams from which water most likely comes to a place: an opening itself for what shows inside behind it, then what lies
 * above and up-slope, windows and water heater first, then the nearest.
 */
export const suspectsAt = (place: Place, rig: Rig): readonly StationId[] => {
  const above = openingsAboveAndUpslope(rig, place, MOST_SUSPECTS).map((s) => s.station);
  const itself = place.at === 'station' && place.side === 'inside' && rig.stations.some((s) => s.id === place.station && s.cut_through);
  return itself ? [place.station, ...above].slice(0, MOST_SUSPECTS) : above;
};

/** The same in words, with semicolons: names hold commas. */
export const suspectWords = (suspects: readonly StationId[], rig: Rig): string => suspects.map((id) => rig.stations.find((s) => s.id === id)?.name ?? id).join('; ');
