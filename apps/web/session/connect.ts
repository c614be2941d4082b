import { wrap } from 'comlink';
import { ownScript } from '../offline/trusted';
import { reportTrouble } from '../shared/trouble';
import type { Session } from './session';
import workerAddress from './worker?worker&url';

/** One worker for this tab: it holds entries, state and plan; the page holds only what is being looked at. */
export const connect = (): Session => {
  const worker = new Worker(ownScript(workerAddress), { type: 'module', name: 'session' });
  worker.addEventListener('error', (event) =>
    reportTrouble({
      key: 'worker',
      title: 'A part of the program stopped',
      happened: `The part that keeps the logbook stopped (${event.message || 'it could not be loaded'}).`,
      safe: 'Everything that was called kept is still on this device.',
      todo: 'Reload the page. If it stays so, reload once with a connection, so that the program is fetched anew.',
    }),
  );
  return wrap<Session>(worker) as unknown as Session;
};
