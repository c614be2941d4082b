import { type Metres, metres } from '../../units';

/** How far the bead runs down each side from an upper corner of a wall opening: our own guess, no source. [m] */
export const RUN_DOWN = metres(0.15);

export type BeadOutline = { readonly form: 'rect'; readonly width: Metres; readonly height: Metres } | { readonly form: 'circle'; readonly diameter: Metres };

type Practice = {
  readonly rule: string;
  readonly words: string;
  readonly rect: { readonly formula: string; readonly length: (w: number, h: number, s: number) => number };
  readonly circle: { readonly formula: string; readonly length: (d: number) => number };
};

const none = { formula: 'no bead', length: () => 0 };

/** Where a bead is laid, by practice. Weep slots are never covered; the foot of a wall opening stays free to drain. */
export const BEAD_PRACTICES = [
  {
    rule: 'all-round',
    words: 'all round: roof openings',
    rect: { formula: 'L = 2 (w + h)', length: (w, h) => 2 * (w + h) },
    circle: { formula: 'L = π w', length: (d) => Math.PI * d },
  },
  {
    rule: 'top-and-upper-sides',
    words: 'along the top and a little way down each side: wall openings',
    rect: { formula: 'L = w + 2 s, with s no longer than the side', length: (w, h, s) => w + 2 * Math.min(s, h) },
    circle: { formula: 'L = π w / 2, the upper half', length: (d) => (Math.PI * d) / 2 },
  },
  {
    rule: 'upper-long-edge',
    words: 'along the upper long edge',
    rect: { formula: 'L = the longer of w and h', length: (w, h) => Math.max(w, h) },
    circle: { formula: 'L = π w / 2, the upper half', length: (d) => (Math.PI * d) / 2 },
  },
  {
    rule: 'both-long-edges',
    words: 'along both long edges',
    rect: { formula: 'L = 2 × the longer of w and h', length: (w, h) => 2 * Math.max(w, h) },
    circle: { formula: 'L = π w', length: (d) => Math.PI * d },
  },
  { rule: 'fastener-heads', words: 'only over the heads of the screws', rect: none, circle: none },
  { rule: 'none-gasket', words: 'none: a gasket seals it, and no bead may be added', rect: none, circle: none },
  { rule: 'none', words: 'none', rect: none, circle: none },
] as const satisfies readonly Practice[];

export type BeadPractice = (typeof BEAD_PRACTICES)[number]['rule'];

const practiceOf = (rule: BeadPractice): Practice => BEAD_PRACTICES.find((p) => p.rule === rule) ?? BEAD_PRACTICES[0];

/** The formula that `beadLength` uses, for the working. */
export const beadFormula = (rule: BeadPractice, form: BeadOutline['form']): string => practiceOf(rule)[form].formula;

/**
 * How much bead an opening takes when it is sealed as the trade does it.
 *
 * @param rule      where the bead runs
 * @param outline   outer edge of the flange. [m]
 * @param run_down  how far down each side on a wall opening. [m]
 * @returns         length of bead. [m]
 * @agrees          closed forms; checked at round figures only, there is no published table
 * @assumes         practice disagrees: some shops bead a wall opening all round, some hardly at all
 * @source          1. common practice, no published source
 */
export const beadLength = (rule: BeadPractice, outline: BeadOutline, run_down: Metres): Metres => {
  const practice = practiceOf(rule);
  return metres(outline.form === 'rect' ? practice.rect.length(outline.width, outline.height, run_down) : practice.circle.length(outline.diameter));
};
