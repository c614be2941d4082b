import { useCallback, useEffect, useMemo, useState } from 'react';
import { showDay } from '../../../src/units';
import type { Overview } from '../session/session';
import { href } from '../shared/route';
import { openFindings, readySentence } from './answers';
import { count, findingStation, useDesk } from './desk';
import { type Layer, layersOf, sheetDrawing } from './drawings';
import { Grades, useLastGrades } from './last-graded';
import { Parked } from './parked';
import { SheetLists } from './sheet-lists';
import { OtherSheets, openThing, Selected, useDrawingTheme } from './sheet-parts';
import { SheetView } from './sheet-view';
import { TimeLine } from './time-line';
import { useWidth } from './use-width';

/** The overview of an earlier day, or today's. Late answers never replace newer ones. */
const useOverviewOn = (on: number | undefined): { readonly shown: Overview; readonly past: boolean; readonly waiting: boolean } => {
  const { id, session, overview } = useDesk();
  const [then, setThen] = useState<{ readonly on: number; readonly overview: Overview }>();
  useEffect(() => {
    if (on === undefined) return;
    let gone = false;
    const asked = setTimeout(() => {
      session.overview(id, on).then(
        (found) => {
          if (!gone) setThen({ on, overview: found });
        },
        () => undefined,
      );
    }, 80);
    return () => {
      gone = true;
      clearTimeout(asked);
    };
  }, [session, id, on]);
  if (on === undefined) return { shown: overview, past: false, waiting: false };
  return { shown: then?.overview ?? overview, past: true, waiting: then?.on !== on };
};

export const RigSheetPage = () => {
  const { overview, today } = useDesk();
  const [on, setOn] = useState<number>();
  const { shown, past, waiting } = useOverviewOn(on);
  const [layers, setLayers] = useState<ReadonlySet<Layer>>(new Set(['open', 'sound', 'not-seen']));
  const [selected, setSelected] = useState<string>();
  const theme = useDrawingTheme();
  const { preferences } = useDesk();
  const [frame, width] = useWidth<HTMLDivElement>(960);
  const drawing = useMemo(() => sheetDrawing(shown, layers, preferences, width), [shown, layers, preferences, width]);
  const grades = useLastGrades(on, layers.has('last-graded'));
  const marked = useMemo(() => new Set(layers.has('open') ? openFindings(shown.plan).flatMap((f) => findingStation(f) ?? []) : []), [shown, layers]);
  const redraw = useCallback((zoom: number) => sheetDrawing(shown, layers, preferences, width * zoom), [shown, layers, preferences, width]);

  if (overview.rig.faces.length === 0) return <NotDrawn />;
  return (
    <main className="desk-page sheet-page" id="content" aria-busy={waiting}>
      <SheetHead overview={shown} past={past} />
      <div className="sheet-drawing" ref={frame}>
        <SheetView
          drawing={drawing}
          theme={theme}
          zoomable
          selected={selected}
          redraw={redraw}
          over={layers.has('last-graded') ? (zoom) => <Grades drawing={drawing} grades={grades} marked={marked} size={11 / (drawing.px * zoom)} /> : undefined}
          onSelect={setSelected}
          onOpen={(thing) => openThing(shown, thing)}
          foot={<Selected overview={shown} selected={selected} />}
        />
        <TimeLine overview={overview} shown={shown} today={today} on={on} onChange={setOn} />
        <Layers shown={shown} layers={layers} onChange={setLayers} />
        <OtherSheets rig={shown.rig} here="sheet" />
      </div>
      <SheetLists overview={shown} selected={selected} onSelect={setSelected} />
    </main>
  );
};

const NotDrawn = () => (
  <main className="desk-page" id="content">
    <h1>This rig is not drawn yet</h1>
    <p className="lead">Its logbook holds no layout. It may have come in a file that was cut; bring in the whole file.</p>
    <p className="buttons">
      <a className="button primary" href={href('rigs')}>
        Back to the rigs
      </a>
    </p>
  </main>
);

const SheetHead = ({ overview, past }: { readonly overview: Overview; readonly past: boolean }) => {
  const { plan } = overview;
  const seen = Object.values(overview.marks).filter((m) => m !== 'not-seen').length;
  const all = overview.rig.stations.filter((s) => !s.retired).length;
  return (
    <header className="sheet-head">
      {past && <p className="past">As it stood on {showDay(plan.on)}, by what is known today</p>}
      <h1>{readySentence(plan.ready)}</h1>
      <p className="mut">
        {seen} of {count(all, 'station', 'stations')} seen. {plan.next_round ? `Next round ${showDay(plan.next_round.on)}.` : ''}{' '}
        {overview.rig.overall_certainty === 'typical' ? 'Sizes typical, measure yours.' : ''}
      </p>
      <Parked on={plan.on} />
    </header>
  );
};

const Layers = ({ shown, layers, onChange }: { readonly shown: Overview; readonly layers: ReadonlySet<Layer>; readonly onChange: (layers: ReadonlySet<Layer>) => void }) => (
  <fieldset className="layers">
    <legend>Show</legend>
    {layersOf(shown).map(({ id, word }) => (
      <label key={id}>
        <input
          type="checkbox"
          checked={layers.has(id)}
          onChange={(e) => {
            const next = new Set(layers);
            if (e.target.checked) next.add(id);
            else next.delete(id);
            onChange(next);
          }}
        />
        {word}
      </label>
    ))}
  </fieldset>
);
