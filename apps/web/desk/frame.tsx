import { type ReactNode, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { kindById, readBody } from '../../../src/entries';
import type { Draft, EntryId, RigId } from '../../../src/terms';
import { showDay } from '../../../src/units';
import type { Overview } from '../session/session';
import { useOverview, useRigs, useSession } from '../session/use-session';
import { announce } from '../shared/announce';
import { nowText, today } from '../shared/clock';
import { useKeys } from '../shared/keys';
import { RecordCell } from '../shared/record-cell';
import { go, href } from '../shared/route';
import { byOf, useSettings } from '../shared/settings';
import { keepTrouble, reportTrouble, troubleOver } from '../shared/trouble';
import { type Desk, DeskProvider, lowerFirst, type NewEntry, type Notice } from './desk';
import { KeyList } from './key-list';
import { desk } from './paths';
import { kindWord } from './words';
import { WorksheetBoxes } from './worksheet-box';

const PAGES = [
  { page: 'sheet', word: 'Sheet', to: desk.sheet },
  { page: 'plan', word: 'Plan', to: desk.plan },
  { page: 'water', word: 'Water', to: (rig: RigId) => desk.water(rig) },
  { page: 'round', word: 'Round', to: (rig: RigId) => href('rig', rig, 'round') },
  { page: 'logbook', word: 'Logbook', to: (rig: RigId) => desk.logbook(rig) },
  { page: 'describe', word: 'Describe', to: (rig: RigId) => desk.describe(rig) },
  { page: 'print', word: 'Print', to: (rig: RigId) => desk.print(rig) },
  { page: 'copies', word: 'Copies', to: desk.copies },
] as const;

/** Under which heading a page stands that is not itself in the line of pages. */
const HOME: Readonly<Record<string, string>> = {
  underside: 'sheet',
  inside: 'sheet',
  place: 'sheet',
  station: 'sheet',
  finding: 'plan',
  slides: 'describe',
  add: 'logbook',
  correct: 'logbook',
};

const Header = ({ rig, overview, here }: { readonly rig: RigId | undefined; readonly overview: Overview | undefined; readonly here: string }) => {
  const home = HOME[here] ?? here;
  return (
    <header className="desk-top">
      <a className="wordmark" href={href('rigs')}>
        Seamward
      </a>
      {overview && (
        <a className="rig-name" href={desk.describe(overview.rig.id)} title={overview.rig.name}>
          {[overview.rig.name, lowerFirst(kindWord(overview.rig.kind)), overview.rig.year === 'unknown' ? '' : String(overview.rig.year)].filter((w) => w !== '').join(', ')}
        </a>
      )}
      <nav aria-label="Pages">
        {rig !== undefined &&
          PAGES.map((p) => (
            <a key={p.page} href={p.to(rig)} aria-current={p.page === home ? 'page' : undefined}>
              {p.word}
            </a>
          ))}
        <a href={desk.worksheets()} aria-current={home === 'worksheets' ? 'page' : undefined}>
          Worksheets
        </a>
        <a href={desk.settings()} aria-current={home === 'settings' ? 'page' : undefined}>
          Settings
        </a>
      </nav>
      <div className="desk-state">
        {rig !== undefined && <RecordCell record={overview?.record} />}
        <span className="desk-date">{showDay(today(), true)}</span>
      </div>
    </header>
  );
};

/** What was kept or went wrong, at the foot of the page until the next thing happens. */
const NoticeLine = ({ notice, close }: { readonly notice: Notice | undefined; readonly close: () => void }) => {
  if (!notice) return null;
  return (
    <div className={`notice-line notice-${notice.form}`} role={notice.form === 'problem' ? 'alert' : undefined}>
      {notice.form === 'kept' ? (
        <p>{notice.words}</p>
      ) : (
        <p>
          <b>{notice.happened}</b> {notice.safe} {notice.todo}
        </p>
      )}
      <span className="notice-buttons">
        {notice.form === 'kept' && notice.undo && (
          <button type="button" className="button small" onClick={notice.undo}>
            Undo
          </button>
        )}
        <button type="button" className="link" onClick={close}>
          close
        </button>
      </span>
    </div>
  );
};

/** How long a notice belongs to the page that its entry leads to. [ms] */
const STILL_NEWS_MS = 2000;

/** What all desk pages share, whatever they are about. */
const useDeskTools = () => {
  const session = useSession();
  const settings = useSettings();
  const [notice, setNotice] = useState<Notice>();
  const [keysShown, showKeys] = useState(false);
  const saidAt = useRef(0);
  const say = useCallback((n: Notice) => {
    saidAt.current = Date.now();
    setNotice(n);
    announce(n.form === 'kept' ? n.words : `${n.happened} ${n.safe} ${n.todo}`);
  }, []);
  return { session, settings, notice, setNotice, say, saidAt, keysShown, showKeys };
};

const findSearch = (): void => {
  const field = document.querySelector<HTMLInputElement>('[data-search]');
  field?.focus();
  field?.select();
};

/** A page about one rig: header, the page, and the line that says what was kept. */
export const RigDesk = ({ rig, page, children }: { readonly rig: RigId; readonly page: string; readonly children: ReactNode }) => {
  const { session, settings, notice, setNotice, say, saidAt, keysShown, showKeys } = useDeskTools();
  const overview = useOverview(rig);
  const rigs = useRigs();
  const by = byOf(settings);
  const undo = useRef<(() => void) | undefined>(undefined);

  const keep = useCallback(
    async (drafts: readonly NewEntry[], said: string): Promise<readonly EntryId[] | undefined> => {
      const full: readonly Draft[] = drafts.map((d) => ({ ...d, rig, by, observed_at: d.observed_at ?? nowText(), version: d.version ?? kindById(d.kind)?.version ?? 1 }));
      // What the kind itself cannot read again is never written: it would stand in the logbook unjudged for good.
      const unfit = full.flatMap((d) => {
        const kind = kindById(d.kind);
        const read = kind ? readBody(kind, d.body) : undefined;
        return read && !read.ok ? read.refusals : [];
      });
      if (unfit.length > 0) {
        say({ form: 'problem', happened: unfit.map((r) => r.sentence).join(' '), safe: 'Nothing was written.', todo: 'Change it and try again.' });
        return undefined;
      }
      try {
        const entries = await session.keep(full);
        troubleOver('storage');
        const ids = entries.map((e) => e.id);
        const takeBack = async () => {
          undo.current = undefined;
          try {
            for (const id of [...ids].reverse()) await session.undo(rig, id, by);
            say({ form: 'kept', words: 'Taken back. The logbook still shows that it was written and withdrawn.' });
          } catch (cause) {
            reportTrouble(keepTrouble(cause));
          }
        };
        undo.current = () => void takeBack();
        say({ form: 'kept', words: `${said} Kept on this device.`, undo: () => undo.current?.() });
        return ids;
      } catch (cause) {
        const trouble = keepTrouble(cause);
        reportTrouble(trouble);
        say({ form: 'problem', happened: trouble.happened, safe: trouble.safe, todo: trouble.todo });
        return undefined;
      }
    },
    [session, rig, by, say],
  );

  useKeys({
    '/': () => {
      if (document.querySelector('[data-search]')) findSearch();
      else {
        go(desk.sheet(rig));
        setTimeout(findSearch, 50);
      }
    },
    n: () => go(desk.add(rig)),
    u: () => undo.current?.(),
    '?': () => showKeys(true),
  });

  const value = useMemo<Desk | undefined>(
    () =>
      overview && {
        id: rig,
        session: session as unknown as Desk['session'],
        overview,
        preferences: settings,
        by,
        today: today(),
        demo: rigs?.find((r) => r.id === rig)?.demo ?? false,
        keep,
        say,
      },
    [overview, rig, session, settings, by, rigs, keep, say],
  );

  // biome-ignore lint/correctness/useExhaustiveDependencies: another page begins at its top
  useEffect(() => {
    window.scrollTo(0, 0);
    // What was kept is still said on the page it leads to, and no further.
    setNotice((n) => (n !== undefined && Date.now() - saidAt.current > STILL_NEWS_MS ? undefined : n));
  }, [page]);

  return (
    <div className="desk">
      <button type="button" className="skip" onClick={skip}>
        To the page
      </button>
      <Header rig={rig} overview={overview} here={page} />
      {value ? (
        <DeskProvider value={value}>
          <WorksheetBoxes preferences={settings}>{children}</WorksheetBoxes>
        </DeskProvider>
      ) : (
        <Waiting known={rigs === undefined || rigs.some((r) => r.id === rig)} />
      )}
      <NoticeLine notice={notice} close={() => setNotice(undefined)} />
      {keysShown && <KeyList close={() => showKeys(false)} />}
    </div>
  );
};

const skip = (): void => {
  const main = document.getElementById('content');
  main?.setAttribute('tabindex', '-1');
  main?.focus();
};

const Waiting = ({ known }: { readonly known: boolean }) => (
  <main className="desk-page" id="content">
    {known ? (
      <p className="lead">Opening the logbook.</p>
    ) : (
      <>
        <h1>This rig is not on this device</h1>
        <p className="lead">Its logbook may be on another device. Save it there as a file and open the file here.</p>
        <p className="buttons">
          <a className="button primary" href={href('rigs')}>
            Back to the rigs
          </a>
        </p>
      </>
    )}
  </main>
);

/** A page that is about no rig: settings, worksheets. */
export const ToolDesk = ({ here, children }: { readonly here: string; readonly children: ReactNode }) => {
  const { settings, keysShown, showKeys } = useDeskTools();
  useKeys({ '?': () => showKeys(true), '/': findSearch });
  return (
    <div className="desk">
      <button type="button" className="skip" onClick={skip}>
        To the page
      </button>
      <Header rig={undefined} overview={undefined} here={here} />
      <WorksheetBoxes preferences={settings}>{children}</WorksheetBoxes>
      {keysShown && <KeyList close={() => showKeys(false)} />}
    </div>
  );
};
