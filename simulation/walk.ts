import type { FaceId, FacePoint } from '../src/terms';
import { extentOfShape, faceExtent, isWall, type WallId } from './body';
import type { Chance } from './chance';
import type { Truth } from './world';

/** Water left behind on the inner side of a face. */
export type Damp = { readonly face: FaceId; readonly point: FacePoint };

const DROPS = 160;
const STEP = 0.04;
const MOST_STEPS = 400;

type Drop = { face: FaceId; x: number; y: number };

const near = (p: FacePoint, a: FacePoint, b: FacePoint): boolean => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy + 1e-12)));
  return Math.hypot(a[0] + t * dx - p[0], a[1] + t * dy - p[1]) < 0.06;
};

/** Lets drops run from each hole until they are soaked up, and says where they left water. */
export const walk = (truth: Truth, c: Chance): readonly Damp[] => {
  const { rig } = truth;
  const left: Damp[] = [];
  const aft = truth.when === 'driving' ? c.between(0.3, 1.2) : 0;
  const jitter = rig.construction === 'hung' ? 0.011 : 0.02;
  const roof = faceExtent(rig, 'roof');
  const leave = (d: Drop): void => {
    left.push({ face: d.face, point: [c.bell(d.x, 0.04), c.bell(d.y, 0.04)] });
  };
  const openings = new Map<FaceId, readonly ReturnType<typeof extentOfShape>[]>();
  const openingsOn = (face: FaceId): readonly ReturnType<typeof extentOfShape>[] => {
    const made = openings.get(face) ?? rig.stations.filter((s) => s.face === face && s.cut_through && !s.retired && s.within === undefined).map((s) => extentOfShape(s.shape));
    openings.set(face, made);
    return made;
  };

  /** Led away by something that no drawing shows. */
  const captured = (d: Drop): void => {
    for (const h of truth.hidden) {
      if (h.face !== d.face || !near([d.x, d.y], h.a, h.b) || !c.happens(0.25)) continue;
      const end = isWall(h.face) && h.a[1] !== h.b[1] ? (h.a[1] < h.b[1] ? h.a : h.b) : c.happens(0.5) ? h.a : h.b;
      d.x = end[0];
      d.y = end[1] - (isWall(h.face) ? 0.07 : 0);
    }
  };

  const alongWall = (d: Drop, wall: WallId): 'on' | 'done' => {
    const e = faceExtent(rig, wall);
    if (!e) return 'done';
    const side = wall === 'road' || wall === 'curb';
    // Gravity seen on a tilted wall leans to the lower end; the wind of travel drags along the sides.
    const lean = side ? Math.tan(truth.nose_up_rad) + aft : -Math.tan(truth.curb_up_rad);
    const before: FacePoint = [d.x, d.y];
    d.y -= STEP;
    d.x += STEP * lean + c.bell(0, jitter);
    for (const s of truth.studs[wall] ?? []) if ((before[0] - s) * (d.x - s) < 0 && !c.happens(0.03)) d.x = before[0];
    for (const b of truth.belts[wall] ?? []) {
      if (before[1] < b || d.y >= b || c.happens(0.55)) continue;
      const way = lean === 0 ? (c.happens(0.5) ? 1 : -1) : c.happens(0.75) ? Math.sign(lean) : -Math.sign(lean);
      let run = way * c.waiting(0.3);
      for (const s of truth.studs[wall] ?? []) if ((d.x - s) * (d.x + run - s) < 0 && !c.happens(0.2)) run = s - d.x - way * 0.01;
      d.x += run;
    }
    for (const o of openingsOn(wall)) {
      if (d.x <= o.x0 || d.x >= o.x1 || d.y >= o.y1 || d.y <= o.y0) continue;
      // A frame stands in the way: round it, on the nearer or the lower side.
      const toAft = lean > 0.01 ? c.happens(0.8) : lean < -0.01 ? c.happens(0.2) : d.x > (o.x0 + o.x1) / 2;
      d.x = toAft ? o.x1 + 0.02 : o.x0 - 0.02;
    }
    if (d.x < e.x0 || d.x > e.x1) d.x = Math.max(e.x0, Math.min(e.x1, d.x));
    if (d.y > e.y0 + 0.02 && d.y > rig.levels.floor_m) return 'on';
    for (let i = 0; i < 3; i++) {
      d.x += c.bell(0, 0.14) + (side ? Math.tan(truth.nose_up_rad) * 1.5 : 0);
      left.push({ face: wall, point: [Math.max(e.x0, Math.min(e.x1, d.x)), rig.levels.floor_m + Math.abs(c.bell(0, 0.06))] });
    }
    return 'done';
  };

  const underRoof = (d: Drop): 'on' | 'done' => {
    if (!roof) return 'done';
    const middle = (roof.y0 + roof.y1) / 2;
    const before = d.x;
    const slope_y = Math.sign(d.y - middle) * 0.018 - truth.curb_up_rad;
    const slope_x = truth.nose_up_rad + aft * 0.05;
    const size = Math.hypot(slope_x, slope_y) + 1e-6;
    d.x += STEP * (slope_x / size) + c.bell(0, 0.03);
    d.y += STEP * (slope_y / size) + c.bell(0, 0.03);
    const joint = truth.deck_joints.some((j) => (before - j) * (d.x - j) < 0);
    if (c.happens(joint ? 0.35 : 0.025)) {
      for (let i = 0; i < 4; i++) leave({ face: 'roof', x: c.bell(d.x, 0.08), y: c.bell(d.y, 0.08) });
      return 'done';
    }
    const top = rig.levels.wall_top_m - 0.03;
    if (d.y < roof.y0 || d.y > roof.y1) {
      d.face = d.y < roof.y0 ? 'road' : 'curb';
      d.y = top;
      return 'on';
    }
    if (d.x < roof.x0 || d.x > roof.x1) {
      d.face = d.x < roof.x0 ? 'front' : 'rear';
      d.x = d.y;
      d.y = Math.min(top, (faceExtent(rig, d.face)?.y1 ?? top) - 0.03);
      return faceExtent(rig, d.face) ? 'on' : 'done';
    }
    return 'on';
  };

  for (const hole of truth.holes) {
    for (let n = 0; n < DROPS; n++) {
      const d: Drop = { face: hole.face, x: c.bell(hole.point[0], 0.03), y: c.bell(hole.point[1], 0.02) };
      // Driven in from the front, some of it goes round the corner along the side walls.
      if (truth.when === 'driving' && d.face === 'front' && c.happens(0.35)) {
        const e = faceExtent(rig, 'front');
        const wall = e && d.x > (e.x0 + e.x1) / 2 ? 'curb' : 'road';
        const w = faceExtent(rig, wall);
        if (w) [d.face, d.x] = [wall, w.x0 + c.waiting(0.25)];
      }
      for (let i = 0; i < MOST_STEPS; i++) {
        captured(d);
        const state = isWall(d.face) ? alongWall(d, d.face) : underRoof(d);
        if (state === 'done') break;
        if (isWall(d.face) && c.happens(0.05)) leave(d);
        if (isWall(d.face) && c.happens(0.015)) break;
      }
    }
  }
  return left;
};
