import type { leakClue, rainFell, waterTest } from '../../entries';
import type { Standing } from '../../logbook';
import type { Rig } from '../../rig';
import { timesLonger } from '../../science';
import type { BodyOf, EntryId, StationId } from '../../terms';
import { type CivilDay, metres, showDay } from '../../units';
import { readName } from '../episodes';
import type { Because } from '../finding';
import { byWhen } from '../order';
import { REPAIRS } from '../rules/repairs';
import { suspectsAt } from '../suspects';
import type { Wet } from './clusters';
import { dueAfter } from './due';
import { LOOKED_BEFORE_D } from './evidence';
import { explainedBy, lookFirst, otherCauses, speaksOf } from './other-causes';
import { type Course, dryAt, type Stop, stopOf, wasDry } from './proof';
import type { Ranking } from './ranking';
import { nameOf } from './ranking-words';
import type { WaterRecord } from './record';
import { BONDED_DRYING, LEAK_STOPPED } from './sources';
import { isAt, type Shown } from './spots';
import { against, CHANCE, trendOf, trendPoints } from './trend';
import type { Candidate, DryState, Leak, OtherCause, Spot, TrendWord } from './water-types';
import { wetWarmOf } from './wet-warm';
import type { Weighed } from './yardsticks';

/** What one leak rests on, entry by entry: what its findings are made of. */
export type LeakTrace = {
  readonly leak: Leak;
  /** Readings that stood out, and signs, oldest first. */
  readonly wet: readonly Standing[];
  /** The same, weighed; signs have no figure. */
  readonly weighed: ReadonlyMap<EntryId, Weighed>;
  readonly metered: boolean;
  readonly repairs: readonly Standing[];
  readonly stop: Stop;
  readonly dryBy: Standing | undefined;
  readonly explained: OtherCause | undefined;
};

export type Known = {
  readonly rig: Rig;
  readonly record: WaterRecord;
  /** Every reading of the record with what it was weighed at. */
  readonly weighed: ReadonlyMap<EntryId, Weighed>;
  readonly standing: (id: EntryId) => Standing | undefined;
  readonly rains: readonly Standing[];
  /** Places that show water to eye or hand, metered or not. */
  readonly seen: readonly Shown[];
  /** When the next full round is due. */
  readonly round: CivilDay | undefined;
};

const stationIn = (s: Standing): StationId | undefined => ('station' in s.place ? s.place.station : undefined);

const namesAny = (s: Standing, entries: ReadonlySet<EntryId>): boolean => (s.entry.concerns ?? []).some((c) => entries.has(readName(c).entry));

export const standsOut = (w: Weighed): boolean => w.state === 'wet' || w.state === 'damp';

/** Water tests of what may be the way in, or that name the leak. */
const testsOf = (known: Known, stations: ReadonlySet<StationId>, entries: ReadonlySet<EntryId>): readonly Standing[] =>
  known.record.of('water-test').filter((s) => stations.has(stationIn(s) ?? '') || namesAny(s, entries));

/** Water was let in by it, and openings above were not wetted as well: those could have let it in. */
const showsWayIn = (s: Standing): boolean => {
  const { how, result, kept_dry } = s.body as BodyOf<(typeof waterTest)['fields']>;
  return how === 'hose' && result === 'came-in' && kept_dry !== false;
};

/** Stations whose repair would be a repair of this leak: the confirmed one, else whatever is not unlikely, and what geometry suspects first. */
const repairable = (confirmed: StationId | undefined, candidates: readonly Candidate[], suspects: ReadonlySet<StationId>): ReadonlySet<StationId> =>
  confirmed !== undefined ? new Set([confirmed]) : new Set([...candidates.filter((c) => c.word !== 'unlikely').map((c) => c.station), ...suspects]);

/** By its course, or by the same course once it has come as low as the dry places: then only its second time is missing. */
const isDrying = ({ trend }: Spot): boolean =>
  trend?.word === 'drying' || (trend?.word === 'watch' && (trend.slope_per_d ?? 0) < 0 && trend.probability !== undefined && trend.probability <= CHANCE);

