import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { kindById } from '../../../../src/entries';
import type { Finding } from '../../../../src/plan';
import type { AnyKind, EntryId, PhotoRef, RigId } from '../../../../src/terms';
import type { RoundStep, RoundView, StationView } from '../../session/session';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { nowText } from '../../shared/clock';
import { byOf, useSettings } from '../../shared/settings';
import { keepTrouble, reportTrouble, troubleOver } from '../../shared/trouble';
import { type Answers, type Change, formOf } from './form';
import { buzz, rememberKept } from './last-kept';
import { agree, answer, repeat, restored, startVisit, type ToKeep, toJudge, toKeep, turnTo, type Visit, wasKept, wasUndone } from './visit';

type At = {
  readonly rig: RigId;
  readonly round: RoundView | undefined;
  readonly step: RoundStep;
  readonly stationName: string;
  readonly view: StationView;
  readonly asks: readonly AnyKind[];
};

/** Answers that this round already holds for this stop: a person who comes back sees what was given, and may change it. */
const already = ({ view, round, step }: Pick<At, 'view' | 'round' | 'step'>): Pick<Visit, 'forms' | 'kept' | 'note' | 'photos'> => {
  const mine = view.through
    .flatMap((t) => (t.side === step.side ? t.entries.slice(-1) : []))
    .filter((s) => round !== undefined && s.entry.round === round.id && kindById(s.entry.kind)?.group === 'observation');
  const note = mine.find((s) => s.entry.note)?.entry.note ?? '';
  const photos = mine.find((s) => s.entry.photos?.length)?.entry.photos ?? [];
  const carrier = mine.find((s) => s.entry.note || s.entry.photos?.length)?.entry.id;
  const seen = mine.filter((s) => s.entry.kind !== 'could-not-see');
  return {
    forms: Object.fromEntries(seen.map((s) => [s.entry.kind, formOf(kindById(s.entry.kind) as AnyKind, s.body as Readonly<Record<string, unknown>>)])),
    kept: Object.fromEntries(
      seen.map((s) => [s.entry.kind, { entry: s.entry.id, holds: JSON.stringify([s.body, ...(s.entry.id === carrier ? [note, photos.map((p: PhotoRef) => p.hash)] : ['', []])]) }]),
    ),
    note,
    photos,
  };
};

/** A date code of three digits may be an old one or a new one that is still being typed: no verdict before the person goes on. */
const WHOLE_CODE = 4;
const halfTyped = ({ live, active, forms }: Visit): boolean => {
  const raw = live === undefined ? undefined : forms[active]?.[live];
  return typeof raw === 'string' && raw.length < WHOLE_CODE;
};

const draftName = (rig: RigId, step: RoundStep): string => `${rig}/visit/${step.station}/${step.side}`;

/**
 * Drives one stop: every touch is saved as a draft, every complete answer becomes an entry, and the verdict follows
 * the answer that decides it. Nothing is called kept before it is durable.
 */
