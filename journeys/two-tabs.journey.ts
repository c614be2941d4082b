import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, dropProfile, newProfile, type OpenBrowser, type OpenServer, openBrowser, openServer, PHONE } from './browser';
import { type Hand, handOn, until } from './hand';
import { answerSound, beginRound, entriesOf, firstVisit, type Kept, newTrailer, saved, stationCalled } from './walk';

/**
 * Two tabs of one browser record at the same time: one device, one chain, every counter once and none left out, every
 * answer of both in it, and each tab shows what the other has recorded.
 */
const EACH = 12;

const profile = newProfile();
let server: OpenServer;
let browser: OpenBrowser;
let rig = '';
let one: { readonly page: Page; readonly hand: Hand };
let two: { readonly page: Page; readonly hand: Hand };
const kept: Kept[] = [];

const walk = async ({ page, hand }: typeof one): Promise<void> => {
  for (let i = 0; i < EACH; i += 1) kept.push(...(await answerSound(page, hand)));
};

beforeAll(async () => {
  server = await openServer();
  browser = await openBrowser(profile);
  one = { page: browser.page, hand: handOn(browser.page) };
  await firstVisit(one.page, server.address);
  await one.hand.press('Start with my rig');
  rig = await newTrailer(one.page, one.hand, 'Two tabs');
  await beginRound(one.page, one.hand);
  // A window of its own: what lies behind another tab is drawn once a second at most, and both hands are to be quick.
  const opened = browser.context.waitForEvent('page');
  await (await browser.browser.newBrowserCDPSession()).send('Target.createTarget', { url: 'about:blank', newWindow: true });
  const page = await opened;
  await page.setViewportSize(PHONE);
  two = { page, hand: handOn(page) };
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  dropProfile(profile);
});

describe('two tabs at once', () => {
  it('both record, and each shows what the other has', async () => {
    await two.page.goto(`${server.address}/#/rig/${rig}/round/41`);
    await until(two.page, 'the 41st stop', (s) => s.stop === 41);
    await Promise.all([walk(one), walk(two)]);
    expect(kept.length).toBeGreaterThanOrEqual(2 * EACH);
    for (const { page } of [one, two]) {
      // Not reloaded: the address within the page changes, the worker of the tab stays.
      await page.evaluate((address) => location.assign(address), `#/rig/${rig}`);
      await until(page, 'the answers of both tabs', (s) => s.second.startsWith(`${2 * EACH} of `));
    }
  });

  it('the logbook is one chain of one device without a gap, and holds every answer', async () => {
    await one.page.goto(`${server.address}/#/rig/${rig}/copies`);
    const file = await saved(one.page, () => one.hand.press('Save the logbook (.jsonl)'));
    rmSync(file.path);
    const entries = entriesOf(file.bytes.toString('utf8'));
    expect(new Set(entries.map((e) => e.device)).size).toBe(1);
    expect(entries.map((e) => e.counter)).toEqual(entries.map((_, i) => i + 1));
    for (const k of kept)
      expect(
        entries.some((e) => e.place.at === 'station' && e.place.station === stationCalled(entries, k.station)),
        k.station,
      ).toBe(true);
    const log = join(profile, 'tabs.jsonl');
    writeFileSync(log, file.bytes);
    const verify = await command(['verify', log]);
    expect(verify.out).toContain('whole');
    expect(verify.status).toBe(0);
  });
});
