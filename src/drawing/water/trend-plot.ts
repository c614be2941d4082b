import type { CivilDay } from '../../units';
import { figure } from '../../units';
import { flat, type Point } from '../path';
import { penOn } from '../pen';
import { dateAxis, framed, type PlotFrame, type PlotSize } from '../plot-frame';
import type { Drawing, Primitive } from '../primitives';
import { widthOf } from '../type-width';
import { wrapped } from './words-placed';

const p = penOn(flat);

/** How a place dries or wets, as the plan tells it, with what happened meanwhile. */
export type WetThroughTime = PlotSize & {
  readonly title: string;
  /** Above that day's dry reference: what the word speaks of, since the last repair where there was one. [kg/kg, or parts of the scale] */
  readonly points: readonly { readonly day: CivilDay; readonly excess: number }[];
  /** The same before that. */
  readonly earlier?: readonly { readonly day: CivilDay; readonly excess: number }[];
  readonly slope_per_d?: number;
  readonly interval_per_d?: readonly [number, number];
  /** `Drying?`, `Drying`. */
  readonly word: string;
  /** `Need 1 more reading`. */
  readonly need?: string;
  /** In one or two sentences, why. */
  readonly why: string;
  readonly rains?: readonly { readonly day: CivilDay; readonly amount_m?: number }[];
  readonly repairs?: readonly { readonly day: CivilDay; readonly words: string }[];
  readonly covers?: readonly { readonly from: CivilDay; readonly to: CivilDay; readonly words: string }[];
  readonly to?: CivilDay;
  /** Word, need and reason are told beside the plot: for a narrow screen. */
  readonly quiet?: boolean;
};

/** Below so much above the dry reference a place counts as dry: the band along the foot. */
const DRY = 0.02;
/** A rain of this much gives a tick of full length. [m] */
const FULL_RAIN_M = 0.025;

const stepFor = (span: number): number => [1, 2, 5, 10, 20].find((s) => span / s <= 5) ?? 50;

const signed = (v: number): string => (v > 0 ? `+${figure(v, 0)}` : figure(v, 0));

const rainTicks = (f: PlotFrame, plot: WetThroughTime, type: number): readonly Primitive[] => {
  const rains = plot.rains ?? [];
  if (rains.length === 0) return [];
  const top = f.y0 - type * 0.4;
  return [
    p.text('text-small', f.x0, top - type * 0.5, 'rain', type),
    ...rains.map((r) => {
      const length = type * (r.amount_m === undefined ? 0.6 : 0.35 + 1.1 * Math.min(1, r.amount_m / FULL_RAIN_M));
      return p.line('rain-fell', [f.xAt(r.day), top], [f.xAt(r.day), top + length]);
    }),
  ];
};

/** Rows above the rain: covers lie lowest, work above them. [type sizes over the rain] */
const [COVER_ROW, WORK_ROW] = [2.1, 1.7] as const;

const wordsAt = (f: PlotFrame, x: number, y: number, words: string, type: number): Primitive =>
  x + widthOf(words, type) > f.x1 + type * 2 ? p.text('text-small', f.x1 + type * 0.5, y, words, type, 'end') : p.text('text-small', x, y, words, type);

const coverBars = (f: PlotFrame, plot: WetThroughTime, type: number): readonly Primitive[] =>
  (plot.covers ?? []).flatMap((c, i): readonly Primitive[] => {
    const [a, b] = [Math.max(f.x0, f.xAt(c.from)), Math.min(f.x1, f.xAt(c.to))];
    const y = f.y0 - type * COVER_ROW;
    if (b <= a) return [];
    return [p.box('point', a, y, Math.max(2, b - a), 5), ...(i === 0 || b - a > widthOf(c.words, type) ? [wordsAt(f, a, y - type * 0.5, c.words, type)] : [])];
  });

