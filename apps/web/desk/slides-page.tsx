import { useMemo } from 'react';
import { type SlideConflict, type Stand, slideConflicts } from '../../../src/rig';
import type { Entry, Station, StationId } from '../../../src/terms';
import { fromSi, type Typed } from '../../../src/units';
import { count, stationById, stationWords, useDesk } from './desk';
import { type LogLine, useEveryLine } from './logbook-lines';
import { desk } from './paths';
import { whenWords } from './when-picker';

const RIGHT_ANGLE = 'deg';

/** The latest word on how each station stands. What nobody said counts as open. */
const standsFrom = (lines: readonly LogLine[]): ReadonlyMap<StationId, { readonly stand: Stand; readonly entry: Entry }> => {
  const stands = new Map<StationId, { stand: Stand; entry: Entry }>();
  const told = lines.filter((l) => l.entry.kind === 'opened-state' && !l.withdrawn && l.entry.place.at === 'station');
  for (const { entry } of [...told].sort((a, b) => (a.entry.observed_at < b.entry.observed_at ? -1 : 1))) {
    if (entry.place.at !== 'station') continue;
    const body = entry.body as { readonly state: 'shut' | 'open' | 'not-known'; readonly angle?: Typed };
    stands.set(entry.place.station, { stand: body.state === 'open' && body.angle ? fromSi(body.angle.si, 'angle', RIGHT_ANGLE) : body.state, entry });
  }
  return stands;
};

const crushedFrom = (lines: readonly LogLine[]): readonly StationId[] =>
  lines.flatMap(({ entry, withdrawn }) =>
    entry.kind === 'accident-damage' && !withdrawn && entry.place.at === 'station' && (entry.body as { readonly cause?: string }).cause === 'slide' ? [entry.place.station] : [],
  );

/** What to close or look at before a slide-out moves: one list for moving out, another for moving in. */
export const SlidesPage = () => {
  const { id, overview } = useDesk();
  const { rig } = overview;
  const lines = useEveryLine();
  const stands = useMemo(() => standsFrom(lines ?? []), [lines]);
  const crushed = useMemo(() => crushedFrom(lines ?? []), [lines]);
  const open = (s: Station): Stand => stands.get(s.id)?.stand ?? 'not-known';

  if (rig.slides.length === 0)
    return (
      <main className="desk-page" id="content">
        <h1>This rig has no slide-out</h1>
        <p className="buttons">
          <a className="button primary" href={desk.describe(id)}>
            To the description
          </a>
        </p>
      </main>
    );

  return (
    <main className="desk-page" id="content">
      <header className="page-head">
        <h1>Before a slide-out moves</h1>
        <p className="lead">Close or take in what stands in its way. What nobody has looked at counts as open; what was crushed before comes first.</p>
        <p className="mut">
          The rig level, the battery well up, travel locks off, the roof of the slide clear of branches and water, people and animals away from it, somebody watching. The maker’s
          manual comes first.
        </p>
      </header>
      {rig.slides.map((slide) => {
        const wall = rig.faces.find((f) => f.id === slide.face)?.name.toLowerCase() ?? '';
        const name = rig.slides.length > 1 ? `Slide-out ${slide.id.replace(/\D+/g, '')}, ${wall}` : `Slide-out, ${wall}`;
        return (
          <section key={slide.id} className="slide-lists">
            <h2>{name}</h2>
            <div className="columns halves">
              {(['out', 'in'] as const).map((moving) => (
                <ConflictList key={moving} moving={moving} conflicts={slideConflicts(rig, slide.id, moving, open, crushed)} stands={stands} />
              ))}
            </div>
          </section>
        );
      })}
    </main>
  );
};

const ConflictList = ({
  moving,
  conflicts,
  stands,
}: {
  readonly moving: 'out' | 'in';
  readonly conflicts: readonly SlideConflict[];
  readonly stands: ReadonlyMap<StationId, { readonly stand: Stand; readonly entry: Entry }>;
}) => {
  const { id, overview, keep } = useDesk();
  return (
    <section>
      <h3 className="group-head">
        Moving {moving}{' '}
        <span className="mut">
          {conflicts.length === 0 ? 'nothing that the drawing knows of stands in the way' : count(conflicts.length, 'thing to close or look at', 'things to close or look at')}
        </span>
      </h3>
      <ol className="rows">
        {conflicts.map((c, i) => {
          const station = stationById(overview.rig, c.station);
          const told = stands.get(c.station);
          return (
            <li key={c.station} className="row">
              <span className="row-number">{i + 1}</span>
              <div className="row-body">
                <h4>
                  <a href={desk.place(id, c.station)}>{station ? stationWords(overview.rig, station) : c.station}</a>
                </h4>
                <p>
                  {c.crushed_before ? <b>Crushed by a slide-out before. </b> : null}
                  {c.reason}
                </p>
                {told && (
                  <p className="mut small">
                    Said {whenWords(told.entry.observed_at)} by {told.entry.by}.
                  </p>
                )}
              </div>
              {station?.hinge !== undefined && (
                <div className="row-side">
                  <button
                    type="button"
                    className="button small"
                    aria-label={`${station.name} is shut now`}
                    onClick={() =>
                      void keep([{ kind: 'opened-state', place: { at: 'station', station: c.station, side: 'outside' }, body: { state: 'shut' } }], `${station.name} is shut.`)
                    }
                  >
                    It is shut now
                  </button>
                </div>
              )}
            </li>
          );
        })}
      </ol>
    </section>
  );
};
