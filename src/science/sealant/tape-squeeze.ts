import { type Metres, metres } from '../../units';

/**
 * How wide a butyl tape gets when the flange squeezes it.
 *
 * @param width      of the tape as it comes off the roll. [m]
 * @param thickness  as it comes off the roll. [m]
 * @param squeezed   thickness once the screws are down; above 0 and no more than before. [m]
 * @returns          width under the flange. [m]
 * @agrees           exactly with the closed form of two cases
 * @assumes          butyl keeps its volume and flows to both sides alike; nothing runs off lengthwise at corners
 * @source           1. closed form w₂ = w₁ t₁ / t₂
 */
export const squeezedWidth = (width: Metres, thickness: Metres, squeezed: Metres): Metres => metres((width * thickness) / squeezed);

/** By how much a tape laid down the middle of a flange reaches past each edge; below 0 it stays short of it. [m] */
export const squeezeOut = (flange: Metres, squeezed: Metres): Metres => metres((squeezed - flange) / 2);
