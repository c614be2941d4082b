import { accept, type Refusal, type Result, refuse } from '../../units';
import { outsideValidity, type Validity } from '../validity';

/** As many sources as every combination of leaking and sound ones can still be gone through for. */
export const leakSources: Validity = { of: 'prior', least: 0, most: 18, words: 'up to 18 sources, 262 144 combinations', source: 'our own limit, for speed' };

/** Chance of what else was seen of one source, if it leaks and if it does not: of a water test's result, for instance. */
export type Likelihood = { readonly source: number; readonly if_leaks: number; readonly if_not: number };

export type EntryEvidence = {
  /** That each source lets water in, before any place was looked at. [1] */
  readonly prior: readonly number[];
  /** For each source and each place: that water let in here gets there. [1] */
  readonly pass: readonly (readonly number[])[];
  /** For each place: that it is wet by something that is not among the sources. [1] */
  readonly background: readonly number[];
  readonly wet: readonly boolean[];
  readonly likelihoods?: readonly Likelihood[];
};

export type EntryPosterior = {
  /** Chance of just these wet and dry places and test results. [1] */
  readonly evidence: number;
  /** That each source lets water in, given them. [1] */
  readonly posterior: readonly number[];
  /** That it does and that water from it got to at least one of the wet places: one that leaks elsewhere is no answer. [1] */
  readonly through: readonly number[];
  /** That none of the sources does: then all that is wet has another cause. [1] */
  readonly none: number;
};

const isChance = (n: number | undefined): boolean => n !== undefined && n >= 0 && n <= 1;

const noChance = (path: string, received: string): Refusal => ({
  code: 'not-a-probability',
  path,
  expected: 'probabilities from 0 to 1',
  received,
  sentence: `${received} is no probability; it must lie from 0 to 1.`,
});

const wrongLength = (path: string, expected: string, received: string): Refusal => ({
  code: 'wrong-length',
  path,
  expected,
  received,
  sentence: `There must be ${expected}, but ${received} came.`,
});

const faultsOf = ({ prior, pass, background, wet, likelihoods = [] }: EntryEvidence): readonly Refusal[] => {
  const faults: Refusal[] = [];
  const chances = (path: string, list: readonly number[]): void => {
    const bad = list.find((n) => !isChance(n));
    if (bad !== undefined) faults.push(noChance(path, String(bad)));
  };
  chances('prior', prior);
  chances('background', background);
  chances('pass', pass.flat());
  if (pass.length !== prior.length) faults.push(wrongLength('pass', `one row for each of ${prior.length} sources`, `${pass.length} rows`));
  const row = pass.find((r) => r.length !== wet.length);
  if (row !== undefined) faults.push(wrongLength('pass', `one chance in every row for each of ${wet.length} places`, String(row.length)));
  if (background.length !== wet.length) faults.push(wrongLength('background', `one chance for each of ${wet.length} places`, String(background.length)));
  for (const l of likelihoods) {
    chances('likelihoods', [l.if_leaks, l.if_not]);
    if (!(l.source in prior)) faults.push(wrongLength('likelihoods', `the number of a source, 0 to ${prior.length - 1}`, String(l.source)));
  }
  return faults;
};

/** Weight of a source that leaks and of one that does not: prior, test results, and every place that stayed dry. */
const weightsOf = ({ prior, pass, wet, likelihoods = [] }: EntryEvidence): { readonly leaks: Float64Array; readonly sound: Float64Array } => {
  const leaks = Float64Array.from(prior);
  const sound = Float64Array.from(prior, (p) => 1 - p);
  for (const { source, if_leaks, if_not } of likelihoods) {
    leaks[source] = (leaks[source] ?? 0) * if_leaks;
    sound[source] = (sound[source] ?? 0) * if_not;
  }
  for (const [i, row] of pass.entries()) for (const [j, w] of row.entries()) if (!wet[j]) leaks[i] = (leaks[i] ?? 0) * (1 - w);
  return { leaks, sound };
};

/**
 * Goes through every combination of leaking and sound sources.
 *
 * @param leaks    weight of each source when it leaks
 * @param sound    weight of each source when it does not
 * @param alone    for each wet place, the chance that the background misses it
 * @param misses   for each source and each wet place, the chance that its water misses it
 * @returns        weight of all combinations, and of those in which each source leaks
 */
