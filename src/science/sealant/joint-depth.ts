import { accept, figure, type Metres, metres, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

/** By which closed-cell rod is thicker than the joint: an eighth of an inch. [m] */
const EIGHTH = 0.0254 / 8;
const NARROW = 0.006;
const NARROW_DEPTH = 0.003;
const LEAST_DEPTH = 0.006;

export const jointWidthValidity: Validity = {
  of: 'width',
  least: 0.003,
  most: 0.025,
  words: 'a joint 3 to 25 mm wide',
  source: 'an acetoxy silicone sheet; Construction Waterproofing Handbook, p. 247',
};

export type JointDepth = {
  /** How deep the sealant is to be in the middle. [m] */
  readonly depth: Metres;
  /** Which rule it comes from. */
  readonly rule: 'half-the-width' | 'least-depth' | 'narrow';
  /** Closed-cell backer rod. [m] */
  readonly closed_rod: Metres;
  /** Soft, open-cell rod. [m] */
  readonly soft_rod: Metres;
};

/**
 * How deep the sealant of a joint is to be, and the rod behind it.
 *
 * @param width  of the joint. [m]
 * @returns      depth, the rule it comes from, and the two kinds of rod. [m]
 * @valid        3…25 mm wide (refused otherwise)
 * @agrees       0.5 mm against two worked joints; rods exactly against two of a data sheet
 * @assumes      a joint between two faces, open behind. A bead over a lap has no rod: bond breaker or the tape under the flange does its work
 * @source       1. half the width, 6 to 13 mm deep: Architectural Detailing, northernarchitecture.us (13 mm is never reached within 25 mm of width); 6 mm at least and 25 mm at most: Construction Waterproofing Handbook, p. 247
 *               2. 3 mm deep where a joint is narrower than 6 mm, 3 mm at least: one acetoxy silicone sheet (20HM). At 6 mm itself the two disagree: 6 or 3
 *               3. closed-cell rod 1/8 in over the width, soft rod a quarter over: polyurethane technical data, p. 2
 */
export const jointDepth = (width: Metres): Result<JointDepth> => {
  if (!holds(width, jointWidthValidity)) return outsideValidity(jointWidthValidity, `${figure(width * 1000, 1)} mm`);
  const half = width / 2;
  const [depth, rule] =
    width < NARROW - 1e-12 ? ([NARROW_DEPTH, 'narrow'] as const) : half < LEAST_DEPTH ? ([LEAST_DEPTH, 'least-depth'] as const) : ([half, 'half-the-width'] as const);
  return accept({ depth: metres(depth), rule, closed_rod: metres(width + EIGHTH), soft_rod: metres(1.25 * width) });
};