export const useVisit = ({ rig, round, step, stationName, view, asks }: At) => {
  const session = useSession();
  const settings = useSettings();
  const [visit, setVisit] = useState<Visit>();
  const [verdict, setVerdict] = useState<readonly Finding[]>([]);
  const latest = useRef<Visit>(undefined);
  const queue = useRef<Promise<unknown>>(Promise.resolve());
  const name = draftName(rig, step);
  const over = useRef(false);
  const by = useCallback(() => ({ rig, by: byOf(settings), now: nowText(), ms: Date.now() }), [rig, settings]);

  const show = useCallback((next: Visit) => {
    latest.current = next;
    setVisit(next);
  }, []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a stop is opened once; later news about it does not take the person's input away
  useEffect(() => {
    let gone = false;
    const at = { station: step.station, side: step.side, round: round?.id, began: Date.now() };
    session.draft(name).then(
      (saved) => {
        if (!gone) show(restored(saved, at) ?? startVisit(at, asks, already({ view, round, step })));
      },
      () => {
        if (!gone) show(startVisit(at, asks, already({ view, round, step })));
      },
    );
    return () => {
      gone = true;
    };
  }, [rig, round?.id, step.station, step.side]);

  /** One draft after the other, in the order of the touches. */
  const save = useCallback(
    (next: Visit | undefined) => {
      over.current = next === undefined;
      queue.current = queue.current.then(() => session.saveDraft(name, next)).catch((cause: unknown) => reportTrouble(keepTrouble(cause)));
    },
    [session, name],
  );

  const put = useCallback(
    (next: Visit) => {
      show(next);
      save(next);
    },
    [show, save],
  );

  /** Writes what is complete. Resolves to whether everything that was to be kept is kept. */
  const keep = useCallback((): Promise<boolean> => {
    const all = [...asks];
    const write = async (): Promise<boolean> => {
      const now = latest.current;
      if (!now) return true;
      for (const one of toKeep(now, all, by())) if (!(await writeOne(one))) return false;
      return true;
    };
    const writeOne = async ({ kind, drafts, holds }: ToKeep): Promise<boolean> => {
      try {
        const entries = await session.keep(drafts);
        const entry = entries.at(-1);
        if (!entry || !latest.current) return true;
        show(wasKept(latest.current, kind.id, entry.id, holds));
        if (!over.current) await session.saveDraft(name, latest.current);
        troubleOver('storage');
        rememberKept({ rig, entry: entry.id, kind: kind.id, station: step.station, side: step.side, words: stationName });
        announce(`Kept: ${stationName}.`);
        buzz(1);
        return true;
      } catch (cause) {
        reportTrouble(keepTrouble(cause));
        return false;
      }
    };
    const done = queue.current.then(write);
    queue.current = done.catch(() => undefined);
    return done;
  }, [session, rig, name, asks, by, show, step.station, step.side, stationName]);

  const change = useCallback(
    (kind: AnyKind, what: Change): Visit | undefined => {
      if (!latest.current) return undefined;
      const next = answer(latest.current, kind, what, settings);
      put(next);
      return next;
    },
    [put, settings],
  );

  const undo = useCallback(
    async (kind: string): Promise<void> => {
      const entry = latest.current?.kept[kind]?.entry;
      if (!latest.current) return;
      try {
        if (entry !== undefined) await session.undo(rig, entry, byOf(settings));
        put(wasUndone(latest.current, kind));
        announce('Taken back.');
      } catch (cause) {
        reportTrouble(keepTrouble(cause));
      }
    },
    [session, rig, settings, put],
  );

  /** The stop is over: its draft has become entries. */
  const leave = useCallback(async (): Promise<boolean> => {
    const kept = await keep();
    if (kept) save(undefined);
    return kept;
  }, [keep, save]);

  // Whoever walks away by another door leaves nothing behind: what is complete is written then too.
  const last = useRef(keep);
  last.current = keep;
  useEffect(() => () => void last.current(), []);

  // What is complete is written when the page is put away: by a call, the camera or the lock button.
  useEffect(() => {
    const away = (): void => {
      if (document.visibilityState === 'hidden') void keep();
    };
    document.addEventListener('visibilitychange', away);
    return () => document.removeEventListener('visibilitychange', away);
  }, [keep]);

  const judged = useMemo(
    () =>
      visit && !halfTyped(visit)
        ? toJudge(
            visit,
            asks.filter((k) => k.id === visit.active),
            { rig, by: '', now: nowText(), ms: visit.began },
          )
        : [],
    [visit, asks, rig],
  );
  const question = JSON.stringify(judged.map((d) => [d.kind, d.body, d.concerns]));
  // biome-ignore lint/correctness/useExhaustiveDependencies: `question` names everything that is asked
  useEffect(() => {
    let gone = false;
    if (judged.length === 0) return setVerdict([]);
    session.judge(rig, judged).then(
      ({ findings }) => {
        if (gone) return;
        setVerdict(findings);
        const worst = findings[0];
        if (worst) announce(`${worst.title}. ${worst.because[0]?.text ?? ''}`);
        if (worst?.urgency === 'before-moving' || worst?.urgency === 'do-not-use') buzz(2);
      },
      () => undefined,
    );
    return () => {
      gone = true;
    };
  }, [session, rig, question]);

  return useMemo(
    () => ({
      visit,
      verdict,
      change,
      keep,
      leave,
      undo,
      agree: (kind: AnyKind) => latest.current && put(agree(latest.current, kind)),
      repeat: (kind: AnyKind, answers: Answers) => latest.current && put(repeat(latest.current, kind, answers)),
      turnTo: (kind: AnyKind) => latest.current && put(turnTo(latest.current, kind)),
      look: (part: Partial<Pick<Visit, 'live' | 'opened'>>) => latest.current && show({ ...latest.current, ...part }),
      note: (note: string) => latest.current && put({ ...latest.current, note }),
      /** A photo joins the answer that is kept already; before there is one it stays in the draft. Resolves when either is durable. */
      photo: async (photo: PhotoRef): Promise<void> => {
        if (!latest.current) return;
        put({ ...latest.current, photos: [...latest.current.photos, photo] });
        await keep();
      },
      dropPhoto: (hash: string) => latest.current && put({ ...latest.current, photos: latest.current.photos.filter((p) => p.hash !== hash) }),
      kept: (kind: string): EntryId | undefined => visit?.kept[kind]?.entry,
    }),
    [visit, verdict, change, keep, leave, undo, put, show],
  );
};

export type VisitControls = ReturnType<typeof useVisit>;
