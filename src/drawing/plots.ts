import { type CivilDay, dateOf, dayOf, monthName } from '../units';
import { widthOf } from './dimension';
import { flat, type Point } from './path';
import { penOn } from './pen';
import type { Drawing, Primitive } from './primitives';

/** Plots are drawn in CSS px. Values arrive in the person's own unit, already rounded for reading. */
const p = penOn(flat);

export type PlotSize = { readonly width?: number; readonly height?: number; readonly type_px?: number };

const DAYS_A_MONTH = 30.44;

/** First days of years, quarters or months, as many as fit. */
const dates = (from: CivilDay, to: CivilDay, room: number): readonly { readonly day: number; readonly words: string }[] => {
  const months = (to - from) / DAYS_A_MONTH;
  const most = Math.max(2, Math.floor(room / 52));
  const step = [1, 2, 3, 6, 12, 24, 60, 120].find((s) => months / s <= most) ?? 240;
  const start = dateOf(from);
  const out: { day: number; words: string }[] = [];
  for (let m = start.year * 12 + start.month - 1; ; m += 1) {
    const [year, month] = [Math.floor(m / 12), (m % 12) + 1];
    const day = dayOf(year, month, 1);
    if (day > to) return out;
    if (day >= from && m % step === 0) out.push({ day, words: step >= 12 ? String(year) : month === 1 ? String(year) : monthName(month).slice(0, 3) });
  }
};

type Frame = { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number; readonly X: (day: number) => number; readonly Y: (v: number) => number };

const framed = (x0: number, y0: number, x1: number, y1: number, days: readonly [number, number], values: readonly [number, number]): Frame => ({
  x0,
  x1,
  y0,
  y1,
  X: (day) => x0 + ((day - days[0]) / Math.max(1, days[1] - days[0])) * (x1 - x0),
  Y: (v) => y1 - ((v - values[0]) / (values[1] - values[0] || 1)) * (y1 - y0),
});

const dateAxis = (f: Frame, from: CivilDay, to: CivilDay, type: number): readonly Primitive[] =>
  dates(from, to, f.x1 - f.x0).flatMap(({ day, words }): readonly Primitive[] => {
    const x = f.X(day);
    return [p.line('axis', [x, f.y1], [x, f.y1 + 4]), ...(x + widthOf(words, type) < f.x1 + type * 2 ? [p.text('text-small', x + 2, f.y1 + type * 1.35, words, type)] : [])];
  });

/** One look at a seal: its grade 0 to 5, or not seen. */
export type GradeLook = { readonly day: CivilDay; readonly grade: number | 'not-seen' };

export type GradeHistory = PlotSize & {
  readonly title: string;
  readonly looks: readonly GradeLook[];
  /** Work on it: it starts again from what was seen next. */
  readonly care: readonly { readonly day: CivilDay; readonly words: string }[];
  readonly to?: CivilDay;
};

const GRADE_WORDS = ['as new', 'dull', 'crazed', 'cracked', 'open', 'failed'] as const;
/** From S3 on a seal is to be settled before rain. */
const LETS_WATER_IN = 3;

/**
 * A seal's grade through the years: steps down as it ages, squares where work was done, dotted circles where
 * nobody saw it. A grade holds until the next look; between two looks the drop is drawn at the later one.
 */
export const gradePlot = (history: GradeHistory): Drawing => {
  const { width = 340, height = 230, type_px: type = 11 } = history;
  const looks = [...history.looks].sort((a, b) => a.day - b.day);
  const days = [...looks.map((l) => l.day), ...history.care.map((c) => c.day), ...(history.to === undefined ? [] : [history.to])];
  const [from, to] = days.length > 0 ? [Math.min(...days), Math.max(...days)] : [0, 1];
  const pad = Math.max(20, (to - from) * 0.04);
  const f = framed(type * 7, type * 2, width - type, height - type * 2, [from - pad, to + pad], [5, 0]);
  const grid = GRADE_WORDS.flatMap((word, g): readonly Primitive[] => [
    p.line('grid', [f.x0, f.Y(g)], [f.x1, f.Y(g)]),
    p.text('text-bold', 0, f.Y(g) + type * 0.36, `S${g}`, type),
    p.text('text-small', type * 2, f.Y(g) + type * 0.36, word, type),
  ]);
  const shade = [p.box('band', f.x0, f.Y(LETS_WATER_IN), f.x1 - f.x0, f.Y(5) - f.Y(LETS_WATER_IN)), p.line('axis', [f.x0, f.Y(LETS_WATER_IN)], [f.x1, f.Y(LETS_WATER_IN)])];
  const graded = looks.filter((l): l is GradeLook & { readonly grade: number } => l.grade !== 'not-seen');
  const line: Primitive[] = [];
  graded.forEach((l, i) => {
    const next = graded[i + 1];
    if (!next) return;
    const work = history.care.find((c) => c.day > l.day && c.day <= next.day);
    if (work) {
      line.push(
        p.line('data', [f.X(l.day), f.Y(l.grade)], [f.X(work.day), f.Y(l.grade)]),
        p.line('fold', [f.X(work.day), f.Y(l.grade)], [f.X(work.day), f.Y(next.grade)]),
        p.line('data', [f.X(work.day), f.Y(next.grade)], [f.X(next.day), f.Y(next.grade)]),
      );
    } else line.push(p.line('data', [f.X(l.day), f.Y(l.grade)], [f.X(next.day), f.Y(l.grade)], [f.X(next.day), f.Y(next.grade)]));
  });
  const last = graded.at(-1);
  const points = graded.map((l) => p.disc(l === last ? 'point' : 'point-open', f.X(l.day), f.Y(l.grade), l === last ? 4.5 : 3.6));
  const gradeAt = (day: number): number => [...graded].reverse().find((l) => l.day <= day)?.grade ?? graded[0]?.grade ?? 0;
  const unseen = looks
    .filter((l) => l.grade === 'not-seen')
    .map((l) =>
      p.dots(
        'mark',
        Array.from({ length: 10 }, (_, i): Point => [f.X(l.day) + 5.5 * Math.cos((i * Math.PI) / 5), f.Y(gradeAt(l.day)) + 5.5 * Math.sin((i * Math.PI) / 5)]),
        0.9,
      ),
    );
  const care = history.care.flatMap((c): readonly Primitive[] => {
    const after = graded.find((l) => l.day >= c.day)?.grade ?? gradeAt(c.day);
    const x = f.X(c.day);
    const left = x + widthOf(c.words, type) > f.x1;
    return [p.box('point', x - 4.5, f.Y(after) - 4.5, 9, 9), p.text('text', left ? x + 4 : x - 4, f.Y(0) - type * 0.9, c.words, type, left ? 'end' : 'start')];
  });
  return {
    width,
    height,
    title: history.title,
    px: 1,
    primitives: [...shade, ...grid, ...dateAxis(f, Math.ceil(from - pad) as CivilDay, Math.floor(to + pad) as CivilDay, type), ...line, ...points, ...unseen, ...care],
  };
};

