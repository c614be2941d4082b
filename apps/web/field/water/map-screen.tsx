import { useCallback, useMemo, useState } from 'react';
import { type DrawnField, letterOf, type MapLayer, type MapOptions, moistureKey, moistureMap, moistureNotes } from '../../../../src/drawing';
import type { Leak, Panel } from '../../../../src/plan';
import type { Face } from '../../../../src/rig';
import type { Overview } from '../../session/session';
import { useMoistureField } from '../../session/use-session';
import { DrawingView } from '../../shared/drawing-view';
import { PageTitle } from '../../shared/page-title';
import { href, withQuery } from '../../shared/route';
import { useSettings } from '../../shared/settings';
import { Cell, Frame, Primary } from '../frame';
import { LIKELY_WORD, stationName } from './leak-part';
import { MapPicture } from './map-picture';
import { SCALE_WORD } from './series';
import { unbroken } from './unbroken';
import { figureOf, STATE_WORD } from './wall-dots';
import { placeWords, tapesOf } from './wall-measure';
import { wallName } from './wall-name';
import { trendHref } from './water-addresses';

type Props = { readonly overview: Overview; readonly panel: Panel; readonly face: Face; readonly leak: Leak | undefined };

/** Readings alone, until the map has been worked out. */
const BARE: DrawnField = { of: 'reading', threshold: 0, parts: [], next_places: [] };
/** The smallest type of the field, and the width of a key in it. [px] */
const [TYPE_PX, KEY_PX] = [18, 350] as const;
/** Names on a map are smaller than its readings: close by, they too are of the field's smallest type. [px] */
const CLOSE_TYPE_PX = 19.6;

/** On a narrower screen the whole stretch is too small to be read: it opens close by. */
const NARROW = '(max-width: 359px)';
/** Of the unlikely ways in the map shows the first only. */
const MOST_WAYS = 4;

