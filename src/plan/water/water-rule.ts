import type { Standing } from '../../logbook';
import type { Place, Urgency } from '../../terms';
import type { CivilDay } from '../../units';
import type { Episode } from '../episodes';
import type { RuleHead, Verdict } from '../rule';
import type { WaterJudged } from './water';

/** What a rule of water raises: a verdict with the looks that showed it, and what ended it. */
export type Raised = {
  readonly place: Place;
  readonly verdict: Verdict;
  /** The looks that showed it, oldest first; the first gives the finding its name. */
  readonly seen: readonly Standing[];
  /** How urgent each of them was; left out, all were as urgent as it is now. */
  readonly urgencies?: readonly Urgency[];
  readonly since: CivilDay;
  readonly closed?: { readonly by: Standing; readonly life: 'proved' | 'seen-sound'; readonly care?: Standing };
  /** Care on what it comes from, named or not. */
  readonly mended?: readonly Standing[];
};

/**
 * A judgement of the whole rig's water: made from what many places show together, not look by look. One judgement, one file;
 * what it raises lives on by the same care, decisions and proofs as what any other rule raises.
 */
export type WaterRule = RuleHead & { readonly raises: (judged: WaterJudged) => readonly Raised[] };

export const defineWaterRule = (rule: WaterRule): WaterRule => rule;

/** The episodes that the rules of water raise. */
export const waterEpisodes = (rules: readonly WaterRule[], judged: WaterJudged): readonly Episode[] =>
  rules.flatMap((rule) =>
    rule.raises(judged).map(
      (raised): Episode => ({
        rule,
        key: raised.verdict.key,
        place: raised.place,
        seen: [...raised.seen],
        urgencies: raised.seen.map((_, i) => raised.urgencies?.[i] ?? raised.verdict.urgency),
        verdict: raised.verdict,
        since: raised.since,
        ...(raised.closed ? { closed: raised.closed } : {}),
        ...(raised.mended ? { mended: raised.mended } : {}),
      }),
    ),
  );
