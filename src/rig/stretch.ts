import type { FacePoint, Shape } from '../terms';
import type { BaseLayout, Piece } from './base-layout';
import { box, centre, movedBy, pointsOf, rect, toMillimetre } from './shapes';
import type { Sizes } from './sizes';

/**
 * How a typical layout is brought to a rig's own sizes. Parts keep their own size: a longer rig has no larger windows.
 * Along it, everything aft of the cab or overhang moves in proportion; upwards, what is below the belt keeps its distance
 * from the floor and what is above it from the wall top; across, what is near an edge keeps its distance from that edge.
 */
export type Stretch = {
  readonly x: (x: number) => number;
  readonly y: (y: number) => number;
  readonly across: (v: number) => number;
  readonly width: number;
  readonly factor: number;
  readonly rise: number;
};

/** Parts whose two ends move on their own: they grow with the rig. */
const ALONG = new Set(['wing-underside', 'awning-box', 'underbelly-cover']);
const UP = new Set(['awning-arm', 'ladder-standoff', 'galley-hatch']);
const ACROSS = new Set([
  'rear-bumper',
  'front-bumper',
  'step-bumper',
  'wing-underside',
  'underbelly-cover',
  'front-storage-trunk',
  'galley-hatch',
  'hatch-hinge',
  'windshield',
  'hood',
  'mud-flap',
  'van-rear-door',
]);

export const stretchTo = (base: BaseLayout, sizes: Sizes): Stretch => {
  const behind = base.overall.length - base.overall.hitch - base.overall.body;
  const body = sizes.length - base.overall.hitch - behind;
  const x0 = base.fixed_ahead_of;
  const factor = (body - x0) / (base.overall.body - x0);
  const rise = sizes.height - base.overall.height;
  const belt = (base.levels.floor + base.levels.wall_top) / 2;
  const w0 = base.overall.body_width;
  const width = w0 + sizes.width - base.overall.width;
  return {
    factor,
    rise,
    width,
    x: (x) => (x <= x0 ? x : x0 + factor * (x - x0)),
    y: (y) => (y > belt ? y + rise : y),
    across: (v) => (v <= w0 / 3 ? v : v >= (2 * w0) / 3 ? v + width - w0 : (v * width) / w0),
  };
};

type Along = (v: number) => number;

/** The axes of a face: how its first and its second coordinate move, and which parts grow with them. */
const axesOf = (face: string, s: Stretch, base: BaseLayout): readonly [Along, Along, ReadonlySet<string>, ReadonlySet<string>] => {
  const middle: Along = (v) => v + (s.width - base.overall.body_width) / 2;
  if (face === 'tongue') return [(x) => x, middle, new Set(), new Set()];
  if (face === 'roof' || face === 'under') return [s.x, s.across, ALONG, ACROSS];
  if (face === 'front' || face === 'rear' || face === 'step') return [s.across, s.y, ACROSS, UP];
  return [s.x, s.y, ALONG, UP];
};

const interval = (lo: number, hi: number, f: Along, grows: boolean): readonly [number, number] => {
  if (grows) return [f(lo), f(hi)];
  const moved = f((lo + hi) / 2) - (hi - lo) / 2;
  return [moved, moved + hi - lo];
};

const stretchedShape = (piece: Piece, s: Stretch, base: BaseLayout): Shape => {
  const [fx, fy, growsX, growsY] = axesOf(piece.face, s, base);
  const { shape } = piece;
  const move = (line: readonly FacePoint[]): readonly FacePoint[] => line.map(([x, y]) => [toMillimetre(fx(x)), toMillimetre(fy(y))]);
  if (shape.form === 'lines') return { form: 'lines', lines_m: shape.lines_m.map(move) };
  const b = box(shape);
  const [x0, x1] = interval(b.x0, b.x1, fx, growsX.has(piece.part));
  const [y0, y1] = interval(b.y0, b.y1, fy, growsY.has(piece.part));
  if (shape.form === 'poly') return movedBy(shape, x0 - b.x0, y0 - b.y0);
  const moved = rect(x0, y0, x1 - x0, y1 - y0);
  return shape.form === 'circle' && moved.form === 'rect' ? { ...moved, form: 'circle' } : moved;
};

/** Every piece at the rig's own size. What is drawn within another piece moves with it. */
export const stretched = (pieces: readonly Piece[], s: Stretch, base: BaseLayout): readonly Piece[] => {
  const moved = new Map(pieces.filter((p) => p.within === undefined).map((p) => [p.id, { ...p, shape: stretchedShape(p, s, base) }]));
  return pieces.map((piece) => {
    const host = piece.within === undefined ? undefined : moved.get(piece.within);
    if (!host) return moved.get(piece.id) ?? piece;
    const before = pieces.find((p) => p.id === piece.within);
    if (!before) return piece;
    const [a, b] = [box(before.shape), box(host.shape)];
    // Where the host has grown, keep the distance to its nearer edge.
    const [cx, cy] = centre(piece.shape);
    const dx = cx < (a.x0 + a.x1) / 2 ? b.x0 - a.x0 : b.x1 - a.x1;
    const dy = cy < (a.y0 + a.y1) / 2 ? b.y0 - a.y0 : b.y1 - a.y1;
    return { ...piece, shape: movedBy(piece.shape, dx, dy) };
  });
};

export const stretchedOutline = (face: string, outline: readonly FacePoint[], s: Stretch, base: BaseLayout): readonly FacePoint[] => {
  const [fx, fy] = axesOf(face, s, base);
  return pointsOf({ form: 'poly', points_m: outline }).map(([x, y]) => [toMillimetre(fx(x)), toMillimetre(fy(y))]);
};
