import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, DESK, dropProfile, newProfile, type OpenBrowser, openBrowser, openServer } from './browser';
import { handOn, until } from './hand';
import { entriesOf, firstVisit, newTrailer, saved, stationCalled } from './walk';

/**
 * One rig on two devices that meet by files only, with no server: the second takes the first one's file in and holds the same
 * digest; both write on; files go both ways, in either order, and both hold the same again. Two corrections of one entry,
 * made without knowing of each other, are shown on both and settled by a third entry, on both.
 */
const TYRE = 'Tyre, curb side, rear axle';
const WINDOW = 'Window 1, curb side';

type Device = { readonly name: string; readonly page: Page; readonly hand: ReturnType<typeof handOn> };

const profile = newProfile();
let browser: OpenBrowser;
let second: BrowserContext;
let first_device: Device;
let second_device: Device;
let address = '';
let rig = '';
let tyre = '';
let window = '';
let files = 0;

const open = async (device: Device, path: string): Promise<void> => {
  await device.page.goto(`${address}/#/${path}`);
};

/** What this device's logbook holds now, as the file that goes to the other one. */
const exported = async (device: Device): Promise<{ readonly text: string; readonly path: string; readonly digest: string }> => {
  await open(device, `rig/${rig}/copies`);
  const file = await saved(device.page, () => device.hand.press('Save the logbook (.jsonl)'));
  rmSync(file.path);
  files += 1;
  const path = join(profile, `${device.name}-${files}.jsonl`);
  const text = file.bytes.toString('utf8');
  writeFileSync(path, text);
  const verify = await command(['verify', path]);
  expect(verify.out, `the file of the ${device.name} device`).toMatch(/^\d+ entries, whole/);
  const digest = /Digest ([0-9a-f]{64})/.exec(verify.out)?.[1] ?? 'no digest';
  // The digest that the person reads out to somebody else is the one the command finds.
  await until(device.page, 'the digest on the screen', (s) => s.text.includes(digest));
  return { text, path, digest };
};

const bringIn = async (device: Device, path: string, says: RegExp): Promise<void> => {
  await open(device, `rig/${rig}/copies`);
  await device.page.getByLabel('Open files').setInputFiles(path);
  await until(device.page, `to be told ${says}`, (s) => says.test(s.text));
};

