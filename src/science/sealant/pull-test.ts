import { type Metres, metres, type Share, share } from '../../units';

/**
 * How far a tail of cured bead is pulled to prove that it sticks: to twice what its class promises.
 *
 * @param gauge      distance between two marks on the tail before it is pulled. [m]
 * @param extension  of its movement class. [1]
 * @returns          distance between the marks at which it must still hold. [m]
 * @agrees           0.1 mm with two cases
 * @source           1. tail procedure of ASTM C1521, strained to twice the movement capability, as described by a sealant trade page: read; length by closed form
 */
export const pulledLength = (gauge: Metres, extension: Share): Metres => metres(gauge * (1 + 2 * extension));

/**
 * How much of a seam spot pulls have proved.
 *
 * @param test      length of one pull. [m]
 * @param interval  length of seam for each pull. [m]
 * @returns         share of the seam. [1]
 * @source          1. the same page: 6 in for each 1 000 ft is one part in 2 000
 */
export const shareProved = (test: Metres, interval: Metres): Share => share(test / interval);
