import type { FaceId, FacePoint, StationId } from './place';

export type StationGroup = 'opening' | 'seam' | 'fitting' | 'wheel' | 'area' | 'equipment';

/** Outer (flange) outline on the face. [m] */
export type Shape =
  | { readonly form: 'rect'; readonly x_m: number; readonly y_m: number; readonly w_m: number; readonly h_m: number }
  | { readonly form: 'circle'; readonly x_m: number; readonly y_m: number; readonly w_m: number; readonly h_m: number }
  | { readonly form: 'poly'; readonly points_m: readonly FacePoint[] }
  | { readonly form: 'lines'; readonly lines_m: readonly (readonly FacePoint[])[] };

/** How a part is sealed on the outside; `none-gasket` means that no bead may be added. */
export type BeadRule = 'all-round' | 'top-and-upper-sides' | 'upper-long-edge' | 'both-long-edges' | 'fastener-heads' | 'none-gasket' | 'none';

/** From where a station is reached. */
export type Reach = 'ground' | 'ladder' | 'roof' | 'under' | 'inside';

/** A size or a fact is typical until the person confirms it. */
export type Certainty = 'typical' | 'confirmed';

export type HingeEdge = 'top' | 'bottom' | 'front' | 'rear' | 'left' | 'right';

/** A small fitting that is looked at together with the station it sits on: a latch on a door. */
export type StationPart = {
  readonly id: string;
  readonly part: string;
  readonly name: string;
  readonly looks: string;
  readonly shape: Shape;
  /** Set where the part is on another face than its station: the roof feet of a rear ladder. */
  readonly face?: FaceId;
};

/** A named place that a round visits, as it is on this rig. */
export type Station = {
  readonly id: StationId;
  readonly name: string;
  /** Row of the parts table: `window-30x22`. */
  readonly part: string;
  readonly group: StationGroup;
  /** Kind of station in the trade tables (what to look at, typical defects): `window`. */
  readonly looks: string;
  readonly face: FaceId;
  readonly shape: Shape;
  readonly size: Certainty;
  readonly bead: BeadRule;
  /** Length of bead to lay by practice. [m] */
  readonly bead_m: number;
  /** Length of the whole outline or seam. [m] */
  readonly outline_m: number;
  /** Height of its highest point above ground. [m] */
  readonly top_m: number;
  readonly reach: Reach;
  readonly sealed_with: string | 'unknown';
  readonly sealed_to: string | 'unknown';
  /** ISO day or span, or `unknown`. */
  readonly last_sealed: string | 'unknown';
  /** What lies behind it. */
  readonly behind: string;
  /** Cut right through roof or wall: a possible leak, never left out of a full round. */
  readonly cut_through: boolean;
  readonly parts: readonly StationPart[];
  readonly hinge?: HingeEdge;
  /** The slide-out this station belongs to. */
  readonly slide?: string;
  readonly axle?: string;
  /** 2 for dual tyres. */
  readonly count?: number;
  /** Stands outside the wall outline: tyres, bumpers. */
  readonly off_wall?: boolean;
  /** Lies over other stations: belly cover, wing skin. */
  readonly layer?: boolean;
  /** Drawn within that station and moved with it: an inlet in a utility compartment. */
  readonly within?: StationId;
  /** Added by a person, not by a starting layout. */
  readonly added?: boolean;
  readonly retired?: boolean;
};
