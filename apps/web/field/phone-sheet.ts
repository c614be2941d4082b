import type { Drawing } from '../../../src/drawing';

/** The smallest type of the field. [px] */
const TYPE_PX = 17;

/** The unfolded rig on a phone: 28 px to the metre, heavy marks, no numbers and no dimensions. */
export const PHONE_SHEET = { px: 28, mark_px: 17, type_px: TYPE_PX, heavy: true, numbers: false, dimensions: false } as const;

/** On a sheet as small as this only the names of the sides can be read; what is written inside slide-outs is left out. */
export const withoutSmallPrint = (drawing: Drawing): Drawing => ({
  ...drawing,
  primitives: drawing.primitives.filter((p) => p.form !== 'text' || (p.ink === 'text-bold' && !p.text.startsWith('Slide-out') && p.text !== 'Roof')),
});
