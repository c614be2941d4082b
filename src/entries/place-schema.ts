import * as z from 'zod/mini';
import type { Place } from '../terms';

const name = z.string().check(z.minLength(1), z.maxLength(200));
const side = z.enum(['outside', 'inside']);
const coordinate = z.number().check(z.minimum(-100), z.maximum(100));
const point = z.readonly(z.tuple([coordinate, coordinate]));
const along = z.number().check(z.minimum(0), z.maximum(200));

/** Where an entry belongs, as it stands in a file. Coordinates are metres on the face's own axes. */
export const placeSchema: z.ZodMiniType<Place> = z.discriminatedUnion('at', [
  z.strictObject({ at: z.literal('rig') }),
  z.strictObject({ at: z.literal('station'), station: name, side }),
  z.strictObject({ at: z.literal('point'), face: name, side, point_m: point }),
  z.strictObject({ at: z.literal('outline'), face: name, side, outline_m: z.readonly(z.array(point).check(z.minLength(3), z.maxLength(1000))) }),
  z.strictObject({ at: z.literal('stretch'), station: name, side, from_m: along, to_m: along }),
]);
