import type { Standing } from '../../logbook';
import { type CivilDay, civilDay, showDay } from '../../units';
import { type Course, RAINS, type Stop } from './proof';
import { SCALES } from './scales';
import { DRY_APART, excessOf, trendPoints } from './trend';
import type { Due } from './water-types';

/** Metered again 24 to 48 hours after the repair (notes on leak tests). [d] */
const FIRST_LOOK = [1, 2] as const;
/** A bonded wall changes so slowly that a month between readings tells as much (ours). [d] */
const BONDED_APART = 30;

const nth = ['first', 'second'] as const;

const readingsAfter = (courses: readonly Course[], day: number): readonly Standing[] =>
  courses
    .flatMap((c) => c.weighed.filter(({ weighed, standing }) => standing.day >= day && excessOf(weighed, c.by) !== undefined).map(({ standing }) => standing))
    .toSorted((a, b) => a.day - b.day);

const done = (by: Standing | undefined): { readonly done?: string } => (by ? { done: by.entry.id } : {});

/** Last day on which any place was read, and whether every place was within reach of the dry ones when it was read last. */
const lastLook = (courses: readonly Course[]): { readonly day: CivilDay; readonly near: boolean } | undefined => {
  const lasts = courses.flatMap((c) => {
    const last = trendPoints(
      c.weighed.map((w) => w.weighed),
      c.by,
    ).at(-1);
    return last ? [{ last, near: last.excess <= SCALES[c.scale].dry }] : [];
  });
  return lasts.length === 0 ? undefined : { day: civilDay(Math.max(...lasts.map((l) => l.last.day))), near: lasts.every((l) => l.near) };
};

/**
 * What a repair still has to show, and when: metered after a day or two, after the next two real rains, at the next round, and until the wall
 * is dry twice, a week apart. The list keeps what was done, so that a person sees what is left.
 *
 * @param stop    whether the leak is stopped, and the rains since the repair
 * @param bonded  a bonded wall is read monthly, not weekly
 */
export const dueAfter = (courses: readonly Course[], repair: Standing | undefined, stop: Stop, round: CivilDay | undefined, dry: boolean, bonded: boolean): readonly Due[] => {
  if (!repair || stop.state === 'open' || stop.state === 'reopened' || courses.length === 0) return [];
  const { day } = repair;
  const [from, until] = [civilDay(day + FIRST_LOOK[0]), civilDay(day + FIRST_LOOK[1])];
  const stopped = stop.state === 'stopped' ? stop.by : undefined;
  const due: Due[] = [
    {
      what: 'meter-again',
      from,
      until,
      words: `Meter the same places, and dry places beside them, from ${showDay(from)} to ${showDay(until)}.`,
      ...done(readingsAfter(courses, from)[0] ?? stopped),
    },
  ];
  for (let i = 0; i < RAINS; i++) {
    const rain = stop.rains[i];
    const after = rain && readingsAfter(courses, rain.day)[0];
    due.push({
      what: 'after-rain',
      from: rain?.day ?? from,
      words: rain ? `Meter the same places after the rain of ${showDay(rain.day)}.` : `Meter the same places after the ${nth[i]} real rain, and write the rain down.`,
      ...done(after ?? stopped),
    });
  }
  const last = lastLook(courses);
  if (!dry && last) {
    const next = civilDay(Math.max(last.day, day) + (bonded && !last.near ? BONDED_APART : DRY_APART));
    due.push({
      what: 'second-dry',
      from: next,
      words: last.near
        ? `Meter once more from ${showDay(next)}: dry twice, a week apart, closes it.`
        : `Meter again from ${showDay(next)}, until it is within reach of the dry places twice, a week apart.`,
    });
  }
  if (!(dry && stopped) && round !== undefined) {
    const look = civilDay(Math.max(round, from));
    due.push({ what: 'next-round', from: look, words: `Meter the same places at the next round, ${showDay(look)}.` });
  }
  return due;
};

/** What is still to be shown of the two questions: that it holds, and that the wall is dry. */
const OF: Readonly<Record<'stop' | 'dryness', readonly Due['what'][]>> = { stop: ['meter-again', 'after-rain'], dryness: ['second-dry', 'next-round'] };

export const dueOf = (due: readonly Due[], question: keyof typeof OF): readonly Due[] => due.filter((d) => d.done === undefined && OF[question].includes(d.what));
