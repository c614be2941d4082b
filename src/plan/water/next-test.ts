import { type Rig, waterSources } from '../../rig';
import { type TestQuality, testInformation_bit } from '../../science';
import { ours, type Source, type Station } from '../../terms';
import { figure } from '../../units';
import type { Because } from '../finding';
import type { EntryRanking } from './entry-points';
import type { LeakEvidence } from './evidence';
import { nameOf } from './ranking-words';
import { footOf, wets } from './run-off';
import { cautionsFor, stepsFor } from './test-steps';
import { confirms, endedEarly, LADDER_MIN, runMinutes, TESTS, type TestWay } from './water-tests';
import type { Candidate, WaterTest } from './water-types';

/** A lower suspect likelier than this, and than a tenth of the one above, is tested first; one less likely is as rare as the test's own errors. Ours. [1] */
const NEGLIGIBLE = 0.05;
const NEGLIGIBLE_SHARE = 0.1;
/** Less likely than this, an opening is not worth an afternoon, however it stands among the others; ours. [1] */
const LEAST_CHANCE = 0.05;
/** A test expected to tell less than this is not worth an afternoon; ours. [bit] */
const LEAST_BITS = 0.02;
const ORDER: Source = ours(
  'most expected information for a minute of work, the tests that it opens the way to counted in; the lowest first, for what is hosed must not wet a lower suspect',
);

/** `alone`: that it is the one, if it is one alone. */
type Suspect = { readonly station: Station; readonly candidate: Candidate; readonly alone: number };

/** One test, or several that have to be done in this order so that the last of them may be done at all. */
type Proposal = { readonly how: TestWay; readonly chain: readonly Suspect[]; readonly bits: number; readonly minutes: number };

/** Done, and with an answer: a hose that was off again too soon, or that let water in while openings above got wet too, left the question open. */
const isAnswered = (evidence: LeakEvidence, station: string, how: TestWay): boolean =>
  evidence.tests.some((t) => t.station === station && t.how === how && (how === 'soap' || (t.came_in ? confirms(t) : !endedEarly(t))));

const isHigh = ({ station }: Suspect): boolean => station.reach === 'ladder' || station.reach === 'roof';

/** One visit: set up once, each opening by itself, a ladder where one of them needs it. [min] */
const minutesOf = (chain: readonly Suspect[], how: TestWay): number => TESTS[how].set_up_min + chain.length * TESTS[how].each_min + (chain.some(isHigh) ? LADDER_MIN : 0);

/** Suspects that count, that water on this one runs over, and that nobody has hosed. */
const inTheWay = (evidence: LeakEvidence, above: Suspect, suspects: readonly Suspect[]): readonly Suspect[] => {
  const least = Math.max(NEGLIGIBLE, NEGLIGIBLE_SHARE * above.candidate.probability);
  return suspects.filter((s) => s.candidate.probability >= least && wets(evidence.rig, above.station, s.station) && !isAnswered(evidence, s.station.id, 'hose'));
};

/** The test asks whether it leaks; the question is whether it is the one. One that leaks without being it answers as a false alarm would. */
const asAnswer = ({ candidate }: Suspect, how: TestWay): TestQuality => {
  const { sensitivity, specificity } = TESTS[how];
  return { sensitivity, specificity: 1 - candidate.prior * sensitivity - (1 - candidate.prior) * (1 - specificity) };
};

const bitsOf = (suspect: Suspect, how: TestWay): number => testInformation_bit(suspect.alone, asAnswer(suspect, how));

const proposal = (chain: readonly Suspect[], how: TestWay): Proposal => ({ how, chain, bits: chain.reduce((sum, s) => sum + bitsOf(s, how), 0), minutes: minutesOf(chain, how) });

/** A suspect with everything that has to be hosed before it, the lowest first. */
const hose = (evidence: LeakEvidence, suspect: Suspect, suspects: readonly Suspect[]): readonly Proposal[] => {
  if (isAnswered(evidence, suspect.station.id, 'hose')) return [];
  const chain = new Set<Suspect>([suspect]);
  for (const s of chain) for (const lower of inTheWay(evidence, s, suspects)) chain.add(lower);
  const byFoot = (a: Suspect, b: Suspect): number => footOf(evidence.rig, a.station) - footOf(evidence.rig, b.station) || (a.station.id < b.station.id ? -1 : 1);
  return [proposal([...[...chain].filter((s) => s !== suspect).toSorted(byFoot), suspect], 'hose')];
};

