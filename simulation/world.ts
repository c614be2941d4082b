import type { Rig } from '../src/rig';
import type { FaceId, FacePoint, Station } from '../src/terms';
import { extentOf, extentOfShape, faceExtent, inventRig, isWall, onEdge, WALLS, type WallId } from './body';
import type { Chance } from './chance';

/** A way along which water is led that no drawing shows: a wire chase, a frame member, a gap under the deck. */
export type Hidden = { readonly face: FaceId; readonly a: FacePoint; readonly b: FacePoint };

/** What is true and what nobody is told. */
export type Truth = {
  readonly rig: Rig;
  readonly when: 'parked' | 'driving';
  readonly nose_up_rad: number;
  readonly curb_up_rad: number;
  /** The wall that the wind drove rain against; none in calm rain. */
  readonly windward: WallId | undefined;
  /** Entry points; the station is left out where the hole is at none. */
  readonly holes: readonly { readonly station?: string; readonly face: FaceId; readonly point: FacePoint }[];
  readonly studs: Readonly<Record<string, readonly number[]>>;
  readonly belts: Readonly<Record<string, readonly number[]>>;
  readonly hidden: readonly Hidden[];
  readonly deck_joints: readonly number[];
  /** How worn each seal really is, 0 to 5. */
  readonly wear: ReadonlyMap<string, number>;
  readonly age_years: ReadonlyMap<string, number>;
};

/** How much oftener a seal leaks when it is worn so far: the world's own figures. */
const LEAKS_BY_WEAR = [1, 2, 5, 16, 45, 80] as const;

/** Higher than this above the floor a hole lets water run down inside; below the floor it runs out again. [m] */
const OVER_FLOOR = 0.08;

const canLeak = (rig: Rig): readonly Station[] =>
  rig.stations.filter(
    (s) =>
      !s.retired &&
      s.within === undefined &&
      (s.cut_through || s.group === 'seam') &&
      (s.face === 'roof' || (isWall(s.face) && extentOfShape(s.shape).y1 > rig.levels.floor_m + 2 * OVER_FLOOR)),
  );

const wornBy = (c: Chance, years: number): number => Math.max(0, Math.min(5, Math.round(c.bell(0.2 + years * 0.28, 0.9))));

/** Facing the wind of travel. */
const faces = (rig: Rig, s: Station): number => {
  if (s.face === 'front') return 6;
  if (s.face === 'rear') return 0.3;
  const ex = faceExtent(rig, s.face);
  const at = s.shape.form === 'lines' ? extentOf(s.shape.lines_m.flat()) : undefined;
  const forward = ex && at && at.x0 - ex.x0 < 0.4 ? 4 : 1;
  return s.face === 'roof' ? 1.6 * forward : forward;
};

const lines = (c: Chance, low: number, high: number, apart: readonly [number, number]): readonly number[] => {
  const at: number[] = [];
  for (let x = low + c.between(0, apart[1]); x < high; x += c.between(apart[0], apart[1])) at.push(x);
  return at;
};

const somewhere = (rig: Rig, c: Chance): { readonly face: FaceId; readonly point: FacePoint } => {
  const face = c.weighted(['roof', ...WALLS] as const, (f) => (faceExtent(rig, f) === undefined ? 0 : f === 'roof' ? 3 : 1));
  const e = faceExtent(rig, face);
  if (!e) throw new Error('a rig without walls');
  return { face, point: [c.between(e.x0, e.x1), isWall(face) ? c.between(e.y0 + 0.6 * (e.y1 - e.y0), e.y1) : c.between(e.y0, e.y1)] };
};

/** One invented rig with one leak, sometimes two: seals worn by age, some holes at no seam at all. */
export const inventWorld = (c: Chance, id: string): Truth => {
  const rig = inventRig(c, id);
  const when = c.happens(0.35) ? 'driving' : 'parked';
  const windward = when === 'parked' && c.happens(0.5) ? c.pick(WALLS) : undefined;
  const sources = canLeak(rig);
  // Some makes of part fail early in one rig and never in another: nobody knows which beforehand.
  const luck = new Map<string, number>();
  const age_years = new Map<string, number>();
  const wear = new Map<string, number>();
  const built = c.between(1, 14);
  for (const s of sources) {
    if (!luck.has(s.looks)) luck.set(s.looks, Math.exp(c.bell(0, 0.7)));
    const years = c.happens(0.3) ? c.between(0, built) : built;
    age_years.set(s.id, years);
    wear.set(s.id, wornBy(c, years));
  }
  const chanceOf = (s: Station): number => {
    const wet = when === 'driving' ? faces(rig, s) : s.face === 'roof' ? 2 : windward === undefined ? 0.7 : s.face === windward ? 1.6 : 0.15;
    return (LEAKS_BY_WEAR[wear.get(s.id) ?? 0] ?? 1) * (luck.get(s.looks) ?? 1) * wet;
  };
  const hole = (): Truth['holes'][number] => {
    if (c.happens(0.15)) return somewhere(rig, c);
    const s = c.weighted(sources, chanceOf);
    let point = onEdge(s.shape, c);
    while (isWall(s.face) && point[1] < rig.levels.floor_m + OVER_FLOOR) point = onEdge(s.shape, c);
    return { station: s.id, face: s.face, point };
  };
  const holes = c.happens(0.15) ? [hole(), hole()] : [hole()];
  const studs: Record<string, readonly number[]> = {};
  const belts: Record<string, readonly number[]> = {};
  for (const w of WALLS) {
    const e = faceExtent(rig, w);
    if (!e) continue;
    studs[w] = rig.construction === 'hung' ? lines(c, e.x0, e.x1, [0.3, 0.62]) : [];
    belts[w] = lines(c, e.y0, e.y1, rig.construction === 'hung' ? [0.5, 1.1] : [0.9, 1.8]);
  }
  const hidden = Array.from({ length: c.whole(0, 3) }, (): Hidden => {
    const { face, point } = somewhere(rig, c);
    const upright = isWall(face) && c.happens(0.4);
    const far = c.between(0.4, 2.2) * (c.happens(0.5) ? 1 : -1);
    return { face, a: point, b: upright ? [point[0], point[1] - Math.abs(far) * 0.5] : [point[0] + far, point[1]] };
  });
  const roof = faceExtent(rig, 'roof');
  return {
    rig,
    when,
    nose_up_rad: c.bell(0, 0.022),
    curb_up_rad: c.bell(0, 0.016),
    windward,
    holes,
    studs,
    belts,
    hidden,
    deck_joints: roof ? lines(c, roof.x0, roof.x1, [1.15, 1.3]) : [],
    wear,
    age_years,
  };
};
