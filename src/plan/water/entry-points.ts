import type { WaterSpot } from '../../rig';
import { entryPosterior, testPosterior } from '../../science';
import { ours, type StationId } from '../../terms';
import type { Because } from '../finding';
import { apartWords } from './apart';
import { candidateBecause, coarse } from './candidate-words';
import { clueWords, elsewhereByClues } from './clues';
import type { LeakEvidence } from './evidence';
import { sentenceOf } from './ranking-words';
import { confirms, worthOf } from './water-tests';
import type { Candidate, Likelihood } from './water-types';
import { before, READ_WET, thinned, type Weighed, weighed, weightOf } from './weighing';

/** The ranking of ways in for wet places with a common cause. */
export type EntryRanking = {
  /** The likeliest first. */
  readonly candidates: readonly Candidate[];
  /** That something not on the list wets one of the places. [1] */
  readonly unknown_source: number;
  readonly sentence: string;
  readonly apart?: string;
  readonly clues: readonly Because[];
  /** A hose test that made water come in. */
  readonly confirmed?: StationId;
  /** For each candidate that it lets water in at all, here or elsewhere: what a water test of it answers. [1] */
  readonly leaks: ReadonlyMap<StationId, number>;
  /** For each candidate that it is the one, if it is one alone: what the next test is chosen by. [1] */
  readonly alone: ReadonlyMap<StationId, number>;
  /** Further openings and seams that water could come from, too many to weigh together: the least likely. */
  readonly left_out: readonly StationId[];
  /** What was taken for granted, in words. */
  readonly assumes: readonly string[];
};

/** From so much on a candidate is called likely, and possible; ours. [1] */
export const LIKELY = 0.5;
export const POSSIBLE = 0.15;
/** Seventeen, and the one that is not on the list: as many as every combination can be gone through for. */
export const MOST_CANDIDATES = 17;

/** That something not on the list lets water in within reach of the wet places: a crack in the shell, a screw hole, a pipe; ours. [1] */
const UNLISTED = 0.03;
/** It would wet any of the wet places so often, and any of the dry ones: nobody knows where it is; ours. [1] */
const UNLISTED_PASS = { wet: 0.4, dry: 0.15 } as const;
/** Each other cause that was ruled out leaves so much of what is not on the list; ours. */
const RULED_OUT = 0.8;
/** A place wet by itself, or read wrong; ours. [1] */
const BACKGROUND = 0.01;

const RANKING = ours('which of several ways in: every combination weighed, with our own chances of leaking and of passing');
const CAUSE_WORDS = { condensation: 'condensation', plumbing: 'plumbing', 'air-conditioner': 'the air conditioner', 'weep-holes': 'the weep holes of a window' } as const;

const wordOf = (p: number): Likelihood => (p >= LIKELY ? 'likely' : p >= POSSIBLE ? 'possible' : 'unlikely');

const nothing = (evidence: LeakEvidence, sentence: string): EntryRanking => ({
  candidates: [],
  unknown_source: 0,
  sentence,
  clues: clueWords(evidence.clues),
  leaks: new Map(),
  alone: new Map(),
  left_out: [],
  assumes: [],
});

const assumesOf = (evidence: LeakEvidence, left_out: number): readonly string[] => [
  ...(evidence.tilts.length === 0 ? ['How it was parked in the rain is not recorded: taken as level.'] : []),
  ...(evidence.driven_in_rain === undefined && !evidence.clues.some((c) => c.id === 'only-driving-rain' || c.id === 'only-parked-rain')
    ? ['Whether it was driven in rain is not recorded: taken as even.']
    : []),
  ...(left_out === 0 ? [] : [`${left_out} more openings and seams, the least likely, were left out.`]),
];

const unlisted = (evidence: LeakEvidence): number => {
  const ruledOut = new Set((evidence.other_causes ?? []).map((c) => c.cause)).size;
  const odds = (UNLISTED / (1 - UNLISTED)) * elsewhereByClues(evidence.clues) * RULED_OUT ** ruledOut;
  return odds / (1 + odds);
};

/** A test multiplies the odds of its source alone, so that it is worked into the chance before: the worksheet then shows the same figures. */
const tested = (w: Weighed): number => w.tests.reduce((p, t) => testPosterior(p, worthOf(t), t.came_in), before(w));

