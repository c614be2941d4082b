import { type CubicMetres, cubicMetres, type Metres, metres, type Share, type SquareMetres } from '../../units';

/** The usual cartridge: 10.1 US fl oz, 298.7 mL; labels round it to 300 mL. [m³] */
export const CARTRIDGE = cubicMetres(298.7e-6);

/** Slack so that a need of exactly eight cartridges stays eight. */
const WHOLE = 1e-9;

/** Whole packages that hold a need; none when nothing is needed. */
export const wholePackages = (need: number, one: number): number => Math.ceil((need / one) * (1 - WHOLE));

/**
 * Sealant to buy for a bead, with what stays in nozzles, corners and on the rag.
 *
 * @param section    wet section of the bead. [m²]
 * @param length     of the bead. [m]
 * @param allowance  share on top for waste. [1]
 * @returns          volume to buy. [m³]
 * @agrees           0.5 % of volume and the exact package count of four cases, two of them printed
 * @source           1. closed form V = A L (1 + allowance); allowances: a public calculator and one data sheet's yield
 */
export const sealantVolume = (section: SquareMetres, length: Metres, allowance: Share): CubicMetres => cubicMetres(section * length * (1 + allowance));

/**
 * Tape to buy for edges that are bedded in it.
 *
 * @param length     of the edges together. [m]
 * @param allowance  share on top for corners and overlaps. [1]
 * @returns          length to buy. [m]
 * @source           1. closed form L (1 + allowance)
 */
export const tapeLength = (length: Metres, allowance: Share): Metres => metres(length * (1 + allowance));
