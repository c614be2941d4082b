import { join } from 'node:path';
import { type OpenBrowser, openBrowser, openServer, PHONE } from '../journeys/browser';
import { ms, type Row } from './table';
import { p95, summary } from './timing';

const SLOWDOWN = 4;
const COLD_STARTS = 5;
const TAPS = 40;

/** Slows the page's own processor four times. The worker's thread is slowed as far as Chromium's throttling reaches it. */
const slowed = async ({ context, page }: OpenBrowser, rate: number): Promise<void> => {
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate });
};

/** A rig from the sample with a round under way, kept in the profile; returns the address of the round. */
const prepared = async (profile: string, address: string): Promise<string> => {
  const open = await openBrowser(profile, PHONE);
  const { page } = open;
  await page.goto(address);
  await page.waitForFunction(() => navigator.serviceWorker.ready.then((r) => r.active?.state === 'activated'));
  await page.getByText('Look at the sample rig').click();
  await page.waitForFunction(() => location.hash.includes('/rig/'), undefined, { timeout: 120_000 });
  const rig = await page.evaluate(() => location.hash.split('/')[2] ?? '');
  await page.evaluate((id) => {
    location.hash = `#/rig/${id}/round`;
  }, rig);
  await page.getByRole('button', { name: /Begin the round/ }).click();
  await page.locator('button.act').first().waitFor();
  await open.close();
  return `${address}/#/rig/${rig}/round/now`;
};

/** From a dead browser to a round screen whose primary button can be pressed, with no server. */
const coldStarts = async (profile: string, round: string): Promise<{ readonly app: readonly number[]; readonly bare: readonly number[] }> => {
  const app: number[] = [];
  const bare: number[] = [];
  for (let i = 0; i < COLD_STARTS; i += 1) {
    const open = await openBrowser(profile, PHONE);
    await slowed(open, SLOWDOWN);
    const since = performance.now();
    await open.page.goto(round);
    await open.page.locator('button.act').first().waitFor();
    app.push(performance.now() - since);
    const page = await open.context.newPage();
    const bareSince = performance.now();
    await page.goto(`data:text/html,${encodeURIComponent(`<title>bare</title>${'<button>x</button>'.repeat(40)}`)}`);
    await page.locator('button').first().waitFor();
    bare.push(performance.now() - bareSince);
    await open.close();
  }
  return { app, bare };
};

/** From a press on the primary button to the next stop, which the app shows only once the answer is durable; beside it one strict write of the same size. */
const keeps = async ({ page }: OpenBrowser): Promise<{ readonly app: readonly number[]; readonly bare: readonly number[] }> => {
  const app: number[] = [];
  const bare: number[] = [];
  for (let i = 0; i < TAPS; i += 1) {
    // No function is named in here: the script runner would wrap it in a helper that the page does not have.
    const one = await page.evaluate(async () => {
      const button = [...document.querySelectorAll<HTMLButtonElement>('button.act')].find((b) => !b.disabled);
      if (!button) return undefined;
      const said = /(\d+) not copied/;
      const kept = Number(said.exec(document.body.textContent ?? '')?.[1] ?? 0);
      const since = performance.now();
      button.click();
      while (Number(said.exec(document.body.textContent ?? '')?.[1] ?? 0) <= kept && performance.now() - since < 10_000) await new Promise((r) => requestAnimationFrame(r));
      return performance.now() - since;
    });
    if (one !== undefined) app.push(one);
    else await page.getByRole('button', { name: 'Could not see it' }).click();
    if (one === undefined) await page.getByRole('button', { name: /Dark or dirty/ }).click();
    bare.push(
      await page.evaluate(
        () =>
          new Promise<number>((resolve, reject) => {
            const opening = indexedDB.open('bench-bare', 1);
            opening.onupgradeneeded = () => opening.result.createObjectStore('lines', { autoIncrement: true });
            opening.onerror = () => reject(opening.error);
            opening.onsuccess = () => {
              const since = performance.now();
              const writing = opening.result.transaction('lines', 'readwrite', { durability: 'strict' });
              writing.objectStore('lines').add('x'.repeat(700));
              writing.oncomplete = () => resolve(performance.now() - since);
            };
          }),
      ),
    );
  }
  return { app, bare };
};

export const inBrowser = async (folder: string): Promise<readonly Row[]> => {
  const profile = join(folder, 'profile');
  const server = await openServer();
  const round = await prepared(profile, server.address);
  await server.stop();
  const cold = await coldStarts(profile, round);
  const open = await openBrowser(profile, PHONE);
  await open.page.goto(round);
  await open.page.locator('button.act').first().waitFor();
  await slowed(open, SLOWDOWN);
  const kept = await keeps(open);
  await open.close();
  const start = summary(cold.app);
  const bareStart = summary(cold.bare);
  const slow = p95(kept.app);
  return [
    {
      what: `cold start to a usable round, offline, ${SLOWDOWN}× slowdown, ${start.runs} starts`,
      goal: '1.0 s',
      reached: `${ms(start.median)} (${ms(start.least)} to ${ms(start.most)})`,
      ratio: `${(start.median / bareStart.median).toFixed(1)} × a bare page in the same browser`,
      met: start.median <= 1000,
    },
    {
      what: `kept on this phone after a tap, ${SLOWDOWN}× slowdown, ${kept.app.length} taps, p95`,
      goal: '200 ms',
      reached: `${ms(slow)} (median ${ms(summary(kept.app).median)})`,
      ratio: `${(slow / p95(kept.bare)).toFixed(1)} × one bare strict write`,
      met: slow <= 200,
    },
  ];
};
