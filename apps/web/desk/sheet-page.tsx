import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Finding } from '../../../src/plan';
import type { Rig } from '../../../src/rig';
import { MARK_WORD, MARKS, type Mark, type Station, type StationId } from '../../../src/terms';
import { showDay } from '../../../src/units';
import type { Overview } from '../session/session';
import { go, href } from '../shared/route';
import { useSettings } from '../shared/settings';
import { byUrgencyGroups, isOpen, lifeWords, numberOf, openFindings, readySentence, whoWords } from './answers';
import { count, findingStation, lowerFirst, placeWords, stationById, stationWords, upperFirst, useDesk } from './desk';
import { LAYERS, type Layer, sheetDrawing, thingOf } from './drawings';
import { insideDrawing } from './face-drawing';
import { MarkIcon } from './mark-icon';
import { desk } from './paths';
import { ProfessionalFlag } from './plan-page';
import { SheetView } from './sheet-view';
import { TimeLine } from './time-line';
import { useWidth } from './use-width';
import { type Walked, walked } from './walking-order';

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
          onSelect={setSelected}
          onOpen={(thing) => openThing(shown, thing)}
          foot={<Selected overview={shown} selected={selected} />}
        />
        <TimeLine overview={overview} shown={shown} today={today} on={on} onChange={setOn} />
        <Layers layers={layers} onChange={setLayers} />
        <OtherSheets rig={shown.rig} here="sheet" />
      </div>
      <SheetLists overview={shown} selected={selected} onSelect={setSelected} />
    </main>
  );
};

const useDrawingTheme = (): 'desk' | 'night' => (useSettings().theme === 'night' ? 'night' : 'desk');

const openThing = (overview: Overview, id: string): void => {
  const { rig, plan } = overview;
  const thing = thingOf(id);
  if (plan.findings.some((f) => f.id === thing)) go(desk.finding(rig.id, thing));
  else go(desk.place(rig.id, thing));
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
    </header>
  );
};

