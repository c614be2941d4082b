/**
 * What a drawing is made of, in the units of its sheet (x right, y down): metres for drawings of the rig, CSS px for
 * pictures and plots. The same list becomes SVG text for files and paper, and elements on the screen. Stroke widths are
 * CSS px and do not scale with the sheet; they belong to the ink, not to the drawing.
 */
export const INKS = [
  // the rig
  'face',
  'face-edge',
  'fold',
  'seam',
  'stitch',
  'trim',
  'trim-core',
  'gasket',
  'opening',
  'fitting',
  'detail',
  'ghost',
  'decal',
  'slide',
  'ground',
  'hatch',
  'host',
  'tyre',
  'hub',
  // the rig at a small scale
  'coarse-face',
  'coarse-line',
  'coarse-seam',
  // laid over it
  'dimension',
  'tick-end',
  'leader',
  'scale-dark',
  'scale-light',
  'selected',
  'plate',
  'bead',
  'bead-edge',
  'hairline',
  'here',
  // water: chance above a threshold, contours, ways in, soundings
  'wet-1',
  'wet-2',
  'wet-3',
  'wet-4',
  'contour',
  'contour-half',
  'bay',
  'way-casing',
  'way-likely',
  'way-possible',
  'way-unlikely',
  'ring',
  'rain-fell',
  'wet-outline',
  // marks
  'mark',
  'mark-frame',
  'mark-gap',
  'mark-stop',
  'mark-moving',
  'mark-rain',
  'mark-season',
  'flag',
  // pictures and plots
  'picture-line',
  'picture-thin',
  'picture-fill',
  'picture-paper',
  'sealant',
  'axis',
  'grid',
  'shade',
  'band',
  'data',
  'data-thin',
  'data-one',
  'data-guess',
  'point',
  'point-open',
  'point-one',
  // text
  'text',
  'text-bold',
  'text-small',
  'text-number',
  'text-one',
  'sounding',
  'sounding-wet',
  'sounding-next',
] as const;

export type Ink = (typeof INKS)[number];

export type PathPrimitive = { readonly form: 'path' /** Absolute M, L, C and Z only, so that a sheet can be scaled by its numbers. */; readonly d: string; readonly ink: Ink };
export type CirclePrimitive = { readonly form: 'circle'; readonly cx: number; readonly cy: number; readonly r: number; readonly ink: Ink };
export type TextPrimitive = {
  readonly form: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  /** Height of the type. [sheet units] */
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly ink: Ink;
  /** Clockwise about its own point. [degrees] */
  readonly rotate?: number;
};
/** A station or a mark: one focusable thing with a spoken label. `hit` is its touch area. */
export type GroupPrimitive = {
  readonly form: 'group';
  readonly id: string;
  readonly label: string;
  readonly role: 'station' | 'finding' | 'plain';
  readonly hit?: readonly [x: number, y: number, w: number, h: number];
  readonly children: readonly Primitive[];
};

export type Primitive = PathPrimitive | CirclePrimitive | TextPrimitive | GroupPrimitive;

export type Drawing = {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  /** CSS px to one unit of the sheet, for which text and marks were sized. On paper 96 px are 25.4 mm. */
  readonly px: number;
  readonly primitives: readonly Primitive[];
};
