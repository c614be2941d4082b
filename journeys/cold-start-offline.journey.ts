import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dropProfile, newProfile, type OpenBrowser, openBrowser, openServer, PHONE } from './browser';
import { handOn, seen, settled, until } from './hand';
import { answerSound, beginRound, firstVisit, goOnWith, newTrailer } from './walk';

/**
 * After one visit the program starts from cold without a server and without a network, with the rig and a round that goes
 * on; and where browsers forbid that, on plain http from another machine, the page says that, why, and what to do.
 */
const RIG = 'Out of signal';
const profile = newProfile();
let phone: OpenBrowser;
let address = '';

beforeAll(async () => {
  const server = await openServer();
  ({ address } = server);
  phone = await openBrowser(profile);
  await firstVisit(phone.page, address);
  const hand = handOn(phone.page);
  await hand.press('Start with my rig');
  await newTrailer(phone.page, hand, RIG);
  await server.stop();
  // A browser throws away what it only remembers of the network whenever it likes: what starts now was kept on purpose.
  const network = await phone.context.newCDPSession(phone.page);
  await network.send('Network.clearBrowserCache');
  await phone.close();
});

afterAll(async () => {
  await phone.close();
  dropProfile(profile);
});

describe('a cold start in airplane mode', () => {
  it('starts, shows the rig, and a round can be walked', async () => {
    await expect(fetch(address), 'the server is gone').rejects.toThrow();
    phone = await openBrowser(profile);
    const network = await phone.context.newCDPSession(phone.page);
    await network.send('Network.enable');
    await network.send('Network.emulateNetworkConditions', { offline: true, latency: 0, downloadThroughput: 0, uploadThroughput: 0 });
    const hand = handOn(phone.page);
    await phone.page.goto(address);
    await until(phone.page, 'the rig in the list', (s) => s.text.includes(RIG));
    await hand.press(new RegExp(`^${RIG}`));
    const stops = await beginRound(phone.page, hand);
    expect(stops).toBeGreaterThan(60);
    for (let i = 0; i < 3; i += 1) await answerSound(phone.page, hand);
    expect((await settled(phone.page)).stop).toBe(4);
  });

  it('every page that is loaded when first wanted is there too', async () => {
    const base = phone.page.url().replace(/\/round.*/, '');
    for (const [page, words] of [
      ['sheet', 'Curb side'],
      ['plan', 'Not ready|Ready to roll'],
      ['logbook', 'entries'],
      ['describe', 'Tongue jack|Station'],
      ['copies', 'Save a copy'],
      ['print', 'Walk sheet|paper'],
    ] as const) {
      await phone.page.goto(`${base}/${page}`);
      await until(phone.page, `the page ${page} says ${words}`, (s) => s.heading !== '' && new RegExp(words, 'i').test(s.text));
    }
  });

  it('and once more after the browser was closed, where the round was left', async () => {
    await phone.close();
    phone = await openBrowser(profile);
    expect(await goOnWith(phone.page, handOn(phone.page), address, RIG)).toBe(3);
    expect((await seen(phone.page)).stop).toBe(4);
  });
});

describe('a page that browsers do not let work offline', () => {
  it('says so, why, what is safe and what to do, and still records', async () => {
    const other = newProfile();
    const server = await openServer();
    const browser = await openBrowser(other, PHONE, '--host-resolver-rules=MAP rig.test 127.0.0.1');
    try {
      await browser.page.goto(server.address.replace(/127\.0\.0\.1|localhost/, 'rig.test'));
      expect(await browser.page.evaluate(() => isSecureContext)).toBe(false);
      const notice = browser.page.getByRole('complementary', { name: 'Working offline' });
      await notice.getByText('This page cannot work offline here.', { exact: true }).click();
      const words = await notice.textContent();
      expect(words).toMatch(/plain http from another machine/);
      expect(words).toMatch(/What you record is kept in this browser/);
      expect(words).toMatch(/over https.*seamward serve --cert/);
      await notice.getByRole('button', { name: 'Close' }).click();
      const hand = handOn(browser.page);
      await hand.press('Start with my rig');
      expect(await newTrailer(browser.page, hand)).toMatch(/^[0-9a-f-]{36}$/);
    } finally {
      await browser.close();
      await server.stop();
      dropProfile(other);
    }
  });
});
