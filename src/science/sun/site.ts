import { accept, figure, type Metres, type Radians, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

/** Where a rig stands. Longitudes east of Greenwich are positive, those of America negative. */
export type Site = {
  /** [rad] */
  readonly latitude: Radians;
  /** [rad] */
  readonly longitude: Radians;
  /** Above sea level. [m] */
  readonly altitude: Metres;
};

export const latitudeValidity: Validity = { of: 'latitude', least: -Math.PI / 2, most: Math.PI / 2, words: '−90 to 90°', source: 'definition' };
export const longitudeValidity: Validity = { of: 'longitude', least: -Math.PI, most: Math.PI, words: '−180 to 180°, east positive', source: 'definition' };
export const siteAltitude: Validity = { of: 'altitude', least: -450, most: 6000, words: '−450 to 6 000 m, where roads are', source: 'ours' };

export const DEGREE = Math.PI / 180;

const degrees = (rad: number): string => `${figure(rad / DEGREE, 2)}°`;

/** The site itself, if there is such a place. */
export const realSite = (site: Site): Result<Site> => {
  if (!holds(site.latitude, latitudeValidity)) return outsideValidity(latitudeValidity, degrees(site.latitude));
  if (!holds(site.longitude, longitudeValidity)) return outsideValidity(longitudeValidity, degrees(site.longitude));
  if (!holds(site.altitude, siteAltitude)) return outsideValidity(siteAltitude, `${figure(site.altitude, 0)} m`);
  return accept(site);
};
