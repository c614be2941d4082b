/**
 * How far a door, a hatch or an awning may open before it meets a slide-out: closed forms of our own, lengths in metres,
 * angles in degrees as a person reads them. No published geometry was found; that open doors are crushed is told by the trade.
 */

const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** Wholly open: folded flat back against the wall. [°] */
export const FULLY_OPEN_DEG = 180;

/**
 * Largest safe angle of a side-hinged leaf that folds back towards a slide-out.
 *
 * @param leaf_m  width of the leaf. [m]
 * @param gap_m   from its hinge to the near edge of what the slide sweeps; negative when the hinge lies within. [m]
 * @returns       0 shut, 90 straight out, 180 flat back. [°]
 * @source        ours, closed form: the leaf's free edge lies leaf × |cos t| behind the hinge
 */
export const sideLeafLimit = (leaf_m: number, gap_m: number): number => {
  if (gap_m < 0) return 0;
  return gap_m >= leaf_m ? FULLY_OPEN_DEG : FULLY_OPEN_DEG - degrees(Math.acos(gap_m / leaf_m));
};

/**
 * Largest safe angle of a top-hinged hatch below a slide-out.
 *
 * @param leaf_m  height of the leaf. [m]
 * @param room_m  from its hinge up to what the slide sweeps, margin taken off; negative when the hinge lies above that. [m]
 * @returns       0 hanging, 90 straight out, 180 straight up. [°]
 * @source        ours, closed form: the free edge stands at hinge − leaf × cos t
 */
export const topLeafLimit = (leaf_m: number, room_m: number): number => {
  if (room_m < 0) return 0;
  return room_m >= leaf_m ? FULLY_OPEN_DEG : FULLY_OPEN_DEG - degrees(Math.acos(room_m / leaf_m));
};

/** Fabric of an awning: its rail on the wall, and how far it sags, more when wet. [m] */
export type Fabric = { readonly rail_m: number; readonly sag_m: number };

/** Room kept between the fabric and what is under it; ours. [m] */
const UNDER_FABRIC_M = 0.05;

/**
 * Steepest pitch at which what reaches out under an awning still clears the fabric.
 *
 * @param top_m   its top above ground. [m]
 * @param out_m   how far it reaches out from the wall. [m]
 * @returns       pitch of the fabric; negative: not even level. [°]
 * @source        ours, closed form: fabric height = rail − out × tan(pitch) − sag
 */
export const awningPitchLimit = ({ rail_m, sag_m }: Fabric, top_m: number, out_m: number, room_m: number = UNDER_FABRIC_M): number =>
  degrees(Math.atan((rail_m - top_m - room_m - sag_m) / out_m));
