import type { WaterPath } from '../../rig';
import type { MouldRisk } from '../../science';
import type { EntryId, FaceId, FacePoint, Place, Side, StationId } from '../../terms';
import type { CivilDay } from '../../units';
import type { Because, Worked } from '../finding';
import type { LooseSkin } from './loose-skin-types';

/** Three kinds of meter, three scales; a figure of one says nothing about a figure of another. */
export type Scale = 'pin' | 'pinless' | 'relative';

/**
 * Why a reading gives no number that may be compared. `beyond-meter`: its value stands as it was read, uncorrected, and tells only
 * that the wood is wet through (above 30 %) or dry (below 7 %).
 */
export type NoNumber = 'frozen' | 'surface-wet' | 'no-wood' | 'beyond-meter';

/** One reading made comparable: where, with what, and what it would have shown in wood at calibration temperature. */
export type Comparable = {
  readonly entry: EntryId;
  readonly place: Place;
  readonly face: FaceId;
  readonly side: Side;
  readonly point_m: FacePoint;
  readonly station?: StationId;
  readonly scale: Scale;
  /** The meter's name as recorded; empty where none was named. Readings of two meters are two series. */
  readonly meter: string;
  readonly day: CivilDay;
  readonly observed_at: string;
  /** As read, in SI: kg/kg for pin and pinless, 0…1 of the scale for relative. */
  readonly as_read: number;
  /** Corrected for species and temperature; undefined where there is no number, but for `beyond-meter`. */
  readonly value: number | undefined;
  readonly no_number?: NoNumber;
  readonly plus_minus: number;
  readonly dry_reference: boolean;
  readonly worked?: Worked;
  /** Of the wood, where it was taken. [K] */
  readonly wood_temperature_k?: number;
  /** What the meter was set against; the bands of the trade hold in wood only. */
  readonly material?: string;
  /** Outside the face's outline: judged where it was taken, and left off the map. */
  readonly off_panel?: true;
  /** What could not be done to make it comparable, in one sentence. */
  readonly remark?: string;
};

/** Median and scaled MAD of the dry places of one panel, one meter, one day. */
export type DryReference = {
  readonly median: number;
  /** 1.4826 × MAD, never below the floor. */
  readonly spread: number;
  readonly floor_used: boolean;
  readonly readings: number;
  readonly day: CivilDay;
  readonly entries: readonly EntryId[];
  readonly worked?: Worked;
};

export type Yardsticks = {
  /** Against the dry places of the same day: by how much, and how many spreads. */
  readonly reference?: { readonly excess: number; readonly score: number; readonly reference: DryReference };
  /** Against what sound wood takes on in the air the rig has lived in. Pin readings in wood only. */
  readonly equilibrium?: { readonly moisture: number; readonly excess: number; readonly entry: EntryId; readonly worked?: Worked };
  /** Pin in wood only: the trade's band and the wood handbook's, by id. */
  readonly bands?: { readonly trade: string; readonly wood: string };
};

/**
 * `wet`, `damp`: more than its surroundings explain. `weather`: high, but no more than the dry places and the air: no leak.
 * `condensation`: the skin was colder than the dew point of the air, so that it is wet without a leak.
 */
export type SpotState = 'wet' | 'damp' | 'dry' | 'weather' | 'condensation' | 'not-known';

export type TrendWord = 'drying' | 'wetting' | 'dry' | 'watch' | 'too-few';

/** Reading minus that day's reference, through time. */
export type Trend = {
  readonly word: TrendWord;
  readonly points: readonly { readonly day: CivilDay; readonly excess: number; readonly entry: EntryId }[];
  /** What was read before the last repair: shown, not judged with the rest. */
  readonly earlier?: Trend['points'];
  /** Theil–Sen slope and its interval, per day; undefined below the number of readings the method needs. */
  readonly slope_per_d?: number;
  readonly interval_per_d?: readonly [number, number];
  /** One-sided, exact up to ten readings. */
  readonly probability?: number;
  /** How many more readings until something can be said. */
  readonly need?: number;
  readonly because: Because;
};

/** A place that was metered or that showed something, with everything known of it. */
export type Spot = {
  /** Its first entry: stable while the logbook grows. */
  readonly id: EntryId;
  readonly place: Place;
  readonly face: FaceId;
  readonly side: Side;
  readonly point_m: FacePoint;
  readonly station?: StationId;
  readonly words: string;
  /** One series, oldest first. Empty for a stain or a soft place that was never metered. */
  readonly readings: readonly Comparable[];
  readonly state: SpotState;
  readonly yardsticks: Yardsticks;
  readonly trend?: Trend;
  /** Signs seen at the same place: stain, mould, soft. */
  readonly signs: readonly EntryId[];
  /** How long it was wet and warm enough for decay and mould; a risk class, not the truth. */
  readonly risk?: WetWarm;
  readonly because: readonly Because[];
};

