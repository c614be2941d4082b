import type { Certainty, FaceId, FacePoint, RigId, Station } from '../terms';

export type RigKindId = 'travel-trailer' | 'fifth-wheel' | 'class-a' | 'class-b' | 'class-c' | 'truck-camper' | 'folding-camper' | 'teardrop';

/** Bonded: skin, core and lining are one glued panel. Hung: the skin hangs on a frame. Many judgements differ. */
export type Construction = 'bonded' | 'hung' | 'moulded' | 'unknown';
export type WallSkin = 'fibreglass' | 'corrugated-aluminium' | 'sheet-aluminium' | 'moulded-fibreglass' | 'painted-steel' | 'unknown';
export type RoofMembrane = 'epdm' | 'tpo' | 'pvc' | 'coated' | 'fibreglass' | 'aluminium' | 'painted-steel' | 'unknown';

/** A side seen flat. `outline_m` runs on the face's own axes; the inside shares them and is drawn mirrored. */
export type Face = {
  readonly id: FaceId;
  readonly name: string;
  readonly outline_m: readonly FacePoint[];
  /** Which way the axes run, in words: shown where a person types coordinates. */
  readonly x_axis: string;
  readonly y_axis: string;
  /** What its inside is called: ceiling, floor, wall. */
  readonly inside_name: string;
  /** Set on the faces of a slide-out. */
  readonly slide?: string;
};

export type Axle = {
  readonly id: string;
  /** From the front of the body. [m] */
  readonly x_m: number;
  readonly tyre: string;
  readonly tyre_diameter_m: number;
  readonly tyre_width_m: number;
  readonly dual: boolean;
  readonly kind: string;
  /** The truck under a truck camper: drawn in grey, not part of the rig. */
  readonly host_vehicle: boolean;
  /** Outer tyre edge from the wall plane, negative inside it. [m] */
  readonly outer_edge_m: number;
};

/** The opening of a slide-out in its wall, and how far the room travels. */
export type Slide = {
  readonly id: string;
  readonly face: FaceId;
  readonly x_m: number;
  readonly y_m: number;
  readonly w_m: number;
  readonly h_m: number;
  readonly travel_m: number;
};

export type Levels = { readonly skirt_m: number; readonly floor_m: number; readonly wall_top_m: number; readonly roof_top_m: number };
export type Overall = { readonly length_m: number; readonly body_length_m: number; readonly width_m: number; readonly height_m: number; readonly hitch_ahead_m: number };

/** What a layout gives and what is written to the logbook in full: later changes of a layout alter no existing rig. */
export type Layout = {
  readonly overall: Overall;
  readonly levels: Levels;
  readonly faces: readonly Face[];
  readonly axles: readonly Axle[];
  readonly slides: readonly Slide[];
  readonly stations: readonly Station[];
};

/** Answers that make a starting layout. Undefined sizes take the layout's own. */
export type Answers = {
  readonly kind: RigKindId;
  readonly name: string;
  readonly year?: number;
  readonly length_m?: number;
  readonly width_m?: number;
  readonly height_m?: number;
  readonly skin: WallSkin;
  readonly construction: Construction;
  readonly roof: RoofMembrane;
  readonly axles?: number;
  readonly tyre?: string;
  /** Number of slide-outs on each side. */
  readonly slides_road?: number;
  readonly slides_curb?: number;
};

/** A meter used on this rig, as its owner describes it. A field that nobody gave is not known, and nothing is taken for it. */
export type Meter = {
  readonly name: string;
  /** Three scales that are never mixed. */
  readonly scale: 'pin' | 'pinless' | 'relative';
  /** Wood temperature at which it shows what its table says. */
  readonly calibrated_at_k?: number;
  /** Which rule brings its readings to that temperature. */
  readonly correction?: 'linear' | 'pfaff-garrahan' | 'meter-does-it';
  /** How far two readings of one place lie apart. [kg/kg] */
  readonly repeatability?: number;
  /** Its maker's own table: what it shows, and what that is in a material. Rising in both. [kg/kg] */
  readonly table?: readonly { readonly material: string; readonly shown: number; readonly corrected: number }[];
};

/** The vehicle as its logbook describes it. */
export type Rig = Layout & {
  readonly id: RigId;
  readonly name: string;
  readonly kind: RigKindId;
  readonly year: number | 'unknown';
  readonly skin: WallSkin;
  readonly construction: Construction;
  readonly roof: RoofMembrane;
  /** Only the maker's word makes a roof walkable. */
  readonly roof_walkable: 'yes' | 'no' | 'unknown';
  /** Cold pressure to set, gauge, per axle. [Pa] */
  readonly set_pressure_pa: Readonly<Record<string, number>>;
  /** Temperature and height above sea level at which that pressure was set; the worksheet's usual values when unknown. */
  readonly set_temperature_k?: number;
  readonly set_altitude_m?: number;
  /** Months between inspections that the warranty asks for. */
  readonly warranty_months?: number;
  /** From the middle of one wall frame member to the next, where somebody measured it. [m] */
  readonly stud_spacing_m?: number;
  /** Meters used on it, in the order in which they were first described. */
  readonly meters: readonly Meter[];
  /** Overall sizes the person has confirmed. */
  readonly confirmed: readonly (keyof Overall)[];
  readonly overall_certainty: Certainty;
};

/** Before anything has been described. */
export const blankRig = (id: RigId): Rig => ({
  id,
  name: '',
  kind: 'travel-trailer',
  year: 'unknown',
  skin: 'unknown',
  construction: 'unknown',
  roof: 'unknown',
  roof_walkable: 'unknown',
  set_pressure_pa: {},
  meters: [],
  confirmed: [],
  overall_certainty: 'typical',
  overall: { length_m: 0, body_length_m: 0, width_m: 0, height_m: 0, hitch_ahead_m: 0 },
  levels: { skirt_m: 0, floor_m: 0, wall_top_m: 0, roof_top_m: 0 },
  faces: [],
  axles: [],
  slides: [],
  stations: [],
});
