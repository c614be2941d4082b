import type { Source, Urgency, Who } from '../../terms';
import { GAS_SMELL, PRACTICE, TYRE_80, TYRE_CRACK } from './sources';

/**
 * Where a rule is stricter than the defects table, it wins: a person who ticks the row in a list of defects gets the same
 * answer as one who uses the closer question. Nothing here makes a row of the table less urgent.
 */
export type Ruling = {
  readonly defect: string;
  readonly urgency: Urgency;
  readonly who: Who;
  readonly text: string;
  readonly source: Source;
  /** Only these kinds of care settle it. */
  readonly settledBy?: readonly string[];
};

const BY_TYRE_TRADE = ['tyre-fitted', 'professional-work'] as const;

export const rulings: readonly Ruling[] = [
  {
    defect: 'tyre.sidewall-crack',
    urgency: 'before-moving',
    who: 'professional',
    text: 'Any crack that shows in a sidewall: not used again until a professional has looked.',
    source: TYRE_CRACK,
    settledBy: BY_TYRE_TRADE,
  },
  {
    defect: 'tyre.bulge',
    urgency: 'before-moving',
    who: 'professional',
    text: 'A bulge, or cord that shows, means that the tyre has come apart inside: not used again.',
    source: PRACTICE,
    settledBy: BY_TYRE_TRADE,
  },
  {
    defect: 'tyre.run-flat',
    urgency: 'before-moving',
    who: 'professional',
    text: 'At or below 80 % of what it should show, a tyre counts as run flat. Do not add air.',
    source: TYRE_80,
    settledBy: BY_TYRE_TRADE,
  },
  { defect: 'step.loose', urgency: 'do-not-use', who: 'yourself', text: 'A step that moves may drop someone: it is not used until it is fast.', source: PRACTICE },
  { defect: 'step.wont-lock', urgency: 'do-not-use', who: 'yourself', text: 'A step that does not lock may fold under a foot: it is not used until it locks.', source: PRACTICE },
  {
    defect: 'lp-compartment.leak',
    urgency: 'do-not-use',
    who: 'professional',
    text: 'Gas smell: shut the cylinder if that is safe, leave, touch no switch, call from away. Nothing that burns gas is used until a qualified person has tested it.',
    source: GAS_SMELL,
    settledBy: ['professional-work'],
  },
];

const byDefect = new Map(rulings.map((r) => [r.defect, r]));

export const rulingOn = (defect: string): Ruling | undefined => byDefect.get(defect);
