import { useCallback, useEffect, useRef, useState } from 'react';
import type { Scale } from '../../../../src/plan';
import type { Meter, Rig } from '../../../../src/rig';
import type { Draft, FacePoint, Place, RigId } from '../../../../src/terms';
import { isoDay } from '../../../../src/units';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { nowText, today } from '../../shared/clock';
import { byOf, useSettings } from '../../shared/settings';
import { keepTrouble, reportTrouble, troubleOver } from '../../shared/trouble';
import { ready } from '../visit/form';
import { buzz } from '../visit/last-kept';
import { answersOf, begun, kindOf, restored, SCALES, type Series, type Told, wasKept, wasUndone } from './series';

/** A value that is a draft as well: read once, saved at every change, one write after the other. */
export const useDraft = <T>(name: string, read: (saved: unknown) => T): readonly [T | undefined, (next: T) => void] => {
  const session = useSession();
  const [value, set] = useState<T>();
  const queue = useRef<Promise<unknown>>(Promise.resolve());
  // biome-ignore lint/correctness/useExhaustiveDependencies: a draft is read when its screen opens; what is on the screen since then is newer
  useEffect(() => {
    let gone = false;
    session.draft(name).then(
      (saved) => {
        if (!gone) set(read(saved));
      },
      () => {
        if (!gone) set(read(undefined));
      },
    );
    return () => {
      gone = true;
    };
  }, [session, name]);
  const put = useCallback(
    (next: T) => {
      set(next);
      queue.current = queue.current.then(() => session.saveDraft(name, next ?? undefined)).catch((cause: unknown) => reportTrouble(keepTrouble(cause)));
    },
    [session, name],
  );
  return [value, put];
};

const readTold =
  (meters: readonly Meter[]) =>
  (saved: unknown): Told => {
    const day = isoDay(today());
    const found = saved as Partial<Told> | undefined;
    // Before anything was told, a meter that is described for this rig is likelier than a nameless one.
    const described = found === undefined || found === null ? meters[0] : undefined;
    const scale = found && SCALES.includes(found.scale as Scale) ? (found.scale as Scale) : (described?.scale ?? 'pin');
    // Meter and material stay from day to day; the wood is as warm as it is today.
    return {
      day,
      scale,
      meter: typeof found?.meter === 'string' ? found.meter : (described?.name ?? ''),
      material: typeof found?.material === 'string' ? found.material : undefined,
      wood_temperature: found?.day === day ? found.wood_temperature : undefined,
    };
  };

export const useTold = ({ id, meters }: Pick<Rig, 'id' | 'meters'>) => useDraft<Told>(`${id}/meter`, readTold(meters));

/** Which readings of a series are kept, and one step back. Nothing is called kept before it is durable. */
export const useSeries = (rig: RigId, name: string, place: (point_m: FacePoint) => Place) => {
  const session = useSession();
  const settings = useSettings();
  const [busy, setBusy] = useState(false);
  const [series, put] = useDraft<Series>(`${rig}/meter/${name}`, (saved) => {
    const day = isoDay(today());
    return restored(saved, day) ?? begun(day);
  });

  const keep = async (told: Told, enough: boolean, spoken: string): Promise<void> => {
    if (!series?.point_m || busy) return;
    const kind = kindOf(told.scale);
    const state = ready(kind, answersOf(told, series));
    if (state.state !== 'complete') return;
    const draft: Draft = { rig, kind: kind.id, version: kind.version, observed_at: nowText(), by: byOf(settings), place: place(series.point_m), body: state.body };
    setBusy(true);
    try {
      const [entry] = await session.keep([draft]);
      if (entry) put(wasKept(series, entry.id, enough));
      troubleOver('storage');
      buzz(1);
      announce(`Kept: ${spoken}.`);
    } catch (cause) {
      reportTrouble(keepTrouble(cause));
    } finally {
      setBusy(false);
    }
  };

  const undo = async (): Promise<void> => {
    if (!series || busy) return;
    if (series.reading !== undefined) return put({ ...series, reading: undefined });
    const last = series.kept.at(-1);
    if (!last) return;
    setBusy(true);
    try {
      await session.undo(rig, last.entry, byOf(settings));
      put(wasUndone(series));
      announce(`Taken back: ${last.text}.`);
    } catch (cause) {
      reportTrouble(keepTrouble(cause));
    } finally {
      setBusy(false);
    }
  };

  return { series, put, keep, undo, busy };
};
