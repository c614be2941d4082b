import type { Panel } from '../../../../src/plan';
import { type CivilDay, showDay } from '../../../../src/units';
import type { Overview } from '../../session/session';
import { PageTitle } from '../../shared/page-title';
import { useSettings } from '../../shared/settings';
import { Frame, Primary } from '../frame';
import { samePoint, type ToRead } from './series';
import { figureOf, STATE_WORD } from './wall-dots';
import { placeWords, type Tapes } from './wall-measure';

type Props = {
  readonly overview: Overview;
  readonly name: string;
  readonly panel: Panel | undefined;
  readonly day: CivilDay;
  readonly tapes: Tapes;
  readonly again: readonly ToRead[];
  readonly wanted: readonly ToRead[];
  readonly go: (to: ToRead) => void;
  readonly back: () => void;
};

/** The places of one wall as a list: what is to be read, and what was. The equal of its drawing. */
export const PlaceList = ({ overview, name, panel, day, tapes, again, wanted, go, back }: Props) => {
  const settings = useSettings();
  const toRead = [...again.map((to) => ({ to, why: 'the same place again' })), ...(again.length > 0 ? [] : wanted.map((to) => ({ to, why: to.words })))];
  const read = [...(panel?.spots ?? [])].sort((a, b) => (b.readings.at(-1)?.day ?? 0) - (a.readings.at(-1)?.day ?? 0) || a.point_m[0] - b.point_m[0]);
  return (
    <Frame cells={['Places']} record={overview.record} dock={<Primary words="Back to the wall" act={back} />}>
      <PageTitle id={`places ${name}`} title={`Places: ${name}`}>
        {name}
      </PageTitle>
      {toRead.length > 0 && <h2>To read</h2>}
      {toRead.length > 0 && (
        <ul className="rows">
          {toRead.map(({ to, why }) => (
            <li key={to.point_m.join()}>
              <button type="button" className="wide-row" onClick={() => go(to)}>
                <span>
                  <b>{placeWords(to.point_m, tapes, settings)}</b>
                  {why}
                </span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <h2>Read with this meter</h2>
      {read.length === 0 ? (
        <p>Nothing yet.</p>
      ) : (
        <ul className="rows">
          {read.map((spot) => {
            const last = spot.readings.at(-1);
            return (
              <li key={spot.id}>
                <button
                  type="button"
                  className="wide-row"
                  onClick={() => go(again.find((a) => samePoint(a.point_m, spot.point_m)) ?? { point_m: spot.point_m, words: spot.words })}
                >
                  <span>
                    <b>
                      {figureOf(spot)}: {STATE_WORD[spot.state]}
                      {last?.dry_reference ? ', to compare with' : ''}
                    </b>
                    {placeWords(spot.point_m, tapes, settings)}
                  </span>
                  <span className="end">{last && (last.day === day ? 'today' : showDay(last.day, true))}</span>
                </button>
              </li>
            );
          })}
        </ul>
      )}
    </Frame>
  );
};
