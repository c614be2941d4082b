import type { FaceId, FacePoint, Side } from '../../terms';
import { bodyWidth } from '../loop';
import type { Face, Rig, Slide } from '../rig';
import type { Box } from '../shapes';

/** Aft from the front of the body, across from the road side, above ground: the rig level on its wheels. [m] */
export type Space = readonly [aft_m: number, across_m: number, up_m: number];

/** Which faces water passes between depends on what they are. */
export type SurfaceKind = 'roof' | 'slide-roof' | 'wall' | 'floor' | 'underside';

/** A face as a piece of the unfolded rig. The underside is two: the floor that lies on it inside, and what hangs below. */
export type Surface = {
  readonly face: FaceId;
  readonly kind: SurfaceKind;
  /** Set on the faces of a slide-out. */
  readonly slide?: string;
  readonly outline_m: readonly FacePoint[];
  /** Where the wall is cut away for a slide-out. */
  readonly cut_away: readonly Box[];
  /** Its first axis runs fore and aft. */
  readonly fore_and_aft: boolean;
  /** Faces the wind while driving. */
  readonly faces_wind: boolean;
  /** A point that the lines of its lattice run through: the middle of the rig, so that both sides are alike. */
  readonly origin_m: FacePoint;
  readonly at: (x: number, y: number) => Space;
};

type Axis = 0 | 1;

/** Where a closed outline crosses the line on which one of its coordinates has a value: the other coordinate there. */
const crossings = (outline: readonly FacePoint[], axis: Axis, value: number): readonly number[] => {
  const other: Axis = axis === 0 ? 1 : 0;
  const ends = outline.map((p) => p[axis]);
  const at = Math.max(Math.min(...ends), Math.min(value, Math.max(...ends)));
  return outline.flatMap((p, i) => {
    const q = outline[(i + 1) % outline.length] ?? p;
    const [lo, hi] = [Math.min(p[axis], q[axis]), Math.max(p[axis], q[axis])];
    if (at < lo || at > hi) return [];
    return lo === hi ? [p[other], q[other]] : [p[other] + ((at - p[axis]) / (q[axis] - p[axis])) * (q[other] - p[other])];
  });
};

/** The points of a lattice stand in rows: the same few values are asked for again and again. */
const remembered = (of: (at: number) => number): ((at: number) => number) => {
  const known = new Map<number, number>();
  return (at) => {
    const was = known.get(at);
    if (was !== undefined) return was;
    const is = of(at);
    known.set(at, is);
    return is;
  };
};

const HAIR_M = 1e-6;

const slideSurface = (face: Face, slide: Slide, width: number): Surface => {
  const wall = face.id.split('-')[1];
  const out = (far: number): number => (slide.face === 'curb' ? width + far : -far);
  const at: Surface['at'] =
    wall === 'outer'
      ? (x, y) => [x, out(slide.travel_m), y]
      : wall === 'top'
        ? (x, y) => [x, out(y), slide.y_m + slide.h_m]
        : (x, y) => [wall === 'front' ? slide.x_m : slide.x_m + slide.w_m, out(x), y];
  return {
    face: face.id,
    kind: wall === 'top' ? 'slide-roof' : 'wall',
    slide: slide.id,
    outline_m: face.outline_m,
    cut_away: [],
    fore_and_aft: wall === 'outer' || wall === 'top',
    faces_wind: false,
    origin_m: [0, 0],
    at,
  };
};

/**
 * Every face that water can run on, in space: walls upright, the roof crowned between its edges, the floor and the
 * underside below. The front and rear are flat drawings of raked walls: their points lie on the side's own outline.
 *
 * @assumes  the roof slopes evenly from its middle to both edges; a slide-out stands out; the floor is level, at the layout's floor
 */
export const surfacesOf = (rig: Rig): readonly Surface[] => {
  const side = (rig.faces.find((f) => f.id === 'road') ?? rig.faces.find((f) => f.id === 'curb'))?.outline_m;
  if (!side) return [];
  const width = bodyWidth(rig);
  const middle = width / 2;
  const topAt = remembered((x) => Math.max(...crossings(side, 0, x)));
  const bottomAt = remembered((x) => Math.min(...crossings(side, 0, x)));
  const foremostAt = remembered((y) => Math.min(...crossings(side, 1, y)));
  const rearmostAt = remembered((y) => Math.max(...crossings(side, 1, y)));
  const crown = Math.max(0, rig.levels.roof_top_m - Math.max(...side.map((p) => p[1])));
  const cutAway = (face: FaceId): readonly Box[] => rig.slides.filter((s) => s.face === face).map((s) => ({ x0: s.x_m, y0: s.y_m, x1: s.x_m + s.w_m, y1: s.y_m + s.h_m }));

  const body = (face: Face): readonly Surface[] => {
    const ys = face.outline_m.map((p) => p[1]);
    const [low, high] = [Math.min(...ys), Math.max(...ys)];
    const plain = { face: face.id, outline_m: face.outline_m, cut_away: cutAway(face.id), fore_and_aft: true, faces_wind: false };
    const across = { ...plain, origin_m: [middle, 0] as const, fore_and_aft: false, kind: 'wall' as const };
    switch (face.id) {
      case 'road':
      case 'curb':
        return [{ ...plain, kind: 'wall', origin_m: [0, 0], at: (x, y) => [x, face.id === 'road' ? 0 : width, y] }];
      case 'front':
        return [{ ...across, faces_wind: true, at: (x, y) => [foremostAt(Math.max(y, low + HAIR_M)), x, y] }];
      case 'step':
        return [{ ...across, faces_wind: true, at: (x, y) => [foremostAt(Math.min(y, high - HAIR_M)), x, y] }];
      case 'rear':
        return [{ ...across, at: (x, y) => [rearmostAt(y), x, y] }];
      case 'roof': {
        const [centre, half] = [(low + high) / 2, (high - low) / 2];
        return [{ ...plain, kind: 'roof', origin_m: [0, centre], at: (x, y) => [x, y, topAt(x) + crown * Math.max(0, 1 - Math.abs(y - centre) / half)] }];
      }
      case 'under': {
        const level = { ...plain, origin_m: [0, middle] as const };
        return [
          { ...level, kind: 'floor', at: (x, y) => [x, y, Math.max(bottomAt(x), rig.levels.floor_m)] },
          { ...level, kind: 'underside', at: (x, y) => [x, y, bottomAt(x)] },
        ];
      }
      default:
        return [];
    }
  };
  return rig.faces.flatMap((face) => {
    const slide = rig.slides.find((s) => s.id === face.slide);
    return slide ? [slideSurface(face, slide, width)] : body(face);
  });
};

/** The piece that a place on a face belongs to: the inside of the underside is the floor. */
export const surfaceFor = (surfaces: readonly Surface[], face: FaceId, side: Side): number =>
  surfaces.findIndex((s) => s.face === face && (s.kind === 'floor' ? side === 'inside' : s.kind === 'underside' ? side === 'outside' : true));
