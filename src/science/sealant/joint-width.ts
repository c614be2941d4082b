import { type Metres, metres } from '../../units';
import type { MovementClass } from './movement-class';

/** What a joint must take, each counted from the day the bead was laid. [m] */
export type JointDemand = {
  /** How far its faces part. */
  readonly opening: Metres;
  /** How far they close up. */
  readonly closing: Metres;
  /** How far one slides along the other. */
  readonly shear: Metres;
};

export type JointWidth = {
  /** Wide enough for opening and sliding together. [m] */
  readonly for_opening: Metres;
  /** Wide enough for closing up. [m] */
  readonly for_closing: Metres;
  /** The larger, tolerance added. [m] */
  readonly width: Metres;
};

/**
 * The least width at which a bead of this class lives with opening and sliding at once.
 * The bond line, w long on the day of laying, is stretched to √((w + e)² + s²) and may reach (1 + m) w.
 */
const stretched = (e: number, s: number, m: number): number => {
  const A = (1 + m) ** 2 - 1;
  return (e + Math.sqrt(e ** 2 + A * (e ** 2 + s ** 2))) / A;
};

/**
 * How wide a joint must be for the movement that it sees.
 *
 * @param demand     opening, closing and sliding. [m]
 * @param cls        movement class of the sealant
 * @param tolerance  by which the joint may come out narrower than meant. [m]
 * @returns          widths for opening and for closing, and the larger with tolerance. [m]
 * @valid            any movement that is not negative; no lower limit of width, see `jointDepth`
 * @agrees           0.002 in against a worked joint of a school of architecture, 0.0005 with its formula, 0.01 mm with closed forms
 * @assumes          opening and sliding come together; nothing is left for a bead that has aged
 * @source           1. W = (100/X)(α L ΔT + M) + t: Cornell University ARCH 262; Architectural Detailing
 *                   2. sliding by Pythagoras: SCGMA technical bulletin, Sealant joint design; w = s / √((1 + m)² − 1)
 *                   3. both at once: closed form, ours; with no sliding it is 1, with no opening it is 2
 */
export const jointWidth = ({ opening, closing, shear }: JointDemand, cls: MovementClass, tolerance: Metres): JointWidth => {
  const for_opening = stretched(opening, shear, cls.extension) + tolerance;
  const for_closing = closing / cls.compression + tolerance;
  return { for_opening: metres(for_opening), for_closing: metres(for_closing), width: metres(Math.max(for_opening, for_closing)) };
};

/** `holds`: within the class. `no-reserve`: within it, but by less than sources on expansion differ. `tears`, `squeezed`: beyond it. */
export type BeadFate = 'holds' | 'no-reserve' | 'tears' | 'squeezed';

export type BeadDemand = {
  /** Of the installed width, opening and sliding together. [1] */
  readonly stretch: number;
  /** Of the installed width. [1] */
  readonly squeeze: number;
  /** The larger share of what the class allows that is used up; above 1 it is beyond it. [1] */
  readonly used: number;
  readonly fate: BeadFate;
};

/** Share of the class up to which we call a bead safe: sources on expansion differ by up to a quarter. [1] Ours. */
export const IN_RESERVE = 0.8;

/** A demand that equals the class is within it, whatever the last binary digit says. */
const SLACK = 1e-9;

/**
 * What is asked of a bead that is there already, or will be.
 *
 * @param demand  opening, closing and sliding. [m]
 * @param width   of the bead as installed, from bond to bond; above 0. [m]
 * @param cls     movement class of the sealant
 * @returns       stretch and squeeze of the width, the share of the class used up, and what comes of it
 * @agrees        exactly with the closed form 100 × movement / width
 * @assumes       a bead that bonds on two sides only, of the right depth, and still as supple as new
 * @source        1. closed form; classes: ASTM C920 and ISO 11600 as explained in trade guides
 *                2. no reserve above 80 % of the class: ours
 */
export const beadDemand = ({ opening, closing, shear }: JointDemand, width: Metres, cls: MovementClass): BeadDemand => {
  const stretch = Math.hypot(width + opening, shear) / width - 1;
  const squeeze = closing / width;
  const [pulled, pressed] = [stretch / cls.extension, squeeze / cls.compression];
  const used = Math.max(pulled, pressed);
  const fate = used > 1 + SLACK ? (pulled >= pressed ? 'tears' : 'squeezed') : used > IN_RESERVE + SLACK ? 'no-reserve' : 'holds';
  return { stretch, squeeze, used, fate };
};

/** How narrow and how wide a joint of this width may become in its class. [m] */
export const classWidths = (width: Metres, cls: MovementClass): { readonly narrowest: Metres; readonly widest: Metres } => ({
  narrowest: metres(width * (1 - cls.compression)),
  widest: metres(width * (1 + cls.extension)),
});