/** Work done: a square over the plot with its words, and a hair down to the day. */
const repairMarks = (f: PlotFrame, plot: WetThroughTime, type: number): readonly Primitive[] => {
  const y = f.y0 - type * ((plot.covers ?? []).length > 0 ? COVER_ROW + 1.4 + WORK_ROW : COVER_ROW);
  let free = Number.NEGATIVE_INFINITY;
  return [...(plot.repairs ?? [])]
    .sort((a, b) => a.day - b.day)
    .flatMap((r): readonly Primitive[] => {
      const x = f.xAt(r.day);
      const fits = x > free;
      if (fits) free = x + widthOf(r.words, type) + type * 2;
      return [
        p.line('leader', [x, f.y1], [x, y]),
        p.box('point', x - 4.5, y - 4.5, 9, 9),
        ...(fits
          ? [x + widthOf(r.words, type) + 9 > f.x1 + type * 2 ? p.text('text-small', x - 9, y + 4, r.words, type, 'end') : p.text('text-small', x + 9, y + 4, r.words, type)]
          : []),
      ];
    });
};

/** The slope through the middle of what was measured, and how far it may be off. */
const slopeOf = (f: PlotFrame, plot: WetThroughTime): readonly Primitive[] => {
  const { slope_per_d: slope, interval_per_d: interval, points } = plot;
  const [first, last] = [points[0], points.at(-1)];
  if (slope === undefined || !first || !last || first === last) return [];
  const centre = (values: readonly number[]): number => {
    const sorted = [...values].sort((a, b) => a - b);
    const mid = sorted.length / 2;
    return sorted.length % 2 === 1 ? (sorted[Math.floor(mid)] ?? 0) : ((sorted[mid - 1] ?? 0) + (sorted[mid] ?? 0)) / 2;
  };
  // The line of Theil and Sen: through the median of what is left when the slope is taken out.
  const level = (s: number): number => centre(points.map((q) => q.excess - s * q.day));
  const at = (s: number, day: number): Point => [f.xAt(day), Math.max(f.y0, Math.min(f.y1, f.yAt((level(s) + s * day) * 100)))];
  const line = p.line('data-guess', at(slope, first.day), at(slope, last.day));
  if (!interval) return [line];
  const [low, high] = interval;
  return [p.poly('shade', [at(low, first.day), at(low, last.day), at(high, last.day), at(high, first.day)]), line];
};

/**
 * Points above that day's dry reference through time, with rain, cover and work, the slope with its interval, and what it comes to.
 * Open circles before the last repair, filled ones after it.
 */