const soap = (evidence: LeakEvidence, suspect: Suspect): readonly Proposal[] => (isAnswered(evidence, suspect.station.id, 'soap') ? [] : [proposal([suspect], 'soap')]);

/** Openings and seams above, which must stay dry so that they do not answer for the one below. */
const above = (rig: Rig, station: Station): readonly Station[] =>
  waterSources(rig)
    .filter((s) => s.face !== 'roof' || s.group === 'seam')
    .filter((s) => wets(rig, s, station))
    .toSorted((a, b) => footOf(rig, a) - footOf(rig, b) || (a.id < b.id ? -1 : 1));

const becauseOf = (rig: Rig, first: Suspect, { how, chain }: Proposal): readonly Because[] => {
  const { sensitivity, specificity } = asAnswer(first, how);
  const minutes = minutesOf([first], how);
  const last = chain.at(-1);
  const worth: Because = {
    text: `It takes about ${minutes} minutes, set-up counted, and is expected to tell ${figure(bitsOf(first, how), 2)} bit; an even question is worth 1.`,
    entries: [],
    source: ORDER,
    worksheet: {
      id: 'water-test-information',
      inputs: { prior_fraction: first.alone, sensitivity_fraction: sensitivity, specificity_fraction: specificity, minutes_min: minutes },
    },
  };
  const lowest: readonly Because[] =
    last && last !== first
      ? [
          {
            text: `It comes before ${nameOf(rig, last.station.id)}: water played on that one would run over this one, and nobody could tell which let it in.`,
            entries: [],
            source: ORDER,
          },
        ]
      : [];
  return [
    worth,
    ...lowest,
    {
      text: how === 'hose' ? 'Of all tests a hose is nearest to rain.' : 'Soap needs nothing above it kept dry, but it shows air and not water.',
      entries: [],
      source: TESTS[how].source,
    },
  ];
};

/** No opening or seam on the list is likely enough for a hose: what wets the place is then looked for elsewhere. */
export const noneWorthTesting = ({ candidates, confirmed }: Pick<EntryRanking, 'candidates' | 'confirmed'>): boolean =>
  confirmed === undefined && candidates.every((c) => c.probability < LEAST_CHANCE);

const namesIn = (p: Proposal): string => p.chain.map((s) => s.station.id).join(' ');

/**
 * The water test to do next: of all that may be done, the one that is expected to tell most for a minute of work. A hose
 * works from the lowest suspect upward, so that nothing below can answer for what is tested.
 *
 * @param ranking  of the same evidence
 * @returns        the test with its steps and cautions; undefined when a hose test made water come in, when there is
 *                 nothing to test, when nothing listed is as likely as 5 % (ours), or when no test is expected to tell anything worth the work
 * @assumes        for the choice of the test there is one way in; minutes and errors of the tests are ours; one visit tests one opening
 * @source         worksheet `water-test-information`; order of a hose test: practice of building leak tests
 */
export const nextTest = (evidence: LeakEvidence, ranking: EntryRanking): WaterTest | undefined => {
  if (ranking.confirmed !== undefined) return undefined;
  const { rig } = evidence;
  const suspects = ranking.candidates.flatMap((candidate): readonly Suspect[] => {
    const station = rig.stations.find((s) => s.id === candidate.station);
    return station ? [{ station, candidate, alone: ranking.alone.get(candidate.station) ?? 0 }] : [];
  });
  const rate = (p: Proposal): number => p.bits / p.minutes;
  const [best] = suspects
    .filter(({ candidate }) => candidate.probability >= LEAST_CHANCE)
    .flatMap((s) => [...hose(evidence, s, suspects), ...soap(evidence, s)])
    .filter((p) => p.bits >= LEAST_BITS)
    .toSorted((a, b) => rate(b) - rate(a) || a.how.localeCompare(b.how, 'en') || (namesIn(a) < namesIn(b) ? -1 : 1));
  const first = best?.chain[0];
  if (best === undefined || first === undefined) return undefined;
  const { station } = first;
  const keep_dry = best.how === 'hose' ? above(rig, station) : [];
  return {
    station: station.id,
    how: best.how,
    minutes: minutesOf([first], best.how),
    run_minutes: runMinutes(best.how),
    bits: bitsOf(first, best.how),
    because: becauseOf(rig, first, best),
    keep_dry: keep_dry.map((s) => s.id),
    steps: stepsFor(rig, station, best.how, keep_dry),
    cautions: cautionsFor(station, best.how),
  };
};
