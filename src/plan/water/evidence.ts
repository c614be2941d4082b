import type { leakClue, otherCause, rainFell, sealGrade, stay, waterTest } from '../../entries';
import type { Standing } from '../../logbook';
import { pointOf, type Rig, type Tilt, type WaterSpot, waterSources } from '../../rig';
import type { BodyOf, EntryId, Place, StationId } from '../../terms';
import { type CivilDay, parseWhen } from '../../units';
import { REPAIRS } from '../rules/repairs';
import type { Clue } from './clues';
import type { SealKnown, SealsKnown } from './priors';
import type { WaterRecord } from './record';
import type { TestDone } from './water-tests';
import type { OtherCause } from './water-types';
import { GRADES } from './way-in-chances';

/** Something else than rain that was looked into at the wet places. */
export type CauseLookedInto = { readonly cause: OtherCause['cause']; readonly answer: 'ruled-out' | 'it-is-this'; readonly entry: EntryId };

/**
 * Everything that speaks for or against a way in. It can be made by hand as well: nothing in it needs a logbook.
 */
export type LeakEvidence = {
  readonly rig: Rig;
  /** The day for which ages of seals and grades are counted: when the water showed. */
  readonly on: CivilDay;
  readonly wet: readonly WaterSpot[];
  readonly dry: readonly WaterSpot[];
  /** How it stood while it rained. Empty: not known, taken as level. */
  readonly tilts: readonly Tilt[];
  /** Whether it was driven in rain before the water showed; undefined where nobody recorded it. */
  readonly driven_in_rain?: boolean;
  readonly clues: readonly Clue[];
  readonly seals: SealsKnown;
  readonly tests: readonly TestDone[];
  readonly other_causes?: readonly CauseLookedInto[];
};

/** Clues and causes noted within arm's reach of a wet place belong to it; ours. [m] */
const NEAR_M = 1.5;
/** Clues, tests and looks up to so long before the water was first recorded still count: people look first and write later; ours. [d] */
export const LOOKED_BEFORE_D = 90;
/** Stays, and rain on the road, up to so long before the water showed may have brought it; ours. [d] */
const STAY_BEFORE_D = 365;
/** More tilts than this say no more; the latest are kept. */
const MOST_TILTS = 3;
/** Tilts nearer than this are one: half a degree, as fine as a level is read. [rad] */
const TILT_STEP = Math.PI / 360;

const near = (rig: Rig, place: Place, wet: readonly WaterSpot[]): boolean => {
  if (place.at === 'rig') return true;
  const at = pointOf(rig, place);
  return at !== undefined && wet.some((w) => w.face === at.face && Math.hypot(w.point_m[0] - at.point[0], w.point_m[1] - at.point[1]) <= NEAR_M);
};

type Span = { readonly from: CivilDay; readonly to: CivilDay };
/** A stay that goes on ends where the next one begins. */
const spanOf = (standing: Standing, next: Standing | undefined, on: CivilDay): Span => {
  const when = parseWhen(standing.observed_at);
  if (when?.form === 'span') return { from: when.from, to: when.to };
  return { from: standing.day, to: next === undefined ? on : next.day };
};
const daysOf = (standing: Standing): Span => {
  const when = parseWhen(standing.observed_at);
  return when?.form === 'span' ? { from: when.from, to: when.to } : { from: standing.day, to: standing.day };
};
const meet = (a: Span, b: Span): boolean => a.from <= b.to && b.from <= a.to;

const stepped = (rad: number): number => Math.round(rad / TILT_STEP) * TILT_STEP + 0;

/** How it stood in the stays before the water showed: those in which it rained, if rain is recorded at all. */
const tiltsBefore = (record: WaterRecord, since: CivilDay): readonly Tilt[] => {
  const stays = record.of('stay').filter((s) => s.day <= since || (parseWhen(s.observed_at)?.form === 'span' && daysOf(s).from <= since));
  const rains = record
    .of('rain-fell')
    .filter((r) => (r.body as BodyOf<(typeof rainFell)['fields']>).while !== 'driving')
    .map(daysOf);
  const spans = stays.map((s, i) => ({ body: s.body as BodyOf<(typeof stay)['fields']>, span: spanOf(s, stays[i + 1], since) }));
  const late = spans.filter((s) => s.span.to >= since - STAY_BEFORE_D && s.body.cover !== 'indoors' && s.body.cover !== 'roofed');
  const rained = late.filter((s) => rains.some((r) => meet(s.span, r)));
  const told = (rained.length > 0 ? rained : late).flatMap(({ body }) => {
    const { nose_up, curb_up } = body;
    return nose_up === undefined && curb_up === undefined ? [] : [{ nose_up_rad: stepped(nose_up?.si ?? 0), curb_up_rad: stepped(curb_up?.si ?? 0) }];
  });
  const kept = new Map(told.toReversed().map((t) => [`${t.nose_up_rad} ${t.curb_up_rad}`, t]));
  return [...kept.values()].slice(0, MOST_TILTS);
};

const stationOf = (place: Place): StationId | undefined => ('station' in place ? place.station : undefined);

