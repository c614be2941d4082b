import type { EntryId, FaceId, FacePoint, Place, Side, StationId } from '../../terms';
import type { CivilDay } from '../../units';
import type { Because, Worked } from '../finding';

/** One time that somebody drew round what was loose. */
export type Outlined = {
  readonly entry: EntryId;
  readonly day: CivilDay;
  readonly outline_m: readonly FacePoint[];
  readonly area_m2: number;
  /** Longest straight line between two corners. */
  readonly longest_m: number;
  readonly skin_k?: number;
  readonly warmth?: string;
  readonly worked: Worked;
};

/** How it has grown since the first outline that may be compared with the latest; or why nothing can be compared. */
export type Growth =
  | { readonly known: true; readonly ratio: number; readonly growing: boolean; readonly since: Outlined; readonly because: Because }
  | { readonly known: false; readonly because: Because };

/** What a loose patch lies near, along the face. */
export type NearBy = { readonly station: StationId; readonly words: string /** 0 where they touch. [m] */; readonly distance_m: number };

/** How a wall sounds round one place: what was tapped, and the outline of what drums. */
export type TapMap = {
  readonly solid: number;
  readonly dull: number;
  readonly hollow: number;
  /** Hollow taps among all. [1] */
  readonly hollow_share: number;
  /** Tightest outline round the hollow taps; fewer than three corners enclose nothing. */
  readonly hull_m: readonly FacePoint[];
  readonly hull_area_m2?: number;
  readonly entries: readonly EntryId[];
};

/** What the meter says of the core behind a loose patch. `doubtful`: readings that prove neither. */
export type Core = { readonly state: 'wet-through' | 'wet' | 'dry' | 'doubtful' | 'not-metered'; readonly readings: number; readonly because: Because };

/** Whether water still comes in there: by the leaks whose wet places lie beside it. */
export type Source = { readonly state: 'open' | 'closed' | 'none-found'; readonly because?: Because };

/**
 * What comes next. `replace`: skin or panel, by the trade. `inject`: small, dry, firm and closed: the trade may inject and
 * clamp. `watch`: dry, closed and the same for several rounds.
 */
export type AdviceWord = 'meter-first' | 'close-first' | 'dry-first' | 'replace' | 'trade-looks' | 'outline-first' | 'inject' | 'watch';

/** Where the skin of a bonded wall has let go, and what is known of the place. */
export type SkinAway = {
  /** First entry that showed it. */
  readonly id: EntryId;
  readonly place: Place;
  readonly face: FaceId;
  readonly side: Side;
  readonly signs: readonly string[];
  /** Each time it was drawn, oldest first. */
  readonly outlines: readonly Outlined[];
  readonly growth?: Growth;
  readonly nearest?: NearBy;
  readonly loads: readonly NearBy[];
  readonly taps?: TapMap;
  readonly core: Core;
  readonly source: Source;
};

/** The same as the plan tells it. */
export type LooseSkin = SkinAway & {
  readonly words: string;
  readonly entries: readonly EntryId[];
  readonly because: readonly Because[];
  /** What comes next: a word, a sentence, steps. */
  readonly advice: AdviceWord;
  readonly sentence: string;
  readonly steps: readonly string[];
};
