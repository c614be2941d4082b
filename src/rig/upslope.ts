import type { FaceId, FacePoint, Place, Station, StationId } from '../terms';
import { faceOf } from './faces';
import { bodyWidth } from './loop';
import type { Rig } from './rig';
import { type Box, box, centre } from './shapes';

/** An opening or seam that water may have come through on its way to a place, with how far away it is. */
export type Suspect = {
  readonly station: StationId /** Along the wall or roof. [m] */;
  readonly distance_m: number /** Above the place; 0 on a roof. [m] */;
  readonly above_m: number;
};

/** Windows and the water heater come first: where trade practice looks first. Common practice, no published source. */
const FIRST = /^(window|window-exit|water-heater)$/;

/** Water seldom shows farther than this from where it came in; ours, no source. [m] */
const FAR_M = 3;
/** Water runs sideways along framing as well as down; ours. [m] */
const ASIDE_M = 1.5;
/** Roof parts this near the edge can wet the wall below it; ours. [m] */
const ROOF_EDGE_M = 1.2;

/** Where a place is, on which face; undefined for the rig as a whole or a place that this rig does not have. */
export const pointOf = (rig: Rig, place: Place): { readonly face: FaceId; readonly point: FacePoint } | undefined => {
  if (place.at === 'rig') return undefined;
  if (place.at === 'point') return { face: place.face, point: place.point_m };
  if (place.at === 'outline') return { face: place.face, point: centre({ form: 'poly', points_m: place.outline_m }) };
  const station = rig.stations.find((s) => s.id === place.station);
  if (!station) return undefined;
  if (place.at === 'stretch' && station.shape.form === 'lines') return { face: station.face, point: alongSeam(station.shape.lines_m, (place.from_m + place.to_m) / 2) };
  return { face: station.face, point: centre(station.shape) };
};

/** A point of a seam, measured along it from its start. [m] */
export const alongSeam = (lines: readonly (readonly FacePoint[])[], at_m: number): FacePoint => {
  let left = at_m;
  let last: FacePoint = lines[0]?.[0] ?? [0, 0];
  for (const line of lines)
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1], line[i]];
      if (!a || !b) continue;
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (left <= size && size > 0) return [a[0] + (left / size) * (b[0] - a[0]), a[1] + (left / size) * (b[1] - a[1])];
      left -= size;
      last = b;
    }
  return last;
};

const isSource = (s: Station): boolean => !s.retired && s.within === undefined && (s.cut_through || s.group === 'seam');

const nearest = (b: Box, [x, y]: FacePoint): FacePoint => [Math.max(b.x0, Math.min(x, b.x1)), Math.max(b.y0, Math.min(y, b.y1))];

/** On one wall: what reaches higher than the place, and not far aside. */
const onWall = (s: Station, at: FacePoint): Suspect | undefined => {
  const b = box(s.shape);
  if (b.y1 <= at[1] + 0.02) return undefined;
  const [x, y] = nearest(b, at);
  if (Math.abs(x - at[0]) > ASIDE_M) return undefined;
  return { station: s.id, distance_m: Math.hypot(x - at[0], y - at[1]), above_m: Math.max(0, b.y1 - at[1]) };
};

/** On the roof water runs outward from the crown and may lie anywhere: all that is near counts, what is farther in first. */
const onRoof = (s: Station, at: FacePoint): Suspect | undefined => {
  const [x, y] = nearest(box(s.shape), at);
  return { station: s.id, distance_m: Math.hypot(x - at[0], y - at[1]), above_m: 0 };
};

/** From a wall up over its edge: roof parts near that edge, measured up the wall and then in. */
const overEdge = (rig: Rig, s: Station, face: FaceId, at: FacePoint, width: number): Suspect | undefined => {
  const roof = faceOf(rig, 'roof')?.outline_m ?? [];
  const b = box(s.shape);
  const ends = roof.map((p) => p[0]);
  const inward: Readonly<Record<string, number>> = { road: b.y0, curb: width - b.y1, front: b.x0 - Math.min(...ends), rear: Math.max(...ends) - b.x1 };
  const inFrom = inward[face];
  if (inFrom === undefined || inFrom > ROOF_EDGE_M) return undefined;
  const across = face === 'front' || face === 'rear';
  const along = across ? nearest(b, [b.x0, at[0]])[1] : nearest(b, [at[0], b.y0])[0];
  if (Math.abs(along - at[0]) > ASIDE_M) return undefined;
  const above = rig.levels.wall_top_m - at[1];
  return { station: s.id, distance_m: Math.hypot(along - at[0], above + Math.max(0, inFrom)), above_m: above };
};

