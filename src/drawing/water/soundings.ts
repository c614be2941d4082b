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

type Sign = { readonly width: number; readonly draw: (left: number, line: number) => readonly Primitive[] };

/** A reading as it stands on a map: brackets where it may not be compared, a line under a dry place, heavy where it is wet. */
const signOf = (spot: Spot, reading: Comparable, tenths: boolean, T: number): Sign => {
  const { whole, tenth } = figureOf(reading, tenths);
  const doubtful = reading.no_number !== undefined && reading.no_number !== 'beyond-meter';
  const heavy = isHigh(spot);
  const ink = heavy ? 'sounding-wet' : 'sounding';
  const first = doubtful ? `(${whole}` : whole;
  const [w1, w2, w3] = [widthOf(first, T, heavy), widthOf(tenth, T * SMALL, heavy), doubtful ? widthOf(')', T, heavy) : 0];
  return {
    width: w1 + w2 + w3,
    draw: (left, line) => [
      p.text(ink, left, line, first, T),
      ...(tenth === '' ? [] : [p.text(ink, left + w1, line + HANG * T, tenth, T * SMALL)]),
      ...(doubtful ? [p.text(ink, left + w1 + w2, line, ')', T)] : []),
      ...(reading.dry_reference ? [p.line('tick-end', [left, line + 0.16 * T], [left + w1, line + 0.16 * T])] : []),
    ],
  };
};

const sizeOf = (view: MapView): number => view.type * 1.08;

const onPanel = (spots: readonly Spot[]): readonly Spot[] => spots.filter((s) => s.readings.length > 0 && s.readings.at(-1)?.off_panel !== true);

const isWithin = (view: MapView, { point_m }: Spot): boolean => point_m[0] >= view.from && point_m[0] <= view.to;

const tenthsOf = (spots: readonly Spot[]): boolean => showsTenths(onPanel(spots).flatMap((s) => s.readings.slice(-1)));

/**
 * Every reading at its place, the latest of each spot. A figure stands on its point; where another is in the way it stands
 * beside it and a dot marks the point. None is left out.
 */
export const soundingsOn = (view: MapView, spots: readonly Spot[], taken: readonly Bounds[]): readonly Sounding[] => {
  const T = sizeOf(view);
  const gap = 3.5 / view.px;
  const tenths = tenthsOf(spots);
  const boxes: Bounds[] = [...taken];
  return inOrder(onPanel(spots).filter((s) => isWithin(view, s))).map((spot): Sounding => {
    const sign = signOf(spot, spot.readings.at(-1) as Comparable, tenths, T);
    const w = sign.width;
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
    return { spot, at: [x, y], primitives: [...(stands === 0 ? [] : [p.disc('mark', x, y, 1.8 / view.px)]), ...sign.draw(centre[0] - w / 2, centre[1] + 0.36 * T)], box };
  });
};

/** Readings beyond the stretch, in a row from a point on: on which side of it they lie is said before them. */
export const soundingsBeyond = (view: MapView, spots: readonly Spot[], x: number, line: number): readonly Primitive[] => {
  const T = sizeOf(view);
  const size = view.type * 0.92;
  const tenths = tenthsOf(spots);
  const beyond = onPanel(spots).filter((s) => !isWithin(view, s));
  const middle = (view.area.x0 + view.area.x1) / 2;
  let at = x;
  return (['left', 'right'] as const).flatMap((side): readonly Primitive[] => {
    const here = beyond.filter((s) => onView(view, s.point_m)[0] < middle === (side === 'left'));
    if (here.length === 0) return [];
    const words = `Farther to the ${side}:`;
    const out: Primitive[] = [p.text('text-small', at, line, words, size)];
    at += widthOf(words, size) + size * 0.5;
    for (const spot of [...here].sort((a, b) => onView(view, a.point_m)[0] - onView(view, b.point_m)[0])) {
      const sign = signOf(spot, spot.readings.at(-1) as Comparable, tenths, T);
      out.push(...sign.draw(at, line));
      at += sign.width + T * 0.7;
    }
    at += T;
    return out;
  });
};

/** The same in words: `Farther to the left: 11, 11.5`. */
export const beyondWords = (view: MapView, spots: readonly Spot[]): readonly string[] => {
  const tenths = tenthsOf(spots);
  const beyond = onPanel(spots).filter((s) => !isWithin(view, s));
  const middle = (view.area.x0 + view.area.x1) / 2;
  const xOf = (s: Spot): number => onView(view, s.point_m)[0];
  return (['left', 'right'] as const).flatMap((side) => {
    const here = beyond.filter((s) => xOf(s) < middle === (side === 'left')).sort((a, b) => xOf(a) - xOf(b));
    const figures = here.map((s) => {
      const { whole, tenth } = figureOf(s.readings.at(-1) as Comparable, tenths);
      return tenth === '' ? whole : `${whole}.${tenth}`;
    });
    return figures.length === 0 ? [] : [`Farther to the ${side}: ${figures.join(', ')}`];
  });
};

export const hasBeyond = (view: MapView, spots: readonly Spot[]): boolean => onPanel(spots).some((s) => !isWithin(view, s));
