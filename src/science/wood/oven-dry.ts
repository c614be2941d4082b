import { accept, type Kilograms, type MoistureContent, moistureContent, type Result, refuse } from '../../units';

/**
 * The true moisture content of a plug cut from the wall: the one calibration of a meter that needs no table.
 *
 * @param wet_mass  as cut, weighed at once. [kg]
 * @param dry_mass  after the oven, weighed until it no longer changes. [kg]
 * @returns         moisture content. [kg/kg]
 * @valid           a dry mass above 0 that is not more than the wet one; otherwise a refusal
 * @agrees          0.01 point against three cases, closed form
 * @assumes         only water left the wood: no glue, resin or splinters
 * @source          1. Wood Handbook, FPL-GTR-282 (2021), equation 4-2: (m_wet − m_dry) / m_dry
 */
export const ovenDryMoisture = (wet_mass: Kilograms, dry_mass: Kilograms): Result<MoistureContent> => {
  const grams = (kg: number): string => `${Number((kg * 1000).toPrecision(6))} g`;
  if (!(dry_mass > 0))
    return refuse({ code: 'no-mass', path: 'dry_mass', expected: 'more than 0 g', received: grams(dry_mass), sentence: 'The dry sample must weigh something. Weigh it again.' });
  if (wet_mass < dry_mass)
    return refuse({
      code: 'heavier-when-dry',
      path: 'dry_mass',
      expected: `not more than the wet mass, ${grams(wet_mass)}`,
      received: grams(dry_mass),
      sentence: 'The sample cannot weigh more dry than wet. Check which figure is which, and whether the balance was set to zero.',
    });
  return accept(moistureContent((wet_mass - dry_mass) / dry_mass));
};
