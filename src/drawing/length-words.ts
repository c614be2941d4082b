import { figure, type Preferences, show, showIn } from '../units';

export const US: Preferences = { system: 'us', units: {} };

/** The person's own unit first, the other system in brackets: `7 ft 7 in (2.30 m)`. */
export const bothLengths = (m: number, preferences: Preferences): string => {
  const us = show(m, 'length', { system: 'us', units: { length: 'ft' } });
  const metric = showIn(m, 'length', 'm');
  return preferences.system === 'us' ? `${us} (${metric})` : `${metric} (${us})`;
};

/** A length as it stands on a dimension line: `12.5 in` or `318 mm`; from 1.5 m on in feet or metres. */
export const shortLength = (m: number, preferences: Preferences): string =>
  m >= 1.5 ? show(m, 'length', preferences) : preferences.system === 'us' ? `${figure(m / 0.0254, 1)} in` : `${figure(m * 1000, 0)} mm`;