export const wetTrendPlot = (plot: WetThroughTime): Drawing => {
  const { width = 880, height = 230, type_px: type = 12, title, quiet = false } = plot;
  const byDay = <T extends { readonly day: CivilDay }>(list: readonly T[]): readonly T[] => [...list].sort((a, b) => a.day - b.day);
  const points = byDay(plot.points);
  const earlier = byDay(plot.earlier ?? []);
  const all = [...earlier, ...points];
  if (all.length === 0)
    return { width, height: type * 3, title, px: 1, primitives: [p.text('text-small', 0, type * 2, 'No reading has a dry place of its day to be compared with yet', type)] };
  const days = [...all.map((q) => q.day), ...(plot.repairs ?? []).map((r) => r.day), ...(plot.to === undefined ? [] : [plot.to])];
  const [d0, d1] = [Math.min(...days), Math.max(...days)];
  const pad = Math.max(2, (d1 - d0) * 0.04);
  const values = all.map((q) => q.excess * 100);
  const step = stepFor(Math.max(...values, DRY * 100) - Math.min(0, ...values));
  const [low, high] = [Math.floor(Math.min(0, ...values) / step) * step, Math.ceil((Math.max(...values, DRY * 100) + 0.3) / step) * step];
  const beside = width >= 560 && !quiet;
  const column = beside ? Math.min(210, width * 0.3) : width - type * 3.4;
  const said = [...wrapped(plot.why, type, column)];
  const head = (plot.need === undefined ? 1 : 2) * type * 1.5;
  const below = beside || quiet ? 0 : head + said.length * type * 1.3 + type * 1.5;
  const over = type * (2 + ((plot.covers ?? []).length > 0 ? 2.2 : 0) + ((plot.repairs ?? []).length > 0 ? 1.6 : 0));
  const f = framed(type * 3.4, over, beside ? width - column - type * 1.6 : width - type * 2.4, height - type * 2, [d0 - pad, d1 + pad], [low, high]);
  const grid = Array.from({ length: Math.round((high - low) / step) + 1 }, (_, i) => low + i * step).flatMap((v): readonly Primitive[] => [
    p.line(v === 0 ? 'axis' : 'grid', [f.x0, f.yAt(v)], [f.x1, f.yAt(v)]),
    p.text('text-small', f.x0 - type * 0.6, f.yAt(v) + type * 0.36, signed(v), type, 'end'),
  ]);
  const at = (list: readonly { readonly day: CivilDay; readonly excess: number }[]): readonly Point[] => list.map((q): Point => [f.xAt(q.day), f.yAt(q.excess * 100)]);
  const [before, now] = [at(earlier), at(points)];
  const wish = plot.need === undefined ? [] : needed(f, now.at(-1), type);
  const [sx, sy] = beside ? [f.x1 + type * 1.6, f.y0 + type] : [f.x0, height + type];
  return {
    width,
    height: height + below,
    title: `${title}. ${plot.word}. ${plot.need ?? ''} ${plot.why}`.replaceAll(/\s+/g, ' '),
    px: 1,
    primitives: [
      p.box('band', f.x0, f.yAt(DRY * 100), f.x1 - f.x0, f.yAt(Math.max(0, low)) - f.yAt(DRY * 100)),
      ...slopeOf(f, { ...plot, points }),
      ...wish,
      ...grid,
      p.text('text-small', f.x1 + 4, f.yAt(DRY * 50) + type * 0.36, 'dry', type),
      p.line('axis', [f.x0, f.y1], [f.x1, f.y1]),
      ...dateAxis(f, Math.ceil(d0 - pad) as CivilDay, Math.floor(d1 + pad) as CivilDay, type),
      ...rainTicks(f, plot, type),
      ...coverBars(f, plot, type),
      ...repairMarks(f, plot, type),
      ...(before.length > 1 ? [p.line('data-thin', ...before)] : []),
      ...(now.length > 1 ? [p.line('data', ...now)] : []),
      ...before.map(([x, y]) => p.disc('point-open', x, y, 3.8)),
      ...now.map(([x, y]) => p.disc('point', x, y, 4.2)),
      ...(quiet
        ? []
        : [
            p.text('text-bold', sx, sy, plot.word, type * 1.08),
            ...(plot.need === undefined ? [] : [p.text('text-one', sx, sy + type * 1.5, plot.need, type * 1.08)]),
            ...said.map((l, i) => p.text('text', sx, sy + head + type * (0.1 + i * 1.3), l, type)),
          ]),
    ],
  };
};

/** Where the next reading would fall if nothing changed: a dotted ring in the room that it would have. */
const needed = (f: PlotFrame, last: Point | undefined, type: number): readonly Primitive[] => {
  if (!last) return [];
  const x = Math.min(f.x1 - type, last[0] + type * 2.2);
  if (x - last[0] < type * 0.8) return [];
  return [
    p.box('shade', x - type * 0.9, last[1], type * 1.8, f.y1 - last[1]),
    p.dots(
      'point-one',
      Array.from({ length: 10 }, (_, i): Point => [x + 5.5 * Math.cos((i * Math.PI) / 5), last[1] + 7 + 5.5 * Math.sin((i * Math.PI) / 5)]),
      0.9,
    ),
  ];
};
