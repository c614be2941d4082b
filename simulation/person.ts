import type { FaceId, FacePoint } from '../src/terms';
import { extentOfShape, faceExtent, isWall, WALLS, type WallId } from './body';
import type { Chance } from './chance';
import type { Damp } from './walk';
import type { Truth } from './world';

export type Metered = { readonly face: FaceId; readonly point: FacePoint; readonly percent: number };

/** What somebody with a pin meter and an hour writes down: some places, some grades, some of the circumstances. */
export type Noted = {
  readonly readings: readonly Metered[];
  readonly dry_percent: number;
  readonly grades: ReadonlyMap<string, number>;
  readonly ages_years: ReadonlyMap<string, number>;
  readonly tilt: { readonly nose_up_rad: number; readonly curb_up_rad: number } | undefined;
  readonly only: 'parked' | 'driving' | undefined;
  readonly driven_in_rain: boolean | undefined;
  readonly wind: WallId | undefined;
};

const REACH = 0.12;
const MANY = 14;

/** Excess over dry wood that so much water near a place gives: levels off towards wet through. */
const excess = (damp: readonly Damp[], face: FaceId, [x, y]: FacePoint): number => {
  let near = 0;
  for (const d of damp) {
    if (d.face !== face) continue;
    const far2 = (d.point[0] - x) ** 2 + (d.point[1] - y) ** 2;
    if (far2 < 0.25) near += Math.exp(-far2 / (2 * REACH * REACH));
  }
  return 19 * (1 - Math.exp(-near / MANY));
};

export const keepRecord = (truth: Truth, damp: readonly Damp[], c: Chance): Noted | undefined => {
  const { rig } = truth;
  const dry = c.between(9.5, 13);
  const readings: Metered[] = [];
  const inside = (face: FaceId, [x, y]: FacePoint): boolean => {
    const e = faceExtent(rig, face);
    return e !== undefined && x > e.x0 + 0.03 && x < e.x1 - 0.03 && y > (isWall(face) ? Math.max(e.y0, rig.levels.floor_m) : e.y0) && y < e.y1 - 0.03;
  };
  const behindGlass = (face: FaceId, [x, y]: FacePoint): boolean =>
    rig.stations.some((s) => {
      if (s.face !== face || !s.cut_through || s.retired) return false;
      const o = extentOfShape(s.shape);
      return x > o.x0 && x < o.x1 && y > o.y0 && y < o.y1;
    });
  const meter = (face: FaceId, point: FacePoint): void => {
    if (inside(face, point) && !behindGlass(face, point)) readings.push({ face, point, percent: dry + excess(damp, face, point) + c.bell(0, 0.7) });
  };
  // A stain calls the person: one of the wettest places, then a ragged grid round it.
  const shown = damp.filter((d) => inside(d.face, d.point)).map((d) => ({ d, much: excess(damp, d.face, d.point) }));
  const stains = shown.filter((s) => s.much > 6);
  if (stains.length === 0) return undefined;
  const stain = c.weighted(stains, (s) => s.much).d;
  meter(stain.face, stain.point);
  for (let i = 0, n = c.whole(5, 12); i < n; i++) meter(stain.face, [stain.point[0] + c.bell(0, 0.45), stain.point[1] + c.bell(0, 0.4)]);
  // Then the usual places, as far as patience and cupboards allow.
  for (const wall of WALLS) {
    const e = faceExtent(rig, wall);
    if (!e) continue;
    const here = wall === stain.face;
    for (const s of rig.stations.filter((s) => s.face === wall && s.looks.startsWith('window') && !s.retired)) {
      const o = extentOfShape(s.shape);
      for (const x of [o.x0 - 0.05, o.x1 + 0.05]) if (c.happens(here ? 0.7 : 0.3)) meter(wall, [x, o.y0 - 0.08]);
    }
    for (let x = e.x0 + 0.3; x < e.x1; x += 1) if (c.happens(here ? 0.6 : 0.15)) meter(wall, [x, rig.levels.floor_m + 0.06]);
    for (let x = e.x0 + 0.4; x < e.x1; x += 1.2) if (c.happens(here ? 0.45 : 0.12)) meter(wall, [x, rig.levels.wall_top_m - 0.1]);
  }
  for (const s of rig.stations.filter((s) => s.face === 'roof' && s.cut_through && !s.retired)) {
    const o = extentOfShape(s.shape);
    if (c.happens(stain.face === 'roof' ? 0.6 : 0.35)) meter('roof', [o.x0 - 0.08, (o.y0 + o.y1) / 2]);
    if (c.happens(stain.face === 'roof' ? 0.5 : 0.2)) meter('roof', [o.x1 + 0.08, (o.y0 + o.y1) / 2]);
  }
  const grades = new Map<string, number>();
  const ages_years = new Map<string, number>();
  for (const [id, wear] of truth.wear) {
    if (c.happens(0.7)) {
      const slip = c.happens(0.3) ? (c.happens(0.5) ? 1 : -1) : c.happens(0.06) ? (c.happens(0.5) ? 2 : -2) : 0;
      grades.set(id, Math.max(0, Math.min(5, wear + slip)));
    }
    if (c.happens(0.4)) ages_years.set(id, truth.age_years.get(id) ?? 0);
  }
  const tilt = c.happens(0.6) ? { nose_up_rad: truth.nose_up_rad + c.bell(0, 0.005), curb_up_rad: truth.curb_up_rad + c.bell(0, 0.005) } : undefined;
  return {
    readings,
    dry_percent: dry,
    grades,
    ages_years,
    tilt,
    driven_in_rain: c.happens(truth.when === 'driving' ? 0.7 : 0.4) ? true : truth.when === 'parked' && c.happens(0.35) ? false : undefined,
    only: c.happens(truth.when === 'driving' ? 0.5 : 0.3) ? truth.when : undefined,
    wind: truth.windward !== undefined && c.happens(0.4) ? truth.windward : undefined,
  };
};

/** Wet and dry as a careful person would say it; what lies between is left out. */
export const wetAndDry = (record: Noted): { readonly wet: readonly Metered[]; readonly dry: readonly Metered[] } => ({
  wet: record.readings.filter((r) => r.percent > record.dry_percent + 3.5),
  dry: record.readings.filter((r) => r.percent < record.dry_percent + 1.5),
});
