import type { Standing } from '../../logbook';
import { mannKendall, median, pinMeterReading, senInterval, theilSen } from '../../science';
import { type CivilDay, figure, showDay } from '../../units';
import type { Because } from '../finding';
import { pointsOn, SCALES } from './scales';
import { TREND, TREND_DRY } from './sources';
import type { Scale, Trend } from './water-types';
import type { Weighed } from './yardsticks';

/** By chance in one of twenty at most, one-sided. */
export const CHANCE = 0.05;
/** Confidence of the slope's interval, two-sided. */
const CONFIDENCE = 0.9;
/** Dry is said after two dry readings this far apart. [d] */
export const DRY_APART = 7;
/** More readings than this are not asked for; from eleven on the test is approximate anyway. */
const MOST_ASKED = 10;
/** The worksheet lists no more. */
const MOST_LISTED = 60;
const SAME = 1e-9;

export type TrendPoint = Trend['points'][number];

/** What the readings of one place are held against throughout: the two lie apart, and a step from one to the other is no change in the wood. */
export type Against = 'reference' | 'equilibrium';

/** The dry places of the days, or what its air explains where no dry place was ever read beside it. */
export const against = (weighed: readonly Weighed[]): Against =>
  weighed.some((w) => w.yardsticks.reference) || !weighed.some((w) => w.yardsticks.equilibrium) ? 'reference' : 'equilibrium';

export const AGAINST_WORDS: Readonly<Record<Against, string>> = { reference: 'the dry places', equilibrium: 'what its air explains' };

/** The most that a pin meter tells apart: from there on wood is wet, and how wet nobody can say. [kg/kg] */
const MOST_TOLD = pinMeterReading.most ?? 1;

/** By how much a reading lies above what its meter tells apart. */
export const beyondBy = ({ reading }: Weighed): number => (reading.no_number === 'beyond-meter' ? Math.max(0, (reading.value ?? 0) - MOST_TOLD) : 0);

/** By how much a reading lies above what it is held against; what is beyond its meter counts as the most that the meter tells apart. */
export const excessOf = (w: Weighed, by: Against): number | undefined => {
  const excess = w.yardsticks[by]?.excess;
  return excess === undefined ? undefined : excess - beyondBy(w);
};

/** One point a day: the middle one of a place that was read several times. */
export const trendPoints = (weighed: readonly Weighed[], by: Against = against(weighed)): readonly TrendPoint[] => {
  const byDay = new Map<CivilDay, { excess: number; entry: string }[]>();
  for (const w of weighed) {
    const excess = excessOf(w, by);
    if (excess === undefined) continue;
    const { day, entry } = w.reading;
    byDay.set(day, [...(byDay.get(day) ?? []), { excess, entry }]);
  }
  return [...byDay].sort(([a], [b]) => a - b).map(([day, all]) => ({ day, excess: median(all.map((p) => p.excess)), entry: all.at(-1)?.entry ?? '' }));
};

/** One look a day: whether it was as dry as the dry places, or, with none beside it, by the bands of the trade. */
type DryLook = { readonly day: CivilDay; readonly entry: string; readonly dry: boolean };

const dryLooks = (weighed: readonly Weighed[], by: Against): readonly DryLook[] => {
  const scale = weighed[0]?.reading.scale ?? 'pin';
  const beside = trendPoints(weighed, by);
  const days = new Set(beside.map((p) => p.day));
  const alone = weighed.filter((w) => !days.has(w.reading.day) && w.reading.value !== undefined && w.yardsticks.bands !== undefined);
  return [
    ...beside.map((p) => ({ day: p.day, entry: p.entry, dry: p.excess <= SCALES[scale].dry + SAME })),
    ...alone.map((w) => ({ day: w.reading.day, entry: w.reading.entry, dry: w.yardsticks.bands?.trade === 'none' })),
  ].toSorted((a, b) => a.day - b.day);
};

/** The look with which two dry ones in a row, a week apart, had been taken; undefined while that is not so, or no longer so. */
export const drySince = (weighed: readonly Weighed[], by: Against = against(weighed)): { readonly day: CivilDay; readonly entry: string; readonly first: CivilDay } | undefined => {
  let first: DryLook | undefined;
  let shown: DryLook | undefined;
  for (const look of dryLooks(weighed, by)) {
    if (!look.dry) [first, shown] = [undefined, undefined];
    else if (first === undefined) first = look;
    else if (shown === undefined && look.day - first.day >= DRY_APART) shown = look;
  }
  return shown && first && { day: shown.day, entry: shown.entry, first: first.day };
};

const oneSided = (values: readonly number[], falling: boolean): number | undefined => {
  const test = mannKendall(values);
  return test.ok ? (falling ? test.value.p_falling : test.value.p_rising) : undefined;
};

/**
 * How many more readings, each beyond all before, until the order would no longer come by chance.
 *
 * @returns  undefined where even ten would not do
 */
export const readingsNeeded = (values: readonly number[], falling: boolean): number | undefined => {
  const ahead = [...values];
  for (let more = 1; more <= MOST_ASKED; more++) {
    ahead.push(falling ? Math.min(...ahead, 0) - 1 : Math.max(...ahead, 0) + 1);
    const p = oneSided(ahead, falling);
    if (p !== undefined && p <= CHANCE) return more;
  }
  return undefined;
};

/** A rise since the reading before, over a rain, that no meter's scatter explains. */
const roseAfterRain = (points: readonly TrendPoint[], scale: Scale, rains: readonly Standing[]): { readonly by: number; readonly rain: Standing } | undefined => {
  const [before, last] = [points.at(-2), points.at(-1)];
  if (!before || !last || last.excess - before.excess <= SCALES[scale].rise + SAME) return undefined;
  const rain = rains.findLast((r) => r.day > before.day && r.day <= last.day);
  return rain && { by: last.excess - before.excess, rain };
};

