import { show, showIn, type UnitSystem } from '../../../../src/units';

/** A length in the person's system, and the same in the other. [m] */
export const bothSystems = (m: number, system: UnitSystem): readonly [first: string, second: string] => {
  const us = show(m, 'length', { system: 'us', units: {} });
  const metric = showIn(m, 'length', 'm');
  return system === 'us' ? [us, metric] : [metric, us];
};
