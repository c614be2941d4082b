import type { Face, Rig } from '../rig';
import type { FaceId, Place, Station } from '../terms';
import { type Bounds, boundsOf, boundsOn, type Frame, faceToSheet } from './frame';
import { frameFor, type Net } from './net';
import { shapePoints } from './parts';
import type { Point } from './path';

/** Everything needed to draw on one sheet. Lengths are metres of the sheet unless their name says px. */
export type Sheet = {
  readonly rig: Rig;
  readonly net: Net;
  /** CSS px to one metre for which type and marks are sized. */
  readonly px: number;
  readonly type: number;
  /** Nominal size of a mark. */
  readonly s: number;
  readonly heavy: boolean;
  readonly numbers: boolean;
  readonly bounds: Bounds;
};

export const faceOf = (rig: Rig, id: FaceId): Face | undefined => rig.faces.find((f) => f.id === id);

/** A whole face as a station: its skin, its covering. Nothing is drawn for it, and its mark may stand anywhere on it. */
export const isArea = (s: Station): boolean => s.group === 'area';

const HALF_SEAM_M = 0.03;

const strips = (points: readonly Point[], frame: Frame): readonly Bounds[] =>
  points.slice(1).map((q, i) => {
    const b = boundsOf([faceToSheet(frame, points[i] ?? q), faceToSheet(frame, q)]);
    return { x0: b.x0 - HALF_SEAM_M, y0: b.y0 - HALF_SEAM_M, x1: b.x1 + HALF_SEAM_M, y1: b.y1 + HALF_SEAM_M };
  });

/** Boxes a station covers on the sheet: a seam covers a narrow strip for each straight run, a flange one for each side. */
export const boxesOf = (station: Station, frame: Frame): readonly Bounds[] => {
  const { shape } = station;
  if (shape.form === 'lines') return shape.lines_m.flatMap((run) => strips(run, frame));
  if (shape.form === 'rect' && station.group === 'seam') {
    const [x, y, w, h] = [shape.x_m, shape.y_m, shape.w_m, shape.h_m];
    return strips(
      [
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
        [x, y],
      ],
      frame,
    );
  }
  return [boundsOn(frame, shapePoints(shape))];
};

type Run = readonly [Point, Point];

const length = ([a, b]: Run): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

const runsOf = (station: Station): readonly Run[] =>
  station.shape.form === 'lines' ? station.shape.lines_m.flatMap((run) => run.slice(1).map((q, i): Run => [run[i] ?? q, q])) : [];

/** Middle of the longest straight run of a seam, or of the box of anything else; in face coordinates. */
export const middleOf = (station: Station): Point => {
  const runs = runsOf(station);
  const first = runs[0];
  if (first) {
    const [a, b] = runs.reduce((best, r) => (length(r) > length(best) ? r : best), first);
    return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  }
  const b = boundsOf(shapePoints(station.shape));
  return station.group === 'seam' ? [(b.x0 + b.x1) / 2, b.y1] : [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2];
};

/** A point so many metres along a seam from its start. */
export const alongRun = (station: Station, along_m: number): Point => {
  let left = along_m;
  for (const run of runsOf(station)) {
    const [a, b] = run;
    const l = length(run);
    if (left <= l && l > 0) return [a[0] + ((b[0] - a[0]) * left) / l, a[1] + ((b[1] - a[1]) * left) / l];
    left -= l;
  }
  return middleOf(station);
};

/** Where a mark belongs: the point it stands for, the part it must not hide, the face it should stay on. */
export type Anchor = { readonly at: Point; readonly part: Bounds; readonly within: Bounds; readonly solid?: boolean; readonly roams?: boolean };

/** What lies below the floor is told at the skirt of the nearer wall, because it has a sheet of its own. */
const belowWall = ({ rig, net }: Sheet, x: number, y: number): Anchor | undefined => {
  const wall = y > rig.overall.width_m / 2 ? 'curb' : 'road';
  const frame = frameFor(net, wall);
  const face = faceOf(rig, wall);
  if (!frame || !face) return undefined;
  const skirt = Math.min(...face.outline_m.map((q) => q[1]));
  const at = faceToSheet(frame, [x, skirt * 0.45]);
  return { at, part: boundsOf([at]), within: boundsOf([faceToSheet(frame, [x - 0.8, 0]), faceToSheet(frame, [x + 0.8, skirt])]) };
};

const anchorAt = (sheet: Sheet, face: FaceId, point: Point): Anchor | undefined => {
  const frame = frameFor(sheet.net, face);
  const f = faceOf(sheet.rig, face);
  if (frame && f) {
    const at = faceToSheet(frame, point);
    return { at, part: boundsOf([at]), within: boundsOn(frame, f.outline_m) };
  }
  return face === 'under' || face === 'tongue' ? belowWall(sheet, point[0], point[1]) : undefined;
};

const SOLID = ['tyre', 'spare-carrier', 'ladder-standoff'];

const anchorOfStation = (sheet: Sheet, station: Station, point: Point): Anchor | undefined => {
  const frame = frameFor(sheet.net, station.face);
  const face = faceOf(sheet.rig, station.face);
  if (!frame || !face) return anchorAt(sheet, station.face, point);
  const at = faceToSheet(frame, point);
  const within = boundsOn(frame, station.off_wall ? [...face.outline_m, ...shapePoints(station.shape)] : face.outline_m);
  if (isArea(station)) return { at, part: within, within, roams: true };
  const line = station.shape.form === 'lines' || station.group === 'seam';
  const part = line ? boundsOf([at]) : boundsOn(frame, shapePoints(station.shape));
  return { at, part, within, ...(SOLID.includes(station.part) ? { solid: true } : {}) };
};

/** Where the mark of a place goes; undefined when the place is not on this sheet. */
export const anchorOf = (sheet: Sheet, where: Place): Anchor | undefined => {
  if (where.at === 'rig') return undefined;
  if (where.at === 'point') return anchorAt(sheet, where.face, where.point_m);
  if (where.at === 'outline') {
    const b = boundsOf(where.outline_m);
    return anchorAt(sheet, where.face, [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2]);
  }
  const station = sheet.rig.stations.find((s) => s.id === where.station);
  if (!station) return undefined;
  return anchorOfStation(sheet, station, where.at === 'stretch' ? alongRun(station, (where.from_m + where.to_m) / 2) : middleOf(station));
};