export type Series = {
  readonly words: string;
  readonly points: readonly { readonly day: CivilDay; readonly value: number }[];
  /** The one the page speaks of. */
  readonly one?: boolean;
};

export type TimePlot = PlotSize & {
  readonly title: string;
  readonly series: readonly Series[];
  /** Levels to read it against: what is set, what is needed. `shade` hatches everything below. */
  readonly levels?: readonly { readonly value: number; readonly words: string; readonly shade?: boolean }[];
  readonly show: (value: number) => string;
};

const niceStep = (span: number, most: number): number => {
  const raw = span / Math.max(1, most);
  const ten = 10 ** Math.floor(Math.log10(raw));
  return ([1, 2, 5, 10].find((k) => k * ten >= raw) ?? 10) * ten;
};

/** Readings against time, with the levels they are read against; the one that matters is heavy. */
export const timePlot = (plot: TimePlot): Drawing => {
  const { width = 340, height = 230, type_px: type = 11, show } = plot;
  const all = plot.series.flatMap((s) => s.points);
  if (all.length === 0) return { width, height, title: plot.title, px: 1, primitives: [p.text('text-small', 0, type * 2, 'No readings yet', type)] };
  const values = [...all.map((q) => q.value), ...(plot.levels ?? []).map((l) => l.value)];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const step = niceStep(Math.max(high - low, Math.abs(high) * 0.02, 1e-9), 4);
  const [v0, v1] = [Math.floor(low / step - 0.35) * step, Math.ceil(high / step + 0.35) * step];
  const [d0, d1] = [Math.min(...all.map((q) => q.day)), Math.max(...all.map((q) => q.day))];
  const pad = Math.max(2, (d1 - d0) * 0.05);
  const names = Math.max(0, ...plot.series.map((s) => widthOf(s.words, type, true)));
  const f = framed(type * 3.6, type * 1.2, width - names - type * 1.2, height - type * 2, [d0 - pad, d1 + pad], [v0, v1]);
  const ticks = Array.from({ length: Math.round((v1 - v0) / step) + 1 }, (_, i) => v0 + i * step);
  const grid = ticks.flatMap((v): readonly Primitive[] => [
    p.line('grid', [f.x0, f.Y(v)], [f.x1, f.Y(v)]),
    p.text('text-small', f.x0 - type * 0.6, f.Y(v) + type * 0.36, show(v), type, 'end'),
  ]);
  const levels = (plot.levels ?? []).flatMap((l): readonly Primitive[] => [
    ...(l.shade ? [p.strokes('hatch', hatchOf(f.x0, f.Y(l.value), f.x1, f.y1))] : []),
    p.line('axis', [f.x0, f.Y(l.value)], [f.x1, f.Y(l.value)]),
    p.text('text', f.x0 + 4, f.Y(l.value) - type * 0.4, l.words, type),
  ]);
  const lines = plot.series.flatMap((s): readonly Primitive[] => {
    const points = [...s.points].sort((a, b) => a.day - b.day).map((q): Point => [f.X(q.day), f.Y(q.value)]);
    const end = points.at(-1);
    return [
      ...(points.length > 1 ? [p.line(s.one ? 'data-one' : 'data-thin', ...points)] : []),
      ...points.map(([x, y]) => p.disc(s.one ? 'point-one' : 'point-open', x, y, s.one ? 4 : 3)),
      ...(end ? [p.text(s.one ? 'text-one' : 'text', end[0] + type * 0.8, end[1] + type * 0.36, s.words, type)] : []),
    ];
  });
  return {
    width,
    height,
    title: plot.title,
    px: 1,
    primitives: [...grid, ...levels, p.line('axis', [f.x0, f.y1], [f.x1, f.y1]), ...dateAxis(f, Math.ceil(d0 - pad) as CivilDay, Math.floor(d1 + pad) as CivilDay, type), ...lines],
  };
};

/** Slanted strokes that fill a box. */
const hatchOf = (x0: number, y0: number, x1: number, y1: number): readonly (readonly Point[])[] => {
  const out: (readonly Point[])[] = [];
  const h = y1 - y0;
  for (let x = x0 - h; x < x1; x += 6) {
    const from: Point = x < x0 ? [x0, y1 - (x0 - x)] : [x, y1];
    const to: Point = x + h > x1 ? [x1, y1 - (x1 - x)] : [x + h, y0];
    if (from[1] > y0) out.push([from, to]);
  }
  return out;
};
