import type { Ink, Primitive } from './primitives';

/** Below this many px to the metre a drawing keeps its outlines only: stitches and panes would run together. */
const FINE_FROM_PX = 40;

const COARSE: Readonly<Partial<Record<Ink, Ink>>> = {
  face: 'coarse-face',
  slide: 'coarse-face',
  seam: 'coarse-seam',
  opening: 'coarse-line',
  fitting: 'coarse-line',
  trim: 'coarse-seam',
  gasket: 'coarse-seam',
};
const DROPPED: readonly Ink[] = ['stitch', 'trim-core', 'detail', 'ghost', 'decal', 'hatch'];

const simpler = (p: Primitive): readonly Primitive[] => {
  if (p.form === 'group') return [p.role === 'finding' ? p : { ...p, children: p.children.flatMap(simpler) }];
  if (DROPPED.includes(p.ink)) return [];
  const ink = COARSE[p.ink];
  return [ink === undefined ? p : { ...p, ink }];
};

/** The same drawing as it is drawn at this scale. */
export const atScale = (primitives: readonly Primitive[], px: number): readonly Primitive[] => (px >= FINE_FROM_PX ? primitives : primitives.flatMap(simpler));
