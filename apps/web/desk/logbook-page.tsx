import { useMemo, useState } from 'react';
import { kindById } from '../../../src/entries';
import type { Dispute } from '../../../src/logbook';
import type { Place, StationId } from '../../../src/terms';
import { go } from '../shared/route';
import { count, placeWords, stationById, stationWords, useDesk } from './desk';
import { type LogLine, useEveryLine } from './logbook-lines';
import { desk } from './paths';
import { Photo } from './photo-input';
import { StationChoice } from './place-picker';
import { dayWords, whenWords, whileWords } from './when-picker';

const STEP = 60;

const about = (place: Place, station: StationId): boolean => 'station' in place && place.station === station;

/** Every entry in words, the newest first, and what can still be done about each. */
export const LogbookScreen = ({ place }: { readonly place: string | undefined }) => {
  const { id, overview, demo } = useDesk();
  const lines = useEveryLine();
  const [search, setSearch] = useState('');
  const [shown, setShown] = useState(STEP);
  const { rig } = overview;
  const station = stationById(rig, place);
  const wanted = search.trim().toLowerCase();

  const fits = useMemo(() => {
    const newest = [...(lines ?? [])].sort((a, b) =>
      a.entry.recorded_at < b.entry.recorded_at ? 1 : a.entry.recorded_at > b.entry.recorded_at ? -1 : b.entry.counter - a.entry.counter,
    );
    return newest.filter(
      (l) =>
        (place === undefined || about(l.entry.place, place)) &&
        (wanted === '' ||
          `${l.words} ${kindById(l.entry.kind)?.title ?? l.entry.kind} ${placeWords(rig, l.entry.place)} ${l.entry.note ?? ''} ${l.entry.by}`.toLowerCase().includes(wanted)),
    );
  }, [lines, place, wanted, rig]);

  return (
    <main className="desk-page logbook-page" id="content">
      <header className="page-head">
        <h1>
          {station ? `Logbook of ${stationWords(rig, station).toLowerCase()}` : 'Logbook'}
          {lines ? `, ${count(fits.length, 'entry', 'entries')}` : ''}
        </h1>
        <p className="lead">Nothing here is ever changed or deleted: a correction or withdrawal is a new entry that names the old one.</p>
      </header>
      <div className="logbook-tools">
        <label className="search-line">
          <span className="unseen">Search the logbook</span>
          <input type="search" data-search value={search} placeholder="Search the logbook" onChange={(e) => setSearch(e.target.value)} />
        </label>
        <StationChoice rig={rig} value={place ?? ''} label="At" none="Everywhere" onChange={(s) => go(desk.logbook(id, s === '' ? undefined : s))} />
        <a className="button primary" href={desk.add(id, place === undefined ? {} : { station: place })}>
          New entry
        </a>
      </div>
      <Doubts lines={lines ?? []} />
      {lines !== undefined && fits.length === 0 && (
        <div className="empty">
          <p>{wanted === '' && place === undefined ? 'Nothing has been written down yet.' : 'No entry fits.'}</p>
          {!demo && place === undefined && wanted === '' && (
            <a className="button primary" href={desk.add(id)}>
              Write the first entry
            </a>
          )}
        </div>
      )}
      <h2 className="unseen">Entries, the newest first</h2>
      <ol className="rows log-rows" reversed>
        {fits.slice(0, shown).map((l) => (
          <LogRow key={l.entry.id} line={l} lines={lines ?? []} />
        ))}
      </ol>
      {fits.length > shown && (
        <button type="button" className="button" onClick={() => setShown((s) => s + STEP)}>
          Show {Math.min(STEP, fits.length - shown)} more of {fits.length - shown}
        </button>
      )}
    </main>
  );
};

