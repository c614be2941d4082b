import { type Answers, applyLayout, blankRig, layoutFrom, type Rig, type RigKindId } from '../src/rig';
import type { FaceId, FacePoint, Shape } from '../src/terms';
import type { Chance } from './chance';

/** Only rigs with walls of their own: a folding camper's canvas and a teardrop's curved shell are walked by none of these drops. */
const KINDS: readonly RigKindId[] = ['travel-trailer', 'travel-trailer', 'travel-trailer', 'fifth-wheel', 'class-a', 'class-c', 'truck-camper'];

/** An invented rig on one of the starting layouts: geometry only, nothing of what the tool thinks about water. */
export const inventRig = (c: Chance, id: string): Rig => {
  const kind = c.pick(KINDS);
  const bonded = c.happens(0.55);
  const answers: Answers = {
    kind,
    name: 'Invented',
    skin: bonded ? 'fibreglass' : c.pick(['corrugated-aluminium', 'sheet-aluminium'] as const),
    construction: bonded ? 'bonded' : 'hung',
    roof: c.pick(['epdm', 'tpo', 'pvc'] as const),
  };
  const layout = layoutFrom(answers);
  if (!layout.ok) throw new Error(JSON.stringify(layout.refusals));
  return applyLayout({ ...blankRig(id), name: answers.name, kind, skin: answers.skin, construction: answers.construction, roof: answers.roof }, layout.value);
};

export type Extent = { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };

export const WALLS = ['road', 'curb', 'front', 'rear'] as const;
export type WallId = (typeof WALLS)[number];
export const isWall = (face: FaceId): face is WallId => (WALLS as readonly string[]).includes(face);

export const extentOf = (points: readonly FacePoint[]): Extent => {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
};

export const faceExtent = (rig: Rig, face: FaceId): Extent | undefined => {
  const found = rig.faces.find((f) => f.id === face);
  return found && extentOf(found.outline_m);
};

const corners = (shape: Shape): readonly (readonly FacePoint[])[] => {
  if (shape.form === 'lines') return shape.lines_m;
  if (shape.form === 'poly') return [[...shape.points_m, ...shape.points_m.slice(0, 1)]];
  const { x_m: x, y_m: y, w_m: w, h_m: h } = shape;
  return [
    [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
      [x, y],
    ],
  ];
};

export const extentOfShape = (shape: Shape): Extent => extentOf(corners(shape).flat());

/** A point on the edge of a part, every centimetre as likely as the next. */
export const onEdge = (shape: Shape, c: Chance): FacePoint => {
  const pieces = corners(shape).flatMap((line) => line.slice(1).map((b, i) => [line[i] ?? b, b] as const));
  const [a, b] = c.weighted(pieces, ([p, q]) => Math.hypot(q[0] - p[0], q[1] - p[1]) + 1e-9);
  const t = c.even();
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
};
