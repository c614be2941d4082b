import { type KeyboardEvent, useMemo, useState } from 'react';
import { movedBy } from '../../../src/rig';
import type { Shape, Station, StationId } from '../../../src/terms';
import { go } from '../shared/route';
import { useSettings } from '../shared/settings';
import { AddPart } from './add-part';
import { stationById, stationWords, useDesk } from './desk';
import { thingOf } from './drawings';
import { editSheet, faceShift } from './face-drawing';
import { desk } from './paths';
import { StationChoice } from './place-picker';
import { RigFactsPanel } from './rig-facts-panel';
import { SheetView } from './sheet-view';
import { StationEditor } from './station-editor';
import { useWidth } from './use-width';

/** One press of Alt and an arrow key moves a part by this; with Shift by ten times as much. [m] */
const FINE_M = 0.01;
const COARSE = 10;

/**
 * What the rig is: its parts where they truly are, and what is known about it as a whole.
 * A part is moved by typed figures, by Alt and arrow keys, or by hand on the drawing; each way gives the same entry.
 */
export const DescribePage = ({ station: stationId }: { readonly station: string | undefined }) => {
  const { id, overview, preferences } = useDesk();
  const { rig } = overview;
  const [adding, setAdding] = useState(false);
  const [fresh, setFresh] = useState<Station>();
  const [frame, width] = useWidth<HTMLDivElement>(860);
  const [face, setFace] = useState<string>();
  const station = stationById(rig, stationId);
  const shown = station?.face ?? face ?? 'road';
  const [pending, setPending] = useState<{ readonly station: StationId; readonly shape: Shape }>();
  const theme = useSettings().theme === 'night' ? 'night' : 'desk';

  const ghost = pending && pending.station === station?.id ? pending.shape : undefined;
  const shownRig = useMemo(() => {
    if (adding && fresh) return { ...rig, stations: [...rig.stations, fresh] };
    return ghost && station ? { ...rig, stations: rig.stations.map((s) => (s.id === station.id ? { ...s, shape: ghost } : s)) } : rig;
  }, [rig, ghost, station, adding, fresh]);
  const sheet = useMemo(() => editSheet(shownRig, shown, preferences, width), [shownRig, shown, preferences, width]);

  const select = (thing: string) => go(desk.describe(id, thingOf(thing)));

  const moveTo = (dx: number, dy: number) => {
    if (station) setPending({ station: station.id, shape: movedBy(ghost ?? station.shape, dx, dy) });
  };

  const drag = (_: string, dx: number, dy: number) => {
    if (!station) return;
    const [fx, fy] = faceShift(sheet.frame, dx, dy);
    setPending({ station: station.id, shape: movedBy(station.shape, fx, fy) });
  };

  const key = (thing: string, event: KeyboardEvent): boolean => {
    if (!event.altKey || thingOf(thing) !== station?.id) return false;
    const step = FINE_M * (event.shiftKey ? COARSE : 1);
    const [sx, sy] = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[event.key] ?? [0, 0];
    if (sx === 0 && sy === 0) return false;
    const [fx, fy] = faceShift(sheet.frame, sx ?? 0, sy ?? 0);
    moveTo(fx, fy);
    return true;
  };

  return (
    <main className="desk-page describe-page" id="content">
      <header className="page-head">
        <h1>{station ? stationWords(rig, station) : adding ? 'Add a part' : `${rig.name || 'This rig'}, as it is described`}</h1>
        <p className="mut">
          {rig.overall_certainty === 'typical' ? 'Sizes are typical until you have measured yours.' : 'Its sizes are confirmed.'} Every change is an entry in the logbook and can be
          taken back.
        </p>
      </header>
      <div className="columns describe-columns">
        <div className="describe-drawing" ref={frame}>
          {!adding && (
            <div className="describe-tools">
              <StationChoice rig={rig} value={station?.id ?? ''} onChange={(s) => go(desk.describe(id, s === '' ? undefined : s))} />
              {!station && (
                <label className="line-field">
                  <span>Face</span>
                  <select aria-label="Face" value={shown} onChange={(e) => setFace(e.target.value)}>
                    {rig.faces.map((f) => (
                      <option key={f.id} value={f.id}>
                        {f.name}
                      </option>
                    ))}
                  </select>
                </label>
              )}
            </div>
          )}
          <SheetView
            drawing={sheet.drawing}
            theme={theme}
            zoomable
            selected={station?.id ?? fresh?.id}
            onSelect={select}
            onDrag={station ? drag : undefined}
            onKey={key}
            foot={
              station && <p className="mut small">On the drawing: drag it, or press Alt and an arrow key for 10 mm, with Shift for 100 mm. Nothing is kept before you say so.</p>
            }
          />
        </div>
        <aside className="describe-panel">
          {station ? (
            <StationEditor key={station.id} station={station} moved={ghost} onMoved={(shape) => setPending(shape ? { station: station.id, shape } : undefined)} />
          ) : adding ? (
            <AddPart face={shown} at={undefined} onFace={setFace} onShown={setFresh} onDone={() => setAdding(false)} />
          ) : (
            <>
              <p className="buttons first">
                <button type="button" className="button primary" onClick={() => setAdding(true)}>
                  Add a part
                </button>
                {rig.slides.length > 0 && (
                  <a className="button" href={desk.slides(id)}>
                    Before moving a slide
                  </a>
                )}
              </p>
              <RigFactsPanel />
            </>
          )}
        </aside>
      </div>
    </main>
  );
};