/** Amendments that did not know of each other, clocks that contradict the order of writing, lines that cannot all be true: asked, never settled alone. */
const Doubts = ({ lines }: { readonly lines: readonly LogLine[] }) => {
  const { overview, keep, id } = useDesk();
  const lineOf = (entry: string): LogLine | undefined => lines.find((l) => l.entry.id === entry);
  const { forks, clockDoubts, disputes } = overview;
  if (forks.length + clockDoubts.length + disputes.length === 0) return null;

  const settle = (concerned: string, chosen: LogLine, others: readonly LogLine[]) =>
    keep(
      [
        {
          kind: chosen.entry.kind,
          version: chosen.entry.version,
          place: chosen.entry.place,
          concerns: [concerned],
          body: lastWord(lineOf(concerned), chosen, others),
          note: 'Settles two amendments that did not know of each other.',
        },
      ],
      'It is settled.',
    );

  return (
    <section className="doubts" aria-label="Needs your word">
      <h2>Needs your word</h2>
      {forks.map((fork) => {
        const first = lineOf(fork.concerns);
        return (
          <article key={fork.concerns} className="doubt">
            <p>
              <b>“{first?.words ?? fork.concerns}” was changed twice, on devices that did not know of each other.</b> Both are kept. Until you choose, neither is lost.
            </p>
            <ul className="plain">
              {fork.amendments.map((a) => {
                const line = lineOf(a);
                return (
                  <li key={a}>
                    {line ? `${line.words}, by ${line.entry.by}, written ${whenWords(line.entry.recorded_at)}` : a}
                    {line && (
                      <button
                        type="button"
                        className="button small"
                        onClick={() =>
                          void settle(
                            fork.concerns,
                            line,
                            fork.amendments.flatMap((o) => (o === a ? [] : (lineOf(o) ?? []))),
                          )
                        }
                      >
                        Let this one count
                      </button>
                    )}
                  </li>
                );
              })}
            </ul>
          </article>
        );
      })}
      {clockDoubts.map((d) => (
        <article key={d.entry} className="doubt">
          <p>{d.sentence} Nothing was re-dated.</p>
          <p>
            <a className="button small" href={desk.correct(id, d.entry)}>
              Give the right time
            </a>
          </p>
        </article>
      ))}
      {disputes.map((d) => (
        <Disputed key={`${d.code} ${d.hashes.join()}`} dispute={d} lines={lines} />
      ))}
    </section>
  );
};

/** What is safe, and what can be done, beside what happened. */
const DISPUTED: Readonly<Record<Dispute['code'], { readonly safe: string; readonly todo: string }>> = {
  'same-id': {
    safe: 'Every one of these lines is kept, and goes out with every copy.',
    todo: 'Ask whoever gave you the file for their own copy. If what is read here is wrong, correct it.',
  },
  'same-counter': {
    safe: 'Nothing is lost, and nothing has to be chosen.',
    todo: 'Find out which device was set up from a copy of another’s data. On that one, save a copy of the logbook, clear this page’s data, and take the copy in again.',
  },
  misfit: {
    safe: 'The entry stands as it was before this correction.',
    todo: 'Write the correction again; then withdraw this one.',
  },
};

const Disputed = ({ dispute, lines }: { readonly dispute: Dispute; readonly lines: readonly LogLine[] }) => {
  const { id, overview } = useDesk();
  const { safe, todo } = DISPUTED[dispute.code];
  const concerned = dispute.entries.flatMap((e) => lines.filter((l) => l.entry.id === e));
  const [first] = concerned;
  return (
    <article className="doubt">
      <p>
        <b>{dispute.sentence}</b> {safe} {todo}
      </p>
      <ul className="plain">
        {concerned.map((l) => (
          <li key={`${l.entry.id} ${l.entry.device} ${l.entry.by}`}>
            {`${kindById(l.entry.kind)?.title ?? l.entry.kind}, ${placeWords(overview.rig, l.entry.place).toLowerCase()}: ${l.words}, by ${l.entry.by}, written ${whenWords(l.entry.recorded_at)}`}
          </li>
        ))}
      </ul>
      {dispute.code !== 'same-counter' && first && !AMENDING.includes(first.entry.kind) && first.entry.kind !== 'layout-placed' && (
        <p>
          <a className="button small" href={desk.correct(id, first.entry.id)}>
            Correct what is read
          </a>
        </p>
      )}
    </article>
  );
};

type Changed = { readonly body?: Readonly<Record<string, unknown>> };

const changedBy = (line: LogLine): Readonly<Record<string, unknown>> => (line.entry.body as { readonly changed?: Changed }).changed?.body ?? {};