/** The test laid open, in points of the scale. */
const testSheet = (points: readonly TrendPoint[]): Because['worksheet'] =>
  points.length > MOST_LISTED ? undefined : { id: 'trend-test', inputs: { readings_number: points.map((p) => p.excess * 100) } };

const perWeek = (scale: Scale, slope_per_d: number): string => `${slope_per_d < 0 ? '−' : '+'}${pointsOn(scale, slope_per_d * 7)} a week`;

/**
 * Whether one place is drying, by its readings minus the dry places of their days.
 *
 * @param weighed  of one place, one meter, oldest first
 * @param rains    real rains, oldest first
 * @param by       what its readings are held against, where these are a part of its course
 * @agrees         the decision rule of the notes on drying; Theil–Sen and Mann–Kendall are held to their tables in science/statistics
 * @assumes        a season moves wall and dry place alike
 */
export const trendOf = (weighed: readonly Weighed[], rains: readonly Standing[], by: Against = against(weighed)): Trend => {
  const points = trendPoints(weighed, by);
  const scale = weighed[0]?.reading.scale ?? 'pin';
  const entries = points.map((p) => p.entry);
  const all = weighed.map((w) => w.reading.entry);
  const say = (text: string, source = TREND, worksheet?: Because['worksheet']): Because => ({
    text,
    entries: entries.length > 0 ? entries : all,
    source,
    ...(worksheet ? { worksheet } : {}),
  });
  const dry = drySince(weighed, by);
  const beside = dry ? [dry.first, dry.day].filter((day) => points.some((p) => p.day === day)).length : 0;
  const last = points.at(-1);
  const skipped = new Set(weighed.filter((w) => excessOf(w, by) === undefined).map((w) => w.reading.day)).size;
  const skipped_words =
    skipped === 0
      ? ''
      : ` ${skipped} ${skipped === 1 ? 'day has' : 'days have'} no ${by === 'reference' ? 'dry place' : 'air'} to compare with and ${skipped === 1 ? 'is' : 'are'} left out.`;
  const beyond = weighed.some((w) => beyondBy(w) > 0) ? ' Above 30 % a pin meter tells only that wood is wet: such readings count as 30 %.' : '';
  const without = `${skipped_words}${beyond}`;
  if (dry)
    return {
      word: 'dry',
      points,
      because: say(
        beside === 2
          ? `Within ${pointsOn(scale, SCALES[scale].dry)} of ${AGAINST_WORDS[by]} twice, a week apart, on ${showDay(dry.day)}.`
          : beside === 1
            ? `Dry twice, a week apart, on ${showDay(dry.day)}: once within ${pointsOn(scale, SCALES[scale].dry)} of ${AGAINST_WORDS[by]}, once below 15 % by pin meter with nothing beside it.`
            : `Below 15 % by pin meter twice, a week apart, on ${showDay(dry.day)}; no dry place was read beside it.`,
        TREND_DRY,
      ),
    };
  if (!last) return { word: 'too-few', points, because: say(`No reading has a dry place of the same day beside it: nothing can be said of its course.${without}`) };

  const rose = roseAfterRain(points, scale, rains);
  const values = points.map((p) => p.excess);
  const times = points.map((p) => p.day - (points[0]?.day ?? 0));
  const line = theilSen(times, values);
  const slope = line.ok ? line.value.slope : undefined;
  const span = senInterval(times, values, CONFIDENCE);
  const falling = slope === undefined ? true : slope <= 0;
  const p = oneSided(values, falling);
  const figures = {
    points,
    ...(slope === undefined ? {} : { slope_per_d: slope }),
    ...(span.ok ? { interval_per_d: [span.value.low, span.value.high] as const } : {}),
    ...(p === undefined ? {} : { probability: p }),
  };
  if (rose)
    return {
      ...figures,
      word: 'wetting',
      because: {
        text: `Up by ${pointsOn(scale, rose.by)} after the rain of ${showDay(rose.rain.day)}: more than a meter’s scatter.${without}`,
        entries: [...entries, rose.rain.entry.id],
        source: TREND_DRY,
      },
    };
  const near = last.excess <= SCALES[scale].dry + SAME;
  const course = slope === undefined ? '' : `${perWeek(scale, slope)}, chance of such an order by itself ${figure((p ?? 1) * 100, 1)} %`;
  if (near)
    return {
      ...figures,
      word: 'watch',
      need: 1,
      because: say(
        `Within ${pointsOn(scale, SCALES[scale].dry)} of ${AGAINST_WORDS[by]} on ${showDay(last.day)}: one more such reading a week later shows that it is dry.${without}`,
        TREND_DRY,
      ),
    };
  if (slope !== undefined && slope !== 0 && p !== undefined && p <= CHANCE)
    return { ...figures, word: slope < 0 ? 'drying' : 'wetting', because: say(`${slope < 0 ? 'Drying' : 'Getting wetter'}: ${course}.${without}`, TREND, testSheet(points)) };
  const need = readingsNeeded(values, falling);
  const few = points.length < 3;
  return {
    ...figures,
    word: few ? 'too-few' : 'watch',
    ...(need === undefined ? {} : { need }),
    because: say(
      `${points.length} ${points.length === 1 ? 'reading' : 'readings'} beside ${by === 'reference' ? 'a dry place' : 'its air'}${course === '' || few ? '' : ` (${course})`}: ${need === undefined ? 'they go up and down, and say nothing of a course' : `${need} more, ${need === 1 ? '' : 'each '}${falling ? 'lower' : 'higher'} than the last, before anything can be said`}.${without}`,
    ),
  };
};
