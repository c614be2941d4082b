import type { rainFell, waterTest } from '../../entries';
import type { Standing } from '../../logbook';
import type { BodyOf, StationId } from '../../terms';
import { type CivilDay, showDay } from '../../units';
import { held } from '../episodes';
import type { Because } from '../finding';
import { byWhen } from '../order';
import { pointsOn, SCALES } from './scales';
import { LEAK_STOPPED } from './sources';
import { AGAINST_WORDS, type Against, beyondBy, drySince, excessOf } from './trend';
import type { Scale, StopState } from './water-types';
import type { Weighed } from './yardsticks';

/** A shower that hardly wets the ground tests nothing (ours). [m] */
const REAL_RAIN = 0.001;
/** So many rains without a rise (notes on leak tests: the same points after the next two rains). */
export const RAINS = 2;
const SAME = 1e-9;

/** Rains that test a repair; one whose amount nobody wrote down is taken for one. */
export const realRains = (rains: readonly Standing[]): readonly Standing[] =>
  rains.filter((s) => ((s.body as BodyOf<(typeof rainFell)['fields']>).amount?.si ?? REAL_RAIN) >= REAL_RAIN);

/** One metered place of a leak, with its readings in order. */
export type Course = { readonly id: string; readonly scale: Scale; readonly by: Against; readonly weighed: readonly { readonly standing: Standing; readonly weighed: Weighed }[] };

export type Stop = {
  readonly state: StopState;
  readonly because: readonly Because[];
  /** What showed that it is stopped. */
  readonly by?: Standing;
  readonly closed?: CivilDay;
  /** Looks after the repair that showed that it did not hold. */
  readonly again: readonly Standing[];
  /** Rains since the last repair. */
  readonly rains: readonly Standing[];
};

type Event =
  | { readonly what: 'reading'; readonly s: Standing; readonly course: Course; readonly weighed: Weighed }
  | { readonly what: 'test' | 'proof' | 'rain' | 'repair'; readonly s: Standing };

const eventsOf = (
  courses: readonly Course[],
  repairs: readonly Standing[],
  rains: readonly Standing[],
  tests: readonly Standing[],
  proofs: readonly Standing[],
): readonly Event[] =>
  [
    ...repairs.map((s): Event => ({ what: 'repair', s })),
    ...rains.map((s): Event => ({ what: 'rain', s })),
    ...courses.flatMap((course) => course.weighed.map(({ standing, weighed }): Event => ({ what: 'reading', s: standing, course, weighed }))),
    ...tests.map((s): Event => ({ what: 'test', s })),
    ...proofs.map((s): Event => ({ what: 'proof', s })),
  ].toSorted((a, b) => byWhen(a.s, b.s));

/** `from`: how many of the rains had fallen when a place was first read, counted since the repair; what was read before it starts with none. */
type Walk = {
  state: StopState;
  because: readonly Because[];
  by: Standing | undefined;
  again: Standing[];
  rains: Standing[];
  held: Set<string>;
  lowest: Map<string, number>;
  from: Map<string, number>;
};

const line = (text: string, ...entries: readonly Standing[]): Because => ({ text, entries: [...new Set(entries.map((s) => s.entry.id))], source: LEAK_STOPPED });

/**
 * Whether the leak is stopped, by its own rule: no rise against the dry places over two real rains, or a repeated hose test that stays dry;
 * and open again by itself after any rise that no meter's scatter explains, or a test that lets water in.
 *
 * @param repairs  since the leak first showed, oldest first
 * @param tests    water tests of what was repaired or suspected, oldest first
 * @param repaired stations that were repaired: a dry test elsewhere proves nothing
 */
export const stopOf = (
  courses: readonly Course[],
  repairs: readonly Standing[],
  rains: readonly Standing[],
  tests: readonly Standing[],
  proofs: readonly Standing[],
  repaired: ReadonlySet<StationId>,
): Stop => {
  const walk: Walk = { state: 'open', because: [], by: undefined, again: [], rains: [], held: new Set(), lowest: new Map(), from: new Map() };
  const measured = courses.filter((c) => c.weighed.some(({ weighed }) => excessOf(weighed, c.by) !== undefined));
  for (const event of eventsOf(courses, repairs, rains, tests, proofs)) step(walk, event, measured, repaired);
  if (walk.state === 'open') return { state: 'open', because: [], again: [], rains: [] };
  return {
    state: walk.state,
    because: walk.because,
    ...(walk.by && walk.state === 'stopped' ? { by: walk.by, closed: walk.by.day } : {}),
    again: walk.again,
    rains: walk.rains,
  };
};