const WALL = /^(curb|road|front|rear)$/;

/** A wall's own corner: a place near it can be wetted by what is on the next wall. */
const round = (rig: Rig, s: Station, face: FaceId, at: FacePoint, width: number): Suspect | undefined => {
  const xs = (faceOf(rig, face)?.outline_m ?? []).map((p) => p[0]);
  const [lo, hi] = [Math.min(...xs), Math.max(...xs)];
  const body = Math.max(...(faceOf(rig, 'road')?.outline_m ?? []).map((p) => p[0]));
  // Distance of the place from the corner it shares with the other wall, and of the other part from the same corner.
  const corner = (f: FaceId, x: number, other: FaceId): number => (f === 'front' || f === 'rear' ? (other === 'road' ? x : width - x) : other === 'front' ? x - lo : body - x);
  const b = box(s.shape);
  if (b.y1 <= at[1] + 0.02) return undefined;
  const from = corner(face, at[0], s.face);
  const mine = Math.min(corner(s.face, b.x0, face), corner(s.face, b.x1, face));
  const aside = Math.max(0, from) + Math.max(0, mine);
  if (aside > ASIDE_M || hi <= lo) return undefined;
  return { station: s.id, distance_m: Math.hypot(aside, Math.max(0, b.y0 - at[1])), above_m: b.y1 - at[1] };
};

const SIDES = new Set(['road', 'curb']);
const areNeighbours = (a: FaceId, b: FaceId): boolean => WALL.test(a) && WALL.test(b) && SIDES.has(a) !== SIDES.has(b);

/** A floor: the foot of the walls round it. */
const aboveFloor = (rig: Rig, s: Station, at: FacePoint, width: number): Suspect | undefined => {
  const wallAt: Readonly<Record<string, readonly [number, number]>> = { road: [at[0], at[1]], curb: [at[0], width - at[1]] };
  const on = wallAt[s.face];
  if (!on) return undefined;
  const seen = onWall(s, [on[0], rig.levels.floor_m]);
  return seen ? { ...seen, distance_m: Math.hypot(seen.distance_m, on[1]) } : undefined;
};

/**
 * Where the water at a place may have come in: the nearest openings and seams above it and up-slope, on the same face, on
 * the roof above the wall, and round the corner. Windows and the water heater first, then other openings, then seams.
 *
 * @param place  where it is wet, soft or bubbled
 * @param limit  how many at most
 * @returns      suspects, the likeliest first; a help for looking, not a finding
 * @assumes      the rig stands level; farthest distances of our own (3 m in all, 1.5 m aside, 1.2 m in from the roof's edge)
 * @source       common practice, no published source
 */
export const openingsAboveAndUpslope = (rig: Rig, place: Place, limit: number): readonly Suspect[] => {
  const at = pointOf(rig, place);
  if (!at) return [];
  const self = 'station' in place ? place.station : undefined;
  const width = bodyWidth(rig);
  const look = (s: Station): Suspect | undefined => {
    if (s.face === at.face)
      return at.face === 'roof' || at.face.endsWith('-top') ? onRoof(s, at.point) : at.face === 'under' || at.face === 'tongue' ? undefined : onWall(s, at.point);
    if (s.face === 'roof' && WALL.test(at.face)) return overEdge(rig, s, at.face, at.point, width);
    if (areNeighbours(at.face, s.face)) return round(rig, s, at.face, at.point, width);
    return at.face === 'under' ? aboveFloor(rig, s, at.point, width) : undefined;
  };
  const rank = (id: StationId): number => {
    const s = rig.stations.find((x) => x.id === id);
    return s && FIRST.test(s.looks) ? 0 : s?.cut_through ? 1 : 2;
  };
  return rig.stations
    .filter((s) => s.id !== self && isSource(s))
    .flatMap((s) => look(s) ?? [])
    .filter((s) => s.distance_m <= FAR_M)
    .toSorted((a, b) => rank(a.station) - rank(b.station) || a.distance_m - b.distance_m || (a.station < b.station ? -1 : 1))
    .slice(0, limit);
};
