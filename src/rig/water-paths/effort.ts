/**
 * How readily water goes each way, as metres of effort for a metre of way: what the chance of passing is made of. The
 * figures are ours and no measurement stands behind them; their order follows from how water is known to travel: down
 * before aside, along a joint or frame member before across a plain wall, aft while driving (a club magazine's column
 * "Finding water leaks", March 2016; guidance on leak investigation: wind lifts water about 2 in on a wall).
 */
export const EFFORT = {
  /** Straight down a wall: the yardstick. */
  down: 1,
  /** Down the slope of a roof, ceiling or floor: gravity still leads, but slowly, and the deck drinks. */
  slope: 1.5,
  /** Across a plain wall: only spreading in the sheet takes it there. */
  aside: 4,
  /** On a level roof or floor, or across its slope: it spreads, nothing leads it. */
  level: 3,
  /** Along a moulding, rail, seam or the frame of an opening, level or downhill: a ready-made gutter. */
  channel: 0.5,
  /** Aft while driving, on roof and side walls: the wind leads as gravity does when parked. */
  aft: 1,
  /** Over the edge from one face to the next: a joint that must let it through. [m] */
  edge: 0.3,
  /** Through the floor to the underside. [m] */
  floor: 1,
} as const;

/** Wind lifts water about 2 in on a vertical face: guidance on leak investigation, read. [m] */
export const WIND_LIFT_M = 0.05;
/** On a roof or floor it soaks this far up a slight slope from where it came in, no higher than wind lifts it; ours. [m] */
export const SOAKS_M = 0.3;
/** A rise less steep than this counts as level: no rig stands truer, no roof is flatter; ours. [1] */
export const LEVEL_RISE = 0.005;
/** Faces are drawn flat and their edges meet to within this; ours. [m] */
export const EDGE_RISE_M = 0.05;

/** One short move on one face. */
export type Move = {
  readonly length_m: number;
  /** How much lower it ends, tilt counted in. [m] */
  readonly drop_m: number;
  /** How far aft it ends. [m] */
  readonly aft_m: number;
  /** How much lower its part across ends, where the face slopes across: a crowned roof. [m] */
  readonly drop_across_m: number;
  /** Steepest slope of the face there, tilt counted in; 1 on a wall. [1] */
  readonly steepest: number;
  readonly wall: boolean;
  /** On a face whose first axis runs fore and aft, so that wind drives along it. */
  readonly fore_and_aft: boolean;
  readonly channel: boolean;
};

/**
 * Effort of one move. It counts the way down the slope and the way across it apart, so that on a plain face it depends on
 * where the way begins and ends alone.
 *
 * @param lift  rise that is allowed besides: wind, where water comes in. [m]
 * @returns     effort, never negative; Infinity where water does not go. [m]
 */
export const effortParked = (move: Move, lift = 0): number => {
  const { length_m: size, drop_m: drop } = move;
  if (size === 0) return 0;
  if (drop < -LEVEL_RISE * size - lift) return Number.POSITIVE_INFINITY;
  if (move.channel) return EFFORT.channel * size;
  if (!move.wall && move.steepest < LEVEL_RISE) return EFFORT.level * size;
  const down = drop > 0 ? Math.min(size, drop / Math.max(move.steepest, drop / size)) : 0;
  const across = Math.sqrt(Math.max(0, size * size - down * down));
  return move.wall ? EFFORT.down * down + EFFORT.aside * across : EFFORT.slope * down + EFFORT.level * across;
};

/** The same while driving on a level road: aft is easy on roof and side walls, forward does not happen. */
export const effortDriving = (move: Move, lift = 0): number => {
  const { length_m: size, drop_m: drop, aft_m: aft } = move;
  if (!move.fore_and_aft) return effortParked(move, lift);
  if (aft < -1e-6) return Number.POSITIVE_INFINITY;
  if (size === 0) return 0;
  const rest = Math.sqrt(Math.max(0, size * size - aft * aft));
  // Up a wall the wind lifts no more than parked; on a roof the film is driven up whatever slope lies aft, but not over the crown.
  const rises = move.wall ? drop < -LEVEL_RISE * size - lift : move.drop_across_m < -LEVEL_RISE * rest - lift;
  if (rises) return Number.POSITIVE_INFINITY;
  if (move.channel) return EFFORT.channel * size;
  if (!move.wall) return EFFORT.aft * aft + (move.drop_across_m > LEVEL_RISE * rest ? EFFORT.slope : EFFORT.level) * rest;
  const down = Math.min(rest, Math.max(0, drop));
  return EFFORT.aft * aft + EFFORT.down * down + EFFORT.aside * Math.sqrt(Math.max(0, rest * rest - down * down));
};
