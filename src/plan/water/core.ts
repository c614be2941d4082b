import type { EntryId, FaceId, FacePoint } from '../../terms';
import { type CivilDay, showDay } from '../../units';
import type { Because } from '../finding';
import { DELAMINATION, MOISTURE_BANDS, PRACTICE } from '../rules/sources';
import { distanceTo } from './load-points';
import type { Core, Source } from './loose-skin-types';
import { showOn } from './scales';
import { FROZEN } from './sources';
import type { Metered } from './spots';
import type { Leak } from './water-types';
import type { Weighed } from './yardsticks';

/** Glued only below 15 to 16 %: the lower figure, to be on the safe side (trade, read). [kg/kg] */
const DRY_BELOW = 0.15;
const WET_FROM = 0.16;
/** Read above 30 %, it is stripped, not glued (trade, read). [kg/kg] */
const THROUGH_FROM = 0.3;
/** Readings within this of the outline speak of its core; a hand’s width, ours. [m] */
const BESIDE_M = 0.1;
/** So many dry readings by pin before anybody may think of glue; ours. */
const ENOUGH = 3;
/** Readings older than this before the day say nothing of the core now; ours. [d] */
const FRESH_D = 90;
/** A leak whose wet places lie within this of the patch is its leak; arm’s reach, ours. [m] */
const LEAK_REACH_M = 1;

const point = (p: FacePoint): { readonly form: 'poly'; readonly points_m: readonly FacePoint[] } => ({ form: 'poly', points_m: [p] });

const said = (w: Weighed): string => showOn(w.reading.scale, w.reading.value ?? w.reading.as_read);

/**
 * The core behind an outline, by every meter that was read in or beside it, on either side of the wall.
 *
 * @param look  the look that showed it: what is said rests on it where nothing was metered
 */
export const coreAt = (places: readonly Metered[], face: FaceId, outline: readonly FacePoint[], on: CivilDay, look: EntryId): Core => {
  const latest = places.filter((m) => m.face === face && distanceTo(outline, point(m.point_m)) <= BESIDE_M).flatMap((m) => m.weighed.at(-1) ?? []);
  const fresh = latest.filter((w) => on - w.reading.day <= FRESH_D);
  const entries = fresh.map((w) => w.reading.entry);
  if (fresh.length === 0)
    return {
      state: 'not-metered',
      readings: 0,
      because: {
        text:
          latest.length === 0
            ? 'No meter was read in or beside it: heat, flex and bad gluing loosen a skin without any water, so meter before assuming a leak.'
            : `It was last metered on ${showDay(Math.max(...latest.map((w) => w.reading.day)) as CivilDay)}, more than three months ago: meter it again.`,
        entries: [look, ...latest.map((w) => w.reading.entry)],
        source: DELAMINATION,
      },
    };
  const pins = fresh.filter((w) => w.reading.scale === 'pin' && w.reading.value !== undefined);
  const highest = pins.toSorted((a, b) => (b.reading.value ?? 0) - (a.reading.value ?? 0))[0];
  const value = highest?.reading.value ?? 0;
  const wet = fresh.filter(
    (w) => w.state === 'wet' || w.state === 'damp' || w.reading.no_number === 'surface-wet' || (w.reading.scale === 'pin' && (w.reading.value ?? 0) >= WET_FROM),
  );
  const because = (text: string, of: readonly Weighed[], source: Because['source'] = DELAMINATION): Because => ({ text, entries: of.map((w) => w.reading.entry), source });
  if (highest && value >= THROUGH_FROM)
    return {
      state: 'wet-through',
      readings: fresh.length,
      because: because(`${said(highest)} by pin meter in or beside it: at 30 % and above the core is stripped, not glued.`, [highest], MOISTURE_BANDS),
    };
  if (wet.length > 0)
    return {
      state: 'wet',
      readings: fresh.length,
      because: because(
        `${wet.length === 1 ? 'A reading' : `${wet.length} readings`} in or beside it ${wet.length === 1 ? 'is' : 'are'} wet, the latest on ${showDay(Math.max(...wet.map((w) => w.reading.day)) as CivilDay)}: nothing is glued to a wet core, it would seal the water in.`,
        wet,
      ),
    };
  const frozen = fresh.filter((w) => w.reading.no_number === 'frozen');
  if (frozen.length > 0)
    return {
      state: 'doubtful',
      readings: fresh.length,
      because: because(
        `${frozen.length === 1 ? 'A place' : `${frozen.length} places`} in or beside it ${frozen.length === 1 ? 'was' : 'were'} frozen when last read, and a meter does not take ice for water: read again thawed before the core counts as dry.`,
        frozen,
        FROZEN,
      ),
    };
  const dry = pins.filter((w) => (w.reading.value ?? 1) < DRY_BELOW);
  if (dry.length >= ENOUGH && dry.length === pins.length)
    return {
      state: 'dry',
      readings: fresh.length,
      because: because(`${dry.length} readings by pin meter in or beside it, none above ${highest ? said(highest) : ''}: the core is dry.`, dry),
    };
  return {
    state: 'doubtful',
    readings: fresh.length,
    because: {
      text:
        dry.length === pins.length
          ? `${pins.length === 0 ? 'No pin meter was read there, and another scale does not tell how wet wood is' : `${pins.length} of ${ENOUGH} readings by pin meter`}: ${ENOUGH - pins.length} more, below 15 %, before the core counts as dry.`
          : `${highest ? said(highest) : ''} by pin meter: below 15 to 16 % the core counts as dry, and this is at the limit.`,
      entries,
      source: pins.length === 0 ? PRACTICE : DELAMINATION,
    },
  };
};

/** Whether the way in beside it is closed and has shown that it holds. */
export const sourceAt = (leaks: readonly Leak[], face: FaceId, outline: readonly FacePoint[]): Source => {
  const mine = leaks.filter((l) => l.spots.some((s) => s.face === face && distanceTo(outline, point(s.point_m)) <= LEAK_REACH_M));
  const open = mine.find((l) => l.stop.state !== 'stopped');
  const first = open ?? mine[0];
  if (!first) return { state: 'none-found' };
  const because = first.stop.because.at(-1);
  return { state: open ? 'open' : 'closed', ...(because ? { because } : {}) };
};