/** How far it reaches: the wet stretch of one wall with its readings on top, its key, why there is no map where there is none, and where to read next. */
const MapScreen = ({ overview, panel, face, leak }: Props) => {
  const { rig, record } = overview;
  const settings = useSettings();
  const [layer, setLayer] = useState<MapLayer>('chance');
  const [closer, setCloser] = useState(() => window.matchMedia(NARROW).matches);
  const found = useMoistureField(rig.id, panel.id);
  const field: DrawnField = found ?? BARE;
  const options = useMemo<MapOptions>(() => ({ preferences: settings, layer, type_px: TYPE_PX, quiet: true, key_px: KEY_PX, ...(leak ? { leak } : {}) }), [settings, layer, leak]);
  const make = useCallback(
    (fit_px: number, zoom: number) => moistureMap(rig, panel, field, { ...options, fit_px, zoom, ...(zoom > 1 ? { type_px: CLOSE_TYPE_PX } : {}) }),
    [rig, panel, field, options],
  );
  const key = useMemo(() => moistureKey(rig, panel, field, { ...options, fit_px: KEY_PX }), [rig, panel, field, options]);
  const notes = useMemo(() => moistureNotes(rig, panel, field, { ...options, fit_px: KEY_PX }), [rig, panel, field, options]);
  const tapes = useMemo(() => tapesOf(rig, face, panel.side), [rig, face, panel.side]);
  const mapped = field.parts.some((p) => p.drawn === 'map');
  const read = panel.spots.filter((s) => s.readings.length > 0);
  const wet = read.filter((s) => s.state === 'wet' || s.state === 'damp').length;
  const meter = withQuery(href('rig', rig.id, 'meter', panel.face, panel.side), { scale: panel.scale, meter: panel.meter });
  const [next] = field.next_places;
  const ways = (leak?.candidates ?? []).filter((c, i) => (i < MOST_WAYS || c.word !== 'unlikely') && letterOf(i) !== '');
  return (
    <Frame
      cells={['Map', SCALE_WORD[panel.scale]]}
      back={{ to: href('rig', rig.id, 'water'), name: 'Back to water' }}
      record={record}
      ruled
      dock={
        <>
          <Primary
            words="Meter this wall"
            second={next ? unbroken(`next: ${placeWords(next.point_m, tapes, settings)}`) : 'dry places first, then towards what looks wet'}
            to={meter}
          />
          <Cell wide={!leak} to={href('rig', rig.id, 'water')}>
            Back to water
          </Cell>
          {leak && <Cell to={trendHref(rig.id, leak)}>Does it dry?</Cell>}
        </>
      }
    >
      <div className="series-head map-head">
        <div>
          <PageTitle id={`map ${panel.id}`} title={`Map: ${panel.words}`}>
            {wallName(face, panel.side)}
          </PageTitle>
          <p>
            {read.length === 1 ? 'One place' : `${read.length} places`}, {wet === 0 ? 'none stands out' : `${wet} wet or damp`}
            {panel.meter === '' ? '' : `; ${panel.meter}`}.
          </p>
        </div>
        <button type="button" className="press" onClick={() => setCloser(!closer)}>
          {closer ? 'Whole' : 'Closer'}
        </button>
      </div>
      <MapPicture make={make} closer={closer} name={panel.words} />
      {found === undefined && <p>The map is being worked out.</p>}
      {found === null && <p>No map can be made of these readings.</p>}
      {notes.map((n) => (
        <p key={n}>{unbroken(n)}</p>
      ))}
      {mapped && (
        <>
          <fieldset className="choices of-2" aria-label="What the map shows">
            {LAYERS.map(([l, words]) => (
              <button key={l} type="button" className="press" aria-pressed={layer === l} onClick={() => setLayer(l)}>
                {words}
              </button>
            ))}
          </fieldset>
          <p>An estimate between the readings; the figures on it are what was read. {panel.side === 'inside' ? 'Seen from inside.' : 'Seen from outside.'}</p>
        </>
      )}
      <section>
        <h2>What it shows</h2>
        <div className="map-key">
          <DrawingView drawing={key} />
        </div>
      </section>
      {ways.length > 0 && (
        <section>
          <h2>Ways in</h2>
          <ul className="rows even">
            {ways.map((c, i) => (
              <li key={c.station}>
                <a className="candidate" href={withQuery(href('rig', rig.id, 'water-test', leak?.id ?? ''), { station: c.station })}>
                  <span className="number">{letterOf(i)}</span>
                  <span>
                    <b>{stationName(overview, c.station)}</b>
                  </span>
                  <span className="end">{leak?.confirmed === c.station ? 'Seen' : LIKELY_WORD[c.word]}</span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
      {field.next_places.length > 0 && (
        <section>
          <h2>Where to read next</h2>
          <ol className="rows even">
            {field.next_places.map((n, i) => (
              <li key={n.point_m.join()}>
                <a className="candidate" href={meter}>
                  <span className="number">{i + 1}</span>
                  <span>
                    <b>{unbroken(placeWords(n.point_m, tapes, settings))}</b>
                  </span>
                  <span className="end" />
                </a>
              </li>
            ))}
          </ol>
        </section>
      )}
      <details className="caution-box quiet">
        <summary>All readings</summary>
        <ul className="plain-list">
          {read.map((s) => (
            <li key={s.id}>
              <b>
                {figureOf(s)}: {STATE_WORD[s.state]}
                {s.readings.at(-1)?.dry_reference ? ', to compare with' : ''}
              </b>{' '}
              {unbroken(placeWords(s.point_m, tapes, settings))}
            </li>
          ))}
        </ul>
      </details>
      {found && found.assumes.length > 0 && (
        <details className="caution-box quiet">
          <summary>What the map assumes</summary>
          <ul className="plain-list">
            {found.assumes.map((a) => (
              <li key={a}>{unbroken(a)}</li>
            ))}
          </ul>
        </details>
      )}
    </Frame>
  );
};

export default MapScreen;

const LAYERS: readonly (readonly [MapLayer, string])[] = [
  ['chance', 'Chance of being wet'],
  ['error', 'How uncertain'],
];
