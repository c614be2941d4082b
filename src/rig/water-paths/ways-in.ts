import type { FaceId, FacePoint, Shape, Station, StationId } from '../../terms';
import { partNamed } from '../parts';
import type { Rig } from '../rig';
import { box, pointsOf } from '../shapes';

/** A line along which water is led: a seam, or the frame round an opening. */
export type Channel = { readonly name: string; readonly face: FaceId; readonly line_m: readonly FacePoint[] };

/** Where rain can get in at a station: a line on a face. Of what goes round something, only the front half faces the wind. */
export type WayIn = { readonly station: StationId; readonly face: FaceId; readonly line_m: readonly FacePoint[]; readonly round: boolean };

/** An opening so large that water goes round it by its frame. */
export type Gap = { readonly station: StationId; readonly face: FaceId; readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/** Openings smaller than this both ways are a point on the wall: no frame leads water round them; ours. [m] */
const FRAMED_M = 0.25;
const ROUND_POINTS = 12;

type Piece = { readonly face: FaceId; readonly shape: Shape; readonly seam: boolean; readonly name: string };

/** What of a station lets water in: itself, and what was folded into it. A unit that stands over its opening lets it in at that opening. */
const piecesOf = (station: Station): readonly Piece[] => {
  const parts = station.parts.flatMap((p): readonly Piece[] => {
    const part = partNamed(p.part);
    return part?.cut_through || part?.group === 'seam' ? [{ face: p.face ?? station.face, shape: p.shape, seam: part.group === 'seam', name: p.name }] : [];
  });
  if (station.group === 'equipment' && parts.length > 0) return parts;
  return station.cut_through || station.group === 'seam' ? [{ face: station.face, shape: station.shape, seam: station.group === 'seam', name: station.name }, ...parts] : parts;
};

/** Every opening and seam that can let water in. What lies within another opening is looked at with it. */
export const waterSources = (rig: Rig): readonly Station[] =>
  rig.stations.filter((s) => !s.retired && s.within === undefined && !s.off_wall && s.face !== 'tongue' && (s.cut_through || s.group === 'seam'));

const circle = (shape: Extract<Shape, { form: 'circle' }>): readonly FacePoint[] => {
  const [rx, ry] = [shape.w_m / 2, shape.h_m / 2];
  // Half a step on, so that no point stands at the very top and the left is the mirror image of the right.
  return Array.from({ length: ROUND_POINTS + 1 }, (_, i) => {
    const turn = (2 * Math.PI * (i + 0.5)) / ROUND_POINTS;
    return [shape.x_m + rx + rx * Math.cos(turn), shape.y_m + ry + ry * Math.sin(turn)] as const;
  });
};

const closed = (points: readonly FacePoint[]): readonly FacePoint[] => (points[0] ? [...points, points[0]] : []);

/** The outline as closed lines; a seam as it runs. */
const linesOf = (shape: Shape): readonly (readonly FacePoint[])[] => {
  if (shape.form === 'lines') return shape.lines_m;
  return [shape.form === 'circle' ? circle(shape) : closed(pointsOf(shape))];
};

const LEVEL_FACE = /^(roof|under)$|-top$/;

/** On a wall the sill drains to the outside: the upper edge and both sides let water in, down to the lower corners. */
const entryLines = ({ face, shape, seam }: Piece): readonly (readonly FacePoint[])[] => {
  if (shape.form === 'lines' || LEVEL_FACE.test(face)) return linesOf(shape);
  if (shape.form === 'rect') {
    const b = box(shape);
    return [
      [
        [b.x0, b.y0],
        [b.x0, b.y1],
        [b.x1, b.y1],
        [b.x1, b.y0],
      ],
    ];
  }
  if (seam || shape.form === 'poly') return linesOf(shape);
  const middle = box(shape);
  const half = (middle.y0 + middle.y1) / 2;
  return [circle(shape).filter((p) => p[1] >= half)];
};

const isClosed = (line: readonly FacePoint[]): boolean => {
  const [first, last] = [line[0], line.at(-1)];
  return first !== undefined && last !== undefined && line.length > 2 && first[0] === last[0] && first[1] === last[1];
};

/** Everywhere water can come in on this rig. */
export const waysIn = (rig: Rig): readonly WayIn[] =>
  waterSources(rig).flatMap((s) =>
    piecesOf(s).flatMap((p) => entryLines(p).map((line_m) => ({ station: s.id, face: p.face, line_m, round: p.shape.form !== 'lines' || isClosed(line_m) }))),
  );

const framed = ({ shape, seam }: Piece): boolean => {
  if (seam || shape.form !== 'rect') return false;
  return shape.w_m >= FRAMED_M && shape.h_m >= FRAMED_M;
};

/** A leaf in a leaf: what lies within another opening makes no gap of its own. */
const standing = (rig: Rig): readonly Station[] => rig.stations.filter((s) => !s.retired && !s.off_wall && s.within === undefined);

/** Every seam and every frame round a large opening. */
export const channels = (rig: Rig): readonly Channel[] =>
  standing(rig).flatMap((s) =>
    piecesOf(s)
      .filter((p) => p.seam || framed(p))
      .flatMap((p) => linesOf(p.shape).map((line_m) => ({ name: p.seam ? p.name : `frame of ${s.name}`, face: p.face, line_m }))),
  );

export const gaps = (rig: Rig): readonly Gap[] =>
  standing(rig).flatMap((s) =>
    piecesOf(s)
      .filter(framed)
      .map((p) => ({ station: s.id, face: p.face, ...box(p.shape) })),
  );
