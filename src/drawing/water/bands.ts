import type { FacePoint } from '../../terms';
import { faceToSheet } from '../frame';
import { lineD, type Point } from '../path';
import { penOn } from '../pen';
import type { Ink, PathPrimitive, Primitive } from '../primitives';
import { type Contour, contoursAt, regionAbove } from './contours';
import type { DrawnPart } from './drawn-field';
import { clipped, type MapView } from './map-view';
import { isInside, meshOf } from './mesh';

/** What is tinted: the chance of being above the threshold, or how uncertain the estimate is. */
export type MapLayer = 'chance' | 'error';

/** Chances at which a band begins; the heavy line is the half. */
export const CHANCES = [0.25, 0.5, 0.75, 0.9] as const;

export const BAND_INKS: readonly Ink[] = ['wet-1', 'wet-2', 'wet-3', 'wet-4'];

export type Level = { readonly value: number; readonly words: string; readonly heavy: boolean; readonly ink: Ink };

/** Most levels of standard error that tones can tell apart. */
const MOST_LEVELS = 4;

/** Levels of the tinted figure. Standard errors take round steps of moisture points, or of the scale. */
export const levelsOf = (parts: readonly DrawnPart[], layer: MapLayer): readonly Level[] => {
  if (layer === 'chance') return CHANCES.map((value, i) => ({ value, words: String(Math.round(value * 100)), heavy: value === 0.5, ink: BAND_INKS[i] ?? 'wet-4' }));
  const errors = parts.flatMap((p) => (p.drawn === 'map' ? (p.grid?.standard_error ?? []) : [])).filter((e) => e !== undefined);
  if (errors.length === 0) return [];
  const points = errors.map((e) => e * 100);
  const [least, most] = [Math.min(...points), Math.max(...points)];
  const step = [0.1, 0.2, 0.5, 1, 2, 5, 10].find((s) => Math.floor(most / s) - Math.ceil(least / s) + 1 <= MOST_LEVELS) ?? 20;
  const first = Math.ceil(least / step) * step;
  return Array.from({ length: MOST_LEVELS }, (_, i) => first + i * step)
    .filter((v) => v <= most)
    .map((v, i) => ({ value: v / 100, words: String(Math.round(v * 10) / 10), heavy: false, ink: BAND_INKS[i] ?? 'wet-4' }));
};

/** A contour with the figure it stands for, on the sheet. */
export type DrawnContour = { readonly level: Level; readonly points: readonly Point[]; readonly closed: boolean };

const ringsD = (view: MapView, rings: readonly (readonly FacePoint[])[]): string => rings.map((r) => lineD(view.onto, r, true)).join('');

export type Bands = { readonly tones: readonly Primitive[]; readonly lines: readonly Primitive[]; readonly contours: readonly DrawnContour[] };

/**
 * Tones and contours of one part, cut exactly at its edge, at its holes, and at the ends of the stretch.
 *
 * @param through  whether the meter reads over frame tubes: pins do, a pinless meter reads the metal
 */
export const bandsOf = (view: MapView, part: DrawnPart, levels: readonly Level[], layer: MapLayer, through: boolean): Bands => {
  const { grid, field } = part;
  const outline = clipped(field.outline_m, view.from, view.to);
  if (part.drawn !== 'map' || !grid || outline.length < 3) return { tones: [], lines: [], contours: [] };
  const mesh = meshOf({ ...grid, values: layer === 'chance' ? grid.chance : grid.standard_error }, outline, through ? field.holes_m : [...field.holes_m, ...field.masked_m]);
  const tones = levels.flatMap(({ value, ink }): readonly PathPrimitive[] => {
    const rings = regionAbove(mesh, value);
    return rings.length === 0 ? [] : [{ form: 'path', d: ringsD(view, rings), ink }];
  });
  const found = levels.map((level) => ({ level, lines: contoursAt(mesh, level.value) }));
  const lines = found.flatMap(({ level, lines: all }): readonly PathPrimitive[] =>
    all.length === 0 ? [] : [{ form: 'path', d: all.map((l: Contour) => lineD(view.onto, l.points, l.closed)).join(''), ink: level.heavy ? 'contour-half' : 'contour' }],
  );
  return {
    tones,
    lines,
    contours: found.flatMap(({ level, lines: all }) => all.map((l) => ({ level, closed: l.closed, points: l.points.map((p) => faceToSheet(view.frame, p)) }))),
  };
};

/** Slanted strokes across a part, its holes left free: nobody has read there, or no reading is near. */
export const hatchOver = (
  view: MapView,
  outline: readonly FacePoint[],
  holes: readonly (readonly FacePoint[])[],
  keep: (p: FacePoint) => boolean = () => true,
): readonly Primitive[] => {
  const rings = [clipped(outline, view.from, view.to), ...holes].filter((r) => r.length >= 3);
  const body = rings[0];
  if (!body) return [];
  const step = (9 / view.px) * Math.SQRT2;
  const sums = body.map(([x, y]) => x + y);
  const strokes: (readonly FacePoint[])[] = [];
  for (let c = Math.ceil(Math.min(...sums) / step) * step; c < Math.max(...sums); c += step) {
    const xs = rings
      .flatMap((ring) =>
        ring.flatMap((a, i): readonly number[] => {
          const b = ring[(i + 1) % ring.length] ?? a;
          const [da, db] = [a[0] + a[1] - c, b[0] + b[1] - c];
          return da >= 0 === db >= 0 ? [] : [a[0] + ((b[0] - a[0]) * da) / (da - db)];
        }),
      )
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < xs.length; i += 2) strokes.push(...kept([xs[i] ?? 0, xs[i + 1] ?? 0], c, keep, 4 / view.px));
  }
  return strokes.length === 0 ? [] : [penOn(view.onto).strokes('grid', strokes)];
};

/** The pieces of one stroke that are kept, to within a step. */
const kept = ([from, to]: readonly [number, number], c: number, keep: (p: FacePoint) => boolean, step: number): readonly (readonly FacePoint[])[] => {
  const at = (x: number): FacePoint => [x, c - x];
  const out: (readonly FacePoint[])[] = [];
  const count = Math.max(1, Math.ceil((to - from) / step));
  let start: number | undefined;
  for (let i = 0; i < count; i += 1) {
    const [a, b] = [from + ((to - from) * i) / count, from + ((to - from) * (i + 1)) / count];
    const is = keep(at((a + b) / 2));
    if (is && start === undefined) start = a;
    if (!is && start !== undefined) {
      out.push([at(start), at(a)]);
      start = undefined;
    }
  }
  if (start !== undefined) out.push([at(start), at(to)]);
  return out;
};

/** Whether the map says nothing at a point of a mapped part: no reading near enough. */
export const isUnknown = ({ grid }: DrawnPart, [x, y]: FacePoint): boolean => {
  if (!grid) return true;
  if (grid.chance.every((c) => c === undefined)) return false;
  const [c, r] = [Math.round((x - grid.x0_m) / grid.step_m), Math.round((y - grid.y0_m) / grid.step_m)];
  for (const [dc, dr] of [
    [0, 0],
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    const [cc, rr] = [c + dc, r + dr];
    if (cc >= 0 && cc < grid.columns && rr >= 0 && rr < grid.rows && grid.chance[rr * grid.columns + cc] !== undefined) return false;
  }
  return true;
};

/** A point that lies in the field and in none of its holes. */
export const isInField = ({ field }: DrawnPart, point: FacePoint): boolean => isInside(point, field.outline_m) && !field.holes_m.some((h) => isInside(point, h));
