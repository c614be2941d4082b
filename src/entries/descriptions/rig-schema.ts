import * as z from 'zod/mini';
import type { Layout } from '../../rig';
import type { Shape, Station } from '../../terms';

/**
 * The rig's own records as they stand in a file: a layout's result, a station, a shape. Metres on a face's axes.
 * Plain and complete, so that a later change of a starting layout alters no rig that was placed before.
 */
const name = z.string().check(z.minLength(1), z.maxLength(200));
const words = z.string().check(z.maxLength(500));
const m = z.number().check(z.minimum(-100), z.maximum(100));
const size_m = z.number().check(z.minimum(0), z.maximum(100));
const point = z.readonly(z.tuple([m, m]));
const certainty = z.enum(['typical', 'confirmed']);

const box = { x_m: m, y_m: m, w_m: size_m, h_m: size_m };

export const shapeSchema: z.ZodMiniType<Shape> = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('rect'), ...box }),
  z.strictObject({ form: z.literal('circle'), ...box }),
  z.strictObject({ form: z.literal('poly'), points_m: z.readonly(z.array(point).check(z.minLength(3), z.maxLength(1000))) }),
  z.strictObject({
    form: z.literal('lines'),
    lines_m: z.readonly(z.array(z.readonly(z.array(point).check(z.minLength(2), z.maxLength(1000)))).check(z.minLength(1), z.maxLength(200))),
  }),
]);

const part = z.strictObject({ id: name, part: name, name: words, looks: name, shape: shapeSchema, face: z.exactOptional(name) });

const station = z.strictObject({
  id: name,
  name: words,
  part: name,
  group: z.enum(['opening', 'seam', 'fitting', 'wheel', 'area', 'equipment']),
  looks: name,
  face: name,
  shape: shapeSchema,
  size: certainty,
  bead: z.enum(['all-round', 'top-and-upper-sides', 'upper-long-edge', 'both-long-edges', 'fastener-heads', 'none-gasket', 'none']),
  bead_m: size_m,
  outline_m: z.number().check(z.minimum(0), z.maximum(1000)),
  top_m: m,
  reach: z.enum(['ground', 'ladder', 'roof', 'under', 'inside']),
  sealed_with: words,
  sealed_to: words,
  last_sealed: words,
  behind: words,
  cut_through: z.boolean(),
  parts: z.readonly(z.array(part)),
  hinge: z.exactOptional(z.enum(['top', 'bottom', 'front', 'rear', 'left', 'right'])),
  slide: z.exactOptional(name),
  axle: z.exactOptional(name),
  count: z.exactOptional(z.int().check(z.minimum(1), z.maximum(12))),
  off_wall: z.exactOptional(z.boolean()),
  layer: z.exactOptional(z.boolean()),
  within: z.exactOptional(name),
  retired: z.exactOptional(z.boolean()),
  added: z.exactOptional(z.boolean()),
});

export const stationSchema: z.ZodMiniType<Station> = station;

const layout = z.strictObject({
  overall: z.strictObject({ length_m: size_m, body_length_m: size_m, width_m: size_m, height_m: size_m, hitch_ahead_m: size_m }),
  levels: z.strictObject({ skirt_m: m, floor_m: m, wall_top_m: m, roof_top_m: m }),
  faces: z.array(
    z.strictObject({ id: name, name: words, outline_m: z.array(point).check(z.minLength(3)), x_axis: words, y_axis: words, inside_name: words, slide: z.exactOptional(name) }),
  ),
  axles: z.array(
    z.strictObject({
      id: name,
      x_m: m,
      tyre: words,
      tyre_diameter_m: size_m,
      tyre_width_m: size_m,
      dual: z.boolean(),
      kind: words,
      host_vehicle: z.boolean(),
      outer_edge_m: m,
    }),
  ),
  slides: z.array(z.strictObject({ id: name, face: name, x_m: m, y_m: m, w_m: size_m, h_m: size_m, travel_m: size_m })),
  stations: z.array(station),
});

export const layoutSchema: z.ZodMiniType<Layout> = layout;
