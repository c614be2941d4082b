import { beadLength as beadOf, RUN_DOWN } from '../science';
import type { BeadRule, FaceId, FacePoint, HingeEdge, Reach, Shape, StationGroup } from '../terms';
import { type Metres, metres } from '../units';
import { heightAboveGround } from './faces';
import type { Levels, Slide } from './rig';
import { box, outlineLength } from './shapes';

/** Above this a seam can neither be seen nor felt from the ground; ours. [m] */
export const REACH_FROM_GROUND_M = 1.9;

/** How far a person reaches from a ladder, to each side and over the roof's edge, with the body between the rails; ours. [m] */
export const ARM_REACH_M = 0.75;

/**
 * Length of bead by practice, of a shape on a face.
 *
 * @param bead  how the part is sealed on the outside
 * @param down  run down each side of a wall opening; our own guess where nobody says otherwise. [m]
 * @returns     length to lay; 0 where nothing is laid or where only screw heads are covered. [m]
 * @source      common practice, no published source; a seam drawn as lines is its own long edge
 */
export const beadLength = (shape: Shape, bead: BeadRule, down: Metres = RUN_DOWN): number => {
  const b = box(shape);
  const around = metres(outlineLength(shape));
  const seam = shape.form === 'lines' && bead.includes('long-edge');
  return beadOf(bead, { width: seam ? around : metres(b.x1 - b.x0), height: seam ? metres(0) : metres(b.y1 - b.y0), around }, down);
};

/** A slide's flange is beaded along the top and both sides only: its lower edge drains. Common practice, no published source. [m] */
export const ownBead = (part: string, shape: Shape, bead: BeadRule): number => {
  const whole = beadLength(shape, bead);
  return part === 'slide-flange' && shape.form === 'rect' ? whole - shape.w_m : whole;
};

type Standing = { readonly levels: Levels; readonly slides: readonly Slide[] };

export const topOf = (rig: Standing, face: FaceId, shape: Shape): number => heightAboveGround(rig, face, box(shape).y1);

/** The wall from which a roof part is nearest, and how far over the edge its far side lies. [m] */
export const nearestEdge = (roof: readonly FacePoint[], shape: Shape): { readonly wall: FaceId; readonly over_m: number } => {
  const b = box(shape);
  const xs = roof.map((p) => p[0]);
  const ys = roof.map((p) => p[1]);
  const walls: readonly { readonly wall: FaceId; readonly over_m: number }[] = [
    { wall: 'curb', over_m: Math.max(...ys) - b.y0 },
    { wall: 'road', over_m: b.y1 - Math.min(...ys) },
    { wall: 'rear', over_m: Math.max(...xs) - b.x0 },
    { wall: 'front', over_m: b.x1 - Math.min(...xs) },
  ];
  return walls.toSorted((p, q) => p.over_m - q.over_m)[0] ?? { wall: 'curb', over_m: 0 };
};

const DOOR = /^(entry-door|cab-door|van-.*-door|teardrop-door)/;

/** A door's own step lifts the eye to its upper edge. */
export const isReachedByItsStep = (part: string): boolean => DOOR.test(part);

const UNDER_BUT_REACHED = /^(tyre|entry-step|step|sewer|tank-drain|drain|mud-flap|exhaust)/;

/** From where it is reached: ours, by its top above ground and its distance from the roof's edge. */
export const reachOf = (
  rig: Standing,
  roof: readonly FacePoint[],
  at: { readonly face: FaceId; readonly shape: Shape; readonly part: string; readonly group: StationGroup },
): Reach => {
  if (at.face === 'under') return UNDER_BUT_REACHED.test(at.part) ? 'ground' : 'under';
  if (at.face === 'tongue' || isReachedByItsStep(at.part)) return 'ground';
  const roofTop = at.face === 'roof';
  if (at.group === 'area') return roofTop && rig.levels.roof_top_m > REACH_FROM_GROUND_M ? 'ladder' : 'ground';
  if (topOf(rig, at.face, at.shape) <= REACH_FROM_GROUND_M) return 'ground';
  return roofTop && nearestEdge(roof, at.shape).over_m > ARM_REACH_M ? 'roof' : 'ladder';
};

const FARTHEST: readonly Reach[] = ['under', 'roof', 'ladder', 'ground', 'inside'];

/** A station is as hard to reach as its hardest part. */
export const hardest = (reaches: readonly Reach[]): Reach => FARTHEST.find((r) => reaches.includes(r)) ?? 'ground';

/** Hinge edges of parts that always open the same way; the rest is said by the layout. */
const USUAL_HINGE: readonly (readonly [RegExp, HingeEdge])[] = [
  [/^(window-egress|window-acrylic|front-storage-trunk|galley-hatch)/, 'top'],
  [/^water-heater/, 'bottom'],
  [/^pass-through-hatch/, 'front'],
  [/^roof-vent-14$/, 'rear'],
];

const EDGES: Readonly<Record<string, HingeEdge>> = { top: 'top', bottom: 'bottom', front: 'front', rear: 'rear', left: 'left', right: 'right' };

/** On the rear wall, seen from outside, the road side is at the left; on the front it is at the right. */
export const hingeOf = (part: string, face: FaceId, said: string | undefined): HingeEdge | undefined => {
  if (said === 'road') return face === 'rear' ? 'left' : 'right';
  if (said === 'curb') return face === 'rear' ? 'right' : 'left';
  return said === undefined ? USUAL_HINGE.find(([is]) => is.test(part))?.[1] : EDGES[said];
};
