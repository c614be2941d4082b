/**
 * Where an entry belongs. Coordinates are metres on the face's own axes; the inside of a face shares them.
 * `curb` is right of travel, `road` is left of travel.
 */
export type FaceId = string;
export type StationId = string;
export type Side = 'outside' | 'inside';

/** x, y on a face. [m] */
export type FacePoint = readonly [x_m: number, y_m: number];

export type Place =
  | { readonly at: 'rig' }
  | { readonly at: 'station'; readonly station: StationId; readonly side: Side }
  | { readonly at: 'point'; readonly face: FaceId; readonly side: Side; readonly point_m: FacePoint }
  | { readonly at: 'outline'; readonly face: FaceId; readonly side: Side; readonly outline_m: readonly FacePoint[] }
  /** A stretch of a seam, measured along it from its start. */
  | { readonly at: 'stretch'; readonly station: StationId; readonly side: Side; readonly from_m: number; readonly to_m: number };

export type PlaceForm = Place['at'];

export const WHOLE_RIG: Place = { at: 'rig' };

const mm = (m: number): string => (Math.round(m * 1000) / 1000).toFixed(3);

/** One text per place, so that entries about the same place meet in the fold. Coordinates count to the millimetre. */
export const placeKey = (place: Place): string => {
  switch (place.at) {
    case 'rig':
      return 'rig';
    case 'station':
      return `station/${place.station}/${place.side}`;
    case 'point':
      return `point/${place.face}/${place.side}/${place.point_m.map(mm).join(',')}`;
    case 'outline':
      return `outline/${place.face}/${place.side}/${place.outline_m.map((p) => p.map(mm).join(',')).join(' ')}`;
    case 'stretch':
      return `stretch/${place.station}/${place.side}/${mm(place.from_m)}-${mm(place.to_m)}`;
  }
};

/** The station a place belongs to, if it names one. */
export const stationOf = (place: Place): StationId | undefined => ('station' in place ? place.station : undefined);