const Layers = ({ layers, onChange }: { readonly layers: ReadonlySet<Layer>; readonly onChange: (layers: ReadonlySet<Layer>) => void }) => (
  <fieldset className="layers">
    <legend>Show</legend>
    {LAYERS.map(({ id, word }) => (
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

/** The other sheets of the same rig: underside, and the inside of each face. */
const OtherSheets = ({ rig, here }: { readonly rig: Rig; readonly here: string }) => (
  <nav className="other-sheets" aria-label="Other sheets">
    {here !== 'sheet' && <a href={desk.sheet(rig.id)}>Outside, unfolded</a>}
    {here !== 'underside' && rig.faces.some((f) => f.id === 'under') && <a href={desk.underside(rig.id)}>Underside</a>}
    {rig.faces
      .filter((f) => f.id !== 'tongue' && here !== f.id)
      .map((f) => (
        <a key={f.id} href={desk.inside(rig.id, f.id)}>
          {f.inside_name}
        </a>
      ))}
  </nav>
);

/** One line below the drawing about what is chosen on it. */
const Selected = ({ overview, selected }: { readonly overview: Overview; readonly selected: string | undefined }) => {
  const { id } = useDesk();
  const { rig, plan, marks } = overview;
  const thing = selected === undefined ? undefined : thingOf(selected);
  const finding = plan.findings.find((f) => f.id === thing);
  const station = stationById(rig, finding ? findingStation(finding) : thing);
  const here = finding ?? plan.findings.find((f) => isOpen(f) && station !== undefined && findingStation(f) === station.id);
  return (
    <p className="selected-line" aria-live="polite">
      {!station && !finding && <span className="mut">Choose a station on the drawing or in the list. Arrow keys go from one to the next.</span>}
      {station && (
        <>
          <MarkIcon mark={marks[station.id] ?? 'not-seen'} size={16} /> <b>{stationWords(rig, station)}</b>.{' '}
          {here ? `${here.title}, ${MARK_WORD[here.urgency].toLowerCase()}. ` : `${MARK_WORD[marks[station.id] ?? 'not-seen']}. `}
          {here && <a href={desk.finding(id, here.id)}>Open the finding</a>} <a href={desk.place(id, station.id)}>Open the station</a>{' '}
          <a href={desk.add(id, { station: station.id })}>New entry here</a>
        </>
      )}
      {!station && finding && (
        <>
          <b>{placeWords(rig, finding.place)}</b>. {finding.title}. <a href={desk.finding(id, finding.id)}>Open the finding</a>
        </>
      )}
    </p>
  );
};

const SheetLists = ({ overview, selected, onSelect }: { readonly overview: Overview; readonly selected: string | undefined; readonly onSelect: (id: string) => void }) => {
  const { rig, plan } = overview;
  const [search, setSearch] = useState('');
  const wanted = search.trim().toLowerCase();
  const open = openFindings(plan);
  const groups = byUrgencyGroups(open);
  return (
    <aside className="sheet-lists">
      <Legend overview={overview} />
      {groups.map((g) => (
        <section key={g.urgency} className="finding-group">
          <h2 className="group-line">{g.word}</h2>
          <ol className="finding-list">
            {g.items.map((f) => (
              <FindingLine
                key={f.id}
                finding={f}
                overview={overview}
                selected={selected !== undefined && (thingOf(selected) === f.id || thingOf(selected) === findingStation(f))}
                onSelect={onSelect}
              />
            ))}
          </ol>
        </section>
      ))}
      {open.length === 0 && <p className="mut">Nothing that was recorded asks for anything.</p>}
      <section className="station-lists" aria-label="All stations in walking order">
        <h2 className="group-head">
          All stations <span className="mut">in walking order</span>
        </h2>
        <label className="search-line">
          <span className="unseen">Search the stations</span>
          <input type="search" data-search value={search} placeholder="Search the stations" onChange={(e) => setSearch(e.target.value)} />
        </label>
        <StationList
          overview={overview}
          stops={walked(rig).filter(({ station }) => wanted === '' || stationWords(rig, station).toLowerCase().includes(wanted))}
          selected={selected}
          onSelect={onSelect}
        />
      </section>
    </aside>
  );
};

const FindingLine = ({
  finding,
  overview,
  selected,
  onSelect,
}: {
  readonly finding: Finding;
  readonly overview: Overview;
  readonly selected: boolean;
  readonly onSelect: (id: string) => void;
}) => {
  const { id } = useDesk();
  return (
    <li className={selected ? 'finding-line chosen' : 'finding-line'}>
      <MarkIcon mark={finding.urgency} professional={finding.who === 'professional'} size={16} />
      <span className="row-number">{numberOf(overview.plan, finding.id)}</span>
      <div>
        <h3>
          <a href={desk.finding(id, finding.id)} onFocus={() => onSelect(`mark/${finding.id}`)}>
            {placeWords(overview.rig, finding.place)}
          </a>
        </h3>
        <p className="mut small">
          {finding.title}
          {finding.because[0] ? `: ${lowerFirst(finding.because[0].text)}` : ''} {finding.life === 'open' ? '' : `${lifeWords(finding)}. `}
          {finding.who === 'professional' ? `${whoWords(finding.who)}.` : ''}
        </p>
      </div>
    </li>
  );
};

/** What the marks mean and how many there are: the legend is the count. */
const Legend = ({ overview }: { readonly overview: Overview }) => {
  const { plan } = overview;
  const professional = plan.findings.filter((f) => isOpen(f) && f.who === 'professional').length;
  return (
    <dl className="legend" aria-label="Marks">
      {MARKS.map((m: Mark) => (
        <div key={m}>
          <dt>
            <MarkIcon mark={m} size={16} /> {MARK_WORD[m]}
          </dt>
          <dd>{plan.counts[m]}</dd>
        </div>
      ))}
      <div>
        <dt>
          <span className="mark-icon of-16">
            <ProfessionalFlag />
          </span>{' '}
          Professional
        </dt>
        <dd>{professional}</dd>
      </div>
    </dl>
  );
};

/** The same stations as on the drawing, in the order in which they are walked: the equal way to all of them. */
const StationList = ({
  overview,
  stops,
  selected,
  onSelect,
}: {
  readonly overview: Overview;
  readonly stops: readonly Walked[];
  readonly selected: string | undefined;
  readonly onSelect: (id: StationId) => void;
}) => {
  const { id } = useDesk();
  const { marks } = overview;
  const groups: { head: string; items: Station[] }[] = [];
  for (const { station, group } of stops) {
    const last = groups[groups.length - 1];
    if (last?.head === group) last.items.push(station);
    else groups.push({ head: group, items: [station] });
  }
  if (stops.length === 0) return <p className="mut">No station has such a name.</p>;
  return (
    <>
      {groups.map((g, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the same place to stand may come twice in the walk
        <section key={`${g.head}${i}`} className="station-group">
          <h3 className="group-line">{upperFirst(g.head)}</h3>
          <ol>
            {g.items.map((s) => (
              <li key={s.id} className={selected === s.id ? 'chosen' : undefined}>
                <MarkIcon mark={marks[s.id] ?? 'not-seen'} size={16} />
                <a href={desk.place(id, s.id)} onFocus={() => onSelect(s.id)}>
                  {s.name}
                  <span className="unseen">, {MARK_WORD[marks[s.id] ?? 'not-seen'].toLowerCase()}</span>
                </a>
              </li>
            ))}
          </ol>
        </section>
      ))}
    </>
  );
};

export const UndersidePage = () => <OneFace face="under" />;
export const InsidePage = ({ face }: { readonly face: string | undefined }) => <OneFace face={face ?? 'road'} inside />;

/** One face on its own sheet: the underside from below, or the inside of a wall, mirrored and in the same coordinates. */
const OneFace = ({ face, inside = false }: { readonly face: string; readonly inside?: boolean }) => {
  const { overview, preferences } = useDesk();
  const { rig } = overview;
  const [selected, setSelected] = useState<string>();
  const theme = useDrawingTheme();
  const [frame, width] = useWidth<HTMLDivElement>(960);
  const here = rig.faces.find((f) => f.id === face);
  const drawing = useMemo(() => {
    if (!here) return undefined;
    return inside ? insideDrawing(overview, face, preferences, width) : sheetDrawing(overview, new Set<Layer>(['open', 'sound', 'not-seen']), preferences, width, 'underside');
  }, [overview, here, face, inside, preferences, width]);
  if (!here || !drawing)
    return (
      <main className="desk-page" id="content">
        <h1>This rig has no such face</h1>
        <OtherSheets rig={rig} here="" />
      </main>
    );
  const stops = walked(rig).filter((w) => w.station.face === face);
  const title = inside ? here.inside_name : 'Underside';
  return (
    <main className="desk-page sheet-page one-face" id="content">
      <header className="sheet-head">
        <h1>{title}</h1>
        <p className="mut">
          {inside
            ? 'Mirrored, so that left is left as you stand before it. It shares the coordinates of the outside.'
            : 'Seen from below, nose to the left. Never lie under a rig that stands on a jack alone.'}{' '}
          Never lie under a rig that stands on a jack alone.
        </p>
      </header>
      <div className="sheet-drawing" ref={frame}>
        <SheetView
          drawing={drawing}
          theme={theme}
          zoomable
          selected={selected}
          onSelect={setSelected}
          onOpen={(thing) => openThing(overview, thing)}
          foot={<Selected overview={overview} selected={selected} />}
        />
        <OtherSheets rig={rig} here={inside ? face : 'underside'} />
      </div>
      <aside className="sheet-lists">
        <h2 className="group-head">{count(stops.length, 'station', 'stations')} on this face</h2>
        <StationList overview={overview} stops={stops} selected={selected} onSelect={setSelected} />
      </aside>
    </main>
  );
};