/** The chosen amendment once more, and what only the others changed put back as it was first written: corrections add up. */
const lastWord = (concerned: LogLine | undefined, chosen: LogLine, others: readonly LogLine[]): unknown => {
  if (chosen.entry.kind !== 'correction') return chosen.entry.body;
  const first = (concerned?.entry.body ?? {}) as Readonly<Record<string, unknown>>;
  const own = changedBy(chosen);
  const back = Object.fromEntries(others.flatMap((o) => Object.keys(changedBy(o))).map((key) => [key, first[key] ?? null]));
  const body = chosen.entry.body as { readonly changed: Changed };
  return { ...body, changed: { ...body.changed, ...(Object.keys({ ...back, ...own }).length > 0 ? { body: { ...back, ...own } } : {}) } };
};

const AMENDING: readonly string[] = ['correction', 'withdrawal'];

const LogRow = ({ line, lines }: { readonly line: LogLine; readonly lines: readonly LogLine[] }) => {
  const { id, overview, keep } = useDesk();
  const { entry } = line;
  const kind = kindById(entry.kind);
  const withdrawnBy = lines.find((l) => l.entry.kind === 'withdrawal' && !l.withdrawn && l.entry.concerns?.includes(entry.id));
  const concerned = AMENDING.includes(entry.kind) ? lines.find((l) => l.entry.id === entry.concerns?.[0]) : undefined;
  const where = placeWords(overview.rig, entry.place);

  const withdraw = () =>
    keep(
      [{ kind: 'withdrawal', place: entry.place, concerns: [entry.id], body: {} }],
      entry.kind === 'withdrawal' ? 'The withdrawal was withdrawn: the entry counts again.' : 'The entry was withdrawn.',
    );

  return (
    <li className={`row log-row${line.withdrawn ? ' withdrawn' : ''}`}>
      <div className="log-when">
        {kind?.group === 'whereabouts' ? whileWords(entry.observed_at) : whenWords(entry.observed_at)}
        {entry.observed_at.includes('/') && <span className="mut small">written down {dayWords(entry.recorded_at)}</span>}
      </div>
      <div className="row-body">
        <h3>
          {kind?.title ?? `A kind not known here: ${entry.kind}`}{' '}
          <span className="log-place">{'station' in entry.place ? <a href={desk.place(id, entry.place.station)}>{where}</a> : where}</span>
        </h3>
        <p>{kind ? line.words : 'It is kept byte for byte and not judged. A newer version of Seamward can read it.'}</p>
        {concerned && <p className="mut small">About: {concerned.words}</p>}
        {entry.note !== undefined && <p className="log-note">{entry.note}</p>}
        {(line.withdrawn || line.corrected_by !== undefined) && (
          <p className="mut small">
            {line.withdrawn
              ? `Withdrawn${withdrawnBy ? ` by ${withdrawnBy.entry.by}, ${whenWords(withdrawnBy.entry.recorded_at)}` : ''}. It does not count.`
              : `Corrected ${whenWords(lines.find((l) => l.entry.id === line.corrected_by)?.entry.recorded_at ?? '')}.`}
          </p>
        )}
        {entry.photos !== undefined && entry.photos.length > 0 && (
          <ul className="photo-strip">
            {entry.photos.map((p) => (
              <li key={p.hash}>
                <Photo hash={p.hash} words={`Photograph: ${where.toLowerCase()}`} />
              </li>
            ))}
          </ul>
        )}
      </div>
      <div className="row-side">
        <span className="mut">{entry.by}</span>
        <span className="row-buttons">
          {kind && !line.withdrawn && !AMENDING.includes(entry.kind) && entry.kind !== 'layout-placed' && (
            <a className="link" href={desk.correct(id, entry.id)} aria-label={`Correct: ${line.words}`}>
              correct
            </a>
          )}
          {!line.withdrawn && entry.kind !== 'layout-placed' && (
            <button type="button" className="link" aria-label={`Withdraw: ${line.words}`} onClick={() => void withdraw()}>
              {entry.kind === 'withdrawal' ? 'withdraw the withdrawal' : 'withdraw'}
            </button>
          )}
          {line.withdrawn && withdrawnBy && (
            <button
              type="button"
              className="link"
              aria-label={`Let it count again: ${line.words}`}
              onClick={() => void keep([{ kind: 'withdrawal', place: entry.place, concerns: [withdrawnBy.entry.id], body: {} }], 'The entry counts again.')}
            >
              let it count again
            </button>
          )}
        </span>
      </div>
    </li>
  );
};
