import type { Standing } from '../../logbook';
import { convexHull, outlineArea } from '../../science';
import type { EntryId, FaceId, FacePoint, Side } from '../../terms';
import type { TapMap } from './loose-skin-types';

/** One point, as it sounds now. */
export type Tap = {
  readonly entry: EntryId;
  readonly face: FaceId;
  readonly side: Side;
  readonly point_m: FacePoint;
  readonly sound: 'solid' | 'dull' | 'hollow';
  readonly standing: Standing;
  /** The first time it was hollow, if it ever was. */
  readonly hollow?: Standing;
};

/** A tap this near an earlier one is the same point tapped again: half the tightest usual grid of 5 to 8 cm; ours. [m] */
const SAME_POINT_M = 0.025;

/** Every point that was tapped, as it sounded last. */
export const tapsOf = (standings: readonly Standing[]): readonly Tap[] => {
  const points: Tap[] = [];
  for (const standing of standings) {
    const { place } = standing;
    const { sound } = standing.body as { readonly sound?: Tap['sound'] };
    if (place.at !== 'point' || sound === undefined) continue;
    const again = points.findIndex((t) => t.face === place.face && t.side === place.side && far(t.point_m, place.point_m) <= SAME_POINT_M);
    const hollow = points[again]?.hollow ?? (sound === 'hollow' ? standing : undefined);
    const tap: Tap = { entry: standing.entry.id, face: place.face, side: place.side, point_m: place.point_m, sound, standing, ...(hollow ? { hollow } : {}) };
    if (again < 0) points.push(tap);
    else points[again] = tap;
  }
  return points;
};

/** Hollow taps no farther apart than this are one loose patch: three steps of the tightest usual grid of 5 to 8 cm; ours. [m] */
const ONE_PATCH_M = 0.25;

/** Points of one side of one face that hang together and that were hollow once; the oldest first in each patch. */
export const hollowPatches = (taps: readonly Tap[]): readonly (readonly Tap[])[] => {
  const patches: Tap[][] = [];
  for (const tap of taps.filter((t) => t.hollow !== undefined)) {
    const touching = patches.filter((p) => p.some((t) => t.face === tap.face && t.side === tap.side && far(t.point_m, tap.point_m) <= ONE_PATCH_M));
    for (const p of touching) patches.splice(patches.indexOf(p), 1);
    patches.push([...touching.flat(), tap]);
  }
  return patches.map((p) => p.toSorted((a, b) => (a.hollow?.day ?? 0) - (b.hollow?.day ?? 0) || (a.entry < b.entry ? -1 : 1)));
};

const far = (a: FacePoint, b: FacePoint): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Undefined where nothing was tapped. */
export const tapMapOf = (taps: readonly Tap[]): TapMap | undefined => {
  if (taps.length === 0) return undefined;
  const count = (sound: Tap['sound']): number => taps.filter((t) => t.sound === sound).length;
  const hull_m = convexHull(taps.filter((t) => t.sound === 'hollow').map((t) => t.point_m));
  const area = hull_m.length < 3 ? undefined : outlineArea(hull_m);
  return {
    solid: count('solid'),
    dull: count('dull'),
    hollow: count('hollow'),
    hollow_share: count('hollow') / taps.length,
    hull_m,
    ...(area?.ok ? { hull_area_m2: area.value } : {}),
    entries: taps.map((t) => t.entry),
  };
};
