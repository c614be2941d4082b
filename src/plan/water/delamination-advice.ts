import { type EntryId, ours } from '../../terms';
import type { Because } from '../finding';
import { DELAMINATION } from '../rules/sources';
import type { AdviceWord, Core, Growth, NearBy, Outlined, Source, TapMap } from './loose-skin-types';
import { areaWords } from './outlines';

export type Advice = { readonly word: AdviceWord; readonly sentence: string; readonly because: readonly Because[]; readonly steps: readonly string[] };

/** Up to here it is small, from here it is not: 2 and 4 ft²; limits ours, sources say only “minor” and “extensive”. [m²] */
const SMALL_M2 = 0.186;
const LARGE_M2 = 0.372;
const LIMITS = ours('2 to 4 ft² as the limit between injecting and replacing: our proposal; sources say only “minor with a firm core” and “extensive soft spots”');
/** Rounds at like temperature without growth after which a dry patch is only watched; ours. */
const STILL_ROUNDS = 3;
const STILL = ours(`dry, closed and no larger through ${STILL_ROUNDS} outlines at like temperature: only watched`);

export type Known = {
  /** The latest look that showed it. */
  readonly look: EntryId;
  readonly outlines: readonly Outlined[];
  readonly signs: readonly string[];
  readonly growth?: Growth;
  readonly core: Core;
  readonly source: Source;
  readonly loads: readonly NearBy[];
  readonly taps?: TapMap;
  /** Upright extent and width of the latest outline against the spacing of the frame. */
  readonly crosses_frame: boolean;
};

/** The larger of what was drawn and what drums. [m²] */
const sizeOf = ({ outlines, taps }: Known): number | undefined => {
  const drawn = outlines.at(-1)?.area_m2;
  const drums = taps?.hull_area_m2;
  return drawn === undefined ? drums : Math.max(drawn, drums ?? 0);
};

const OUTLINE = 'Outline it in raking light or by tapping, with the date and the temperature of the skin.';
const CLOSE = 'Find and close the way in first, and show by two rains or the hose that it is closed.';
const METER = 'Meter it from inside behind trim, at three places in it and at dry places of the same wall, and note the temperature.';
const PRO = 'Give it to the trade with the outline, its dates, the readings and photographs.';

const made = (word: AdviceWord, sentence: string, because: readonly Because[], ...steps: readonly string[]): Advice => ({ word, sentence, because, steps });

/**
 * What to do about a loose patch. The order is the point of it: nothing is injected before the way in is closed and the core
 * is dry, whatever the size; and what carries load goes to the trade.
 *
 * @source  repair-shop pages, read: source first, dry and firm core, never into a wet core, load points to a professional; size limits ours
 */
export const adviceOn = (known: Known): Advice => {
  const { core, source, loads, growth, signs, outlines, crosses_frame } = known;
  const entries = [known.look];
  const by = (text: string, of = DELAMINATION): Because => ({ text, entries, source: of });
  const leak = source.because ? [source.because] : [];
  const load = loads[0];
  const loaded = load ? [by(`It lies within reach of ${load.words}, which the wall carries: a matter for the trade.`)] : [];
  if (signs.includes('soft') || core.state === 'wet-through')
    return made(
      'replace',
      'The core has gone soft or is wet through: skin or panel is replaced by the trade, never glued over.',
      [
        ...(signs.includes('soft') ? [by('It is soft under the hand: what is behind the skin is rotten.')] : []),
        ...(core.state === 'wet-through' ? [core.because] : []),
        ...loaded,
      ],
      CLOSE,
      PRO,
    );
  if (core.state === 'wet')
    return made('dry-first', 'It is wet behind: never inject into a wet core. Close the way in, then let it dry.', [core.because, ...leak, ...loaded], CLOSE, METER);
  if (source.state === 'open')
    return made('close-first', 'Water still comes in beside it, or nobody has shown that it stopped: that is closed before anything else.', [...leak, ...loaded], CLOSE, METER);
  if (core.state !== 'dry') return made('meter-first', 'Meter it before anything else: whether it is water is not known.', [core.because, ...loaded], METER, OUTLINE);
  const heat = source.state === 'none-found' ? [by('It is dry and no way in was found: heat, flex or bad gluing loosen a skin as well.')] : leak;
  if (load) return made('trade-looks', `Dry, but within reach of ${load.words}: it is given to the trade.`, [core.because, ...heat, ...loaded], PRO);
  const size = sizeOf(known);
  if (size === undefined) return made('outline-first', 'Dry; how large it is has not been measured.', [core.because, ...heat], OUTLINE);
  const words = areaWords(size);
  if (growth?.known && growth.growing)
    return made('replace', 'Dry, but it grows: the trade replaces skin or panel rather than inject.', [core.because, ...heat, growth.because], PRO);
  if (size > LARGE_M2 || crosses_frame)
    return made(
      'replace',
      'Dry, but too large to inject: the trade replaces skin or panel.',
      [core.because, ...heat, by(crosses_frame ? 'It is wider than the spacing of the frame, so that it crosses a member of it.' : `It is ${words}, more than 4 ft².`, LIMITS)],
      PRO,
    );
  const still = growth?.known && !growth.growing && outlines.length >= STILL_ROUNDS;
  if (still)
    return made(
      'watch',
      'Dry, closed and no larger for several rounds: it is outlined and metered at every round.',
      [core.because, ...heat, growth.because, by('It stays as it is.', STILL)],
      OUTLINE,
      METER,
    );
  const between = size > SMALL_M2;
  return made(
    'inject',
    between
      ? 'Dry and firm, of middling size: the trade decides whether it is injected and clamped or replaced.'
      : 'Small, dry, firm, and no water comes in: the trade may inject and clamp it on a flat board.',
    [core.because, ...heat, by(`It is ${words}: ${between ? 'between 2 and 4 ft²' : 'less than 2 ft²'}.`, LIMITS)],
    OUTLINE,
    PRO,
  );
};