/** The chances of one network, as its worksheet takes them: the candidates, and last the one that is not on the list. */
const chancesOf = (evidence: LeakEvidence, kept: readonly Weighed[], spots: readonly WaterSpot[], wet: number) => {
  const chances = {
    prior: [...kept.map(tested), unlisted(evidence)],
    pass: [...kept.map((w) => w.pass), spots.map((_, j) => (j < wet ? UNLISTED_PASS.wet : UNLISTED_PASS.dry * READ_WET))],
    background: spots.map(() => BACKGROUND),
    wet: spots.map((_, j) => j < wet),
  };
  const inputs = {
    prior_fraction: chances.prior,
    pass_fraction: chances.pass.flat(),
    background_fraction: [BACKGROUND],
    wet: chances.wet.map((isWet) => (isWet ? 'wet' : 'dry')).join(', '),
  };
  return { chances, worksheet: { id: 'entry-points', inputs } };
};

type Chances = ReturnType<typeof chancesOf>['chances'];

/** Share of each source, were just one of them the way in: odds times the chance of just these wet and dry places. */
const ifOneAlone = ({ prior, pass, background, wet }: Chances): readonly number[] => {
  const weights = prior.map((p, i) =>
    wet.reduce(
      (all, isWet, j) => {
        const missed = (1 - (pass[i]?.[j] ?? 0)) * (1 - (background[j] ?? 0));
        return all * (isWet ? 1 - missed : missed);
      },
      p / (1 - p),
    ),
  );
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => w / sum);
};

/**
 * Ranks the openings and seams through which the water may have come: by the chance that water from each got to one of the
 * wet places, which is more than that it leaks.
 *
 * @param evidence  wet and dry places, how it stood, clues, seals and water tests; a logbook is not needed
 * @returns         candidates, the likeliest first, each with its reasons, and the chance of something not on the list; no
 *                  candidates where nothing is wet, where another cause was found, or where no way leads
 * @assumes         our own chances of leaking and passing (way-in-chances.ts, passing.ts); places side by side count once;
 *                  what is not on the list is one more source, which may wet any place
 * @source          worksheet `entry-points`; chances: ours
 */
export const rankEntryPoints = (evidence: LeakEvidence): EntryRanking => {
  const wet = thinned(evidence.wet);
  if (wet.length === 0) return nothing(evidence, 'Nothing is wet, so there is nothing to trace.');
  const cause = (evidence.other_causes ?? []).find((c) => c.answer === 'it-is-this');
  if (cause) return nothing(evidence, `It was found to be ${CAUSE_WORDS[cause.cause]}: no way in is looked for.`);
  const dry = thinned(evidence.dry);
  const spots = [...wet, ...dry];
  const all = weighed(evidence, spots, wet.length).toSorted((a, b) => weightOf(b, wet.length) - weightOf(a, wet.length) || (a.station.id < b.station.id ? -1 : 1));
  const kept = all.slice(0, MOST_CANDIDATES);
  const left_out = all.slice(MOST_CANDIDATES).map((w) => w.station.id);
  const { chances, worksheet } = chancesOf(evidence, kept, spots, wet.length);
  const ranked = entryPosterior(chances);
  // Nothing a person gives can get here: every chance is made above, and the background makes any evidence possible.
  if (!ranked.ok) throw new Error(ranked.refusals[0]?.sentence);
  const { posterior, through } = ranked.value;
  const alone = ifOneAlone(chances);

  const candidates = kept
    .map((w, i): Candidate => {
      const probability = through[i] ?? 0;
      const text = `${coarse(before(w)).replace(/^./, (c) => c.toUpperCase())} before, ${coarse(probability)} with the wet and dry places${w.tests.length > 0 ? ' and the tests' : ''}: ${wordOf(probability)}.`;
      return {
        station: w.station.id,
        probability,
        prior: before(w),
        word: wordOf(probability),
        because: [...candidateBecause(evidence.rig, w, wet, dry), { text, entries: [], source: RANKING, worksheet }],
        paths: w.ways.slice(0, wet.length).flatMap((way) => way ?? []),
        tests: w.tests.map((t) => t.entry),
      };
    })
    .toSorted((a, b) => b.probability - a.probability || b.prior - a.prior || (a.station < b.station ? -1 : 1));
  const confirmed = evidence.tests.findLast((t) => confirms(t) && candidates.some((c) => c.station === t.station))?.station;
  const unknown_source = through.at(-1) ?? 0;
  const apart = confirmed === undefined ? apartWords(evidence, candidates) : undefined;
  return {
    candidates,
    unknown_source,
    sentence: sentenceOf(evidence.rig, candidates, unknown_source, confirmed),
    ...(apart === undefined ? {} : { apart }),
    clues: clueWords(evidence.clues),
    ...(confirmed === undefined ? {} : { confirmed }),
    leaks: new Map(kept.map((w, i) => [w.station.id, posterior[i] ?? 0])),
    alone: new Map(kept.map((w, i) => [w.station.id, alone[i] ?? 0])),
    left_out,
    assumes: assumesOf(evidence, left_out.length),
  };
};
