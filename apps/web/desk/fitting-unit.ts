import { fromSi, type Preferences, type QuantityId, quantities, usualUnit } from '../../../src/units';

/** Units of one system, so that a smaller one of the same kind can stand in for a usual one that is far too large. */
const US: readonly string[] = ['ft', 'in', '32in', 'ft2', 'in2', 'floz', 'gal', 'in3', 'lb', 'f', 'df', 'psi', 'mph'];

/** Below this the usual unit shows mostly zeros. */
const LEAST_READABLE = 0.1;

/**
 * The unit in which a figure can be read: the person's own, or a smaller one of the same system where theirs would
 * show 0.0005 ft² for the section of a bead.
 */
export const fittingUnit = (quantity: QuantityId, si: number, preferences: Preferences): string => {
  const usual = usualUnit(quantity, preferences);
  const readable = (unit: string): boolean => Math.abs(fromSi(si, quantity, unit)) >= LEAST_READABLE;
  if (quantity === 'temperature' || si === 0 || readable(usual)) return usual;
  const ours = quantities[quantity].units.filter((u) => US.includes(u.id) === US.includes(usual)).toSorted((a, b) => b.scale - a.scale);
  return (ours.find((u) => readable(u.id)) ?? ours.at(-1))?.id ?? usual;
};
