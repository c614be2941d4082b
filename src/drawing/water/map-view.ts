import type { Face, Rig } from '../../rig';
import type { FacePoint, Side, Station } from '../../terms';
import { type Bounds, boundsOf, boundsOn, type Frame, faceToSheet, ontoSheet, shifted } from '../frame';
import { frameAlone } from '../net';
import { shapePoints } from '../parts';
import { flat, type Onto, type Point } from '../path';
import { penOn } from '../pen';
import type { Primitive } from '../primitives';

/** A stretch of one face, laid on a sheet of its own: where people metered, with a little of what is beside it. */
export type MapView = {
  readonly rig: Rig;
  readonly face: Face;
  readonly side: Side;
  readonly frame: Frame;
  readonly onto: Onto;
  /** CSS px to one metre. */
  readonly px: number;
  readonly type: number;
  /** The stretch along the face's first axis. [m] */
  readonly from: number;
  readonly to: number;
  /** Whether the face goes on beyond it. */
  readonly cut: readonly [before: boolean, after: boolean];
  /** Where the face lies on the sheet. */
  readonly area: Bounds;
  readonly width: number;
  readonly height: number;
};

export type ViewOptions = {
  readonly fit_px: number;
  readonly type_px: number;
  /** The same stretch drawn so many times larger, with type as it was. */
  readonly zoom: number;
  readonly above_px: number;
  readonly below_px: number;
};

/** No larger than this, however small the panel: a wall is not a poster. [CSS px to the metre] */
const MOST_PX = 230;
/** Wall beside the outermost reading. [m] */
const BESIDE_M = 0.3;
/** A stretch never shorter than this, and a rest beside it never shorter than that: then all of it is shown. [m] */
const LEAST_M = 2.2;
const REST_M = 0.7;
/** An opening up to this wide is never cut. [m] */
const WHOLE_OPENING_M = 1.3;
/** Margin left and right. [px] */
const SIDE_PX = 14;

/** The stretch that holds all these points, widened to whole openings. */
const stretchOf = (rig: Rig, face: Face, points: readonly FacePoint[], least: number): readonly [number, number] => {
  const b = boundsOf(face.outline_m);
  const xs = points.map((p) => p[0]);
  if (xs.length === 0) return [b.x0, b.x1];
  let [from, to] = [Math.min(...xs) - BESIDE_M, Math.max(...xs) + BESIDE_M];
  const short = Math.max(LEAST_M, least) - (to - from);
  if (short > 0) [from, to] = [from - short / 2, to + short / 2];
  if (from < b.x0) [from, to] = [b.x0, Math.max(to, Math.min(b.x1, to + b.x0 - from))];
  if (to > b.x1) [from, to] = [Math.min(from, Math.max(b.x0, from - (to - b.x1))), b.x1];
  for (const s of rig.stations) {
    if (s.face !== face.id || s.retired || !s.cut_through || s.shape.form === 'lines') continue;
    const o = boundsOf(shapePoints(s.shape));
    if (o.x1 - o.x0 > WHOLE_OPENING_M) continue;
    if (o.x0 < from && o.x1 > from) from = o.x0 - 0.1;
    if (o.x0 < to && o.x1 > to) to = o.x1 + 0.1;
  }
  if (from - b.x0 < REST_M) from = b.x0;
  if (b.x1 - to < REST_M) to = b.x1;
  return [from, to];
};

/** The part of an outline within the stretch. */
export const clipped = (outline: readonly FacePoint[], from: number, to: number): readonly FacePoint[] => {
  const half = (points: readonly FacePoint[], at: number, sign: 1 | -1): readonly FacePoint[] =>
    points.flatMap((p, i) => {
      const q = points[(i + 1) % points.length] ?? p;
      const [dp, dq] = [(p[0] - at) * sign, (q[0] - at) * sign];
      return [...(dp >= 0 ? [p] : []), ...(dp * dq < 0 ? [[at, p[1] + ((q[1] - p[1]) * (at - p[0])) / (q[0] - p[0])] as FacePoint] : [])];
    });
  return half(half(outline, from, 1), to, -1);
};

/**
 * Lays the face out for a width.
 *
 * @param points  what must be seen: readings, ways in
 */
export const mapView = (rig: Rig, face: Face, side: Side, points: readonly FacePoint[], options: ViewOptions): MapView => {
  const { fit_px, type_px, zoom, above_px, below_px } = options;
  const whole = boundsOf(face.outline_m);
  const [from, to] = stretchOf(rig, face, points, (fit_px - 2 * SIDE_PX) / MOST_PX);
  const px = Math.min(MOST_PX, (fit_px - 2 * SIDE_PX) / (to - from));
  const raw = frameAlone(rig, face.id, side);
  const b = boundsOn(raw, [
    [from, whole.y0],
    [to, whole.y1],
  ]);
  const width = fit_px / px;
  const frame = shifted(raw, (width - (b.x1 - b.x0)) / 2 - b.x0, above_px / px - b.y0);
  const area = boundsOn(frame, [
    [from, whole.y0],
    [to, whole.y1],
  ]);
  return {
    rig,
    face,
    side,
    frame,
    onto: ontoSheet(frame),
    px: px * zoom,
    type: type_px / (px * zoom),
    from,
    to,
    cut: [from > whole.x0, to < whole.x1],
    area,
    width,
    height: area.y1 + below_px / px,
  };
};

