import { proxy } from 'comlink';
import { createContext, type ReactNode, use, useEffect, useState } from 'react';
import type { MoistureField } from '../../../src/plan';
import type { RigId, StationId } from '../../../src/terms';
import { isSpoken, keepTrouble, reportTrouble } from '../shared/trouble';
import { connect } from './connect';
import type { FieldWish, Overview, RigLine, Session, StationView } from './session';

const Context = createContext<Session | undefined>(undefined);

const listeners = new Set<(rig: RigId) => void>();
const changed = (rig: RigId): void => {
  for (const tell of listeners) tell(rig);
};

/** Begun before the page is drawn, so that the worker reads the logbook while the screen is still loading. */
export const openSession = (): Session => {
  const session = connect();
  session.watch(proxy(changed)).catch(openTrouble);
  return session;
};

export const SessionProvider = ({ session, children }: { readonly session: Session; readonly children: ReactNode }) => <Context value={session}>{children}</Context>;

const openTrouble = (cause: unknown): void =>
  reportTrouble(
    isSpoken(cause)
      ? keepTrouble(cause)
      : {
          key: 'storage',
          title: 'The logbook could not be opened',
          happened: `The page could not read what is kept here (${cause instanceof Error ? cause.message : String(cause)}).`,
          safe: 'Nothing was changed. What was kept before is still where it was.',
          todo: 'Close private windows and other tabs of this page, then reload. If it stays so, use another browser and open your saved copy there.',
        },
  );

export const useSession = (): Session => {
  const session = use(Context);
  if (!session) throw new Error('the session is used outside its provider');
  return session;
};

/** Asks now and after every change; an answer that comes late never replaces a newer one. */
const useLive = <T,>(ask: (session: Session) => Promise<T>, of: RigId | undefined, key: string): T | undefined => {
  const session = useSession();
  const [answer, setAnswer] = useState<{ readonly key: string; readonly value: T }>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` names everything that `ask` depends on
  useEffect(() => {
    let asked = 0;
    let shown = 0;
    let gone = false;
    const again = (rig?: RigId): void => {
      if (rig !== undefined && of !== undefined && rig !== of) return;
      const mine = ++asked;
      ask(session).then(
        (value) => {
          if (gone || mine < shown) return;
          shown = mine;
          setAnswer({ key, value });
        },
        (cause: unknown) => {
          if (!gone) openTrouble(cause);
        },
      );
    };
    again();
    listeners.add(again);
    return () => {
      gone = true;
      listeners.delete(again);
    };
  }, [session, key]);
  return answer?.key === key ? answer.value : undefined;
};

export const useRigs = (): readonly RigLine[] | undefined => useLive((s) => s.rigs(), undefined, 'rigs');
export const useOverview = (rig: RigId, on?: number): Overview | undefined => useLive((s) => s.overview(rig, on), rig, `overview ${rig} ${on ?? ''}`);
export const useStation = (rig: RigId, station: StationId): StationView | undefined => useLive((s) => s.station(rig, station), rig, `station ${rig} ${station}`);

/** The map of one panel, worked out anew after each reading; `null` where there is none, undefined while it is awaited. */
export const useMoistureField = (rig: RigId, panel: string, wish: FieldWish = {}): MoistureField | null | undefined =>
  useLive(async (s) => (await s.moistureField(rig, panel, wish)) ?? null, rig, `field ${rig} ${panel} ${JSON.stringify(wish)}`);

/** An address for a kept photograph, for `img`; undefined while it loads or when the photo is not on this device. */
export const usePhoto = (hash: string | undefined): string | undefined => {
  const session = useSession();
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    setAddress(undefined);
    if (hash === undefined) return;
    let made: string | undefined;
    let gone = false;
    session.photo(hash).then(
      (blob) => {
        if (!blob || gone) return;
        made = URL.createObjectURL(blob);
        setAddress(made);
      },
      () => undefined,
    );
    return () => {
      gone = true;
      if (made !== undefined) URL.revokeObjectURL(made);
    };
  }, [session, hash]);
  return address;
};
