import { kindById } from '../../../src/entries';
import { isOpen, shownAs } from '../../../src/plan';
import { MARK_WORD, type Station } from '../../../src/terms';
import { show } from '../../../src/units';
import { lifeWords, urgencyPhrase } from './answers';
import { findingStation, lowerFirst, stationById, stationWords, upperFirst, useDesk } from './desk';
import { Photos } from './finding-page';
import { GradePlot } from './grade-plot';
import { useEveryLine } from './logbook-lines';
import { MarkIcon } from './mark-icon';
import { desk } from './paths';
import { StationPicture } from './station-picture';
import { useStationView } from './station-view';
import { whenWords } from './when-picker';
import { optionWord } from './words';

/** Everything that is known about one station: what it is, what was found, and every entry through the years. */
export const PlacePage = ({ station: stationId }: { readonly station: string }) => {
  const { id, overview, preferences } = useDesk();
  const { rig, plan, marks } = overview;
  const station = stationById(rig, stationId);
  const view = useStationView(station?.id);
  const lines = useEveryLine();
  if (!station)
    return (
      <main className="desk-page" id="content">
        <h1>This station is not on the rig</h1>
        <p className="lead">It may have been described on another device. Bring in that device’s file under Copies.</p>
        <p className="buttons">
          <a className="button primary" href={desk.sheet(id)}>
            To the sheet
          </a>
        </p>
      </main>
    );
  const mark = marks[station.id] ?? 'not-seen';
  const findings = plan.findings.filter((f) => findingStation(f) === station.id);
  const open = findings.filter(isOpen);
  const first = open[0];
  const words = stationWords(rig, station);
  const here = (lines ?? []).filter((l) => 'station' in l.entry.place && l.entry.place.station === station.id);
  return (
    <main className="desk-page finding-page" id="content">
      <header className="page-head with-mark">
        <MarkIcon mark={mark} size={28} professional={first?.who === 'professional'} />
        <div>
          <h1>
            {words}:{' '}
            {first
              ? `${lowerFirst(first.title)}, ${first.life === 'proof-due' ? lowerFirst(lifeWords(first)) : urgencyPhrase(shownAs(first))}`
              : mark === 'sound'
                ? 'sound when last seen'
                : MARK_WORD[mark].toLowerCase()}
          </h1>
          <p className="mut">
            {station.retired ? 'Retired: no round visits it. ' : ''}
            {station.size === 'typical' ? 'Size typical, measure yours.' : 'Size confirmed.'}{' '}
            {station.cut_through ? 'Cut right through: a possible leak, never left out of a full round.' : ''}
          </p>
        </div>
      </header>
      <div className="columns finding-columns">
        <div className="finding-left">
          <StationPicture station={station} />
          <Photos lines={lines?.map((l) => l.entry) ?? []} station={station.id} />
          <div className="buttons">
            <a className="button primary" href={desk.add(id, { station: station.id })}>
              New entry here
            </a>
            <a className="button" href={desk.describe(id, station.id)}>
              Describe it
            </a>
          </div>
        </div>
        <div className="finding-middle">
          {view && <GradePlot view={view} side="outside" />}
          <section>
            <h2 className="group-head">What it is</h2>
            <Facts station={station} />
          </section>
          {view && view.looks.length > 0 && (
            <section>
              <h2 className="group-head">What to look at</h2>
              <dl className="terms">
                {view.looks.map((l) => (
                  <div key={`${l.verb}${l.line}`}>
                    <dt>{l.verb}</dt>
                    <dd>{l.line}</dd>
                  </div>
                ))}
              </dl>
            </section>
          )}
        </div>
        <aside className="finding-right">
          <section>
            <h2 className="group-head">Findings</h2>
            {findings.length === 0 && <p className="mut">None.</p>}
            <ul className="rows">
              {findings.map((f) => (
                <li key={f.id} className="row">
                  <MarkIcon mark={isOpen(f) ? shownAs(f) : 'sound'} professional={f.who === 'professional'} size={16} />
                  <div className="row-body">
                    <h3>
                      <a href={desk.finding(id, f.id)}>{f.title}</a>
                    </h3>
                    <p className="mut small">
                      {lifeWords(f)}. {f.because[0]?.text}
                    </p>
                  </div>
                </li>
              ))}
            </ul>
          </section>
          <section>
            <h2 className="group-head">
              Logbook here <a href={desk.logbook(id, station.id)}>all</a>
            </h2>
            {here.length === 0 && <p className="mut">Nothing has been written down here yet.</p>}
            <ul className="rows">
              {here.slice(0, 12).map((l) => (
                <li key={l.entry.id} className={`row log-row${l.withdrawn ? ' withdrawn' : ''}`}>
                  <div className="row-body">
                    <h3>{kindById(l.entry.kind)?.title ?? l.entry.kind}</h3>
                    <p>{l.words}</p>
                    <p className="mut small">
                      {whenWords(l.entry.observed_at)}, by {l.entry.by}
                      {'side' in l.entry.place && l.entry.place.side === 'inside' ? ', inside' : ''}
                    </p>
                  </div>
                </li>
              ))}
            </ul>
            {here.length > 12 && (
              <p>
                <a href={desk.logbook(id, station.id)}>{here.length - 12} earlier entries</a>
              </p>
            )}
          </section>
          <p className="mut small">Highest point {show(station.top_m, 'length', preferences)} above the ground.</p>
        </aside>
      </div>
    </main>
  );
};