/** Days on which wood stood wet and warm, and the class of mould risk. */
export type WetWarm = {
  /** Days at or above 25 % and between 5 and 38 °C. [d] */
  readonly days: number;
  readonly mould?: MouldRisk;
  readonly because: readonly Because[];
};

/** One side of one face read with one meter: what a map can be made of. */
export type Panel = {
  readonly id: string;
  readonly face: FaceId;
  readonly side: Side;
  readonly scale: Scale;
  readonly meter: string;
  readonly words: string;
  readonly spots: readonly Spot[];
  /** The latest day's reference. */
  readonly reference?: DryReference;
};

/** Something other than rain through an opening, to be ruled out before a leak is named. */
export type OtherCause = {
  readonly cause: 'condensation' | 'plumbing' | 'air-conditioner' | 'weep-holes';
  readonly state: 'ruled-out' | 'not-looked-at' | 'it-is-this';
  /** Not looked into, though what was noticed points at it: that comes before any water test. */
  readonly noticed?: true;
  readonly because: Because;
  readonly how: string;
};

export type Likelihood = 'likely' | 'possible' | 'unlikely';

/** An opening or seam from which a path leads to what is wet. */
export type Candidate = {
  readonly station: StationId;
  /** That it lets water in, given everything known. [1] */
  readonly probability: number;
  /** The same before any wet or dry place was looked at. [1] */
  readonly prior: number;
  readonly word: Likelihood;
  readonly because: readonly Because[];
  readonly paths: readonly WaterPath[];
  /** Its water tests, oldest first. */
  readonly tests: readonly EntryId[];
};

export type WaterTest = {
  readonly station: StationId;
  readonly how: 'hose' | 'soap';
  /** With setting up. */
  readonly minutes: number;
  /** How long water or air is on. [min] */
  readonly run_minutes: number;
  /** Expected information about where it comes in. [bit] */
  readonly bits: number;
  readonly because: readonly Because[];
  /** Stations above that must stay dry meanwhile. */
  readonly keep_dry: readonly StationId[];
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
};

export type StopState = 'open' | 'repaired' | 'stopped' | 'reopened';
export type DryState = 'wet' | 'drying' | 'wetting' | 'dry' | 'reopened' | 'not-known';

/** What a repair still has to show. */
export type Due = {
  readonly what: 'meter-again' | 'after-rain' | 'second-dry' | 'next-round';
  readonly from: CivilDay;
  readonly until?: CivilDay;
  readonly words: string;
  readonly done?: EntryId;
};

/** Wet places with a common way in: one question, two findings that close apart. */
export type Leak = {
  /** First entry that showed it. */
  readonly id: EntryId;
  readonly place: Place;
  readonly spots: readonly Spot[];
  /** Dry places that the same ways in would have wetted: evidence as well. */
  readonly dry: readonly Spot[];
  readonly since: CivilDay;
  readonly other_causes: readonly OtherCause[];
  /** The likeliest first. Empty while another cause explains it. */
  readonly candidates: readonly Candidate[];
  /** That something not on the list lets it in. [1] */
  readonly unknown_source: number;
  /** What the ranking takes for granted, and how many of the least likely it leaves out. */
  readonly assumes?: readonly string[];
  /** What is known of when it leaks. */
  readonly clues: readonly Because[];
  /** In one sentence. */
  readonly sentence: string;
  /** What would tell the first candidates apart. */
  readonly apart?: string;
  readonly next_test?: WaterTest;
  /** A water test that made it come in. */
  readonly confirmed?: StationId;
  readonly repairs: readonly EntryId[];
  readonly stop: { readonly state: StopState; readonly because: readonly Because[]; readonly closed?: CivilDay };
  readonly dryness: { readonly state: DryState; readonly because: readonly Because[]; readonly closed?: CivilDay };
  readonly due: readonly Due[];
};

/** Everything that is known about water in the rig on one day. */
export type Water = {
  readonly panels: readonly Panel[];
  readonly leaks: readonly Leak[];
  /** Left out where there are none. */
  readonly loose_skins?: readonly LooseSkin[];
  /** What could not be used, and why: a reading off its panel, two meters at one place. */
  readonly set_aside: readonly Because[];
  /** Panels that read high all over, as their air is, and places that only sweat: said, so that nobody looks for a leak. */
  readonly no_leak: readonly { readonly panel: string; readonly why: 'weather' | 'condensation'; readonly because: readonly Because[] }[];
};
