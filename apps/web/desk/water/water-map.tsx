import { useCallback, useMemo, useState } from 'react';
import { type DrawnField, type MapLayer, type MapOptions, moistureKey, moistureMap, moistureSheet } from '../../../../src/drawing';
import type { Leak, Panel } from '../../../../src/plan';
import { show } from '../../../../src/units';
import { useMoistureField } from '../../session/use-session';
import { go, href } from '../../shared/route';
import { count, useDesk } from '../desk';
import { desk } from '../paths';
import { Picture } from '../picture';
import { useDrawingTheme } from '../sheet-parts';
import { SheetView } from '../sheet-view';
import { useWidth } from '../use-width';
import { dayWords } from '../when-picker';
import { isSettled, noNumberWords, readWords, stateWords } from './water-words';

/** Readings alone, until the map has been worked out. */
const BARE: DrawnField = { of: 'reading', threshold: 0, parts: [], next_places: [] };

/** Room for the key beside the map, and from which width it stands there. [px] */
const [KEY_PX, BESIDE_FROM_PX] = [200, 620] as const;
/** A page of paper with its margins. [px] */
const PAPER_PX = 500;

/** The wall that was metered, with its map, its key, the ways in, and every reading in a table. */
export const WaterMap = ({ panel, leak }: { readonly panel: Panel; readonly leak: Leak | undefined }) => {
  const { id, overview, preferences } = useDesk();
  const { rig } = overview;
  const [layer, setLayer] = useState<MapLayer>('chance');
  const [ways, showWays] = useState(true);
  const [next, showNext] = useState(leak === undefined || !isSettled(leak));
  const [selected, setSelected] = useState<string>();
  const theme = useDrawingTheme();
  const [frame, width] = useWidth<HTMLDivElement>(880, 20);
  const found = useMoistureField(id, panel.id);
  const field: DrawnField = found ?? BARE;
  const beside = width >= BESIDE_FROM_PX;
  const options = useMemo<MapOptions>(
    () => ({ preferences, layer, next, fit_px: beside ? width - KEY_PX : width, ...(leak && ways ? { leak } : leak?.spots[0] ? { ringed: leak.spots[0].id } : {}) }),
    [preferences, layer, next, beside, width, leak, ways],
  );
  const drawing = useMemo(() => moistureMap(rig, panel, field, options), [rig, panel, field, options]);
  const redraw = useCallback((zoom: number) => moistureMap(rig, panel, field, { ...options, zoom }), [rig, panel, field, options]);
  const key = useMemo(() => moistureKey(rig, panel, field, options), [rig, panel, field, options]);
  const onPaper = useMemo(() => moistureSheet(rig, panel, field, { ...options, layer: 'chance', fit_px: PAPER_PX, type_px: 11 }), [rig, panel, field, options]);
  const mapped = field.parts.some((p) => p.drawn === 'map');
  const open = (thing: string): void => go(desk.place(id, thing.replace(/^way\//, '')));
  return (
    <figure className="water-map" ref={frame} aria-busy={found === undefined}>
      <div className="water-map-sheet" data-beside={beside ? 'yes' : 'no'}>
        <SheetView
          drawing={drawing}
          theme={theme}
          zoomable
          selected={selected}
          onSelect={setSelected}
          onOpen={open}
          redraw={redraw}
          foot={
            <p className="mut small">
              {panel.side === 'inside' ? 'Seen from inside. ' : 'Seen from outside. '}
              {mapped ? 'A map is an estimate between the readings; the figures on it are what was read.' : found === undefined ? 'The map is being worked out.' : 'Readings only.'}
            </p>
          }
        />
        <Picture drawing={key} className="water-key" />
      </div>
      <Picture drawing={onPaper} className="on-paper" theme="paper" />
      <fieldset className="layers">
        <legend>Show</legend>
        {mapped &&
          (['chance', 'error'] as const).map((l) => (
            <label key={l}>
              <input type="radio" name="water-layer" checked={layer === l} onChange={() => setLayer(l)} />
              {l === 'chance' ? 'Chance of being wet' : 'How uncertain it is'}
            </label>
          ))}
        {leak && leak.candidates.length > 0 && (
          <label>
            <input type="checkbox" checked={ways} onChange={(e) => showWays(e.target.checked)} />
            Ways in
          </label>
        )}
        {field.next_places.length > 0 && (
          <label>
            <input type="checkbox" checked={next} onChange={(e) => showNext(e.target.checked)} />
            Where to read next
          </label>
        )}
      </fieldset>
      {next && field.next_places.length > 0 && (
        <p className="water-next-places">
          <b>Read next:</b>{' '}
          {field.next_places.map((n, i) => (
            <span key={n.words}>
              <b className="accent">{i + 1}</b> {n.words}
              {i < field.next_places.length - 1 ? '; ' : '. '}
            </span>
          ))}
          <a href={href('rig', id, 'meter', panel.face, panel.side)}>Meter this wall</a>
        </p>
      )}
      {found && found.assumes.length > 0 && (
        <details>
          <summary>What the map assumes</summary>
          <ul className="plain">
            {found.assumes.map((a) => (
              <li key={a} className="small">
                {a}
              </li>
            ))}
          </ul>
        </details>
      )}
      <Readings panel={panel} length={(m) => show(m, 'length', preferences)} />
    </figure>
  );
};

/** The equal of the map for those who would rather read: the latest reading of every place. */
const Readings = ({ panel, length }: { readonly panel: Panel; readonly length: (m: number) => string }) => {
  const spots = panel.spots.filter((s) => s.readings.length > 0);
  return (
    <details>
      <summary>{count(spots.length, 'place was read', 'places were read')}: all of them in a table</summary>
      <div className="table-scroll">
        <table className="reading-table">
          <thead>
            <tr>
              <th scope="col">Along</th>
              <th scope="col">Up</th>
              <th scope="col">Read</th>
              <th scope="col">Corrected</th>
              <th scope="col">Above dry</th>
              <th scope="col">Verdict</th>
              <th scope="col">When</th>
            </tr>
          </thead>
          <tbody>
            {spots.map((s) => {
              const r = s.readings.at(-1);
              const excess = s.yardsticks.reference?.excess;
              return r === undefined ? null : (
                <tr key={s.id}>
                  <td>{length(s.point_m[0])}</td>
                  <td>{length(s.point_m[1])}</td>
                  <td>{readWords(panel, r.as_read)}</td>
                  <td>{r.no_number !== undefined ? noNumberWords(r.no_number) : r.value === undefined ? '' : readWords(panel, r.value)}</td>
                  <td>{excess === undefined ? '' : `${excess >= 0 ? '+' : '−'}${Math.abs(excess * 100).toFixed(1)}`}</td>
                  <td>
                    {stateWords(s.state)}
                    {r.dry_reference ? ', dry place' : ''}
                  </td>
                  <td>{dayWords(r.observed_at)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </details>
  );
};
