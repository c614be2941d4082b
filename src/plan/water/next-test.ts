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
import { LADDER_MIN, TESTS, type TestWay } from './water-tests';
import type { Candidate, WaterTest } from './water-types';

/** A lower suspect likelier than this is tested before anything above it. [1] */
const NEGLIGIBLE = 0.03;
/** A test expected to tell less than this is not worth an afternoon. [bit] */
const LEAST_BITS = 0.02;
const ORDER: Source = ours('most expected information for a minute of work, the lowest first: what is hosed must not wet a lower opening that was never tested');

/** `leaks`: that it lets water in at all; its candidate's probability: that it wetted a place here. */
type Suspect = { readonly station: Station; readonly candidate: Candidate; readonly leaks: number };

type Proposal = { readonly suspect: Suspect; readonly how: TestWay; readonly worth: TestQuality; readonly bits: number; readonly minutes: number; readonly instead_of?: Station };

const wasTested = (evidence: LeakEvidence, station: string, how: TestWay): boolean => evidence.tests.some((t) => t.station === station && t.how === how);

const minutesOf = (station: Station, how: TestWay): number =>
  TESTS[how].set_up_min + TESTS[how].each_min + (station.reach === 'ladder' || station.reach === 'roof' ? LADDER_MIN : 0);

/** Suspects that water on this one runs over, and that nobody has hosed without entry. */
const inTheWay = (evidence: LeakEvidence, above: Suspect, suspects: readonly Suspect[]): readonly Suspect[] =>
  suspects
    .filter((s) => s.candidate.probability >= NEGLIGIBLE && wets(evidence.rig, above.station, s.station))
    .filter((s) => !evidence.tests.some((t) => t.station === s.station.id && t.how === 'hose' && !t.came_in))
    .toSorted((a, b) => footOf(evidence.rig, a.station) - footOf(evidence.rig, b.station) || (a.station.id < b.station.id ? -1 : 1));

/** The test asks whether it leaks; the question is whether its water got here. What leaks elsewhere answers as a false alarm would. */
const asAnswer = ({ candidate, leaks }: Suspect, how: TestWay): TestQuality => {
  const { sensitivity, specificity } = TESTS[how];
  const elsewhere = candidate.probability < 1 ? Math.max(0, leaks - candidate.probability) / (1 - candidate.probability) : 0;
  return { sensitivity, specificity: 1 - elsewhere * sensitivity - (1 - elsewhere) * (1 - specificity) };
};

const proposal = (suspect: Suspect, how: TestWay): Proposal => {
  const worth = asAnswer(suspect, how);
  return { suspect, how, worth, bits: testInformation_bit(suspect.candidate.probability, worth), minutes: minutesOf(suspect.station, how) };
};

/** What may be hosed: the suspect itself, or in its place the lowest one that its water would run over. */
const hose = (evidence: LeakEvidence, suspect: Suspect, suspects: readonly Suspect[]): Proposal | undefined => {
  const [lowest] = inTheWay(evidence, suspect, suspects);
  if (lowest === undefined) return wasTested(evidence, suspect.station.id, 'hose') ? undefined : proposal(suspect, 'hose');
  // Whatever lies lower still comes first: each step goes down, so that this ends.
  const first = hose(evidence, lowest, suspects);
  return first && { ...first, instead_of: suspect.station };
};

const soap = (evidence: LeakEvidence, suspect: Suspect): Proposal | undefined => (wasTested(evidence, suspect.station.id, 'soap') ? undefined : proposal(suspect, 'soap'));

/** Openings and seams above, which must stay dry so that they do not answer for the one below. */
const above = (rig: Rig, station: Station): readonly Station[] =>
  waterSources(rig)
    .filter((s) => s.face !== 'roof' || s.group === 'seam')
    .filter((s) => wets(rig, s, station))
    .toSorted((a, b) => footOf(rig, a) - footOf(rig, b) || (a.id < b.id ? -1 : 1));

const becauseOf = (rig: Rig, { suspect, how, worth: errs, bits, minutes, instead_of }: Proposal): readonly Because[] => {
  const kind = TESTS[how];
  const worth: Because = {
    text: `It takes about ${minutes} minutes and is expected to tell ${figure(bits, 2)} bit; an even question is worth 1.`,
    entries: [],
    source: ORDER,
    worksheet: {
      id: 'water-test-information',
      inputs: { prior_fraction: suspect.candidate.probability, sensitivity_fraction: errs.sensitivity, specificity_fraction: errs.specificity, minutes_min: minutes },
    },
  };
  const lowest: readonly Because[] = instead_of
    ? [{ text: `It comes before ${nameOf(rig, instead_of.id)}: water played on that one would run over this one.`, entries: [], source: kind.source }]
    : [];
  return [
    worth,
    ...lowest,
    { text: how === 'hose' ? 'A hose is the nearest to rain.' : 'Soap needs no water from above, but shows air and not water.', entries: [], source: kind.source },
  ];
};

/**
 * The water test to do next: of all that may be done, the one that is expected to tell most for a minute of work. A hose
 * works from the lowest suspect upward, so that nothing below can answer for what is tested.
 *
 * @param ranking  of the same evidence
 * @returns        the test with its steps and cautions; undefined when a hose test made water come in, when there is
 *                 nothing to test, or when no test is expected to tell anything worth the work
 * @assumes        minutes and errors of the tests are ours; one visit tests one opening
 * @source         worksheet `water-test-information`; order of a hose test: practice of building leak tests
 */
export const nextTest = (evidence: LeakEvidence, ranking: EntryRanking): WaterTest | undefined => {
  if (ranking.confirmed !== undefined) return undefined;
  const { rig } = evidence;
  const suspects = ranking.candidates.flatMap((candidate): readonly Suspect[] => {
    const station = rig.stations.find((s) => s.id === candidate.station);
    return station ? [{ station, candidate, leaks: ranking.leaks.get(candidate.station) ?? candidate.probability }] : [];
  });
  const proposals = suspects
    .flatMap((s) => [hose(evidence, s, suspects) ?? [], soap(evidence, s) ?? []].flat())
    .filter((p) => p.bits >= LEAST_BITS)
    .toSorted(
      (a, b) =>
        b.bits / b.minutes - a.bits / a.minutes ||
        a.how.localeCompare(b.how, 'en') ||
        footOf(rig, a.suspect.station) - footOf(rig, b.suspect.station) ||
        (a.suspect.station.id < b.suspect.station.id ? -1 : 1),
    );
  const [best] = proposals;
  if (best === undefined) return undefined;
  const { station } = best.suspect;
  const keep_dry = best.how === 'hose' ? above(rig, station) : [];
  return {
    station: station.id,
    how: best.how,
    minutes: best.minutes,
    bits: best.bits,
    because: becauseOf(rig, best),
    keep_dry: keep_dry.map((s) => s.id),
    steps: stepsFor(rig, station, best.how, keep_dry),
    cautions: cautionsFor(station, best.how),
  };
};
