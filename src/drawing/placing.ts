import type { Bounds } from './frame';
import type { Point } from './path';

/** Something a mark should not cover, and how much it would matter. */
export type Obstacle = { readonly box: Bounds; readonly weight: number /** The station it is: never in the way of its own mark. */; readonly of?: string };

export type Wish = {
  /** What the mark points at. */
  readonly at: Point;
  /** Nothing may be put on it: a black tyre, a stitched seam. */
  readonly solid?: boolean;
  /** The part is a whole face: anywhere on it will do. */
  readonly roams?: boolean;
  /** The part itself: a mark may stand on a large one, but must not hide a small one. */
  readonly part: Bounds;
  /** Nominal size of the mark. */
  readonly s: number;
  /** Width of the number's plate; 0 without a number. */
  readonly plate: number;
  readonly flag: boolean;
  readonly of?: string;
  /** Where it should stay if it can: the face it belongs to. */
  readonly within: Bounds;
};

export type Placed = { readonly centre: Point; readonly numberLeft: boolean; readonly leader: boolean; readonly box: Bounds };

const overlap = (a: Bounds, b: Bounds): number => Math.max(0, Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0)) * Math.max(0, Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0));
const area = (b: Bounds): number => (b.x1 - b.x0) * (b.y1 - b.y0);

/** How much of the mark stands on the other, or of the other is hidden by it: whichever is more. */
const share = (mark: Bounds, other: Bounds): number => {
  const common = overlap(mark, other);
  return common === 0 ? 0 : Math.max(common / area(mark), area(other) > 0 ? common / area(other) : 1);
};

/** What a mark with its number covers when its centre is here. */
const footprint = ([x, y]: Point, { s, plate, flag }: Wish, numberLeft: boolean): Bounds => {
  const half = 0.6 * s;
  const right = plate > 0 && !numberLeft ? half + plate : flag ? 0.8 * s : half;
  const left = plate > 0 && numberLeft ? half + plate : half;
  return { x0: x - left, y0: y - (flag ? 0.75 : 0.62) * s, x1: x + right, y1: y + half };
};

const DIRECTIONS: readonly Point[] = [
  [1, 0],
  [0.72, -0.72],
  [0, -1],
  [-0.72, -0.72],
  [-1, 0],
  [-0.72, 0.72],
  [0, 1],
  [0.72, 0.72],
];

/** Steps away from the edge of the part, in nominal sizes. */
const STEPS = [0.15, 0.7, 1.4, 2.2] as const;

const HIDES_SMALL = 3;
const HIDES_LARGE = 0.25;
const LEAVES_FACE = 2.5;
const AWAY = 0.5;
const NUMBER_LEFT = 0.2;

/** Shares of a face's width and height at which there may be room. */
const ROAM = [0.5, 0.38, 0.62, 0.26, 0.74, 0.14, 0.86] as const;

const candidates = ({ at, part, s, roams }: Wish): readonly Point[] => {
  if (roams) return ROAM.flatMap((ty) => ROAM.map((tx): Point => [part.x0 + (part.x1 - part.x0) * tx, part.y0 + (part.y1 - part.y0) * ty]));
  const [hw, hh] = [(part.x1 - part.x0) / 2, (part.y1 - part.y0) / 2];
  const middle: Point = [(part.x0 + part.x1) / 2, (part.y0 + part.y1) / 2];
  const off = STEPS.flatMap((k) => DIRECTIONS.map(([dx, dy]): Point => [middle[0] + dx * (hw + s * (0.6 + k)), middle[1] + dy * (hh + s * (0.6 + k))]));
  const near = STEPS.flatMap((k) => DIRECTIONS.map(([dx, dy]): Point => [at[0] + dx * s * (0.6 + k), at[1] + dy * s * (0.6 + k)]));
  return [at, ...off, ...near];
};

/**
 * Finds a place for one mark: on its part if the part stays visible, otherwise beside it, number to the right,
 * turned left where that covers less. Cost is the share of the mark's area that covers something, weighted.
 */
export const place = (wish: Wish, obstacles: readonly Obstacle[], sheet: Bounds): Placed => {
  const { part, s, at } = wish;
  const small = wish.solid === true || (Math.min(part.x1 - part.x0, part.y1 - part.y0) < 1.5 * s && Math.max(part.x1 - part.x0, part.y1 - part.y0) < 4 * s);
  let best: Placed | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const centre of candidates(wish)) {
    for (const numberLeft of wish.plate > 0 ? [false, true] : [false]) {
      const box = footprint(centre, wish, numberLeft);
      const size = area(box);
      const far = wish.roams ? 0 : Math.hypot(centre[0] - at[0], centre[1] - at[1]) / s;
      let cost = far * AWAY + (numberLeft ? NUMBER_LEFT : 0);
      if (!wish.roams) cost += small ? share(box, part) * HIDES_SMALL : (overlap(box, part) / size) * HIDES_LARGE;
      cost += (1 - overlap(box, wish.within) / size) * LEAVES_FACE;
      cost += (1 - overlap(box, sheet) / size) * 50;
      for (const o of obstacles) if (cost < least && (o.of === undefined || o.of !== wish.of)) cost += share(box, o.box) * o.weight;
      if (cost < least) {
        least = cost;
        best = { centre, numberLeft, leader: !wish.roams && far > 0.9 && overlap(footprint(centre, { ...wish, plate: 0 }, false), part) === 0, box };
      }
    }
  }
  return best ?? { centre: at, numberLeft: false, leader: false, box: footprint(at, wish, false) };
};
