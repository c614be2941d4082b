import { DEGREE } from './site';

/**
 * How much more air sunlight crosses than from straight above.
 *
 * @param apparent_elevation  of the sun as it is seen. [rad]
 * @returns                   relative air mass; 1 overhead, about 38 on the horizon. [1]
 * @valid                     sun on or above the horizon; callers see to it
 * @agrees                    0.001 against five published values
 * @source                    1. Kasten and Young, Applied Optics 28 (1989) 4735, as quoted in public code
 */
export const relativeAirMass = (apparent_elevation: number): number => 1 / (Math.sin(apparent_elevation) + 0.50572 * (apparent_elevation / DEGREE + 6.07995) ** -1.6364);
