import type { Drawing } from '../../../src/drawing';
import type { Preferences } from '../../../src/units';
import type { Overview } from '../session/session';

/** A face seen from inside, mirrored, in the same coordinates as the outside. */
export const insideDrawing = (_overview: Overview, _face: string, _preferences: Preferences, _width: number): Drawing | undefined => undefined;
