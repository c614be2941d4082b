import type { Bounds } from './frame';
import type { Point } from './path';

/** Something a mark should not cover, and how much it would matter. */
export type Obstacle = {
  readonly box: Bounds;
  readonly weight: number /** The station it is: never in the way of its own mark. */;
  readonly of?: string /** A leader may not cross it: a seam, another mark. */;
  readonly fence?: boolean;
};

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
const CROSSES = 1.6;
const LEAVES_SHEET = 50;
/** From this distance on a mark needs a leader to say what it means. [nominal sizes] */
const LEADER_FROM = 0.9;

/** Does the straight line between two points meet the box? Clipped edge by edge. */
const meets = ([ax, ay]: Point, [bx, by]: Point, box: Bounds): boolean => {
  let [t0, t1] = [0, 1];
  for (const [p, q] of [
    [ax - bx, ax - box.x0],
    [bx - ax, box.x1 - ax],
    [ay - by, ay - box.y0],
    [by - ay, box.y1 - ay],
  ] as const) {
    if (p === 0) {
      if (q < 0) return false;
    } else if (p < 0) t0 = Math.max(t0, q / p);
    else t1 = Math.min(t1, q / p);
  }
  return t0 <= t1;
};

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

type Try = { readonly centre: Point; readonly numberLeft: boolean; readonly box: Bounds; readonly far: number };

const isSmall = ({ part, s, solid }: Wish): boolean => {
  const [w, h] = [part.x1 - part.x0, part.y1 - part.y0];
  return solid === true || (Math.min(w, h) < 1.5 * s && Math.max(w, h) < 4 * s);
};

/** What a mark would cost here, given up once it is dearer than the best so far. */
const costOf = ({ centre, numberLeft, box, far }: Try, wish: Wish, obstacles: readonly Obstacle[], sheet: Bounds, least: number): number => {
  const size = area(box);
  let cost = far * AWAY + (numberLeft ? NUMBER_LEFT : 0);
  if (!wish.roams) cost += isSmall(wish) ? share(box, wish.part) * HIDES_SMALL : (overlap(box, wish.part) / size) * HIDES_LARGE;
  cost += (1 - overlap(box, wish.within) / size) * LEAVES_FACE + (1 - overlap(box, sheet) / size) * LEAVES_SHEET;
  for (const o of obstacles) {
    if (cost >= least) return cost;
    if (o.of !== undefined && o.of === wish.of) continue;
    cost += share(box, o.box) * o.weight;
    if (o.fence === true && far > LEADER_FROM && meets(centre, wish.at, o.box)) cost += CROSSES;
  }
  return cost;
};

/** Obstacles that any of the candidates could touch: the rest of the sheet is not looked at again. */
const within = (obstacles: readonly Obstacle[], centres: readonly Point[], { at, s, plate }: Wish): readonly Obstacle[] => {
  const reach = s + plate;
  const xs = [at[0], ...centres.map((c) => c[0])];
  const ys = [at[1], ...centres.map((c) => c[1])];
  const [x0, x1, y0, y1] = [Math.min(...xs) - reach, Math.max(...xs) + reach, Math.min(...ys) - reach, Math.max(...ys) + reach];
  return obstacles.filter(({ box }) => box.x1 > x0 && box.x0 < x1 && box.y1 > y0 && box.y0 < y1);
};

/**
 * Finds a place for one mark: on its part if the part stays visible, otherwise beside it, number to the right,
 * turned left where that covers less. Cost is the share of the mark's area that covers something, weighted.
 */
export const place = (wish: Wish, all: readonly Obstacle[], sheet: Bounds): Placed => {
  const obstacles = within(all, candidates(wish), wish);
  let best: Try = { centre: wish.at, numberLeft: false, box: footprint(wish.at, wish, false), far: 0 };
  let least = Number.POSITIVE_INFINITY;
  for (const centre of candidates(wish)) {
    const far = wish.roams ? 0 : Math.hypot(centre[0] - wish.at[0], centre[1] - wish.at[1]) / wish.s;
    for (const numberLeft of wish.plate > 0 ? [false, true] : [false]) {
      const one: Try = { centre, numberLeft, box: footprint(centre, wish, numberLeft), far };
      const cost = costOf(one, wish, obstacles, sheet, least);
      if (cost >= least) continue;
      least = cost;
      best = one;
    }
  }
  const bare = footprint(best.centre, { ...wish, plate: 0 }, false);
  return { centre: best.centre, numberLeft: best.numberLeft, leader: !wish.roams && best.far > LEADER_FROM && overlap(bare, wish.part) === 0, box: best.box };
};
