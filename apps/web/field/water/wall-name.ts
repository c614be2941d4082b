import type { Spot } from '../../../../src/plan';
import type { Face, Rig } from '../../../../src/rig';
import type { Side } from '../../../../src/terms';
import type { Preferences } from '../../../../src/units';
import { placeWords, tapesOf } from './wall-measure';

/** `Ceiling`, `Curb wall, inside`, `Curb side, outside`. */
export const wallName = (face: Face, side: Side): string => (side === 'inside' ? face.inside_name : `${face.name}, outside`);

/** Where a metered place is, as a person in these units would find it again; a station by its own words. */
export const spotWords = (rig: Rig, spot: Pick<Spot, 'place' | 'face' | 'side' | 'point_m' | 'words'>, preferences: Preferences): string => {
  const face = rig.faces.find((f) => f.id === spot.face);
  if (!face || spot.place.at !== 'point') return spot.words;
  return `${wallName(face, spot.side)}, ${placeWords(spot.point_m, tapesOf(rig, face, spot.side), preferences)}`;
};
