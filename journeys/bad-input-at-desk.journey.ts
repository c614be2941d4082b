import { createHash } from 'node:crypto';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lineOf, readLogbook, writeLogbook } from '../src/logbook';
import { command, DESK, dropProfile, newProfile, type OpenBrowser, type OpenServer, openBrowser, openServer } from './browser';
import { type Hand, handOn, until } from './hand';
import { entriesOf, firstVisit, newTrailer, saved, stationCalled } from './walk';

/**
 * Dates and figures that cannot be, given at the desk where old papers are written down: each is refused in a sentence
 * that says what is wrong, nothing is written, and the very same form keeps the entry once the date is one that was.
 * A file with an impossible date in it loses that line and no other. Through all of it the digest of what was recorded stays.
 */
const profile = newProfile();
let server: OpenServer;
let browser: OpenBrowser;
let hand: Hand;
let rig = '';
let window = '';
let tyre = '';

/** The logbook as it is now, and the digest that the command finds in it. */
const recorded = async (): Promise<{ readonly text: string; readonly digest: string }> => {
  await browser.page.goto(`${server.address}/#/rig/${rig}/copies`);
  const file = await saved(browser.page, () => hand.press('Save the logbook (.jsonl)'));
  rmSync(file.path);
  const path = join(profile, 'export.jsonl');
  writeFileSync(path, file.bytes);
  const verify = await command(['verify', path]);
  expect(verify.status, verify.out).toBe(0);
  return { text: file.bytes.toString('utf8'), digest: /Digest ([0-9a-f]{64})/.exec(verify.out)?.[1] ?? 'no digest' };
};

/** The form of one kind at one station, opened anew. */
const form = async (kind: string, station: string, heading: RegExp): Promise<void> => {
  await browser.page.goto(`${server.address}/#/rig/${rig}/logbook`);
  await browser.page.goto(`${server.address}/#/rig/${rig}/add?kind=${kind}&station=${station}`);
  await until(browser.page, `the form of ${kind}`, (s) => heading.test(s.heading));
};

/** Presses the button, waits for the refusal, and makes sure that the page has stayed where it was. */
const refused = async (says: RegExp): Promise<void> => {
  await hand.press('Keep it');
  await browser.page.locator('.refusal, .doubt').filter({ hasText: says }).first().waitFor();
  expect(browser.page.url()).toContain('/add?');
};

const days = (): { readonly yesterday: string; readonly tomorrow: string; readonly before: string } => {
  const at = (shift: number): string => new Date(Date.now() + shift * 86_400_000).toISOString().slice(0, 10);
  return { before: at(-9), yesterday: at(-2), tomorrow: at(2) };
};

beforeAll(async () => {
  server = await openServer();
  browser = await openBrowser(profile, DESK);
  hand = handOn(browser.page);
  await firstVisit(browser.page, server.address);
  await hand.press('Start with my rig');
  rig = await newTrailerAtDesk();
  const entries = entriesOf((await recorded()).text);
  window = stationCalled(entries, 'Window 1, curb side');
  tyre = stationCalled(entries, 'Tyre, curb side, rear axle');
});

/** A new rig is described on the screens for the hand, whatever the width. */
const newTrailerAtDesk = async (): Promise<string> => {
  await browser.page.setViewportSize({ width: 390, height: 844 });
  const made = await newTrailer(browser.page, hand, 'Old papers');
  await browser.page.setViewportSize(DESK);
  return made;
};

afterAll(async () => {
  await browser.close();
  await server.stop();
  dropProfile(profile);
});

