import { useEffect, useState } from 'react';
import { useOffline } from '../offline/register';
import type { Imported } from '../session/session';
import { useRigs, useSession } from '../session/use-session';
import { announce } from '../shared/announce';
import { PageTitle } from '../shared/page-title';
import { href } from '../shared/route';
import { reportTrouble, saidOf } from '../shared/trouble';
import { Cell, Frame, Primary } from './frame';
import { giveFile } from './give-file';
import { PERSIST_WORDS, usePersist } from './persist';

const MB = 1e6;

/** Where the record stands on this device, and copies out and in. */
export const RecordScreen = () => {
  const session = useSession();
  const rigs = useRigs();
  const persist = usePersist();
  const offline = useOffline();
  const [room, setRoom] = useState<Awaited<ReturnType<typeof session.storage>>>();
  const [taken, setTaken] = useState<Imported>();

  useEffect(() => {
    session.storage().then(setRoom, () => undefined);
  }, [session]);

  const save = async (): Promise<void> => {
    try {
      for (const rig of rigs ?? []) {
        const file = await session.exportArchive(rig.id);
        giveFile(file.name, file.bytes, 'application/zip');
      }
      announce('The copy is made. Keep it on another device.');
    } catch (cause) {
      reportTrouble({
        key: 'copy',
        title: 'The copy was not made',
        happened: `The file could not be written (${saidOf(cause)}).`,
        safe: 'The logbook on this device is unchanged.',
        todo: 'Try again, or save the logbook without photos from the page Copies of the rig.',
      });
    }
  };
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    try {
      const result = await session.importFile(file.name, new Uint8Array(await file.arrayBuffer()));
      setTaken(result);
      announce(result.words);
    } catch (cause) {
      reportTrouble({
        key: 'import',
        title: 'The file could not be opened',
        happened: `${file.name} was not taken in (${saidOf(cause)}).`,
        safe: 'Nothing already recorded was changed.',
        todo: 'Check that it is a logbook or an archive saved by this program, and that it was copied whole.',
      });
    }
  };

  return (
    <Frame
      cells={['Copies']}
      back={{ to: href('rigs'), name: 'All rigs' }}
      ruled
      dock={
        <>
          <Primary
            words="Save a copy as a file"
            second={rigs && rigs.length > 0 ? `${rigs.length === 1 ? rigs[0]?.name : `${rigs.length} rigs`}, with photos` : 'nothing to save yet'}
            act={() => void save()}
            disabled={!rigs || rigs.length === 0}
          />
          <label className="press file-press">
            Open a copy
            <input type="file" accept=".jsonl,.zip,.seamward" onChange={(e) => void open(e.currentTarget.files?.[0])} />
          </label>
          <Cell to={href('problems')}>Problems</Cell>
        </>
      }
    >
      <PageTitle id="record" title="Where the record is">
        Where the record is
      </PageTitle>
      {taken && (
        <section className="sheet" aria-label="What was taken in">
          <h2>{taken.words}</h2>
          {taken.refused.slice(0, 5).map((r) => (
            <p key={r.line}>
              Line {r.line}: {r.refusals[0]?.sentence}
            </p>
          ))}
          {taken.refused.length > 5 && <p>And {taken.refused.length - 5} more lines.</p>}
        </section>
      )}
      <section>
        <h2>On this device</h2>
        <p>Everything you record is kept in this browser, on this device, and nowhere else until you save a copy or share one.</p>
        {room && (
          <p>
            {(room.used_bytes / MB).toFixed(1)} MB used, about {Math.round(room.room_bytes / MB)} MB of room by the browser’s own estimate.
          </p>
        )}
        {persist && <p>{PERSIST_WORDS[persist]}</p>}
      </section>
      <section>
        <h2>Without a signal</h2>
        <p>
          {offline.state === 'ready' || offline.state === 'new-version' || offline.state === 'replaced'
            ? 'The whole program is kept on this device. It starts without a signal.'
            : offline.state === 'starting'
              ? 'The program is not yet kept for use without a signal.'
              : `${offline.happened} ${offline.todo}`}
        </p>
      </section>
    </Frame>
  );
};
