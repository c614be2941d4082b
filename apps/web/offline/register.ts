import { useSyncExternalStore } from 'react';
import { ownScript } from './trusted';

/** Whether the program can start without a signal here, in words for people. */
export type Offline =
  | { readonly state: 'starting' }
  | { readonly state: 'ready' }
  | { readonly state: 'new-version'; readonly use: () => void }
  | { readonly state: 'replaced' }
  | { readonly state: 'insecure' | 'unsupported' | 'failed'; readonly happened: string; readonly safe: string; readonly todo: string };

let now: Offline = { state: 'starting' };
const listeners = new Set<() => void>();

const set = (next: Offline): void => {
  now = next;
  for (const tell of listeners) tell();
};

const SAFE = 'What you record is kept in this browser either way; only opening the page needs a connection.';

const INSECURE: Offline = {
  state: 'insecure',
  happened: 'This page cannot work offline here. It was opened over plain http from another machine, and browsers allow offline pages only over https or on the machine itself.',
  safe: SAFE,
  todo: 'Open it over https: start the server with a certificate (seamward serve --cert … --key …), or put the built files on any https host. On the machine that runs the server, http://localhost works too.',
};

const UNSUPPORTED: Offline = {
  state: 'unsupported',
  happened: 'This browser does not let pages work offline, or forbids it in a private window.',
  safe: SAFE,
  todo: 'Open the page in a normal window of a current browser before you go where there is no signal.',
};

const waitingOf = (registration: ServiceWorkerRegistration): void => {
  const waiting = registration.waiting;
  if (waiting && navigator.serviceWorker.controller) set({ state: 'new-version', use: () => use(waiting) });
};

let askedHere = false;

/** The new version is used only when the person says so, and only this tab starts anew. */
const use = (waiting: ServiceWorker): void => {
  askedHere = true;
  waiting.postMessage('use-now');
};

const follow = (registration: ServiceWorkerRegistration): void => {
  waitingOf(registration);
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', () => waitingOf(registration));
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void registration.update().catch(() => undefined);
  });
};

export const startOffline = async (): Promise<void> => {
  if (!window.isSecureContext) return set(INSECURE);
  if (!('serviceWorker' in navigator)) return set(UNSUPPORTED);
  const hadOne = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (askedHere) location.reload();
    else if (hadOne) set({ state: 'replaced' });
  });
  try {
    const registration = await navigator.serviceWorker.register(ownScript(new URL('service-worker.js', document.baseURI).href));
    await navigator.serviceWorker.ready;
    if (now.state === 'starting') set({ state: 'ready' });
    follow(registration);
  } catch (trouble) {
    set({
      state: 'failed',
      happened: `The program could not be kept on this device for use without a signal (${trouble instanceof Error ? trouble.message : 'no reason given'}).`,
      safe: SAFE,
      todo: 'Stay connected, reload the page once, and look here again before you go where there is no signal.',
    });
  }
};

export const useOffline = (): Offline =>
  useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => now,
  );
