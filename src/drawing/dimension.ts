import type { Preferences } from '../units';
import { figure } from '../units';
import { bothLengths } from './length-words';
import { flat, type Point } from './path';
import { penOn } from './pen';
import type { Primitive } from './primitives';
import { widthOf } from './type-width';

const p = penOn(flat);

/** Half of a 45° tick. [px] */
const TICK_PX = 5;

/**
 * A dimension line between two points of the sheet, its ends cut by 45° ticks, its words on white in the middle.
 *
 * @param px     CSS px to one unit of the sheet
 * @param words  what stands on it; nothing is computed here
 */
export const dimension = (a: Point, b: Point, words: string, px: number, options: { readonly size_px?: number; readonly beside?: boolean } = {}): readonly Primitive[] => {
  const size = (options.size_px ?? 11) / px;
  const t = TICK_PX / px;
  const upright = Math.abs(a[0] - b[0]) < 1e-9;
  const [mx, my] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const tick = ([x, y]: Point): readonly Point[] => [
    [x - t * 0.7, y + t * 0.7],
    [x + t * 0.7, y - t * 0.7],
  ];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const wide = widthOf(words, size) + size * 0.8;
  const lines = [p.line('dimension', a, b), p.strokes('tick-end', [tick(a), tick(b)])];
  if (options.beside || wide > length) {
    const [x, y] = upright ? [mx - size * 0.6, my + size * 0.35] : [mx, my - size * 0.5];
    return [...lines, p.text('text', x, y, words, size, upright ? 'end' : 'middle')];
  }
  const plate = upright ? p.box('plate', mx - size * 0.75, my - wide / 2, size * 1.5, wide) : p.box('plate', mx - wide / 2, my - size * 0.75, wide, size * 1.5);
  const text = upright ? p.text('text', mx + size * 0.36, my, words, size, 'middle', -90) : p.text('text', mx, my + size * 0.36, words, size, 'middle');
  return [...lines, plate, text];
};

/**
 * The scale that lies under a wall: feet in alternating fields, or half metres, with the whole length at its end.
 *
 * @param x0     where the measured length begins on the sheet
 * @param length how long it is [m]
 */
export const scaleBar = (x0: number, y: number, length: number, preferences: Preferences, px: number, size = 11 / px): readonly Primitive[] => {
  const us = preferences.system === 'us';
  const [unit, every] = us ? [0.3048, 5] : [0.5, 2];
  const h = 4 / px;
  const fields = Math.floor(length / unit + 1e-9);
  const bars: Primitive[] = [];
  for (let i = 0; i <= fields; i += 1) {
    const to = Math.min(length, (i + 1) * unit);
    if (to > i * unit + 1e-6) bars.push(p.box(i % 2 === 0 ? 'scale-dark' : 'scale-light', x0 + i * unit, y, to - i * unit, h));
  }
  const whole = bothLengths(length, preferences);
  const stop = length - widthOf(whole, size) - size;
  const labels: Primitive[] = [];
  for (let i = 0; i * unit < stop; i += every) {
    const words = us ? (i === 0 ? '0 ft' : String(i)) : i === 0 ? '0 m' : figure(i * unit, 0);
    labels.push(p.text('text', x0 + i * unit, y + h + size * 1.15, words, size, i === 0 ? 'start' : 'middle'));
  }
  return [...bars, ...labels, p.text('text', x0 + length, y + h + size * 1.15, whole, size, 'end')];
};
