import { useEffect, useState } from 'react';
import { kindById, kinds } from '../../../src/entries';
import type { AnyKind, Entry, Fields, KindGroup, Station } from '../../../src/terms';
import { go } from '../shared/route';
import { stationById, stationWords, useDesk } from './desk';
import { EntryForm, type EntryGiven } from './entry-form';
import { answersOf } from './field-form';
import { Photos } from './finding-page';
import { useEveryLine } from './logbook-lines';
import { answersIn, desk, pointIn } from './paths';
import { blankPlace, placeAnswerOf } from './place-picker';
import { StationPicture } from './station-picture';
import { whenOf, whenWords } from './when-picker';

const GROUPS: readonly (readonly [KindGroup, string])[] = [
  ['observation', 'What was seen or measured'],
  ['care', 'What was done'],
  ['whereabouts', 'Where it stood, where it went'],
  ['decision', 'What was decided'],
  ['description', 'What the rig is'],
];

/** Kinds that have a page of their own, or that only a round writes. */
const NOT_BY_HAND: readonly string[] = ['round-begun', 'round-ended', 'correction', 'withdrawal', 'fork-settled', 'layout-placed'];

/** Kinds that are recorded from the page of water, and lead back to it. */
const ABOUT_WATER: readonly string[] = ['water-test', 'other-cause', 'air-and-skin', 'rain-fell', 'leak-clue'];

const byHand = (kind: AnyKind): boolean => !NOT_BY_HAND.includes(kind.id) && Object.values(kind.fields as Fields).some((f) => f.type !== 'data');

/** Any kind of entry at any place, today's or from old papers. */
export const AddPage = ({ query }: { readonly query: Readonly<Record<string, string>> }) => {
  const { id, overview, preferences, keep } = useDesk();
  const station = stationById(overview.rig, query['station']);
  const kind = query['kind'] === undefined ? undefined : kindById(query['kind']);
  const finding = query['finding'];
  const named = pointIn(query);
  const point = named && kind?.places.includes('point') ? named : undefined;

  if (!kind) return <KindChoice station={query['station']} finding={finding} />;

  const given = async ({ place, observed_at, body, note, photos, concerns }: EntryGiven) => {
    const kept = await keep(
      [
        {
          kind: kind.id,
          place,
          observed_at,
          body,
          ...(concerns.length === 0 ? {} : { concerns }),
          ...(note === '' ? {} : { note }),
          ...(photos.length === 0 ? {} : { photos }),
        },
      ],
      `${kind.title} was written down.`,
    );
    if (!kept) return;
    if (finding !== undefined) go(desk.finding(id, finding));
    else if (ABOUT_WATER.includes(kind.id)) go(desk.water(id));
    else if ('station' in place) go(desk.place(id, place.station));
    else go(desk.logbook(id));
  };

  return (
    <main className="desk-page" id="content">
      <header className="page-head">
        <h1>
          {kind.title}
          {station ? `: ${stationWords(overview.rig, station).toLowerCase()}` : ''}
        </h1>
        <p className="lead">{kind.meaning}</p>
      </header>
      <div className="columns add-columns">
        <EntryForm
          kind={kind}
          words="Keep it"
          start={{
            place: point ? placeAnswerOf(point, kind, overview.rig, preferences) : blankPlace(kind, overview.rig, preferences, query['station'], query['side']),
            when: { form: 'now' },
            answers: choicesOf(kind, answersIn(query)),
            note: '',
            photos: [],
            concerns: finding === undefined ? [] : [finding],
          }}
          onGiven={given}
        />
        {station && <Beside station={station} kind={kind} />}
      </div>
    </main>
  );
};

/** Answers that an address brings: only choices that the kind knows. */
const choicesOf = (kind: AnyKind, given: Readonly<Record<string, string>>): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    Object.entries(given).filter(([name, value]) => {
      const field = (kind.fields as Fields)[name];
      return field?.type === 'choice' && field.options.some((o) => o.id === value);
    }),
  );

/** What was found here before, beside what is written now. */
const Beside = ({ station, kind }: { readonly station: Station; readonly kind: AnyKind }) => {
  const lines = useEveryLine() ?? [];
  const here = lines.filter((l) => 'station' in l.entry.place && l.entry.place.station === station.id && !l.withdrawn);
  const same = here.filter((l) => l.entry.kind === kind.id);
  return (
    <aside className="beside">
      <StationPicture station={station} />
      <h2 className="group-head">{same.length > 0 ? `${kind.title}, as it was before` : 'Written down here before'}</h2>
      {here.length === 0 && <p className="mut">Nothing yet.</p>}
      <ul className="rows">
        {(same.length > 0 ? same : here).slice(0, 5).map((l) => (
          <li key={l.entry.id} className="row">
            <div className="row-body">
              <p>{l.words}</p>
              <p className="mut small">
                {whenWords(l.entry.observed_at)}, by {l.entry.by}
              </p>
            </div>
          </li>
        ))}
      </ul>
      <Photos lines={here.map((l) => l.entry)} station={station.id} />
    </aside>
  );
};