describe('a date that cannot be', () => {
  it('is refused in words: no such day, a day to come, a span that ends before it begins; nothing is written', async () => {
    const { page } = browser;
    const before = await recorded();
    const { yesterday, tomorrow, before: earlier } = days();
    await form('seal-grade', window, /Seal/);
    await page.getByRole('radio', { name: /^S3/ }).check();
    await page.getByRole('radio', { name: 'On a day' }).check();
    await page.getByLabel('Day', { exact: true }).fill('');
    await refused(/Give a day that is in the calendar\./);
    await page.getByLabel('Day', { exact: true }).fill(tomorrow);
    await refused(/has not come yet\. Give the day on which it was seen\./);
    await page.getByRole('radio', { name: 'Some time between two days' }).check();
    await page.getByLabel('From', { exact: true }).fill(yesterday);
    await page.getByLabel('to', { exact: true }).fill(earlier);
    await refused(/The span ends before it begins\./);
    expect(await recorded(), 'nothing was written').toEqual(before);
  });

  it('does not spoil the form: with a span that was, the entry is kept as it was given', async () => {
    const { page } = browser;
    const { yesterday, before: earlier } = days();
    const before = entriesOf((await recorded()).text).length;
    await form('seal-grade', window, /Seal/);
    await page.getByRole('radio', { name: /^S3/ }).check();
    await page.getByRole('radio', { name: 'Some time between two days' }).check();
    await page.getByLabel('From', { exact: true }).fill(yesterday);
    await page.getByLabel('to', { exact: true }).fill(earlier);
    await refused(/ends before it begins/);
    await page.getByLabel('From', { exact: true }).fill(earlier);
    await page.getByLabel('to', { exact: true }).fill(yesterday);
    await hand.press('Keep it');
    await page.waitForURL(/\/place\//);
    const after = entriesOf((await recorded()).text);
    expect(after).toHaveLength(before + 1);
    expect(after.at(-1)).toMatchObject({ kind: 'seal-grade', observed_at: `${earlier}/${yesterday}`, body: { grade: 'S3' } });
  });

  it('in a file sets that line aside and no other; what was recorded here stays', async () => {
    const before = await recorded();
    const { lines } = readLogbook(before.text);
    const last = lines.at(-1);
    if (!last) throw new Error('an empty logbook');
    const device = last.entry.device.replace(/.$/, (c) => (c === '0' ? '1' : '0'));
    const id = (n: number): string => last.entry.id.replace(/.{2}$/, `a${n}`);
    const good = lineOf({ ...last.entry, id: id(1), device, counter: 1, previous: null, heads: [], note: 'a day that was' });
    const next = lineOf({ ...good.entry, id: id(2), counter: 2, previous: good.hash, note: 'a day that never was' });
    const file = writeLogbook([...lines, good, next]).split('\n');
    const at = file.indexOf(next.text);
    file[at] = next.text.replace(/"observed_at":"[^"]*"/, '"observed_at":"2026-02-30T10:00:00-05:00"');
    await browser.page.goto(`${server.address}/#/rig/${rig}/copies`);
    await browser.page.getByLabel('Open files').setInputFiles({ name: 'technician.jsonl', mimeType: 'application/jsonl', buffer: Buffer.from(file.join('\n')) });
    const told = await until(browser.page, 'what became of the file', (s) => s.text.includes('technician.jsonl:'));
    expect(told.text).toMatch(/1 entry was taken in, \d+ were here already\. 1 line could not be read and was left out; what was recorded here is unchanged\./);
    expect(told.text).toMatch(new RegExp(`Line ${at + 1}: .*2026-02-30`));
    const after = await recorded();
    for (const line of before.text.trimEnd().split('\n').slice(0, -1)) expect(after.text).toContain(line);
    expect(after.text).toContain('a day that was');
    expect(after.text).not.toContain('a day that never was');
  });
});

describe('a code or a figure that cannot be, at the desk', () => {
  it.each([
    ['0023', /There is no week 00\..*Read the code again/],
    ['5423', /There is no week 54\..*Read the code again/],
    ['2398', /has not come yet\. Read the code again/],
    ['tyre', /No date code can be read in this\./],
  ])('date code %s is refused with its reason', async (code, says) => {
    await form('tyre-date-code', tyre, /date code/i);
    await browser.page.locator('input[name=code]').fill(code);
    await refused(says);
  });

  it.each([
    ['-5', /“-5” psi is too low: expected .* Check the figure and the unit\./],
    ['4500', /“4500” psi is too high: expected .* Check the figure and the unit\./],
    ['sixty', /“sixty” is not a number/],
  ])('a pressure of %s psi is refused with its reason', async (figure, says) => {
    await form('tyre-pressure', tyre, /pressure/i);
    await browser.page.locator('input[name=pressure]').fill(figure);
    await refused(says);
  });

  it('450 typed as psi is asked about, with kPa offered, and kept as kPa once that is said', async () => {
    const { page } = browser;
    const before = await recorded();
    await form('tyre-pressure', tyre, /pressure/i);
    await page.locator('input[name=pressure]').fill('450');
    await refused(/450 psi is unusual here\. Did you mean .*450 kPa/);
    expect(await recorded(), 'nothing was written while it was in doubt').toEqual(before);
    await form('tyre-pressure', tyre, /pressure/i);
    await page.locator('input[name=pressure]').fill('450');
    await refused(/450 kPa/);
    await hand.press('It is 450 kPa');
    await hand.press('Keep it');
    await page.waitForURL(/\/place\//);
    const after = entriesOf((await recorded()).text);
    expect(after).toHaveLength(entriesOf(before.text).length + 1);
    expect(after.filter((e) => e.kind === 'tyre-pressure').map((e) => e.body['pressure'])).toEqual([{ typed: '450', unit: 'kpa', si: 450_000 }]);
    expect(
      after.some((e) => e.kind === 'tyre-date-code'),
      'no code that was refused is written',
    ).toBe(false);
  });
});

describe('a photograph, at the desk', () => {
  const graded = async (): Promise<void> => {
    await form('seal-grade', window, /Seal/);
    await browser.page.getByRole('radio', { name: /^S3/ }).check();
  };

  it('of more than 40 MB is not kept, in one plain sentence; the entry is kept without it', async () => {
    const { page } = browser;
    const before = entriesOf((await recorded()).text).length;
    await graded();
    // Made in the page: a file of this size does not go through the wire that drives the browser.
    await page.evaluate(() => {
      const bytes = new Uint8Array(42_000_000).fill(0x5a);
      bytes.set([0xff, 0xd8, 0xff, 0xe0, 0x00, 0x10, 0x4a, 0x46, 0x49, 0x46, 0x00, 0x01]);
      const files = new DataTransfer();
      files.items.add(new File([bytes], 'large.jpg', { type: 'image/jpeg' }));
      const input = document.querySelector<HTMLInputElement>('#entry-photos');
      if (!input) throw new Error('no field for photographs');
      input.files = files.files;
      input.dispatchEvent(new Event('change', { bubbles: true }));
    });
    const told = await page.locator('.refusal').textContent();
    expect(told).toMatch(/^large\.jpg was not kept\. This photograph has 42 MB; at most 40 MB can be kept\..*Your original is untouched/);
    expect(told).not.toContain('..');
    await hand.press('Keep it');
    await page.waitForURL(/\/place\//);
    const after = entriesOf((await recorded()).text);
    expect(after).toHaveLength(before + 1);
    expect(after.at(-1)).not.toHaveProperty('photos');
  });

  it('that the browser cannot decode (HEIC) is kept byte for byte, said so, and goes out with the archive', async () => {
    const { page } = browser;
    const heic = Buffer.concat([Buffer.from([0, 0, 0, 0x18]), Buffer.from('ftypheic'), Buffer.alloc(4), Buffer.from('mif1heic'), Buffer.from('not a picture '.repeat(300))]);
    const hash = createHash('sha256').update(heic).digest('hex');
    await graded();
    await page.locator('#entry-photos').setInputFiles({ name: 'IMG_7.HEIC', mimeType: 'image/heic', buffer: heic });
    await page.getByText('This browser cannot show the photograph. It is kept as it came.').waitFor();
    await hand.press('Keep it');
    await page.waitForURL(/\/place\//);
    await page.getByText('This browser cannot show the photograph.').first().waitFor();
    expect(entriesOf((await recorded()).text).at(-1)?.photos).toEqual([{ hash, media_type: 'image/heic', size_bytes: heic.length }]);
    const archive = await saved(page, () => hand.press('Save everything (.zip)'));
    rmSync(archive.path);
    expect(archive.bytes.includes(heic), 'the very bytes').toBe(true);
    expect(archive.bytes.includes(`photos/${hash}`)).toBe(true);
  });
});
