import { type Candidate, type LeakEvidence, type Likelihood, rankEntryPoints } from '../src/plan';
import type { WaterSpot } from '../src/rig';
import { civilDay } from '../src/units';
import type { WallId } from './body';
import { chance } from './chance';
import { keepRecord, type Metered, type Noted, wetAndDry } from './person';
import { nearestAbove } from './rivals';
import { walk } from './walk';
import { inventWorld, type Truth } from './world';

/** What one invented leak came to. */
export type Trial = {
  readonly seed: number;
  readonly when: Truth['when'];
  readonly construction: string;
  /** Whether every hole is at a station; else at least one is nowhere on the list. */
  readonly listed: 'all' | 'some' | 'none';
  readonly wet: number;
  readonly dry: number;
  /** Place of the first true way in: 1 is first; 0 where it does not appear. */
  readonly ranked: number;
  readonly nearest: number;
  readonly by_prior: number;
  /** How many candidates got each word, how many of them truly let water in, and the sum of the chances given. */
  readonly said: Readonly<Record<Likelihood, { readonly times: number; readonly right: number; readonly chances: number }>>;
  readonly unknown_source: number;
};

const TODAY = civilDay(20_000);
const WIND: Readonly<{ [W in WallId]: LeakEvidence['clues'][number]['id'] }> = {
  front: 'wind-from-front',
  rear: 'wind-from-rear',
  road: 'wind-from-road',
  curb: 'wind-from-curb',
};

const spots = (list: readonly Metered[], stem: string): readonly WaterSpot[] => list.map((m, i) => ({ id: `${stem}${i}`, face: m.face, side: 'inside', point_m: m.point }));

const seals = (record: Noted): LeakEvidence['seals'] => {
  const known = new Map<string, { grade?: 'S0' | 'S1' | 'S2' | 'S3' | 'S4' | 'S5'; graded?: typeof TODAY; sealed?: typeof TODAY; entries: readonly string[] }>();
  for (const [id, grade] of record.grades) known.set(id, { grade: `S${grade as 0 | 1 | 2 | 3 | 4 | 5}`, graded: TODAY, entries: [] });
  for (const [id, years] of record.ages_years) known.set(id, { ...known.get(id), sealed: civilDay(Math.round(TODAY - years * 365.25)), entries: [] });
  return known;
};

const WORDS: readonly Likelihood[] = ['likely', 'possible', 'unlikely'];

const tally = (candidates: readonly Candidate[], holes: ReadonlySet<string>): Trial['said'] => {
  const of = (word: Likelihood): Trial['said'][Likelihood] => {
    const such = candidates.filter((x) => x.word === word);
    return { times: such.length, right: such.filter((x) => holes.has(x.station)).length, chances: such.reduce((sum, x) => sum + x.probability, 0) };
  };
  return Object.fromEntries(WORDS.map((w) => [w, of(w)])) as Trial['said'];
};

const place = (ids: readonly string[], truth: ReadonlySet<string>): number => ids.findIndex((id) => truth.has(id)) + 1;

/** One leak from hole to ranking; undefined where the person would never have noticed anything. */
export const trial = (seed: number): Trial | undefined => {
  const c = chance(seed);
  const truth = inventWorld(c, `rig-${seed}`);
  const damp = walk(truth, c);
  const record = keepRecord(truth, damp, c);
  if (!record) return undefined;
  const { wet, dry } = wetAndDry(record);
  if (wet.length === 0) return undefined;
  const evidence: LeakEvidence = {
    rig: truth.rig,
    on: TODAY,
    wet: spots(wet, 'wet'),
    dry: spots(dry, 'dry'),
    tilts: record.tilt ? [record.tilt] : [],
    ...(record.driven_in_rain === undefined ? {} : { driven_in_rain: record.driven_in_rain }),
    clues: [
      ...(record.only === undefined ? [] : [{ id: record.only === 'driving' ? ('only-driving-rain' as const) : ('only-parked-rain' as const), entry: 'clue' }]),
      ...(record.wind === undefined ? [] : [{ id: WIND[record.wind], entry: 'clue' }]),
    ],
    seals: seals(record),
    tests: [],
  };
  const ranking = rankEntryPoints(evidence);
  const holes = new Set(truth.holes.flatMap((h) => h.station ?? []));
  const unlisted = truth.holes.filter((h) => h.station === undefined).length;
  return {
    seed,
    when: truth.when,
    construction: truth.rig.construction,
    listed: unlisted === 0 ? 'all' : unlisted === truth.holes.length ? 'none' : 'some',
    wet: wet.length,
    dry: dry.length,
    ranked: place(
      ranking.candidates.map((x) => x.station),
      holes,
    ),
    nearest: place(nearestAbove(truth.rig, wet), holes),
    by_prior: place(
      ranking.candidates.toSorted((a, b) => b.prior - a.prior || (a.station < b.station ? -1 : 1)).map((x) => x.station),
      holes,
    ),
    said: tally(ranking.candidates, holes),
    unknown_source: ranking.unknown_source,
  };
};
