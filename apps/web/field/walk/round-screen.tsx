import { useEffect, useState } from 'react';
import type { Overview, RoundView } from '../../session/session';
import { goInstead, href } from '../../shared/route';
import { StationCard } from '../visit/station-card';
import { RoundFinished } from './round-finished';
import { RoundList } from './round-list';
import { RoundStart } from './round-start';
import { WholeRig } from './whole-rig';

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
  const { round } = overview;
  if (!round || (round.ended && at !== 'finished' && at !== 'list') || at === 'start') return <RoundStart overview={overview} />;
  if (at === 'last' && round.asked_of_rig.length > 0 && !round.ended) return <WholeRig overview={overview} round={round} />;
  if (at === 'list') return <RoundList overview={overview} round={round} />;
  if (at === 'finished' || at === 'last' || round.ended) return <RoundFinished overview={overview} round={round} />;
  return <Walk overview={overview} round={round} at={at} />;
};

/** `round/now` is turned into the stop's own number at once: the screen must not slide on when this stop has its answer. */
const Walk = ({ overview, round, at }: { readonly overview: Overview; readonly round: RoundView; readonly at: string | undefined }) => {
  const address = (to: string | number): string => href('rig', overview.rig.id, 'round', to);
  const [start] = useState(round.at);
  const numbered = at !== undefined && NUMBER.test(at);
  const index = numbered ? Number(at) - 1 : start;
  const here = address(index + 1);
  useEffect(() => {
    if (!numbered) goInstead(here);
  }, [numbered, here]);
  const toStep = (i: number): void => goInstead(address(i + 1));
  const onward = (from: number): void => {
    // Whoever has gone elsewhere while the answer was being kept stays there.
    if (location.hash !== here) return;
    const next = nextOpen(round.steps, from);
    goInstead(next === undefined ? address('finished') : address(next + 1));
  };
  if (!round.steps[index]) return <RoundFinished overview={overview} round={round} />;
  return <StationCard overview={overview} round={round} index={index} toStep={toStep} onward={onward} />;
};