const BEAD: Readonly<Record<Station['bead'], string>> = {
  'all-round': 'all round',
  'top-and-upper-sides': 'along the top and a little way down each side; the bottom left free to drain',
  'upper-long-edge': 'along the upper long edge',
  'both-long-edges': 'along both long edges',
  'fastener-heads': 'over the heads of the fasteners',
  'none-gasket': 'none: it sits on a gasket, and no bead is added',
  none: 'none',
};

const REACH: Readonly<Record<Station['reach'], string>> = { ground: 'from the ground', ladder: 'from a ladder', roof: 'from the roof', under: 'from below', inside: 'from inside' };

const Facts = ({ station }: { readonly station: Station }) => {
  const { preferences } = useDesk();
  const length = (m: number): string => show(m, 'length', preferences);
  const size = sizeWords(station, length);
  // A tyre or a lamp on screws has no bead to speak of, unless somebody has written one down.
  const sealed = (station.bead !== 'none' && station.bead !== 'none-gasket') || station.sealed_with !== 'unknown' || station.last_sealed !== 'unknown';
  const rows: readonly (readonly [string, string])[] = [
    ['Size', size],
    ['Reached', REACH[station.reach]],
    ['Bead by practice', station.bead_m > 0 ? `${BEAD[station.bead]}, ${length(station.bead_m)}` : BEAD[station.bead]],
    [
      'Sealed with',
      !sealed ? '' : station.sealed_with === 'unknown' ? 'not known; held to be silicone until a test patch sticks' : optionWord('resealed', 'product_family', station.sealed_with),
    ],
    ['Sealed to', !sealed ? '' : station.sealed_to === 'unknown' ? 'not known' : optionWord('station-facts', 'sealed_to', station.sealed_to)],
    ['Last sealed', !sealed ? '' : station.last_sealed === 'unknown' ? 'not known' : whenWords(station.last_sealed)],
    ['Behind it', station.behind === '' ? 'not known' : station.behind],
    ['Parts looked at with it', station.parts.map((p) => p.name).join(', ')],
  ];
  return (
    <dl className="terms">
      {rows.map(([term, words]) =>
        words === '' ? null : (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{upperFirst(words)}</dd>
          </div>
        ),
      )}
    </dl>
  );
};

const sizeWords = (station: Station, length: (m: number) => string): string => {
  const { shape } = station;
  if (shape.form === 'rect' || shape.form === 'circle') return `${length(shape.w_m)} × ${length(shape.h_m)}`;
  return `${length(station.outline_m)} long`;
};