const pressureAt = async (device: Device, psi: string): Promise<void> => {
  await open(device, `rig/${rig}/add?kind=tyre-pressure&station=${tyre}`);
  await device.page.locator('input[name=pressure]').fill(psi);
  await device.hand.press('Keep it');
  await device.page.waitForURL(/\/place\//);
};

const correctPressure = async (device: Device, entry: string, psi: string): Promise<void> => {
  await open(device, `rig/${rig}/correct/${entry}`);
  await device.page.locator('input[name=pressure]').fill(psi);
  await device.hand.press('Keep the correction');
  await device.page.waitForURL(/\/logbook/);
};

const named = async (device: Device, by: string): Promise<void> => {
  await open(device, 'settings');
  await device.page.getByLabel('Written beside every entry from this device').fill(by);
};

beforeAll(async () => {
  const server = await openServer();
  ({ address } = server);
  browser = await openBrowser(profile);
  second = await browser.browser.newContext({ viewport: DESK });
  const other = await second.newPage();
  first_device = { name: 'first', page: browser.page, hand: handOn(browser.page) };
  second_device = { name: 'second', page: other, hand: handOn(other) };
  await firstVisit(browser.page, address);
  await firstVisit(other, address);
  await server.stop();
  await first_device.hand.press('Start with my rig');
  rig = await newTrailer(browser.page, first_device.hand, 'Two pockets');
  await browser.page.setViewportSize(DESK);
  await named(first_device, 'Ash');
  await named(second_device, 'Bay');
});

afterAll(async () => {
  await second.close();
  await browser.close();
  dropProfile(profile);
});

describe('one rig on two devices, with files in place of a server', () => {
  let reading = '';

  it('the second device knows nothing at first, takes the file in, and holds the same digest', async () => {
    await open(second_device, 'rigs');
    await until(second_device.page, 'an empty device', (s) => s.primary === 'Start with my rig');
    const first = await exported(first_device);
    const entries = entriesOf(first.text);
    tyre = stationCalled(entries, TYRE);
    window = stationCalled(entries, WINDOW);
    await open(second_device, 'record');
    await second_device.page.getByLabel('Open a copy').setInputFiles(first.path);
    await until(second_device.page, 'what was taken in', (s) => s.text.includes(`${entries.length} entries were taken in.`));
    await open(second_device, 'rigs');
    await until(second_device.page, 'the rig by its name', (s) => s.text.includes('Two pockets'));
    const other = await exported(second_device);
    expect(other.digest).toBe(first.digest);
    expect(other.text, 'the very same lines').toBe(first.text);
  });

  it('both write on, files go both ways, and both hold the same', async () => {
    await pressureAt(first_device, '62');
    await open(second_device, `rig/${rig}/add?kind=seal-grade&station=${window}`);
    await second_device.page.getByRole('radio', { name: /^S4 Open/ }).check();
    await second_device.hand.press('Keep it');
    await second_device.page.waitForURL(/\/place\//);
    const [one, two] = [await exported(first_device), await exported(second_device)];
    expect(one.digest).not.toBe(two.digest);
    const known = entriesOf(one.text).length - 1;
    await bringIn(first_device, two.path, new RegExp(`1 entry was taken in, ${known} were here already\\.`));
    await bringIn(second_device, one.path, new RegExp(`1 entry was taken in, ${known} were here already\\.`));
    const [merged, alike] = [await exported(first_device), await exported(second_device)];
    expect(alike.digest).toBe(merged.digest);
    expect(alike.text).toBe(merged.text);
    const entries = entriesOf(merged.text);
    expect(entries).toHaveLength(known + 2);
    expect(new Set(entries.map((e) => e.device)).size, 'two devices wrote').toBe(2);
    reading = entries.find((e) => e.kind === 'tyre-pressure')?.id ?? '';
    // What the other one wrote is judged here too.
    for (const device of [first_device, second_device]) {
      await open(device, `rig/${rig}/plan`);
      await until(device.page, 'the open seal on the plan', (s) => /Before rain[\s\S]*window 1/i.test(s.text));
    }
  });

  it('two corrections made without knowing of each other are shown on both devices, neither lost', async () => {
    await correctPressure(first_device, reading, '64');
    await correctPressure(second_device, reading, '56');
    const [one, two] = [await exported(first_device), await exported(second_device)];
    await bringIn(first_device, two.path, /1 entry was taken in/);
    await bringIn(second_device, one.path, /1 entry was taken in/);
    expect((await exported(second_device)).digest).toBe((await exported(first_device)).digest);
    for (const device of [first_device, second_device]) {
      await open(device, `rig/${rig}/logbook`);
      const now = await until(device.page, 'the question', (s) => s.text.includes('Needs your word'));
      expect(now.text).toContain('was changed twice, on devices that did not know of each other. Both are kept.');
      const choices = device.page.getByRole('region', { name: 'Needs your word' }).getByRole('listitem');
      expect((await choices.allTextContents()).map((t) => /by (Ash|Bay)/.exec(t)?.[1]).toSorted(), 'whose word each is').toEqual(['Ash', 'Bay']);
    }
  });

  it('a third entry settles it, on both devices', async () => {
    const { page } = first_device;
    await open(first_device, `rig/${rig}/logbook`);
    const doubts = page.getByRole('region', { name: 'Needs your word' });
    await doubts.getByRole('listitem').filter({ hasText: 'by Bay' }).getByRole('button', { name: 'Let this one count' }).click();
    await doubts.waitFor({ state: 'detached' });
    const settled = await exported(first_device);
    const entries = entriesOf(settled.text);
    const words = entries.filter((e) => e.kind === 'correction' && e.concerns?.includes(reading));
    expect(words, 'both stand in the logbook, and the one that settles').toHaveLength(3);
    await open(second_device, `rig/${rig}/logbook`);
    await until(second_device.page, 'still asked here', (s) => s.text.includes('Needs your word'));
    await bringIn(second_device, settled.path, /1 entry was taken in/);
    for (const device of [first_device, second_device]) {
      await open(device, `rig/${rig}/logbook`);
      const now = await until(device.page, 'the logbook', (s) => s.heading.startsWith('Logbook,'));
      expect(now.text).not.toContain('Needs your word');
      await open(device, `rig/${rig}/place/${tyre}`);
      const place = await until(device.page, 'the pressure that counts', (s) => s.text.includes('56 psi'));
      expect(place.text).not.toMatch(/6[24] psi/);
    }
    const [here, there] = [await exported(first_device), await exported(second_device)];
    expect(there.digest).toBe(here.digest);
    const plans = await Promise.all([here, there].map(({ path }) => command(['plan', '--json', path])));
    expect(plans[0]?.status).toBe(0);
    expect(plans[0]?.out, 'the same plan of both').toBe(plans[1]?.out);
    expect(plans[0]?.out.replaceAll('\u00a0', ' '), 'judged by the word that counts').toMatch(/"text": "56 psi/);
  });
});
