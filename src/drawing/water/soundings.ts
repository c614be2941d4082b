import type { Comparable, Spot } from '../../plan';
import type { Bounds } from '../frame';
import type { Point } from '../path';
import type { Primitive } from '../primitives';
import { widthOf } from '../type-width';
import { type MapView, onView, sheetPen as p } from './map-view';

/** A reading as a chart shows a depth: whole points, tenths smaller and set low. */
export type Figure = { readonly whole: string; readonly tenth: string };

const isWhole = (v: number): boolean => Math.abs(v - Math.round(v)) < 1e-6;

/** As read, in points of the meter's own scale; tenths only where the meter gives them. */
export const figureOf = (reading: Comparable, tenths: boolean): Figure => {
  const text = (reading.as_read * 100).toFixed(tenths ? 1 : 0);
  const [whole = '', tenth = ''] = text.split('.');
  return { whole, tenth };
};

/** A meter that shows tenths has shown one somewhere. */
export const showsTenths = (readings: readonly Comparable[]): boolean => readings.some((r) => !isWhole(r.as_read * 100));

/** Tenths against whole points. */
const SMALL = 0.73;

/** Height of a figure above its middle and below it, and how far tenths hang. [type sizes] */
const [ABOVE, BELOW, HANG] = [0.4, 0.42, 0.2] as const;

export type Sounding = { readonly spot: Spot; readonly at: Point; readonly primitives: readonly Primitive[]; readonly box: Bounds };

const over = (a: Bounds, b: Bounds): number => Math.max(0, Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0)) * Math.max(0, Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0));

/** Where a figure may stand against its point: on it, or beside it. [shares of its own width and height, and of a gap] */
const STANDS: readonly (readonly [dx: number, dy: number])[] = [
  [0, 0],
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
  [2, 0],
  [-2, 0],
  [0, -2],
  [0, 2],
];

const isHigh = (spot: Spot): boolean => spot.state === 'wet' || spot.state === 'damp';

/** The wettest find their place first. */
const inOrder = (spots: readonly Spot[]): readonly Spot[] =>
  [...spots].sort((a, b) => (b.readings.at(-1)?.as_read ?? 0) - (a.readings.at(-1)?.as_read ?? 0) || (a.id < b.id ? -1 : 1));

/**
 * Every reading at its place, the latest of each spot. A figure stands on its point; where another is in the way it stands
 * beside it and a dot marks the point. None is left out.
 */
export const soundingsOn = (view: MapView, spots: readonly Spot[], taken: readonly Bounds[]): readonly Sounding[] => {
  const T = view.type * 1.08;
  const gap = 3.5 / view.px;
  const shown = inOrder(spots.filter((s) => s.readings.length > 0 && s.readings.at(-1)?.off_panel !== true && s.point_m[0] >= view.from && s.point_m[0] <= view.to));
  const tenths = showsTenths(shown.flatMap((s) => s.readings.slice(-1)));
  const boxes: Bounds[] = [...taken];
  return shown.map((spot): Sounding => {
    const reading = spot.readings.at(-1) as Comparable;
    const { whole, tenth } = figureOf(reading, tenths);
    const doubtful = reading.no_number !== undefined && reading.no_number !== 'beyond-meter';
    const ink = isHigh(spot) ? 'sounding-wet' : 'sounding';
    const heavy = isHigh(spot);
    const [w1, w2] = [widthOf(doubtful ? `(${whole}` : whole, T, heavy), widthOf(tenth, T * SMALL, heavy) + (doubtful ? widthOf(')', T, heavy) : 0)];
    const w = w1 + w2;
    const [x, y] = onView(view, spot.point_m);
    const boxAt = (cx: number, cy: number): Bounds => ({ x0: cx - w / 2, y0: cy - ABOVE * T, x1: cx + w / 2, y1: cy + (BELOW + HANG) * T });
    let best: { readonly centre: Point; readonly box: Bounds; readonly stands: number } | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const [i, [dx, dy]] of STANDS.entries()) {
      const [cx, cy] = [x + dx * (w / 2 + gap) * (Math.abs(dx) === 2 ? 0.9 : 1), y + dy * (0.5 * T + gap)];
      const box = boxAt(cx, cy);
      const common = boxes.reduce((s, b) => s + over(box, b), 0);
      const cost = common * 1000 + i;
      if (cost < least) {
        least = cost;
        best = { centre: [cx, cy], box, stands: i };
      }
      if (common === 0) break;
    }
    const { centre, box, stands } = best ?? { centre: [x, y] as Point, box: boxAt(x, y), stands: 0 };
    boxes.push(box);
    const [left, line] = [centre[0] - w / 2, centre[1] + 0.36 * T];
    const primitives: Primitive[] = [
      ...(stands === 0 ? [] : [p.disc('mark', x, y, 1.8 / view.px)]),
      p.text(ink, left, line, doubtful ? `(${whole}` : whole, T),
      ...(tenth === '' ? [] : [p.text(ink, left + w1, line + HANG * T, tenth, T * SMALL)]),
      ...(doubtful ? [p.text(ink, left + w1 + widthOf(tenth, T * SMALL, heavy), line, ')', T)] : []),
      ...(reading.dry_reference ? [p.line('tick-end', [left, line + 0.16 * T], [left + w1, line + 0.16 * T])] : []),
    ];
    return { spot, at: [x, y], primitives, box };
  });
};
