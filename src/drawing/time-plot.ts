import type { CivilDay } from '../units';
import { flat, type Point } from './path';
import { penOn } from './pen';
import { dateAxis, framed, type PlotSize } from './plot-frame';
import type { Drawing, Primitive } from './primitives';
import { widthOf } from './type-width';

const p = penOn(flat);

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
    p.line('grid', [f.x0, f.yAt(v)], [f.x1, f.yAt(v)]),
    p.text('text-small', f.x0 - type * 0.6, f.yAt(v) + type * 0.36, show(v), type, 'end'),
  ]);
  const levels = (plot.levels ?? []).flatMap((l): readonly Primitive[] => [
    ...(l.shade ? [p.strokes('hatch', hatchOf(f.x0, f.yAt(l.value), f.x1, f.y1))] : []),
    p.line('axis', [f.x0, f.yAt(l.value)], [f.x1, f.yAt(l.value)]),
    p.text('text', f.x0 + 4, f.yAt(l.value) - type * 0.4, l.words, type),
  ]);
  const lines = plot.series.flatMap((s): readonly Primitive[] => {
    const points = [...s.points].sort((a, b) => a.day - b.day).map((q): Point => [f.xAt(q.day), f.yAt(q.value)]);
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
