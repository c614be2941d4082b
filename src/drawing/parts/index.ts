import type { FaceId, Shape, Station } from '../../terms';
import { boundsOf } from '../frame';
import type { Onto, Point } from '../path';
import { penOn } from '../pen';
import type { Primitive } from '../primitives';
import { areas } from './areas';
import { doors } from './doors';
import { fittings } from './fittings';
import { inlets } from './inlets';
import { lamps } from './lamps';
import type { PartBox, PartDrawing } from './part-drawing';
import { roof } from './roof';
import { seams } from './seams';
import { underside } from './underside';
import { vents } from './vents';
import { windows } from './windows';

/** Every family of parts and how it is drawn. A new part needs one line here only if no family fits it. */
export const partDrawings: readonly PartDrawing[] = [...windows, ...doors, ...inlets, ...vents, ...roof, ...lamps, ...fittings, ...underside, ...seams, ...areas];

const byName = new Map(partDrawings.flatMap((d) => d.parts.map((name) => [name, d] as const)));
const families = [...byName.keys()].filter((n) => n.endsWith('*')).sort((a, b) => b.length - a.length);

/** The drawing of a part: its own name first, then the longest family name that begins it. */
export const drawingOf = (part: string): PartDrawing | undefined => {
  const family = families.find((f) => part.startsWith(f.slice(0, -1)));
  return byName.get(part) ?? (family === undefined ? undefined : byName.get(family));
};

/** A part nobody has drawn yet still has its outline: a person may add one that no table knows. */
const plain: PartDrawing = { parts: [], draw: ({ p, w, h, runs }) => (runs.length > 0 ? runs.map((r) => p.bent('fitting', r, 0)) : [p.box('fitting', 0, 0, w, h, 0.02)]) };

/** Corners of a shape, for its bounding box. */
export const shapePoints = (shape: Shape): readonly Point[] => {
  if (shape.form === 'poly') return shape.points_m;
  if (shape.form === 'lines') return shape.lines_m.flat();
  return [
    [shape.x_m, shape.y_m],
    [shape.x_m + shape.w_m, shape.y_m + shape.h_m],
  ];
};

/** A part drawn where it stands on its face. */
export const drawPart = (part: string, shape: Shape, onto: Onto, more: { readonly hinge?: Station['hinge']; readonly fine?: boolean } = {}): readonly Primitive[] => {
  const { x0, y0, x1, y1 } = boundsOf(shapePoints(shape));
  const local: Onto = (x, y) => onto(x0 + x, y0 + y);
  const moved = (run: readonly Point[]): readonly Point[] => run.map(([x, y]) => [x - x0, y - y0] as const);
  const runs = shape.form === 'lines' ? shape.lines_m.map(moved) : shape.form === 'poly' ? [moved(shape.points_m)] : [];
  const box: PartBox = { p: penOn(local), w: x1 - x0, h: y1 - y0, hinge: more.hinge ?? 'top', fine: more.fine ?? false, runs };
  return (drawingOf(part) ?? plain).draw(box);
};

/**
 * A station with the small fittings that are looked at together with it.
 *
 * @param ontoFace  how a face lies on the sheet; undefined where it is not on it: what is there is left out
 */
export const drawStation = (station: Station, ontoFace: (face: FaceId) => Onto | undefined, fine = false): readonly Primitive[] => {
  const own = ontoFace(station.face);
  return [
    ...(own ? drawPart(station.part, station.shape, own, { ...(station.hinge ? { hinge: station.hinge } : {}), fine }) : []),
    ...station.parts.flatMap((p) => {
      const onto = ontoFace(p.face ?? station.face);
      return onto ? drawPart(p.part, p.shape, onto, { fine }) : [];
    }),
  ];
};
