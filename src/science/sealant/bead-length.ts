import { type Metres, metres } from '../../units';

/** How far the bead runs down each side from an upper corner of a wall opening: our own guess, no source. [m] */
export const RUN_DOWN = metres(0.15);

/** An opening as far as its bead is concerned. [m] */
export type BeadOutline = {
  /** Of the box that the outline fills. */
  readonly width: Metres;
  readonly height: Metres;
  /** Length of the whole outline. */
  readonly around: Metres;
};

type Practice = {
  readonly rule: string;
  readonly words: string;
  readonly formula: string;
  /** w, h the box, a all the way round, s the run down each side. */
  readonly length: (w: number, h: number, a: number, s: number) => number;
};

const nothing = (): number => 0;

/** Where a bead is laid, by practice. Weep slots are never covered; the foot of a wall opening stays free to drain. */
export const BEAD_PRACTICES = [
  { rule: 'all-round', words: 'all round: roof openings', formula: 'L = the whole outline', length: (_w, _h, a) => a },
  {
    rule: 'top-and-upper-sides',
    words: 'along the top and a little way down each side: wall openings',
    formula: 'L = w + 2 s, with s no longer than the side',
    length: (w, h, _a, s) => w + 2 * Math.min(s, h),
  },
  { rule: 'upper-long-edge', words: 'along the upper long edge', formula: 'L = the longer of w and h', length: (w, h) => Math.max(w, h) },
  { rule: 'both-long-edges', words: 'along both long edges', formula: 'L = 2 × the longer of w and h', length: (w, h) => 2 * Math.max(w, h) },
  { rule: 'fastener-heads', words: 'only over the heads of the screws', formula: 'no length', length: nothing },
  { rule: 'none-gasket', words: 'none: a gasket seals it, and no bead may be added', formula: 'no length', length: nothing },
  { rule: 'none', words: 'none', formula: 'no length', length: nothing },
] as const satisfies readonly Practice[];

export type BeadPractice = (typeof BEAD_PRACTICES)[number]['rule'];

const practiceOf = (rule: BeadPractice): Practice => BEAD_PRACTICES.find((p) => p.rule === rule) ?? BEAD_PRACTICES[0];

/** The formula that `beadLength` uses, for the working. */
export const beadFormula = (rule: BeadPractice): string => practiceOf(rule).formula;

/**
 * How much bead an opening takes when it is sealed as the trade does it.
 *
 * @param rule      where the bead runs
 * @param outline   outer edge of the flange. [m]
 * @param run_down  how far down each side on a wall opening. [m]
 * @returns         length of bead; 0 where none is laid or only screw heads are covered. [m]
 * @agrees          closed forms; checked at round figures only, there is no published table
 * @assumes         practice disagrees: some shops bead a wall opening all round, some hardly at all
 * @source          1. common practice, no published source
 */
export const beadLength = (rule: BeadPractice, outline: BeadOutline, run_down: Metres): Metres =>
  metres(practiceOf(rule).length(outline.width, outline.height, outline.around, run_down));
