import { type Bounds, boundsOn } from '../frame';
import type { Point } from '../path';
import type { Primitive } from '../primitives';
import { widthOf } from '../type-width';
import type { DrawnContour } from './bands';
import type { DrawnPart } from './drawn-field';
import { clipped, type MapView, sheetPen as p } from './map-view';
import { meet, wrapped } from './words-placed';

type Told = { readonly x0: number; readonly x1: number; readonly y1: number; readonly why: string };

const dotted = (view: MapView, parts: readonly DrawnPart[]): readonly Told[] =>
  parts
    .filter((q) => q.drawn === 'dots' && q.readings > 0)
    .map((q) => {
      const b = boundsOn(view.frame, clipped(q.field.outline_m, view.from, view.to));
      return { x0: b.x0, x1: b.x1, y1: b.y1, why: q.why ?? 'no map' };
    })
    .sort((a, b) => a.x0 - b.x0);

/** `3 places are read here; a map needs 8.`: what is counted, and what is said of it. */
const COUNTED = /^(\d+|One) places?[^;]*(; .*)$/;
const countIn = (why: string): number => {
  const count = COUNTED.exec(why)?.[1];
  return count === 'One' ? 1 : Number(count);
};

/** Reasons that differ by a count alone are one reason. */
const reasons = (told: readonly Told[]): readonly { readonly whys: readonly string[]; readonly words: string }[] => {
  const groups = new Map<string, string[]>();
  for (const { why } of told) {
    const key = COUNTED.exec(why)?.[2] ?? why;
    const known = groups.get(key) ?? [];
    if (!known.includes(why)) groups.set(key, [...known, why]);
  }
  return [...groups].map(([key, whys]) => {
    const counts = whys.map(countIn).sort((a, b) => a - b);
    return { whys, words: `Readings only: ${whys.length > 1 ? `${counts[0]} to ${counts.at(-1)} places in a part${key}` : whys[0]}` };
  });
};

/** Parts that have room for their reason below them, side by side. */
const MOST_BRACKETS = 3;

/**
 * Why some parts show readings only: a line under each with its words below; where they stand too close for that, a note, and a
 * letter in each part where there are several reasons.
 *
 * @param quiet  all of them as notes
 */
export const whyOnly = (view: MapView, parts: readonly DrawnPart[], quiet = false): { readonly primitives: readonly Primitive[]; readonly notes: readonly string[] } => {
  const told = dotted(view, parts);
  const size = view.type * 0.92;
  const y = view.area.y1 + view.type * 0.7;
  const set = told.map((t) => ({ ...t, left: t.x0 + 3 / view.px, right: t.x1 - 3 / view.px, lines: wrapped(`Readings only: ${t.why}`, size, t.x1 - t.x0 - 6 / view.px) }));
  const roomy =
    !quiet &&
    set.length <= MOST_BRACKETS &&
    set.every((t, i) => t.x0 >= (set[i - 1]?.x1 ?? Number.NEGATIVE_INFINITY) - 0.01 && t.lines.length <= 3 && t.lines.every((l) => widthOf(l, size) <= t.right - t.left));
  if (roomy)
    return {
      notes: [],
      primitives: set.flatMap(({ left, right, lines }): readonly Primitive[] => [
        p.strokes('dimension', [
          [
            [left, y - 4 / view.px],
            [left, y],
            [right, y],
            [right, y - 4 / view.px],
          ],
        ]),
        ...lines.map((l, i) => p.text('text-small', (left + right) / 2, y + size * (1.15 + i * 1.15), l, size, 'middle')),
      ]),
    };
  const all = reasons(told);
  const letter = (i: number): string => String.fromCharCode(97 + i);
  if (all.length === 1) return { primitives: [], notes: all.map((r) => r.words) };
  return {
    notes: all.map((r, i) => `${letter(i)}  ${r.words}`),
    primitives: told.map((t) => p.text('text-small', t.x0 + 4 / view.px, t.y1 - 4 / view.px, letter(all.findIndex((r) => r.whys.includes(t.why))), size)),
  };
};

/** Mapped parts from left to right: where there are several, each is told apart by its number. */
export const mappedParts = (view: MapView, parts: readonly DrawnPart[]): readonly DrawnPart[] =>
  parts.filter((q) => q.drawn === 'map').sort((a, b) => boundsOn(view.frame, a.field.outline_m).x0 - boundsOn(view.frame, b.field.outline_m).x0);

export const bayNumbers = (view: MapView, parts: readonly DrawnPart[]): readonly Primitive[] => {
  const mapped = mappedParts(view, parts);
  if (mapped.length < 2) return [];
  const size = view.type * 0.92;
  return mapped.map((q, i) => {
    const b = boundsOn(view.frame, clipped(q.field.outline_m, view.from, view.to));
    return p.text('text-small', (b.x0 + b.x1) / 2, view.area.y1 + view.type * 0.7 + size * 1.15, `bay ${i + 1}`, size, 'middle');
  });
};

/** A figure on its contour, where the contour is long enough and nothing else stands there. */
export const contourWords = (view: MapView, contours: readonly DrawnContour[], taken: Bounds[]): readonly Primitive[] => {
  const size = view.type * 0.84;
  const done = new Map<string, number>();
  return [...contours]
    .sort((a, b) => lengthOf(b.points) - lengthOf(a.points))
    .flatMap(({ level, points }): readonly Primitive[] => {
      const w = widthOf(level.words, size, level.heavy);
      if (lengthOf(points) < Math.max(w * 3.2, 0.25) || (done.get(level.words) ?? 0) >= 1) return [];
      for (const share of [0.5, 0.36, 0.64, 0.24, 0.76, 0.12, 0.88]) {
        const [x, y] = alongLine(points, share);
        const box = { x0: x - w / 2 - 1 / view.px, x1: x + w / 2 + 1 / view.px, y0: y - size * 0.5, y1: y + size * 0.5 };
        if (taken.some((t) => meet(t, box)) || contours.some((c) => c.level !== level && runsThrough(c.points, box))) continue;
        taken.push(box);
        done.set(level.words, (done.get(level.words) ?? 0) + 1);
        return [p.text(level.heavy ? 'sounding-wet' : 'sounding', x, y + size * 0.36, level.words, size, 'middle')];
      }
      return [];
    });
};

/** Whether a line passes through a box: its points and points between them are near enough together to tell. */
const runsThrough = (points: readonly Point[], box: Bounds): boolean => {
  const step = (box.y1 - box.y0) / 2;
  return points.some((a, i) => {
    const b = points[i + 1] ?? a;
    const count = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / step));
    return Array.from({ length: count }, (_, k) => k / count).some((t) => {
      const [x, y] = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
      return x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1;
    });
  });
};

const lengthOf = (points: readonly Point[]): number => points.slice(1).reduce((s, b, i) => s + Math.hypot(b[0] - (points[i]?.[0] ?? 0), b[1] - (points[i]?.[1] ?? 0)), 0);

const alongLine = (points: readonly Point[], share: number): Point => {
  let left = lengthOf(points) * share;
  for (const [i, b] of points.slice(1).entries()) {
    const a = points[i] ?? b;
    const l = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= l && l > 0) return [a[0] + ((b[0] - a[0]) * left) / l, a[1] + ((b[1] - a[1]) * left) / l];
    left -= l;
  }
  return points[0] ?? [0, 0];
};
