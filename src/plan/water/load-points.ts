import { box, pointsOf, type Rig, waterSources } from '../../rig';
import type { FaceId, FacePoint, Shape, Station } from '../../terms';
import type { NearBy } from './loose-skin-types';

type Segment = readonly [FacePoint, FacePoint];

const toPoint = ([a, b]: Segment, [x, y]: FacePoint): number => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const long = dx * dx + dy * dy;
  const t = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / long));
  return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
};

const side = ([a, b]: Segment, p: FacePoint): number => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
const meet = (s: Segment, t: Segment): boolean => side(s, t[0]) * side(s, t[1]) < 0 && side(t, s[0]) * side(t, s[1]) < 0;

const between = (s: Segment, t: Segment): number => (meet(s, t) ? 0 : Math.min(toPoint(s, t[0]), toPoint(s, t[1]), toPoint(t, s[0]), toPoint(t, s[1])));

const ringOf = (points: readonly FacePoint[]): readonly Segment[] => points.map((p, i) => [p, points[(i + 1) % points.length] ?? p] as const);

const edgesOf = (shape: Shape): readonly Segment[] =>
  shape.form === 'lines' ? shape.lines_m.flatMap((line) => line.slice(1).map((p, i): Segment => [line[i] ?? p, p])) : ringOf(pointsOf(shape));

const inside = ([x, y]: FacePoint, ring: readonly Segment[]): boolean =>
  ring.reduce((is, [a, b]) => (a[1] > y !== b[1] > y && x < ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) + a[0] ? !is : is), false);

const nearest = (outline: readonly FacePoint[], edges: readonly Segment[], solid: boolean): number => {
  const ring = ringOf(outline);
  if (solid && outline.some((p) => inside(p, edges))) return 0;
  if (outline.length > 2 && edges.some(([p]) => inside(p, ring))) return 0;
  return Math.min(...ring.flatMap((s) => edges.map((t) => between(s, t))));
};

/** Shortest way along the face from an outline to a shape; 0 where they touch or one lies in the other. [m] */
export const distanceTo = (outline: readonly FacePoint[], shape: Shape): number => nearest(outline, edgesOf(shape), shape.form !== 'lines');

const on = (s: Station, face: FaceId): boolean => !s.retired && !s.off_wall && s.face === face;

/** The opening or seam that is nearest along the same face. */
export const nearestOpening = (rig: Rig, face: FaceId, outline: readonly FacePoint[]): NearBy | undefined =>
  waterSources(rig)
    .filter((s) => on(s, face))
    .map((s): NearBy => ({ station: s.id, words: s.name, distance_m: distanceTo(outline, s.shape) }))
    .toSorted((a, b) => a.distance_m - b.distance_m || (a.station < b.station ? -1 : 1))[0];

/** Nearer than this to something that carries load, a patch is a matter for the trade; ours. [m] */
export const LOAD_REACH_M = 0.3;

/** Parts whose load the wall carries, and what they are called here. Bed frames and cabinets stand inside and are not drawn. */
const CARRIES: readonly (readonly [RegExp, string])[] = [
  [/^slide-(flange|wiper-seal)$/, 'the opening of a slide-out'],
  [/^(roof-edge-rail|roof-shell-edge|van-roof-ditch|edge-trim-curved)$/, 'the roof edge'],
  [/^awning-(arm|rail)$/, 'the awning’s mount'],
  [/^cabover-seam$/, 'the cab-over'],
  [/^ladder-standoff$/, 'the ladder’s mount'],
];
const DOOR = /^(entry-door|cab-door|van-.*-door|teardrop-door|baggage-door|galley-hatch|.*-compartment)/;

/** The edge of a door that hangs on the wall. */
const hingeLine = (s: Station): Segment | undefined => {
  if (s.hinge === undefined || !DOOR.test(s.part)) return undefined;
  const b = box(s.shape);
  const upright = (x: number): Segment => [
    [x, b.y0],
    [x, b.y1],
  ];
  if (s.hinge === 'top' || s.hinge === 'bottom') {
    const y = s.hinge === 'top' ? b.y1 : b.y0;
    return [
      [b.x0, y],
      [b.x1, y],
    ];
  }
  if (s.hinge === 'front') return upright(b.x0);
  if (s.hinge === 'rear') return upright(b.x1);
  // Seen from outside the rear has the road side at the left, the front has it at the right; x runs from the road side.
  return upright((s.hinge === 'left') === (s.face === 'rear') ? b.x0 : b.x1);
};

const FORWARD_ROOM = /^(fifth-wheel|class-c|truck-camper)$/;

/** What carries load within reach of a patch, the nearest first. */
export const loadsNear = (rig: Rig, face: FaceId, outline: readonly FacePoint[]): readonly NearBy[] => {
  const found = rig.stations.flatMap((s): readonly NearBy[] => {
    if (!on(s, face)) return [];
    const word = CARRIES.find(([is]) => is.test(s.part))?.[1];
    const hinge = hingeLine(s);
    const far = word !== undefined ? distanceTo(outline, s.shape) : hinge ? nearest(outline, [hinge], false) : Number.POSITIVE_INFINITY;
    return far <= LOAD_REACH_M ? [{ station: s.id, words: word ?? `a hinge of ${s.name}`, distance_m: far }] : [];
  });
  const front = face === 'front' && FORWARD_ROOM.test(rig.kind) ? [{ station: `${face}.wall-skin`, words: 'the room over the hitch or cab', distance_m: 0 }] : [];
  return [...front, ...found].toSorted((a, b) => a.distance_m - b.distance_m || (a.station < b.station ? -1 : 1));
};
