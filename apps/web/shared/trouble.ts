import { useSyncExternalStore } from 'react';
import { SPOKEN } from '../session/spoken-name';

/** Something that went wrong on this device, told in three steps: what happened, what is safe, what to do. */
export type Trouble = { readonly key: string; readonly title: string; readonly happened: string; readonly safe: string; readonly todo: string };

let troubles: readonly Trouble[] = [];
const listeners = new Set<() => void>();

const set = (next: readonly Trouble[]): void => {
  troubles = next;
  for (const tell of listeners) tell();
};

/** The newest of its key stands; the others stay until they are over. */
export const reportTrouble = (trouble: Trouble): void => set([trouble, ...troubles.filter((t) => t.key !== trouble.key)]);

export const troubleOver = (key: string): void => {
  if (troubles.some((t) => t.key === key)) set(troubles.filter((t) => t.key !== key));
};

export const useTroubles = (): readonly Trouble[] =>
  useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => troubles,
  );

const words = (cause: unknown): string => (cause instanceof Error ? `${cause.name}: ${cause.message}` : String(cause));

const TITLES: Readonly<Record<string, string>> = {
  'no-room': 'No room is left on this device',
  'not-allowed': 'This browser keeps nothing',
  lost: 'The logbook was closed by the browser',
  'held-by-older': 'An older window is still open',
  unreadable: 'Some entries are damaged',
  refused: 'This answer cannot be read again as it is',
};

/** Whether an error brings its own words from the store. */
export const isSpoken = (cause: unknown): cause is Error => cause instanceof Error && cause.name === SPOKEN;

type Told = { readonly code: string; readonly happened: string; readonly safe: string; readonly todo: string };

/** What an error says, to stand within a sentence of ours: without its full stop, and never as the store's own record of it. */
export const saidOf = (cause: unknown): string => {
  const said = isSpoken(cause) ? (JSON.parse(cause.message) as Told).happened : cause instanceof Error ? cause.message : String(cause);
  return said.replace(/\.$/, '');
};

/** Why an answer could not be kept: in the store's own words where it has them, else as far as the browser says. */
export const keepTrouble = (cause: unknown): Trouble => {
  if (isSpoken(cause)) {
    const told = JSON.parse(cause.message) as Told;
    return { key: 'storage', title: TITLES[told.code] ?? 'The last answer was not kept', happened: told.happened, safe: told.safe, todo: told.todo };
  }
  const said = words(cause);
  if (said.includes('Quota'))
    return {
      key: 'storage',
      title: 'No room is left on this phone',
      happened: 'The browser has no room for more. The last answer was not kept; it is still on the screen.',
      safe: 'Everything kept before is safe.',
      todo: 'Save a copy as a file, make room on the phone, then answer again.',
    };
  return {
    key: 'storage',
    title: 'The last answer was not kept',
    happened: `The browser did not write it down (${said}). It is still on the screen.`,
    safe: 'Everything kept before is safe.',
    todo: 'Answer again. If it stays so, save a copy as a file and reload the page.',
  };
};
