import { useMemo } from 'react';
import { followedSpot, wetTrendPlot } from '../../../../src/drawing';
import type { Leak } from '../../../../src/plan';
import { wetThroughTime } from '../../shared/wet-through-time';
import { useDesk } from '../desk';
import { useEveryLine } from '../logbook-lines';
import { Picture } from '../picture';
import { useWidth } from '../use-width';

/** The followed spot through time, with what happened to it meanwhile. */
export const WetTrend = ({ leak }: { readonly leak: Leak }) => {
  const { overview } = useDesk();
  const [frame, width] = useWidth<HTMLDivElement>(880, 20);
  const lines = useEveryLine();
  const spot = followedSpot(leak);
  const drawing = useMemo(() => {
    const trend = spot?.trend;
    return trend && wetTrendPlot({ ...wetThroughTime(leak, trend, lines ?? [], overview.plan.on), width, height: 240 });
  }, [spot, leak, lines, overview.plan.on, width]);
  if (!spot || !drawing) return null;
  return (
    <figure className="water-trend" ref={frame}>
      <figcaption>
        <h2>Ringed spot, points above the dry places of the day</h2>
      </figcaption>
      <Picture drawing={drawing} />
    </figure>
  );
};