const step = (walk: Walk, event: Event, measured: readonly Course[], repaired: ReadonlySet<StationId>): void => {
  const { s } = event;
  if (event.what === 'repair') {
    Object.assign(walk, {
      state: 'repaired',
      by: s,
      rains: [],
      held: new Set<string>(),
      from: new Map([...walk.lowest.keys()].map((id) => [id, 0])),
      because: [
        line(
          `Repaired on ${showDay(s.day)}; ${measured.length > 0 ? 'two real rains without a rise, or the hose again, show' : 'with no dry place read beside it only the hose again can show'} whether it holds.`,
          s,
        ),
      ],
    });
    return;
  }
  if (event.what === 'reading') {
    read(walk, event, measured);
    return;
  }
  if (walk.state === 'open') return;
  if (event.what === 'rain') {
    walk.rains.push(s);
    return;
  }
  if (event.what === 'proof') {
    if (held(s)) stop(walk, s, line(`Shown to hold on ${showDay(s.day)} by ${s.entry.by}.`, s));
    else reopen(walk, s, line(`On ${showDay(s.day)} it was seen not to hold.`, s));
    return;
  }
  const { result, how } = s.body as BodyOf<(typeof waterTest)['fields']>;
  const station = 'station' in s.place ? s.place.station : undefined;
  if (result === 'came-in') reopen(walk, s, line(`A water test let water in on ${showDay(s.day)}.`, s));
  // Once it came in again after the repair, a dry hose there shows only that it came in elsewhere.
  else if (how === 'hose' && result === 'stayed-dry' && walk.state !== 'reopened' && station !== undefined && repaired.has(station))
    stop(walk, s, line(`The hose was held to it again on ${showDay(s.day)}, and it stayed dry.`, s));
};

const stop = (walk: Walk, s: Standing, because: Because): void => {
  if (walk.state !== 'stopped') Object.assign(walk, { state: 'stopped', by: s, because: [because] });
};

const reopen = (walk: Walk, s: Standing, because: Because): void => {
  walk.again.push(s);
  Object.assign(walk, { state: 'reopened', by: s, because: walk.state === 'reopened' ? [...walk.because, because] : [because], held: new Set<string>() });
};

const read = (walk: Walk, { s, course, weighed }: Extract<Event, { readonly what: 'reading' }>, measured: readonly Course[]): void => {
  const excess = excessOf(weighed, course.by);
  if (excess === undefined) return;
  const before = walk.lowest.get(course.id);
  // What it read last before a repair, then its lowest since.
  const unmended = walk.state === 'open' || walk.state === 'reopened';
  walk.lowest.set(course.id, unmended ? excess : Math.min(before ?? excess, excess));
  if (unmended) return;
  const from = walk.from.get(course.id) ?? walk.rains.length;
  walk.from.set(course.id, from);
  const steps = SCALES[course.scale];
  const rise = before === undefined ? 0 : excess - before;
  if (rise > steps.rise + SAME && excess > steps.dry + SAME) {
    walk.lowest.set(course.id, excess);
    reopen(
      walk,
      s,
      line(`On ${showDay(s.day)} it read ${pointsOn(course.scale, rise)} more above ${AGAINST_WORDS[course.by]} than at its lowest since the repair: water has come in again.`, s),
    );
    return;
  }
  if (walk.state !== 'repaired' || walk.rains.length < RAINS) return;
  if (rise > Math.max(steps.scatter, weighed.reading.plus_minus) + SAME) return;
  // Beyond what its meter tells apart nobody can see a rise.
  if (beyondBy(weighed) > 0) return;
  // A place first read after the rains has nothing to have risen from, unless it is as dry as the dry places.
  if (walk.rains.length - from < RAINS && excess > steps.dry + SAME) return;
  walk.held.add(course.id);
  if (measured.every((c) => walk.held.has(c.id)))
    stop(
      walk,
      s,
      line(
        `No rise against ${AGAINST_WORDS[course.by]} after the rains of ${walk.rains
          .slice(0, RAINS)
          .map((r) => showDay(r.day))
          .join(' and ')}, read on ${showDay(s.day)}.`,
        s,
        ...walk.rains.slice(0, RAINS),
      ),
    );
};

/** The reading with which every metered place had been dry twice, a week apart; undefined while one of them is not, or no longer is. */
export const dryAt = (courses: readonly Course[]): Standing | undefined => {
  let last: Standing | undefined;
  for (const { weighed } of courses) {
    const shown = drySince(weighed.map((w) => w.weighed));
    const standing = weighed.find((w) => w.standing.entry.id === shown?.entry)?.standing;
    if (!standing) return undefined;
    if (!last || byWhen(standing, last) > 0) last = standing;
  }
  return last;
};

/** Whether every metered place was dry twice, a week apart, at some time before. */
export const wasDry = (courses: readonly Course[]): boolean =>
  courses.length > 0 && courses.every(({ weighed }) => weighed.some((_, i) => drySince(weighed.slice(0, i + 1).map((w) => w.weighed)) !== undefined));
