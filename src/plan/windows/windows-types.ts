import type { Source, StationId } from '../../terms';
import type { CivilDay, Instant, Kelvin, Metres, MetresPerSecond, Radians, Share } from '../../units';
import type { ForecastHour } from '../forecast/forecast-types';
import type { Job } from '../plan-types';

/** What counts as rain, as wind, as too near the dew point: all of it can be changed. */
export type Conditions = {
  /** An hour with a higher chance of rain counts as rain. [1] */
  readonly rain_chance: Share;
  /** So does an hour with more of it. Left out, the amount is not asked for, and may be missing. [m] */
  readonly rain_amount?: Metres;
  /** Ten metres up, for work on a ladder or a roof. [m/s] */
  readonly wind: MetresPerSecond;
  readonly gust: MetresPerSecond;
  /** Above the dew point. [K] */
  readonly dew_margin: number;
};

/** What one job asks of the weather. */
export type Need = {
  /** Something is laid that must stick and cure; or only somebody climbs. */
  readonly for: 'laying' | 'climbing';
  /** What is laid, in words. */
  readonly product?: string;
  /** Of the surface. */
  readonly least?: Kelvin;
  readonly most?: Kelvin;
  /** Without rain before. [h] */
  readonly dry_before_h: number;
  /** Without rain after. [h] */
  readonly rain_free_h: number;
  /** Before the wheels turn. [h] */
  readonly cure_h: number;
  readonly climbs: boolean;
  /** The surface counts: something is laid on it, or somebody stands on it. */
  readonly dry_surface: boolean;
  readonly stands_on_it: boolean;
  readonly sources: readonly Source[];
};

/** Where the rig stands and how, by its latest stay. */
export type Parked = {
  /** Of the nose, clockwise from true north. */
  readonly heading?: Radians;
  readonly cover: 'open' | 'roofed' | 'covered' | 'indoors' | 'unknown';
};

/** Why an hour is closed, the plainest reason first. */
export const GATES = [
  'past',
  'missing',
  'indoors',
  'dark',
  'rain',
  'too-cold',
  'dew',
  'too-warm',
  'too-close',
  'wind',
  'not-dry-before',
  'before-unknown',
  'rain-after',
  'after-unknown',
  'departure',
] as const;
export type Gate = (typeof GATES)[number];

/** Figures behind the reasons, the worst of the hours they stand for. */
export type Figures = {
  readonly coldest?: Kelvin;
  readonly warmest?: Kelvin;
  readonly dew_point?: Kelvin;
  /** Least margin over the dew point. [K] */
  readonly margin?: number;
  readonly wind?: MetresPerSecond;
  readonly gust?: MetresPerSecond;
  /** Within the hours themselves and those that must stay dry after them. */
  readonly rain_chance?: Share;
};

export type Window = Figures & {
  readonly starts: Instant;
  readonly ends: Instant;
  readonly day: CivilDay;
  /** Chance that rain spoils it, from its first hour until what was laid in its last may get wet: no less, and no more. */
  readonly fails: { readonly least: Share; readonly most: Share };
};

/** Daylight hours of one day that fail for the same reasons. */
export type Closed = Figures & {
  readonly starts: Instant;
  readonly ends: Instant;
  readonly day: CivilDay;
  readonly gates: readonly Gate[];
  /** What the forecast does not say of these hours. */
  readonly lacks: readonly string[];
  /** Open hours, but too few for the work. */
  readonly too_short?: true;
};

export type JobWindows = {
  readonly job: string;
  readonly title: string;
  readonly station?: StationId;
  readonly need: Need;
  readonly windows: readonly Window[];
  readonly closed: readonly Closed[];
  /** Where there is no window: what closes most hours, when that ends, and what closes most of the rest. */
  readonly none?: { readonly gate: Gate; readonly until?: Instant; readonly then?: Gate };
};

/** One job on the best day. */
export type Turn = {
  readonly job: string;
  readonly title: string;
  readonly station?: StationId;
  readonly starts: Instant;
  /** When the surface is ready and laying begins. */
  readonly lays: Instant;
  readonly ends: Instant;
  readonly rain_free_until?: Instant;
  readonly travel_from?: Instant;
  readonly fails: Window['fails'];
};

export type BestDay = { readonly day: CivilDay; readonly turns: readonly Turn[] /** Jobs that do not fit on it. */; readonly left: readonly string[] };

export type Windows = {
  readonly jobs: readonly JobWindows[];
  readonly best?: BestDay;
  readonly hours: number;
  /** Hours ahead of which the forecast lacks something. */
  readonly hours_lacking: number;
  /** The last hour lies behind. */
  readonly over: boolean;
  readonly ends: Instant;
  /** Jobs of one's own that are not weighed: inside, from the ground with nothing that must stick, or at no station. */
  readonly not_weighed: readonly string[];
  readonly assumes: readonly string[];
};

/** Minutes that a clock on the wall is ahead of universal time at an instant. */
export type Clock = (at: Instant) => number;

export type WindowsAsked = {
  readonly jobs: readonly Job[];
  readonly hours: readonly ForecastHour[];
  readonly now: Instant;
  readonly clock: Clock;
  readonly parked: Parked;
  readonly conditions: Conditions;
  /** The day the wheels turn. */
  readonly departure?: CivilDay;
  /** Since when it has not rained here, where somebody knows. */
  readonly dry_since?: Instant;
  /** A colour of `SKIN_COLOURS`; left out, white and dark both count. */
  readonly colour?: string;
};
