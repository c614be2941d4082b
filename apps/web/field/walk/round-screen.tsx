import type { Overview } from '../../session/session';
import { goInstead, href } from '../../shared/route';
import { StationCard } from '../visit/station-card';
import { RoundFinished } from './round-finished';
import { RoundList } from './round-list';
import { RoundStart } from './round-start';

/** The next stop without an answer, going on from where the person stands and then from the beginning. */
export const nextOpen = (steps: readonly { readonly answered: string }[], from: number): number | undefined => {
  for (let i = 1; i < steps.length; i++) {
    const at = (from + i) % steps.length;
    if (steps[at]?.answered === 'no') return at;
  }
  return undefined;
};

const NUMBER = /^\d+$/;

/** `round` starts one or goes on, `round/<n>` is a stop, `round/list` all of them, `round/finished` the end. */
export const RoundScreen = ({ overview, at }: { readonly overview: Overview; readonly at: string | undefined }) => {
  const { round, rig } = overview;
  const address = (to: string | number): string => href('rig', rig.id, 'round', to);
  if (!round || (round.ended && at !== 'finished' && at !== 'list') || at === 'start') return <RoundStart overview={overview} />;
  if (at === 'list') return <RoundList overview={overview} round={round} />;
  if (at === 'finished' || round.ended) return <RoundFinished overview={overview} round={round} />;
  const index = at !== undefined && NUMBER.test(at) ? Number(at) - 1 : round.at;
  const toStep = (i: number): void => goInstead(address(i + 1));
  const onward = (from: number): void => {
    const next = nextOpen(round.steps, from);
    goInstead(next === undefined ? address('finished') : address(next + 1));
  };
  if (!round.steps[index]) return <RoundFinished overview={overview} round={round} />;
  return <StationCard overview={overview} round={round} index={index} toStep={toStep} onward={onward} />;
};
