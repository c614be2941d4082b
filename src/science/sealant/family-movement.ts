import { memory, type Source, seen } from '../../terms';
import type { TouchingId } from './bonds';

/** How far cured beads of a family may be stretched: from the humblest to the best grade that was read. [1] */
export type FamilyMovement = { readonly family: TouchingId; readonly low: number; readonly high: number; readonly source: Source };

/** Families whose sheets print it. Lap sealants print none; butyl tape and repair tape seal by flow and have none. */
export const FAMILY_MOVEMENT: readonly FamilyMovement[] = [
  { family: 'silicone', low: 0.5, high: 1, source: seen('Neutral silicone building sealant data sheet, ±50 %; ASTM C920 class 100/50 grades exist') },
  { family: 'silicone-acetoxy', low: 0.2, high: 0.25, source: seen('Acetoxy silicone 20HM data sheet and product information sheet') },
  { family: 'polyurethane', low: 0.25, high: 0.35, source: seen('Polyurethane crack sealant data sheet 8620-17; polyurethane roof sealant data sheet, 25 August 2021') },
  { family: 'hybrid', low: 0.2, high: 0.5, source: memory('Hybrid sealants ±20 to ±50 %, by grade') },
  { family: 'polysulphide', low: 0.25, high: 0.25, source: memory('Polysulphide usually ASTM C920 class 25') },
  { family: 'butyl-gun', low: 0.075, high: 0.075, source: seen('BuildingGreen, How to choose a sealant that works: about ±7.5 %') },
  { family: 'acrylic', low: 0.075, high: 0.075, source: seen('BuildingGreen, How to choose a sealant that works: about ±7.5 %') },
];

/** `flows`: a tape that follows any movement, under a flange. `enough`: every grade. `some-grades`: only the better ones. `not-printed`: nobody says. */
export type MovementStanding = 'flows' | 'enough' | 'some-grades' | 'not-printed' | 'too-little';

const FLOWING: readonly TouchingId[] = ['butyl-tape', 'repair-tape'];

/**
 * Whether beads of a family live with a stretch.
 *
 * @param family   what it is made of
 * @param stretch  of the bead's width, see `beadDemand`. [1]
 * @returns        how the grades of that family stand to it
 * @agrees         with the table by construction; there is nothing published to hold it against
 * @assumes        the family only: the class on the tube in hand decides
 * @source         1. FAMILY_MOVEMENT, each row with its own source
 */
export const movementStanding = (family: TouchingId, stretch: number): MovementStanding => {
  if (FLOWING.includes(family)) return 'flows';
  if (stretch <= 0) return 'enough';
  const row = FAMILY_MOVEMENT.find((f) => f.family === family);
  if (row === undefined) return 'not-printed';
  return stretch <= row.low ? 'enough' : stretch <= row.high ? 'some-grades' : 'too-little';
};
