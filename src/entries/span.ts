import { type Limits, type QuantityId, toSi } from '../units';

/**
 * Limits of a field, written in the unit in which people think of them.
 *
 * @param unit   a unit id of the quantity
 * @param least  in that unit; undefined for no lower limit
 * @param most   in that unit; undefined for no upper limit
 * @returns      the same limits in SI
 */
export const span = (quantity: QuantityId, unit: string, least: number | undefined, most?: number): Limits => ({
  ...(least === undefined ? {} : { least: toSi(least, quantity, unit) }),
  ...(most === undefined ? {} : { most: toSi(most, quantity, unit) }),
});

/** What a shade thermometer can show where people camp; the widest believed reading of air, wood, tyre or sealant. */
export const ANY_TEMPERATURE = span('temperature', 'c', -60, 110);
/** Outdoors in the shade; outside it a person is asked whether it was °F or °C. */
export const USUAL_OUTDOORS = span('temperature', 'c', -35, 50);
/** From the lowest dry land to above the highest road. */
export const ANY_ALTITUDE = span('length', 'm', -450, 6000);