const KindChoice = ({ station, finding }: { readonly station: string | undefined; readonly finding: string | undefined }) => {
  const { id, overview } = useDesk();
  const [search, setSearch] = useState('');
  const wanted = search.trim().toLowerCase();
  const here = stationById(overview.rig, station);
  const fits = (k: AnyKind): boolean =>
    byHand(k) && (station === undefined || k.places.includes('station')) && (wanted === '' || `${k.title} ${k.meaning}`.toLowerCase().includes(wanted));
  return (
    <main className="desk-page" id="content">
      <header className="page-head">
        <h1>{here ? `New entry at ${stationWords(overview.rig, here).toLowerCase()}` : 'New entry'}</h1>
        <p className="lead">Choose what it is. The form follows from that; old papers can be dated back.</p>
        <label className="search-line">
          <span className="unseen">Narrow the kinds</span>
          <input type="search" data-search value={search} placeholder="Narrow the kinds: tyre, resealed, stay" onChange={(e) => setSearch(e.target.value)} />
        </label>
      </header>
      <div className="kind-columns">
        {GROUPS.map(([group, words]) => {
          const some = kinds.filter((k) => k.group === group && fits(k));
          return some.length === 0 ? null : (
            <section key={group}>
              <h2 className="group-head">{words}</h2>
              <ul className="rows">
                {some.map((k) => (
                  <li key={k.id} className="row">
                    <div className="row-body">
                      <h3>
                        <a href={desk.add(id, { kind: k.id, ...(station === undefined ? {} : { station }), ...(finding === undefined ? {} : { finding }) })}>{k.title}</a>
                      </h3>
                      <p className="mut">{k.meaning}</p>
                    </div>
                  </li>
                ))}
              </ul>
            </section>
          );
        })}
      </div>
    </main>
  );
};

/** Says how an earlier entry is to be read. The earlier line stays as it was written. */
export const CorrectPage = ({ entry: entryId }: { readonly entry: string }) => {
  const { id, overview } = useDesk();
  const lines = useEveryLine();
  const line = lines?.find((l) => l.entry.id === entryId);
  const kind = line && kindById(line.entry.kind);
  if (lines === undefined) return <Page title="Opening the entry" lead="" />;
  if (!line) return <Page title="This entry is not in the logbook" lead="It may be on another device. Open that device’s file under Copies." />;
  if (!kind || kind.version < line.entry.version)
    return <Page title="This entry is of a kind that is not known here" lead="It is kept byte for byte. A newer version of Seamward can correct it." />;
  return <Correcting kind={kind} entry={line.entry} key={`${id}${overview.rig.id}`} />;
};

const Page = ({ title, lead }: { readonly title: string; readonly lead: string }) => (
  <main className="desk-page" id="content">
    <h1>{title}</h1>
    <p className="lead">{lead}</p>
  </main>
);

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

const Correcting = ({ kind, entry }: { readonly kind: AnyKind; readonly entry: Entry }) => {
  const { id, overview, session, preferences, keep, say } = useDesk();
  const [body, setBody] = useState<Readonly<Record<string, unknown>>>();
  const [why, setWhy] = useState('');

  // The form starts from what counts now: upcast to the newest version and with earlier corrections in it.
  useEffect(() => {
    let gone = false;
    const written = entry.body as Readonly<Record<string, unknown>>;
    const at = 'station' in entry.place ? entry.place.station : undefined;
    if (at === undefined) {
      setBody(written);
      return;
    }
    session.station(id, at).then(
      (view) => {
        const standing = view.through.flatMap((t) => t.entries).find((s) => s.entry.id === entry.id);
        if (!gone) setBody((standing?.body as Readonly<Record<string, unknown>> | undefined) ?? written);
      },
      () => {
        if (!gone) setBody(written);
      },
    );
    return () => {
      gone = true;
    };
  }, [session, id, entry]);

  if (body === undefined) return <Page title="Opening the entry" lead="" />;

  const given = async (now: EntryGiven) => {
    const keys = new Set([...Object.keys(body), ...Object.keys(now.body)]);
    const changed = [...keys].filter((k) => !same(body[k], now.body[k]) && (kind.fields as Fields)[k]?.type !== 'data');
    const place = same(entry.place, now.place) ? undefined : now.place;
    const observed = now.observed_at === entry.observed_at ? undefined : now.observed_at;
    if (changed.length === 0 && place === undefined && observed === undefined) {
      say({
        form: 'problem',
        happened: 'Nothing is different from what stands there.',
        safe: 'Nothing was written.',
        todo: 'Change what was wrong, or withdraw the entry in the logbook.',
      });
      return;
    }
    const kept = await keep(
      [
        {
          kind: 'correction',
          place: entry.place,
          concerns: [entry.id],
          body: {
            changed: {
              ...(changed.length === 0 ? {} : { body: Object.fromEntries(changed.map((k) => [k, now.body[k] ?? null])) }),
              ...(place === undefined ? {} : { place }),
              ...(observed === undefined ? {} : { observed_at: observed }),
            },
            ...(why.trim() === '' ? {} : { why: why.trim() }),
          },
        },
      ],
      'The correction was written down.',
    );
    if (kept) go(desk.logbook(id));
  };

  return (
    <main className="desk-page" id="content">
      <header className="page-head">
        <h1>Correct: {kind.title.toLowerCase()}</h1>
        <p className="lead">The earlier line stays as it was written. From now on it is read with what you change here.</p>
      </header>
      <div className="narrow">
        <EntryForm
          kind={kind}
          words="Keep the correction"
          withNote={false}
          start={{
            place: placeAnswerOf(entry.place, kind, overview.rig, preferences),
            when: whenOf(entry.observed_at),
            answers: answersOf(kind.fields as Fields, body),
            note: '',
            photos: [],
            concerns: [],
          }}
          onGiven={given}
        >
          <div className="field-row">
            <label htmlFor="why">
              Why <span className="mut">if it helps the next reader</span>
            </label>
            <input id="why" type="text" maxLength={500} value={why} onChange={(e) => setWhy(e.target.value)} />
          </div>
        </EntryForm>
      </div>
    </main>
  );
};
