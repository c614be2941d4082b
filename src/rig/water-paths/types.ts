import type { FaceId, FacePoint, Side, StationId } from '../../terms';

/** How the rig stood while it rained. Positive: nose up, curb side up. [rad] */
export type Tilt = { readonly nose_up_rad: number; readonly curb_up_rad: number };

/** How water moves along one leg of its way. */
export type LegHow = 'in' | 'down' | 'aside' | 'along-channel' | 'over-edge' | 'driven-aft';

export type Leg = {
  readonly how: LegHow;
  readonly face: FaceId;
  readonly points_m: readonly FacePoint[];
  readonly length_m: number;
  /** The seam, rail, moulding or frame member that leads it, in words. */
  readonly channel?: string;
};

/** One way on which water can get from an opening or seam to a place. */
export type WaterPath = {
  readonly source: StationId;
  /** Where it enters. */
  readonly from: { readonly face: FaceId; readonly point_m: FacePoint };
  /** Id of the spot, as given. */
  readonly spot: string;
  readonly when: 'parked' | 'driving';
  readonly legs: readonly Leg[];
  readonly length_m: number;
  /** Length with each leg weighed by how readily water goes that way: what the chance of passing is made of. [m] */
  readonly effort_m: number;
};

/** Where water showed, or did not show. */
export type WaterSpot = { readonly id: string; readonly face: FaceId; readonly side: Side; readonly point_m: FacePoint };