/** Straight pieces of the outline within the stretch, those that lie on its ends left out, joined end to end. */
const edgesWithin = ({ face, from, to }: MapView): readonly (readonly FacePoint[])[] => {
  const runs: FacePoint[][] = [];
  const outline = face.outline_m;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    const [lo, hi] = a[0] <= b[0] ? [a, b] : [b, a];
    if (hi[0] < from || lo[0] > to) return;
    const at = (x: number): FacePoint => (hi[0] === lo[0] ? lo : [x, lo[1] + ((hi[1] - lo[1]) * (x - lo[0])) / (hi[0] - lo[0])]);
    const [p, q] = [a[0] < from ? at(from) : a[0] > to ? at(to) : a, b[0] < from ? at(from) : b[0] > to ? at(to) : b];
    const last = runs.at(-1);
    const end = last?.at(-1);
    if (last && end && Math.hypot(end[0] - p[0], end[1] - p[1]) < 1e-9) last.push(q);
    else runs.push([p, q]);
  });
  const [first, last] = [runs[0], runs.at(-1)];
  const [head, tail] = [first?.[0], last?.at(-1)];
  if (first && last && first !== last && head && tail && Math.hypot(head[0] - tail[0], head[1] - tail[1]) < 1e-9) {
    runs.pop();
    runs[0] = [...last.slice(0, -1), ...first];
  }
  return runs;
};

/** A line across the face where it goes on, with the draughtsman's kink in its middle. */
const breakLine = (view: MapView, x: number, side: 1 | -1): Primitive => {
  const column = clipped(view.face.outline_m, x - 1e-4, x + 1e-4).map((p) => p[1]);
  const [low, high] = [Math.min(...column), Math.max(...column)];
  const [mid, k] = [(low + high) / 2, 7 / view.px];
  const beyond = 9 / view.px;
  const points: readonly FacePoint[] = [
    [x, low - beyond],
    [x, mid - k],
    [x + side * k, mid - k / 3],
    [x - side * k, mid + k / 3],
    [x, mid + k],
    [x, high + beyond],
  ];
  return penOn(view.onto).line('dimension', ...points);
};

/** Less than the bends of the skin: what is mapped ends at the straight edge. [m] */
const ROUNDED_M = 0.03;

/** The face's own edge, cut where the stretch ends. */
export const faceEdges = (view: MapView): readonly Primitive[] => {
  const pen = penOn(view.onto);
  const whole = !view.cut[0] && !view.cut[1];
  return [
    ...(whole ? [pen.poly('face-edge', view.face.outline_m, ROUNDED_M)] : edgesWithin(view).map((run) => pen.bent('face-edge', run, ROUNDED_M))),
    ...(view.cut[0] ? [breakLine(view, view.from, 1)] : []),
    ...(view.cut[1] ? [breakLine(view, view.to, -1)] : []),
  ];
};

/** A station that is seen on this stretch. */
export const isOnView = (view: MapView, station: Station): boolean => {
  if (station.face !== view.face.id || station.retired) return false;
  const b = boundsOf(shapePoints(station.shape));
  return b.x1 > view.from && b.x0 < view.to;
};

/** Runs of a seam within the stretch. */
export const runsWithin = (view: MapView, lines: readonly (readonly FacePoint[])[]): readonly (readonly Point[])[] =>
  lines.flatMap((run) => {
    const out: Point[][] = [];
    run.slice(1).forEach((b, i) => {
      const a = run[i] ?? b;
      const [lo, hi] = a[0] <= b[0] ? [a, b] : [b, a];
      if (hi[0] < view.from || lo[0] > view.to) return;
      const at = (x: number): FacePoint => (hi[0] === lo[0] ? lo : [x, lo[1] + ((hi[1] - lo[1]) * (x - lo[0])) / (hi[0] - lo[0])]);
      const inside = (p: FacePoint): FacePoint => (p[0] < view.from ? at(view.from) : p[0] > view.to ? at(view.to) : p);
      const [p, q] = [inside(a), inside(b)];
      const last = out.at(-1);
      const end = last?.at(-1);
      if (last && end && Math.hypot(end[0] - p[0], end[1] - p[1]) < 1e-9) last.push(q);
      else out.push([p, q]);
    });
    return out;
  });

/** Where a point of the face lies on the sheet. */
export const onView = (view: MapView, point: FacePoint): Point => faceToSheet(view.frame, point);

export const sheetPen = penOn(flat);
