import { wrap } from 'comlink';
import { ownScript } from '../offline/trusted';
import type { Session } from './session';
import workerAddress from './worker?worker&url';

/** One worker for this tab: it holds entries, state and plan; the page holds only what is being looked at. */
export const connect = (): Session => {
  const worker = new Worker(ownScript(workerAddress), { type: 'module', name: 'session' });
  return wrap<Session>(worker) as unknown as Session;
};