const dryStateOf = (courses: readonly Course[], dryBy: Standing | undefined, spots: readonly Spot[]): DryState => {
  if (dryBy) return 'dry';
  if (courses.length === 0) return 'not-known';
  if (wasDry(courses)) return 'reopened';
  return spots.some((s) => s.trend?.word === 'wetting') ? 'wetting' : spots.some(isDrying) ? 'drying' : 'wet';
};

/** A bonded wall: its core is shut in between skins. Roof and floor are built otherwise. */
export const isBondedWall = (rig: Rig, spots: readonly Pick<Spot, 'face'>[]): boolean =>
  rig.construction === 'bonded' && spots.some((s) => s.face !== 'under' && s.face !== 'roof');

/** A foot of board to the nearest edge, against an eighth of an inch with one face open. [m] */
const EDGE_WAY = metres(0.3048);
const BOARD = metres(0.003175);

const slowDrying = (first: Standing): Because => ({
  text: `This wall is bonded: a foot from its nearest cut edge it takes about ${Math.round(timesLonger(EDGE_WAY, BOARD) / 1000) * 1000} times as long to dry as an open board of an eighth of an inch. It does not dry by itself in a season; how it is opened and dried is for a professional.`,
  entries: [first.entry.id],
  source: BONDED_DRYING,
  worksheet: { id: 'drying-time', inputs: { thickness_mm: BOARD * 1000, open_faces: 'one', edge_way_m: EDGE_WAY } },
});

/** Where a water test let it in, and that it was repaired since. */
const cameInWords = (rig: Rig, station: StationId, test: Standing, repair: Standing | undefined): string => {
  const name = nameOf(rig, station);
  return repair && byWhen(repair, test) > 0
    ? `Water came in at ${name}, shown by a water test; repaired on ${showDay(repair.day)}.`
    : `Water comes in at ${name}: a water test let it in there on ${showDay(test.day)}.`;
};

/** Read no wetter than its surroundings after the work: then what showed later came in later. */
const wasDryBetween = (courses: readonly Course[], work: Standing, first: Standing): boolean =>
  courses.some((c) => c.weighed.some(({ standing, weighed }) => byWhen(standing, work) > 0 && byWhen(standing, first) < 0 && weighed.state !== 'not-known' && !standsOut(weighed)));

const COURSES: readonly TrendWord[] = ['wetting', 'drying', 'watch', 'too-few', 'dry'];

/** The course of the wettest place of each kind, and how many more are alike: a grid of sixty places is not sixty sentences. */
const courseLines = (spots: readonly Spot[]): readonly Because[] =>
  COURSES.flatMap((word): readonly Because[] => {
    const alike = spots
      .flatMap((s) => (s.trend?.word === word ? [{ spot: s, trend: s.trend }] : []))
      .toSorted((a, b) => (b.trend.points.at(-1)?.excess ?? 0) - (a.trend.points.at(-1)?.excess ?? 0));
    const [first] = alike;
    if (!first) return [];
    const { because } = first.trend;
    const more = alike.length - 1;
    return [
      more === 0
        ? { ...because, text: `${first.spot.words}: ${lower(because.text)}` }
        : {
            ...because,
            text: `${first.spot.words}: ${lower(because.text)} ${more} ${more === 1 ? 'place' : 'places'} alike.`,
            entries: [...new Set([...because.entries, ...alike.slice(1).map((a) => a.spot.id)])],
          },
    ];
  });

const apartOf = (apart: string | undefined): Pick<Leak, 'apart'> => (apart === undefined ? {} : { apart });

const lower = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