const goThrough = (leaks: Float64Array, sound: Float64Array, alone: Float64Array, misses: readonly Float64Array[]): { readonly all: number; readonly leaking: Float64Array } => {
  const m = alone.length;
  // The last two sources are taken together, four endings at once; where there are fewer, some that never leak stand in.
  const last = Math.max(leaks.length, 2) - 2;
  const flat = new Float64Array((last + 2) * m).fill(1);
  for (const [i, row] of misses.entries()) flat.set(row, i * m);
  /** Row i + 1 holds, for each wet place, the chance that it is missed when source i is the last one that leaks. */
  const missed = new Float64Array((last + 1) * m);
  missed.set(alone);
  const leaking = new Float64Array(last + 2);
  const [leaksA = 0, leaksB = 0] = [leaks[last], leaks[last + 1]];
  const [soundA = 1, soundB = 1] = [sound[last], sound[last + 1]];

  const ends = (row: number, weight: number): number => {
    const [a, b] = [last * m, (last + 1) * m];
    let neither = 1;
    let first = 1;
    let second = 1;
    let both = 1;
    for (let k = 0; k < m; k += 1) {
      const x = missed[row + k] as number;
      const xa = x * (flat[a + k] as number);
      const missB = flat[b + k] as number;
      neither *= 1 - x;
      first *= 1 - xa;
      second *= 1 - x * missB;
      both *= 1 - xa * missB;
    }
    const one = weight * leaksA * soundB * first;
    const other = weight * soundA * leaksB * second;
    const two = weight * leaksA * leaksB * both;
    leaking[last] = (leaking[last] as number) + one + two;
    leaking[last + 1] = (leaking[last + 1] as number) + other + two;
    return weight * soundA * soundB * neither + one + other + two;
  };

  /** Weight of all combinations of the sources from `i` on, given those before: their misses stand at `row`. */
  const walk = (i: number, row: number, weight: number): number => {
    if (i === last) return ends(row, weight);
    const next = (i + 1) * m;
    const own = i * m;
    for (let k = 0; k < m; k += 1) missed[next + k] = (missed[row + k] as number) * (flat[own + k] as number);
    const one = walk(i + 1, next, weight * (leaks[i] as number));
    leaking[i] = (leaking[i] as number) + one;
    return one + walk(i + 1, row, weight * (sound[i] as number));
  };
  return { all: walk(0, 0, 1), leaking };
};

const product = (list: Iterable<number>): number => {
  let all = 1;
  for (const n of list) all *= n;
  return all;
};

/**
 * Which of several possible sources lets water in, given wet places, dry places and water tests: a noisy-OR network, every
 * combination of leaking and sound sources weighed. Dry places multiply the weight of a source by itself; only wet ones
 * tie sources together, so the walk carries one product for each wet place and adds up as it returns.
 *
 * @param evidence  priors, chances of passing, background, which places are wet, and test results
 * @returns         chance of the evidence, of each source, of each having wetted a place, and that none of the sources
 *                  leaks; a refusal where the figures are no probabilities, lists do not match, or the evidence could not
 *                  have come about
 * @valid           up to 18 sources, any number of places
 * @agrees          exact against three worked cases (worksheets/cases/leak.jsonl) and against counting written otherwise in leak.check.ts
 * @assumes         sources leak independently; water from each gets to each place independently; wet places are read without error
 * @source          1. Pearl, Probabilistic Reasoning in Intelligent Systems (1988), noisy-OR: from memory, unconfirmed
 */
export const entryPosterior = (evidence: EntryEvidence): Result<EntryPosterior> => {
  const { prior, pass, background, wet } = evidence;
  const n = prior.length;
  if (n > leakSources.most) return outsideValidity(leakSources, `${n} sources`);
  const faults = faultsOf(evidence);
  if (faults.length > 0) return refuse(...faults);
  const { leaks, sound } = weightsOf(evidence);
  const places = wet.flatMap((isWet, j) => (isWet ? [j] : []));
  const alone = Float64Array.from(places, (j) => 1 - (background[j] ?? 0));
  const misses = pass.map((row) => Float64Array.from(places, (j) => 1 - (row[j] ?? 0)));
  const { all, leaking } = goThrough(leaks, sound, alone, misses);
  // Dry places are missed by the background as well: one factor for every combination.
  const dry = product(wet.map((isWet, j) => (isWet ? 1 : 1 - (background[j] ?? 0))));
  if (!(all * dry > 0))
    return refuse({
      code: 'impossible-evidence',
      path: 'wet',
      expected: 'wet and dry places that the sources and the background can bring about',
      received: wet.map((isWet) => (isWet ? 'wet' : 'dry')).join(', '),
      sentence: 'With these chances the places could not be wet and dry in this way. Give the background a chance, or check the list of sources.',
    });
  const posterior = Array.from(leaking.subarray(0, n), (l) => l / all);
  /** Weight of everything else bringing the evidence about, source i left out. */
  const without = (i: number): number => {
    const s = sound[i] as number;
    // Of what is left of a source that almost surely leaks nothing can be divided out any more.
    if (s > 1e-6 * (leaks[i] as number)) return (all - (leaking[i] as number)) / s;
    return goThrough(leaks.with(i, 0), sound.with(i, 1), alone, misses).all;
  };
  // One that leaks and misses every wet place leaves them to the rest, as if it were sound.
  const through = posterior.map((p, i) => {
    const missesAll = (leaks[i] as number) * product(misses[i] ?? []);
    return missesAll === 0 ? p : Math.max(0, p - (missesAll * without(i)) / all);
  });
  const none = product(sound) * product(places.map((j) => background[j] ?? 0));
  return accept({ evidence: all * dry, posterior, through, none: none / all });
};
