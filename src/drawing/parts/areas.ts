import type { PartDrawing } from './part-drawing';

/** A whole face: its outline is the face's own, drawn once. Nothing is added, so that its openings stay in sight. */
export const areas: readonly PartDrawing[] = [{ parts: ['wall-skin', 'roof-covering', 'frame-below'], draw: () => [] }];
