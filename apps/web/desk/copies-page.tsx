import { type ChangeEvent, useEffect, useState } from 'react';
import { readLogbook, type Verification } from '../../../src/logbook';
import { showDay } from '../../../src/units';
import type { Imported, RecordStatus } from '../session/session';
import { go, href } from '../shared/route';
import { saidOf } from '../shared/trouble';
import { count, useDesk } from './desk';
import { bytesWords, giveFile, readFile } from './files';

type Told = { readonly good: boolean; readonly words: string; readonly lines: readonly string[] };

const SHOWN = 12;

const importedWords = (name: string, result: Imported): Told => ({
  good: result.refused.length === 0,
  words: `${name}: ${result.words}`,
  lines: result.refused.slice(0, SHOWN).map(
    (r) =>
      `Line ${r.line}: ${r.refusals
        .slice(0, 2)
        .map((x) => x.sentence)
        .join(' ')}${r.refusals.length > 2 ? ` And ${r.refusals.length - 2} more things.` : ''}`,
  ),
});

/** Where the record stands besides this device, and how to take it elsewhere or bring it in. */
export const CopiesPage = () => {
  const { id, overview, session, demo, today, say } = useDesk();
  const [storage, setStorage] = useState<{ readonly persisted: boolean | undefined; readonly used_bytes: number; readonly room_bytes: number }>();
  const [told, setTold] = useState<readonly Told[]>([]);
  const [busy, setBusy] = useState<string>();
  const [asking, setAsking] = useState(false);
  const [saved, setSaved] = useState<Verification>();

  useEffect(() => {
    session.storage().then(setStorage, () => undefined);
  }, [session]);

  const failed = (what: string, cause: unknown) =>
    say({
      form: 'problem',
      happened: `${what} (${saidOf(cause)}).`,
      safe: 'The logbook on this device is unchanged.',
      todo: 'Try again. If it stays so, reload the page first.',
    });

  const save = async (what: 'logbook' | 'archive') => {
    setBusy(what);
    try {
      if (what === 'logbook') {
        const file = await session.exportLogbook(id);
        giveFile(file.name, file.text, 'application/jsonl');
        const { verification } = readLogbook(file.text);
        setSaved(verification);
        say({ form: 'kept', words: `The logbook was saved as ${file.name}. Its last line holds count and digest, so that a damaged copy shows.` });
      } else {
        const file = await session.exportArchive(id);
        giveFile(file.name, file.bytes, 'application/zip');
        say({ form: 'kept', words: `Logbook and photographs were saved as ${file.name}, ${bytesWords(file.bytes.length)}.` });
      }
    } catch (cause) {
      failed('The copy could not be made', cause);
    }
    setBusy(undefined);
  };

  const open = async (event: ChangeEvent<HTMLInputElement>) => {
    const files = [...(event.target.files ?? [])];
    event.target.value = '';
    const results: Told[] = [];
    for (const [i, file] of files.entries()) {
      setBusy(`Reading ${i + 1} of ${files.length}: ${file.name}`);
      try {
        results.push(importedWords(file.name, await session.importFile(file.name, await readFile(file))));
      } catch (cause) {
        results.push({
          good: false,
          words: `${file.name} could not be read (${saidOf(cause)}). The logbook on this device is unchanged. Ask for the file again.`,
          lines: [],
        });
      }
      setTold([...results]);
    }
    setBusy(undefined);
  };

  const forget = async () => {
    try {
      await session.forget(id);
      go(href('rigs'));
    } catch (cause) {
      failed('It could not be removed', cause);
    }
  };

  return (
    <main className="desk-page" id="content">
      <header className="page-head">
        <h1>{copiesSentence(overview.record)}</h1>
        <p className="lead">
          {count(overview.entries, 'entry', 'entries')} in this logbook on {showDay(today)}. {storageWords(storage?.persisted)}
        </p>
        {storage && storage.room_bytes > 0 && (
          <p className="mut">
            {bytesWords(storage.used_bytes)} used of about {bytesWords(storage.room_bytes)} that this browser gives.
          </p>
        )}
      </header>
      <div className="columns halves">
        <section>
          <h2 className="group-head">Save a copy</h2>
          <p>The logbook is one line of text for each entry; any program can read it. The archive holds the photographs too.</p>
          <p className="buttons">
            <button type="button" className="button primary" disabled={busy !== undefined} onClick={() => void save('archive')}>
              Save everything (.zip)
            </button>
            <button type="button" className="button" disabled={busy !== undefined} onClick={() => void save('logbook')}>
              Save the logbook (.jsonl)
            </button>
          </p>
          {saved && (
            <div className="told" role="status">
              <p>{saved.sentences[0] ?? (saved.whole ? 'The saved file is whole.' : '')}</p>
              <p className="digest">Digest {saved.digest}</p>
              <p className="mut small">Give the digest to somebody else, or write it down: with it, anybody can tell whether this logbook was written anew.</p>
            </div>
          )}
          <p className="mut small">The chain of lines shows damage. Only a digest that somebody else holds shows that a whole logbook was written anew.</p>
        </section>
        <section>
          <h2 className="group-head">Bring in a file</h2>
          <p>A file of this rig from another device or from a technician is merged: what is new is taken in, what is known is passed over, nothing is overwritten.</p>
          <p className="buttons">
            <label className={`button file-button${busy === undefined ? '' : ' busy'}`}>
              Open files
              <input type="file" accept=".jsonl,.zip,.json,application/zip" multiple disabled={busy !== undefined} onChange={(e) => void open(e)} />
            </label>
          </p>
          {busy?.startsWith('Reading') && <p role="status">{busy}</p>}
          {told.map((t) => (
            <div key={t.words} className={t.good ? 'told' : 'told doubt'} role="status">
              <p>{t.words}</p>
              {t.lines.length > 0 && (
                <ul className="plain small">
                  {t.lines.map((l) => (
                    <li key={l}>{l}</li>
                  ))}
                </ul>
              )}
            </div>
          ))}
        </section>
        <section>
          <h2 className="group-head">{demo ? 'The sample rig' : 'Remove this rig from this device'}</h2>
          <p>
            {demo
              ? 'It was made up to show how a logbook grows. Removing it takes its entries and photographs off this device.'
              : 'This takes the logbook and its photographs off this device for good. Save a copy first: nothing here can bring it back.'}
          </p>
          {asking ? (
            <div className="doubt" role="alert">
              <p>{demo ? 'Remove the sample rig?' : `Remove ${count(overview.entries, 'entry', 'entries')} of “${overview.rig.name}” from this device?`}</p>
              <p className="buttons">
                <button type="button" className="button primary" onClick={() => void forget()}>
                  Yes, remove it
                </button>
                <button type="button" className="button" onClick={() => setAsking(false)}>
                  No
                </button>
              </p>
            </div>
          ) : (
            <p className="buttons">
              <button type="button" className="button" onClick={() => setAsking(true)}>
                {demo ? 'Remove the sample rig' : 'Remove this rig'}
              </button>
            </p>
          )}
        </section>
      </div>
    </main>
  );
};

const copiesSentence = (record: RecordStatus): string => {
  if (record.state === 'kept') return record.words;
  if (record.state === 'not-copied') return record.words;
  return `Problem: ${record.words}`;
};

const storageWords = (persisted: boolean | undefined): string => {
  if (persisted === true) return 'The browser has promised not to clear it by itself.';
  if (persisted === false) return 'The browser has not promised to keep it when room runs short: save copies.';
  return 'This browser does not say whether it may clear it: save copies.';
};
