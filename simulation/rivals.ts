import type { Rig } from '../src/rig';
import type { Station } from '../src/terms';
import { extentOfShape, faceExtent, isWall } from './body';
import type { Metered } from './person';

/** Distance up the wall and in from the roof's edge, or straight along one face; undefined where the part is not above. */
const above = (rig: Rig, s: Station, wet: Metered): number | undefined => {
  const o = extentOfShape(s.shape);
  const [x, y] = wet.point;
  const nx = Math.max(o.x0, Math.min(x, o.x1));
  const ny = Math.max(o.y0, Math.min(y, o.y1));
  if (s.face === wet.face) return isWall(s.face) && o.y1 <= y ? undefined : Math.hypot(nx - x, ny - y);
  const roof = faceExtent(rig, 'roof');
  if (s.face !== 'roof' || !isWall(wet.face) || !roof) return undefined;
  const up = rig.levels.wall_top_m - y;
  const [along, inward] =
    wet.face === 'road'
      ? [nx0(o.x0, o.x1, x) - x, o.y0 - roof.y0]
      : wet.face === 'curb'
        ? [nx0(o.x0, o.x1, x) - x, roof.y1 - o.y1]
        : [nx0(o.y0, o.y1, x) - x, wet.face === 'front' ? o.x0 - roof.x0 : roof.x1 - o.x1];
  return Math.hypot(along, up + Math.max(0, inward));
};
const nx0 = (low: number, high: number, x: number): number => Math.max(low, Math.min(x, high));

/** What most people do: the openings and seams above the wettest place, the nearest first. */
export const nearestAbove = (rig: Rig, wet: readonly Metered[]): readonly string[] => {
  const wettest = wet.toSorted((a, b) => b.percent - a.percent)[0];
  if (!wettest) return [];
  return rig.stations
    .filter((s) => !s.retired && s.within === undefined && (s.cut_through || s.group === 'seam'))
    .flatMap((s) => {
      const far = above(rig, s, wettest);
      return far === undefined ? [] : [{ id: s.id, far }];
    })
    .toSorted((a, b) => a.far - b.far || (a.id < b.id ? -1 : 1))
    .map((s) => s.id);
};
