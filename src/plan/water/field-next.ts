import { box, type Field, type Rig } from '../../rig';
import { nextPlaces, type Variogram } from '../../science';
import type { FaceId, FacePoint, Side } from '../../terms';
import { openIn } from './field-part';
import type { MapReading } from './field-readings';
import type { FieldPart, NextPlace } from './field-types';
import { nameOf } from './ranking-words';
import type { Scale } from './water-types';
import { whereOn } from './where-on';

/** How many places are proposed at once. */
const HOW_MANY = 3;
/** Grid that practice meters by: six inches near what is suspected. [m] */
const LATTICE_M = 0.1524;
/** A meter keeps this clear of studs, edges and openings. [m] */
const CLEAR_M = 0.05;
/** Nearer than a hand’s width to a reading is the same place, not a new one. [m] */
const ANOTHER_M = 0.12;
/** Openings farther than this do not help to find a place. [m] */
const NEAR_OPENING_M = 0.6;
/** No more lattice points than this are weighed against each other. */
const MOST = 300;

const inBoth = (m: number): string => `${Math.round(m / 0.0254)} in (${Math.round(m * 100)} cm)`;

const AXES: Readonly<Record<string, readonly [low: string, high: string]>> = {
  length: ['forward of', 'rearward of'],
  across: ['to the road side of', 'to the curb side of'],
  height: ['below', 'above'],
};
const ACROSS = /^(front|rear|step)$/;
const FLAT = /^(roof|under)$/;

const axisWords = (face: FaceId): readonly [readonly [string, string], readonly [string, string]] | undefined => {
  const [length, across, height] = [AXES['length'], AXES['across'], AXES['height']];
  if (!length || !across || !height) return undefined;
  if (ACROSS.test(face)) return [across, height];
  return FLAT.test(face) ? [length, across] : face === 'curb' || face === 'road' || face.endsWith('-outer') ? [length, height] : undefined;
};

/** Straight below, above or beside an opening that is near: the way a person finds a place without a tape. */
const besideOpening = (rig: Rig, face: FaceId, [x, y]: FacePoint): string | undefined => {
  const words = axisWords(face);
  if (!words) return undefined;
  const near = rig.stations
    .filter((s) => s.face === face && s.group === 'opening' && !s.retired && s.within === undefined && s.shape.form !== 'lines')
    .flatMap((s) => {
      const b = box(s.shape);
      const [overX, overY] = [x > b.x0 && x < b.x1, y > b.y0 && y < b.y1];
      if (overX === overY) return [];
      const [low, high, at, axis] = overX ? [b.y0, b.y1, y, 1] : [b.x0, b.x1, x, 0];
      const away = at < low ? low - at : at - high;
      const [before, after] = words[axis as 0 | 1];
      return away > 0 && away <= NEAR_OPENING_M ? [{ away, text: `${inBoth(away)} ${at < low ? before : after} ${nameOf(rig, s.id)}` }] : [];
    });
  return near.toSorted((a, b) => a.away - b.away)[0]?.text;
};

const placeIn = (rig: Rig, face: FaceId, side: Side, point: FacePoint): string => {
  const by = whereOn(rig, face, side, point);
  const opening = besideOpening(rig, face, point);
  return opening ? `${opening}; ${by}` : by;
};

/** Points of a field where a meter can be put: clear of edge, openings and what masks it. */
const lattice = (field: Field, scale: Scale, near: readonly MapReading[], v: Variogram): readonly FacePoint[] => {
  const b = box({ form: 'poly', points_m: field.outline_m });
  const ratio = v.anisotropy?.ratio ?? 1;
  const [rx, ry] = [v.range / ratio, v.range];
  const xs = near.map((r) => r.point_m[0]);
  const ys = near.map((r) => r.point_m[1]);
  const [x0, x1] = [Math.max(b.x0, Math.min(...xs) - rx), Math.min(b.x1, Math.max(...xs) + rx)];
  const [y0, y1] = [Math.max(b.y0, Math.min(...ys) - ry), Math.min(b.y1, Math.max(...ys) + ry)];
  const step = Math.max(LATTICE_M, Math.sqrt(((x1 - x0) * (y1 - y0)) / MOST));
  const along = (from: number, to: number): readonly number[] => {
    const n = Math.max(1, Math.floor((to - from) / step));
    const first = (from + to) / 2 - ((n - 1) / 2) * step;
    return Array.from({ length: n }, (_, i) => first + i * step);
  };
  const isOpen = openIn(field, scale);
  const clear = ([x, y]: FacePoint): boolean => isOpen([x, y]) && [-CLEAR_M, CLEAR_M].every((dx) => [-CLEAR_M, CLEAR_M].every((dy) => isOpen([x + dx, y + dy])));
  return along(y0, y1)
    .flatMap((y) => along(x0, x1).map((x): FacePoint => [x, y]))
    .filter(clear);
};

const xy = ([x, y]: FacePoint): { readonly x: number; readonly y: number } => ({ x, y });

/**
 * Where the next readings tell most: in the parts that bear no map yet, the wettest first. Places within reach of what was read,
 * because the question is how far the water reaches, not what the far end of a wall is like.
 */
export const nextReadings = (
  rig: Rig,
  face: FaceId,
  side: Side,
  scale: Scale,
  parts: readonly { readonly part: FieldPart; readonly readings: readonly MapReading[] }[],
): readonly NextPlace[] => {
  const wettest = (readings: readonly MapReading[]): number => Math.max(...readings.map((r) => r.value));
  const open = parts.filter((p) => p.part.drawn === 'dots').toSorted((a, b) => wettest(b.readings) - wettest(a.readings) || b.readings.length - a.readings.length);
  const chosen: NextPlace[] = [];
  for (const { part, readings } of open) {
    if (chosen.length >= HOW_MANY) break;
    const read = readings.map((r) => ({ ...xy(r.point_m), value: r.value }));
    const may = lattice(part.field, scale, readings, part.variogram);
    const fresh = may.filter(([x, y]) => read.every((r) => Math.hypot(r.x - x, r.y - y) >= ANOTHER_M));
    const found = nextPlaces(read, part.variogram, fresh.map(xy), may.map(xy), HOW_MANY - chosen.length);
    if (!found.ok) continue;
    for (const { candidate } of found.value) {
      const point_m = fresh[candidate];
      if (point_m) chosen.push({ point_m, words: placeIn(rig, face, side, point_m) });
    }
  }
  return chosen;
};
