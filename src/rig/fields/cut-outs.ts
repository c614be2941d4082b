import type { FaceId, FacePoint, Station } from '../../terms';
import type { Rig } from '../rig';
import { type Box, box, contains } from '../shapes';

/** Something cut out of a face: nothing is drawn or estimated there. */
export type CutOut = {
  readonly outline_m: readonly FacePoint[];
  readonly box: Box;
  /** Large enough that a carpenter frames it: a member at both sides, one above, one below. */
  readonly framed: boolean;
};

/** From here on, both ways, an opening is framed and not just let in between two members; ours. [m] */
const FRAMED_M = 0.3;
const ROUND_POINTS = 24;
const ARCH = /^(wheel-arch|fender)/;

const corners = ({ x0, y0, x1, y1 }: Box): readonly FacePoint[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

const rim = (station: Station): readonly FacePoint[] => {
  const { shape } = station;
  if (shape.form === 'poly') return shape.points_m;
  const b = box(shape);
  if (shape.form !== 'circle') return corners(b);
  return Array.from({ length: ROUND_POINTS }, (_, i) => {
    const turn = (2 * Math.PI * i) / ROUND_POINTS;
    return [(b.x0 + b.x1) / 2 + ((b.x1 - b.x0) / 2) * Math.cos(turn), (b.y0 + b.y1) / 2 + ((b.y1 - b.y0) / 2) * Math.sin(turn)] as const;
  });
};

/** Corners are sums: their last digit decides nothing. */
const large = (b: Box): boolean => Math.min(b.x1 - b.x0, b.y1 - b.y0) >= FRAMED_M - 1e-9;

/** A cab door's outline follows the bodywork: it is left out of the map, but no upright member stands at its box. */
const cutOut = (outline_m: readonly FacePoint[], b: Box, upright: boolean): CutOut => ({ outline_m, box: b, framed: upright && large(b) });

/**
 * Everything cut out of a face: openings, slide-out openings, wheel arches. What lies within another is left to that other.
 *
 * @assumes  a part is as wide as its outer flange: the map stops there, a little outside the hole itself
 */
export const cutOuts = (rig: Pick<Rig, 'stations' | 'slides'>, face: FaceId): readonly CutOut[] => {
  const stations = rig.stations.filter(
    (s) => s.face === face && !s.retired && !s.layer && !s.off_wall && s.within === undefined && s.shape.form !== 'lines' && (s.cut_through || ARCH.test(s.part)),
  );
  const all = [
    ...stations.map((s) => cutOut(rim(s), box(s.shape), s.shape.form !== 'poly')),
    ...rig.slides
      .filter((s) => s.face === face)
      .map((s) => ({ x0: s.x_m, y0: s.y_m, x1: s.x_m + s.w_m, y1: s.y_m + s.h_m }))
      .map((b) => cutOut(corners(b), b, true)),
  ];
  return all.filter((c, i) => !all.some((o, j) => j !== i && contains(o.box, c.box, 0) && (j < i || !contains(c.box, o.box, 0))));
};
