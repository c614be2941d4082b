import { type CivilDay, dateOf, dayOf, monthName } from '../units';
import { flat } from './path';
import { penOn } from './pen';
import type { Primitive } from './primitives';
import { widthOf } from './type-width';

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

export type PlotFrame = {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly xAt: (day: number) => number;
  readonly yAt: (v: number) => number;
};

export const framed = (x0: number, y0: number, x1: number, y1: number, days: readonly [number, number], values: readonly [number, number]): PlotFrame => ({
  x0,
  x1,
  y0,
  y1,
  xAt: (day) => x0 + ((day - days[0]) / Math.max(1, days[1] - days[0])) * (x1 - x0),
  yAt: (v) => y1 - ((v - values[0]) / (values[1] - values[0] || 1)) * (y1 - y0),
});

export const dateAxis = (f: PlotFrame, from: CivilDay, to: CivilDay, type: number): readonly Primitive[] =>
  dates(from, to, f.x1 - f.x0).flatMap(({ day, words }): readonly Primitive[] => {
    const x = f.xAt(day);
    return [p.line('axis', [x, f.y1], [x, f.y1 + 4]), ...(x + widthOf(words, type) < f.x1 + type * 2 ? [p.text('text-small', x + 2, f.y1 + type * 1.35, words, type)] : [])];
  });
