import { box, heightAboveGround, pointsOf, type Rig } from '../../rig';
import type { FacePoint, Station } from '../../terms';
import { looksTo } from './exposure';

/** Water that runs down the outside of a wall spreads about so far to each side; ours. [m] */
const SPREAD_M = 0.3;
/** At the front and rear it runs off the roof within so much of the edge; ours. [m] */
const ROOF_END_M = 1;
/** What begins no lower than this below another is beside it. [m] */
const BELOW_M = 0.02;
/** Seams are followed in steps of this. [m] */
const STEP_M = 0.1;

const between = (a: FacePoint, b: FacePoint): readonly FacePoint[] => {
  const n = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / STEP_M));
  return Array.from({ length: n + 1 }, (_, i) => [a[0] + (i / n) * (b[0] - a[0]), a[1] + (i / n) * (b[1] - a[1])] as const);
};

/** Points all along a seam; the corners of anything else, and the middles of its sides. */
const along = (station: Station): readonly FacePoint[] => {
  if (station.shape.form === 'lines') return station.shape.lines_m.flatMap((line) => line.slice(1).flatMap((p, i) => between(line[i] ?? p, p)));
  const corners = pointsOf(station.shape);
  return corners.flatMap((p, i) => between(p, corners[(i + 1) % corners.length] ?? p));
};

const isRoof = (rig: Rig, station: Station): boolean => looksTo(rig, station.face).way === 'roof';

/** Whether water that runs off the roof here runs down this wall where it lies: along the same length for the sides, at the ends for front and rear. */
const offTheRoof = (rig: Rig, roof: Station, wall: Station): boolean => {
  const a = box(roof.shape);
  if (roof.face !== 'roof') return wall.face.split('-')[0] === roof.face.split('-')[0];
  const { side } = looksTo(rig, wall.face);
  const ends = (rig.faces.find((f) => f.id === 'roof')?.outline_m ?? []).map((p) => p[0]);
  if (side === 'front') return a.x0 <= Math.min(...ends) + ROOF_END_M;
  if (side === 'rear') return a.x1 >= Math.max(...ends) - ROOF_END_M;
  return along(wall).some(([x]) => x >= a.x0 - SPREAD_M && x <= a.x1 + SPREAD_M);
};

/**
 * Whether water played on one opening or seam runs over another on its way down the outside, so that what comes in may
 * have come in there. The lower one is then tested first.
 *
 * @assumes  it runs straight down and spreads a foot to each side; off the roof it runs over the edge along the same length
 */
export const wets = (rig: Rig, upper: Station, lower: Station): boolean => {
  if (upper.id === lower.id || isRoof(rig, lower)) return false;
  if (isRoof(rig, upper)) return offTheRoof(rig, upper, lower);
  if (upper.face !== lower.face) return false;
  const a = box(upper.shape);
  const b = box(lower.shape);
  // Two that lie beside each other, or cross, do not each come first: the one whose foot is lower does.
  return b.y0 < a.y0 - BELOW_M && along(lower).some(([x, y]) => y < a.y0 - BELOW_M && x >= a.x0 - SPREAD_M && x <= a.x1 + SPREAD_M);
};

/** Height of its lowest edge above ground: a hose works from the lowest upward. [m] */
export const footOf = (rig: Rig, station: Station): number => heightAboveGround(rig, station.face, box(station.shape).y0);
