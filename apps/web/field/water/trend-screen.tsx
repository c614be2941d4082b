import { useMemo, useState } from 'react';
import { followedSpot, wetTrendPlot } from '../../../../src/drawing';
import type { Leak, Spot } from '../../../../src/plan';
import type { Overview } from '../../session/session';
import { DrawingView } from '../../shared/drawing-view';
import { useLinesOf } from '../../shared/every-line';
import { PageTitle } from '../../shared/page-title';
import { href } from '../../shared/route';
import { useSettings } from '../../shared/settings';
import { needWords, TREND_WORD, wetThroughTime } from '../../shared/wet-through-time';
import { Cell, Frame, Primary } from '../frame';
import { againHref } from './leak-part';
import { unbroken } from './unbroken';
import { useSize } from './use-size';
import { spotWords } from './wall-name';
import { mapHref, panelsOf } from './water-addresses';
import { againOf } from './water-of';

/** The smallest type of the field, and the height of the plot. [px] */
const [TYPE_PX, HIGH_PX] = [18, 270] as const;

/** Whether it dries: one place of a leak through time, with rain, cover and work, and what it comes to. */
const TrendScreen = ({ overview, leak }: { readonly overview: Overview; readonly leak: Leak }) => {
  const { rig, plan, record } = overview;
  const settings = useSettings();
  const [box, { w }] = useSize();
  const lines = useLinesOf(overview);
  const followed = leak.spots.filter((s) => s.trend !== undefined);
  const [chosen, choose] = useState<string>();
  const spot = followed.find((s) => s.id === chosen) ?? followed.find((s) => s.id === followedSpot(leak)?.id) ?? followed[0];
  const trend = spot?.trend;
  const plot = useMemo(
    () =>
      trend && trend.points.length + (trend.earlier?.length ?? 0) > 0
        ? wetTrendPlot({ ...wetThroughTime(leak, trend, lines ?? [], plan.on), width: w, height: HIGH_PX, type_px: TYPE_PX, quiet: true })
        : undefined,
    [trend, leak, lines, plan.on, w],
  );
  const [again] = againOf(plan.water, leak);
  const [panel] = panelsOf(plan.water, leak);
  const need = trend && needWords(trend);
  const word = trend ? TREND_WORD[trend.word] : 'Nothing to follow yet';
  const where = (s: Spot): string => unbroken(spotWords(rig, s, settings));
  return (
    <Frame
      cells={['Does it dry?']}
      back={{ to: href('rig', rig.id, 'water'), name: 'Back to water' }}
      record={record}
      ruled
      dock={
        <>
          {again ? (
            <Primary words="Meter the same places" second="wet and dry ones, one after the other" to={againHref(rig.id, leak, again)} />
          ) : (
            <Primary words="Meter a wall" second="dry places first, then towards what looks wet" to={href('rig', rig.id, 'meter')} />
          )}
          <Cell wide={!panel} to={href('rig', rig.id, 'water')}>
            Back to water
          </Cell>
          {panel && <Cell to={mapHref(rig.id, panel, leak)}>Map</Cell>}
        </>
      }
    >
      <PageTitle id={`trend ${leak.id}`} title={`Does it dry? ${word}`}>
        {word}
      </PageTitle>
      {spot && <p>{where(spot)}.</p>}
      {trend ? (
        <p>
          {need && <b>{need}. </b>}
          {unbroken(trend.because.text)}
        </p>
      ) : (
        <p>Nothing was metered at this wet place yet. A stain or a soft place shows that water was there, not whether it dries.</p>
      )}
      <div className="trend-frame" ref={box}>
        {plot && <DrawingView drawing={plot} />}
      </div>
      {plot && (
        <p>Points above the dry places of the same day. In the band along the foot it is dry.{(trend?.earlier?.length ?? 0) > 0 ? ' Open circles: before the last repair.' : ''}</p>
      )}
      {trend && !plot && <p>No reading has a dry place of its day to be compared with yet.</p>}
      {followed.length > 1 && (
        <section>
          <h2>Places of this leak</h2>
          <fieldset className="choices lines" aria-label="The place that is followed">
            {followed.map((s) => (
              <button key={s.id} type="button" className="press" aria-pressed={s.id === spot?.id} onClick={() => choose(s.id)}>
                <b>{s.trend && TREND_WORD[s.trend.word]}</b>
                {where(s)}
              </button>
            ))}
          </fieldset>
        </section>
      )}
    </Frame>
  );
};

export default TrendScreen;
