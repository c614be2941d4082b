import { ours, type Urgency } from '../../terms';
import type { Episode } from '../episodes';
import { DELAMINATION } from '../rules/sources';
import { type Delamination, reasonsOf } from './delamination';
import type { AdviceWord } from './loose-skin-types';

const DRY_WAITS = ours('a loose skin over a dry core with the way in closed waits for the season’s work; until that is known it is dealt with before rain');

/** Advice that is given only where the core is dry and no water comes in. */
const DRY: ReadonlySet<AdviceWord> = new Set(['inject', 'trade-looks', 'watch', 'outline-first']);

type How = { readonly urgency: Urgency; readonly who?: 'yourself'; readonly remedies: readonly string[]; readonly defect?: string };

const howOf = ({ advice, core }: Delamination): How => {
  if (advice.word === 'watch') return { urgency: 'watch', who: 'yourself', remedies: ['watch-outline'], defect: 'wall-laminated.bubble-dry' };
  const dry = DRY.has(advice.word) || (advice.word === 'replace' && core.state === 'dry');
  return {
    urgency: dry ? 'this-season' : 'before-rain',
    remedies: advice.word === 'replace' ? ['soft-structure'] : ['delam-small'],
  };
};

/**
 * A finding of a loose skin with everything that the whole rig tells of it: how large, whether it grows, what the meter says on the
 * other side of the wall, whether water still comes in, and what comes next. A look in the heat stays the weak one that it is.
 */
export const withLooseSkin = (episode: Episode, found: readonly Delamination[]): Episode => {
  if (episode.rule.id !== 'skin-condition' || episode.key !== 'delamination' || episode.closed) return episode;
  const last = episode.seen.at(-1)?.entry.id;
  const d = found.find((x) => x.seen.some((s) => s.entry.id === last));
  if (!d) return episode;
  const { verdict } = episode;
  if (verdict.weak) return { ...episode, verdict: { ...verdict, because: [...verdict.because, ...d.measured] } };
  const { defect, ...how } = howOf(d);
  const { urgency } = how;
  const entries = verdict.because[0]?.entries ?? [];
  const next = { text: d.advice.sentence, entries, source: DELAMINATION };
  const waits = urgency === 'this-season' ? [{ text: 'The core is dry: it is dealt with this season.', entries, source: DRY_WAITS }] : [];
  return {
    ...episode,
    urgencies: [...episode.urgencies.slice(0, -1), urgency],
    verdict: {
      ...verdict,
      ...how,
      ...(defect === undefined ? {} : { defect }),
      because: [...verdict.because, ...reasonsOf(d), next, ...waits],
      steps: d.advice.steps,
    },
  };
};
