import type { Page, Worker } from 'playwright-core';

/** Run in the page and in its workers: their clock from now on stands apart from the machine's by so much. As text, for it is sent there. */
const shifted = (ms: number): string => `(() => {
  globalThis.shiftedBy = ${ms};
  if (globalThis.realDate) return;
  const Real = Date;
  globalThis.realDate = Real;
  const now = () => Real.now() + globalThis.shiftedBy;
  globalThis.Date = new Proxy(Real, {
    construct: (target, args, as) => (args.length === 0 ? new Real(now()) : Reflect.construct(target, args, as)),
    get: (target, key) => (key === 'now' ? now : Reflect.get(target, key)),
  });
})()`;

export type PageClock = {
  /** Sets the clock to an instant; it runs on from there. */
  readonly set: (instant: string) => Promise<void>;
  readonly forward: (ms: number) => Promise<void>;
};

/**
 * A clock that the journey sets: weeks between two readings pass in a moment. The program is untouched; what it asks the
 * browser for is answered with another day, in the page and in the worker that writes.
 */
export const clockOf = (page: Page): PageClock => {
  let shift = 0;
  const tell = (worker: Worker): Promise<void> => worker.evaluate<undefined>(shifted(shift)).catch(() => undefined);
  page.on('worker', (worker) => void tell(worker));
  const put = async (ms: number): Promise<void> => {
    shift = ms;
    await page.addInitScript({ content: shifted(shift) });
    await page.evaluate(shifted(shift));
    await Promise.all(page.workers().map(tell));
  };
  return { set: (instant) => put(Date.parse(instant) - Date.now()), forward: (ms) => put(shift + ms) };
};
