import { type Drawing, type Frame, faceDrawing, frameAlone, NO_MARKS } from '../../../src/drawing';
import type { Rig } from '../../../src/rig';
import type { FaceId } from '../../../src/terms';
import type { Preferences } from '../../../src/units';
import type { Overview } from '../session/session';
import { marksOf } from './drawings';

/** A face seen from inside, mirrored, in the same coordinates as the outside. */
export const insideDrawing = (overview: Overview, face: FaceId, preferences: Preferences, width_px: number): Drawing =>
  faceDrawing(overview.rig, face, 'inside', marksOf(overview), { preferences, fit_px: width_px });

export type EditSheet = { readonly drawing: Drawing; readonly frame: Frame };

/** One face to work on, without marks, and how its axes run on the sheet. */
export const editSheet = (rig: Rig, face: FaceId, preferences: Preferences, width_px: number): EditSheet => ({
  drawing: faceDrawing(rig, face, 'outside', NO_MARKS, { preferences, fit_px: width_px }),
  frame: frameAlone(rig, face, 'outside'),
});

/** A shift on the sheet as a shift on the face's own axes: turned or mirrored, never stretched. [m] */
export const faceShift = ({ along, across }: Frame, dx: number, dy: number): readonly [number, number] => [dx * along[0] + dy * along[1], dx * across[0] + dy * across[1]];