const bySource = (list: readonly Standing[]): ReadonlyMap<StationId, readonly Standing[]> => {
  const found = new Map<StationId, Standing[]>();
  for (const s of list) {
    const station = stationOf(s.place);
    if (station === undefined) continue;
    const same = found.get(station);
    if (same) same.push(s);
    else found.set(station, [s]);
  }
  return found;
};

/** The first repair of a place after the water showed: what was seen there later is no longer the state that let it in. */
const mendedOn = (repairs: readonly Standing[], since: CivilDay): CivilDay | undefined => repairs.find((r) => r.day >= since)?.day;

type Grading = BodyOf<(typeof sealGrade)['fields']>;

/** Grade and age of each bead as they were when the water showed. The worst of the latest grades along a seam counts. */
const sealsBefore = (rig: Rig, record: WaterRecord, since: CivilDay): SealsKnown => {
  const repairs = bySource(record.ofAll(REPAIRS));
  const grades = bySource(record.of('seal-grade'));
  const known = new Map<StationId, SealKnown>();
  for (const { id } of waterSources(rig)) {
    const mended = mendedOn(repairs.get(id) ?? [], since);
    const sealed = (repairs.get(id) ?? []).filter((r) => r.day < since).at(-1);
    const seen = (grades.get(id) ?? []).filter((g) => (mended === undefined || g.day < mended) && (sealed === undefined || g.day >= sealed.day));
    const last = new Map(seen.map((g) => [JSON.stringify(g.place), g]));
    const worst = [...last.values()].toSorted((a, b) => GRADES.indexOf((b.body as Grading).grade) - GRADES.indexOf((a.body as Grading).grade))[0];
    if (worst === undefined && sealed === undefined) continue;
    known.set(id, {
      ...(worst === undefined ? {} : { grade: (worst.body as Grading).grade, graded: worst.day }),
      ...(sealed === undefined ? {} : { sealed: sealed.day }),
      entries: [worst, sealed].flatMap((s) => s?.entry.id ?? []),
    });
  }
  return known;
};

const isAfter = (a: Standing, b: Standing): boolean => a.day > b.day || (a.day === b.day && a.observed_at > b.observed_at);

/** Tests of this leak, oldest first; a repair between a test and the water, either way round, makes the test say nothing of it. */
const testsOf = (record: WaterRecord, since: CivilDay, on: CivilDay): readonly TestDone[] => {
  const repairs = bySource(record.ofAll(REPAIRS));
  return record.of('water-test').flatMap((s) => {
    const station = stationOf(s.place);
    if (station === undefined || s.day > on || s.day < since - LOOKED_BEFORE_D) return [];
    const mended = (repairs.get(station) ?? []).some((r) => (r.day >= since ? isAfter(s, r) : isAfter(r, s)));
    if (mended) return [];
    const body = s.body as BodyOf<(typeof waterTest)['fields']>;
    return [
      {
        entry: s.entry.id,
        station,
        how: body.how,
        came_in: body.result === 'came-in' || body.result === 'bubbles',
        kept_dry: body.kept_dry,
        ran_for_s: body.ran_for?.si,
      },
    ];
  });
};

/** Driven in rain in the year before the water showed, where somebody recorded it. */
const drivenInRain = (record: WaterRecord, since: CivilDay): boolean | undefined => {
  const whiles = record
    .of('rain-fell')
    .filter((r) => r.day <= since && daysOf(r).to >= since - STAY_BEFORE_D)
    .map((r) => (r.body as BodyOf<(typeof rainFell)['fields']>).while);
  return whiles.some((w) => w === 'driving' || w === 'both') ? true : undefined;
};

/**
 * Gathers from the logbook what speaks for or against each way in, as things stood when the water showed: repairs made
 * since then, and what was seen and tested after them, do not change what is held to have let it in.
 *
 * @param record  the entries about water
 * @param on      the day of judgement: later entries are not read
 * @param wet     places that are wet
 * @param dry     places of the same walls that were found dry
 * @param since   when the water showed, or showed again
 */
export const leakEvidence = (rig: Rig, record: WaterRecord, on: CivilDay, wet: readonly WaterSpot[], dry: readonly WaterSpot[], since: CivilDay): LeakEvidence => {
  const clues = record.of('leak-clue').filter((s) => s.day <= on && s.day >= since - LOOKED_BEFORE_D && near(rig, s.place, wet));
  const causes = record.of('other-cause').filter((s) => s.day <= on && s.day >= since - LOOKED_BEFORE_D && near(rig, s.place, wet));
  const driven = drivenInRain(record, since);
  return {
    rig,
    on: since,
    wet,
    dry,
    tilts: tiltsBefore(record, since),
    ...(driven === undefined ? {} : { driven_in_rain: driven }),
    clues: clues.flatMap((s) => (s.body as BodyOf<(typeof leakClue)['fields']>).when.map((id) => ({ id, entry: s.entry.id }))),
    seals: sealsBefore(rig, record, since),
    tests: testsOf(record, since, on),
    other_causes: causes.map((s) => {
      const { cause, answer } = s.body as BodyOf<(typeof otherCause)['fields']>;
      return { cause, answer, entry: s.entry.id };
    }),
  };
};
