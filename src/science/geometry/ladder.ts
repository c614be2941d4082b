import { accept, figure, type Metres, metres, type Radians, type Result, radians, toSi } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

/** The foot stands out a quarter of the working length, which is measured along the ladder. */
export const FOOT_SHARE = 0.25;
/** How far the rails must reach above the edge, measured upright. [m] */
export const RAILS_ABOVE = metres(toSi(3, 'length', 'ft'));

export const landingValidity: Validity = {
  of: 'landing_height',
  least: 0.5,
  most: 6,
  words: 'edges from 0.5 to 6 m above the ground, where a leaning ladder is used on a vehicle',
  source: 'limit of this project',
};

export type Ladder = {
  /** Along the ladder, from foot to top support. [m] */
  readonly working_length: Metres;
  /** From the foot to below the top support. [m] */
  readonly foot_distance: Metres;
  /** Shortest ladder whose rails reach far enough above the edge. [m] */
  readonly least_length: Metres;
  readonly angle: Radians;
};

/**
 * The ladder for an edge of this height, and where its foot stands.
 *
 * @param landing_height  of the edge it leans on, above the ground. [m]
 * @param rails_above     how far the rails reach above the edge, upright. [m]
 * @returns               working length, foot distance, least ladder length [m] and angle [rad]
 * @valid                 edges of 0.5…6 m; outside: a refusal `outside-validity`
 * @agrees                0.01 ft with the cases; the foot distance with the figure quoted for 16 ft
 * @assumes               level, firm ground and a rigid support at the edge; a gutter or an awning is none
 * @source                1. 29 CFR 1926.1053(b)(1) and (b)(5)(i), as quoted in public repositories and a labour department letter of 22 December 2005
 */
export const ladder = (landing_height: Metres, rails_above: Metres): Result<Ladder> => {
  if (!holds(landing_height, landingValidity)) return outsideValidity(landingValidity, `${figure(landing_height, 2)} m`);
  const angle = Math.acos(FOOT_SHARE);
  const working_length = landing_height / Math.sin(angle);
  return accept({
    working_length: metres(working_length),
    foot_distance: metres(FOOT_SHARE * working_length), // (b)(5)(i)
    least_length: metres((landing_height + rails_above) / Math.sin(angle)), // (b)(1)
    angle: radians(angle),
  });
};