/** A leak that was noticed on the road only is proved by rain on the road, one noticed only while parked by rain on the parked rig. */
const rainsThatTest = ({ rig, record, rains }: Known, spots: Parameters<typeof speaksOf>[1], first: Standing): readonly Standing[] => {
  const noticed = record.of('leak-clue').filter((s) => s.day >= first.day - LOOKED_BEFORE_D && speaksOf(s, spots, rig));
  const last = noticed.flatMap((s) => (s.body as BodyOf<(typeof leakClue)['fields']>).when).findLast((w) => w === 'only-driving-rain' || w === 'only-parked-rain');
  const fell = (s: Standing): string | undefined => (s.body as BodyOf<(typeof rainFell)['fields']>).while;
  if (last === 'only-driving-rain') return rains.filter((s) => fell(s) === 'driving' || fell(s) === 'both');
  return last === 'only-parked-rain' ? rains.filter((s) => fell(s) !== 'driving') : rains;
};

/**
 * One leak with everything that is known of it.
 *
 * @param wet    its wet places
 * @param spots  the same as spots, by their id, without a course yet
 * @param rank   ranks the ways in, once it is known which repairs and tests belong here
 */
export const leakOf = (
  known: Known,
  wet: Wet,
  spots: ReadonlyMap<EntryId, Spot>,
  dry: readonly Spot[],
  rank: (wet: Wet, dry: readonly Spot[], since: CivilDay) => Ranking,
): LeakTrace => {
  const { rig, record } = known;
  const courses: readonly Course[] = wet.metered.map((m) => ({
    id: m.id,
    scale: m.weighed[0]?.reading.scale ?? 'pin',
    by: against(m.weighed),
    weighed: m.weighed.flatMap((weighed) => {
      const standing = known.standing(weighed.reading.entry);
      return standing ? [{ standing, weighed }] : [];
    }),
  }));
  const wetReadings = courses.flatMap((c) => c.weighed.filter(({ weighed }) => standsOut(weighed)).map(({ standing }) => standing));
  const all = [...wetReadings, ...wet.shown.flatMap((s) => known.standing(s.id) ?? s.standing)].toSorted(byWhen);
  const [named] = all;
  if (!named) throw new Error('a leak is shown by at least one entry');
  // A stain at a place that was metered later: the leak keeps its name, and has been there since the stain.
  const stains = known.seen.filter((s) => wet.metered.some((m) => isAt(m, s.place, rig))).flatMap((s) => known.standing(s.id) ?? []);
  const first = [named, ...stains].toSorted(byWhen)[0] ?? named;
  const entries = new Set([...courses.flatMap((c) => c.weighed.map(({ standing }) => standing.entry.id)), ...wet.shown.flatMap((s) => [s.id, s.standing.entry.id])]);
  const suspects = new Set([...wet.metered, ...wet.shown].flatMap((at) => suspectsAt(at.place, rig)));
  const ranked = rank(wet, dry, first.day);
  const looked = new Set([...suspects, ...ranked.candidates.map((c) => c.station)]);
  const tests = testsOf(known, looked, entries).filter((s) => byWhen(s, first) >= 0);
  const confirming = tests.findLast(showsWayIn);
  const confirmed = (confirming && stationIn(confirming)) ?? ranked.confirmed;
  const mendable = repairable(confirmed, ranked.candidates, suspects);
  const care = record.ofAll(REPAIRS).filter((s) => namesAny(s, entries) || namesAny(s, new Set(tests.map((t) => t.entry.id))) || mendable.has(stationIn(s) ?? ''));
  const repairs = care.filter((s) => byWhen(s, first) > 0);
  const before = care.findLast((s) => byWhen(s, first) <= 0);
  const repaired = new Set(repairs.flatMap((s) => stationIn(s) ?? []));
  const proven = new Set([...entries, ...repairs.map((s) => s.entry.id)]);
  const proofs = record.of('proof-seen').filter((s) => byWhen(s, first) > 0 && namesAny(s, proven));
  const rains = rainsThatTest(known, [...wet.metered, ...wet.shown], first).filter((s) => byWhen(s, first) > 0);
  const stop = stopOf(courses, repairs, rains, tests, proofs, repaired);
  // What came in again after a repair is looked for anew: the repaired seal is younger, and there may be another.
  const back = stop.again.at(-1);
  const ranking = back ? rank(wet, dry, back.day) : ranked;
  // A test from before a repair that did not hold says nothing of where it comes in now.
  const outdated = stop.state === 'reopened' && confirming !== undefined && back !== undefined && repairs.some((r) => byWhen(r, confirming) > 0 && byWhen(r, back) < 0);
  const found = outdated ? undefined : confirming;
  const way = outdated ? ranking.confirmed : confirmed;
  const dryBy = dryAt(courses);
  const since = repairs.at(-1);
  const mine = wet.metered.flatMap((m) => {
    const spot = spots.get(m.id);
    if (!spot) return [];
    const after = since ? m.weighed.filter((w) => w.reading.day >= since.day) : m.weighed;
    const by = against(m.weighed);
    const earlier =
      after.length > 0
        ? trendPoints(
            m.weighed.filter((w) => !after.includes(w)),
            by,
          )
        : [];
    const trend = trendOf(after.length > 0 ? after : m.weighed, known.rains, by);
    const risk = wetWarmOf(m.weighed);
    return [{ ...spot, trend: { ...trend, ...(earlier.length > 0 ? { earlier } : {}) }, ...(risk ? { risk } : {}) }];
  });
  const signs = wet.shown.flatMap((s) => spots.get(s.id) ?? []);
  const dryState = dryStateOf(courses, dryBy, mine);
  const weighed = courses.flatMap((c) => c.weighed.map((w) => w.weighed));
  const answers = record.of('other-cause').filter((s) => s.day >= first.day - LOOKED_BEFORE_D);
  // What was noticed of water that was mended since says nothing of what came in again.
  const noticed = record.of('leak-clue').filter((s) => s.day >= (back ?? first).day - LOOKED_BEFORE_D);
  const causes = otherCauses(rig, [...wet.metered, ...wet.shown], first.entry.id, weighed, answers, noticed);
  const explained = explainedBy(causes);
  const look = explained || way !== undefined || stop.state === 'stopped' ? undefined : lookFirst(causes);
  const early: readonly Because[] =
    before && repairs.length === 0
      ? [
          {
            text: `What was done on ${showDay(before.day)} came before water first showed on ${showDay(first.day)}: ${wasDryBetween(courses, before, first) ? 'it did not stop this' : 'it does not count as a repair of this. Whether water came in since, or was in the wall already, is not known'}.`,
            entries: [before.entry.id, first.entry.id],
            source: LEAK_STOPPED,
          },
        ]
      : [];
  const bonded = isBondedWall(rig, mine);
  const slow: readonly Because[] = dryState !== 'dry' && repairs.length > 0 && bonded ? [slowDrying(first)] : [];
  const leak: Leak = {
    id: named.entry.id,
    place: named.place,
    spots: [...mine, ...signs],
    dry,
    since: first.day,
    other_causes: causes,
    candidates: explained ? [] : ranking.candidates,
    unknown_source: explained ? 0 : ranking.unknown_source,
    ...(ranking.assumes === undefined || explained ? {} : { assumes: ranking.assumes }),
    clues: ranking.clues,
    sentence: explained
      ? explained.because.text
      : way !== undefined && found
        ? cameInWords(rig, way, found, repairs.at(-1))
        : look
          ? `${ranking.sentence} ${look.sentence}`
          : ranking.sentence,
    ...apartOf(explained ? undefined : (look?.apart ?? ranking.apart)),
    ...(ranking.next_test === undefined || explained || look || way !== undefined ? {} : { next_test: ranking.next_test }),
    ...(way === undefined ? {} : { confirmed: way }),
    repairs: repairs.map((s) => s.entry.id),
    stop: { state: stop.state, because: [...stop.because, ...early], ...(stop.closed === undefined ? {} : { closed: stop.closed }) },
    dryness: {
      state: dryState,
      because: [...courseLines(mine), ...slow],
      ...(dryBy ? { closed: dryBy.day } : {}),
    },
    due: dueAfter(courses, since, stop, known.round, dryBy !== undefined, bonded),
  };
  return { leak, wet: all, weighed: new Map(weighed.map((w) => [w.reading.entry, w])), metered: wet.metered.length > 0, repairs, stop, dryBy, explained };
};
