import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readLogbook, writeLogbook } from '../src/logbook';
import { command, dropProfile, newProfile, type OpenBrowser, openBrowser, openServer, PHONE } from './browser';
import { type Hand, handOn, settled, until } from './hand';
import { answerSound, beginRound, entriesOf, firstVisit, newTrailer, READINGS, saved, stationCalled } from './walk';

/**
 * What people and files give wrongly, on a phone with the server stopped: a photograph that is too large, one that cannot be shown, a
 * pressure in another unit, date codes that cannot be, logbooks cut off, taken in twice, changed, or of a copied device.
 * Each time the screen says what is wrong and what is safe, and every line recorded before stands byte for byte in the next export.
 */
const TYRE = 'Tyre, curb side, rear axle';

const profile = newProfile();
let phone: OpenBrowser;
let hand: Hand;
let address = '';
let rig = '';
/** Every line that was recorded so far, without the closing line. */
let recorded: readonly string[] = [];

const linesOf = (text: string): readonly string[] => text.trimEnd().split('\n').slice(0, -1);

/** Exports and sees to it that nothing recorded before is missing or different. */
const exported = async (): Promise<string> => {
  await phone.page.goto(`${address}/#/rig/${rig}/copies`);
  const file = await saved(phone.page, () => hand.press('Save the logbook (.jsonl)'));
  rmSync(file.path);
  const text = file.bytes.toString('utf8');
  const held = new Set(linesOf(text));
  expect(
    recorded.filter((line) => !held.has(line)),
    'recorded lines that are missing',
  ).toEqual([]);
  recorded = linesOf(text);
  return text;
};

const inFile = (name: string, content: string | Uint8Array): string => {
  const path = join(profile, name);
  writeFileSync(path, content);
  return path;
};

/** Brings a file in at the page of copies and resolves to what the page says about it. */
const broughtIn = async (page: Page, name: string, content: string): Promise<string> => {
  await page.goto(`${address}/#/rigs`);
  await page.goto(`${address}/#/rig/${rig}/copies`);
  await page.getByLabel('Open files').setInputFiles(inFile(name, content));
  const told = page.getByRole('status').filter({ hasText: `${name}: ` });
  await told.waitFor();
  return ((await told.textContent()) ?? '').replaceAll('\u00a0', ' ');
};

/** Hands a file over by its path, as a person does: its bytes do not travel through the reins of the browser. */
const chooseFile = async (page: Page, selector: string, path: string): Promise<void> => {
  const reins = await page.context().newCDPSession(page);
  const { root } = await reins.send('DOM.getDocument');
  const { nodeId } = await reins.send('DOM.querySelector', { nodeId: root.nodeId, selector });
  await reins.send('DOM.setFileInputFiles', { files: [path], nodeId });
  await reins.detach();
};

const toStop = async (name: string): Promise<void> => {
  await phone.page.goto(`${address}/#/rig/${rig}/round/list`);
  await hand.press(new RegExp(name));
  await until(phone.page, name, (s) => s.heading.startsWith(name));
};

beforeAll(async () => {
  const server = await openServer();
  ({ address } = server);
  phone = await openBrowser(profile);
  hand = handOn(phone.page);
  await firstVisit(phone.page, address);
  await server.stop();
  await hand.press('Start with my rig');
  rig = await newTrailer(phone.page, hand, 'Hard day');
  await beginRound(phone.page, hand);
  await answerSound(phone.page, hand);
  await exported();
});

afterAll(async () => {
  await phone.close();
  dropProfile(profile);
});

describe('photographs', () => {
  it('one over 40 MB is refused with its size, the answer is kept without it', async () => {
    const { page } = phone;
    await toStop('Window 1, curb side');
    await hand.press(/^S4/);
    await until(page, 'a verdict', (s) => s.text.includes('Before rain'));
    const large = new Uint8Array(41_000_000);
    large.set([0xff, 0xd8, 0xff, 0xe0]);
    await chooseFile(page, '.shoot input[type=file]', inFile('large.jpg', large));
    await until(page, 'the trouble in the title block', (s) => /a photo was not kept/i.test(s.record));
    await page.getByRole('link', { name: /^Problem: a photo was not kept/i }).click();
    const told = await until(page, 'the three steps', (s) => s.heading === 'A photo was not kept');
    expect(told.text).toContain('This photograph has 41 MB; at most 40 MB can be kept. Take it at a smaller size. Your original is untouched');
    expect(told.text).toMatch(/What is safe\s+Your answers are safe without it\./i);
    await hand.press('Settled');
    await until(page, 'no problem left', (s) => s.text.includes('Nothing is wrong on this device'));
    const text = await exported();
    const window = stationCalled(entriesOf(text), 'Window 1, curb side');
    const graded = entriesOf(text).filter((e) => e.kind === 'seal-grade' && e.place.at === 'station' && e.place.station === window);
    expect(graded.map((e) => [e.body['grade'], e.photos ?? []])).toEqual([['S4', []]]);
  });

  it('one that this browser cannot show (HEIC) is kept byte for byte, and words stand in its place', async () => {
    const { page } = phone;
    await toStop('Window 2, curb side');
    await hand.press(/^S4/);
    await until(page, 'a verdict', (s) => s.text.includes('Before rain'));
    // A file type box as ISO/IEC 14496-12 has it, of brand heic; what follows is no picture.
    const box = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic'), Buffer.from([0, 0, 0, 0]), Buffer.from('mif1heic')]);
    const heic = Buffer.concat([box, Buffer.alloc(2000, 0x5a)]);
    await page.getByLabel(/^Photo/).setInputFiles({ name: 'shot.heic', mimeType: 'image/heic', buffer: heic });
    const now = await until(page, 'words in place of the picture', (s) => s.text.includes('Kept, but this browser cannot show it'));
    expect(now.record).not.toContain('Problem');
    const entries = entriesOf(await exported());
    const window = stationCalled(entries, 'Window 2, curb side');
    const photos = entries.filter((e) => e.place.at === 'station' && e.place.station === window).flatMap((e) => e.photos ?? []);
    expect(photos).toEqual([expect.objectContaining({ media_type: 'image/heic', size_bytes: heic.length })]);
    await page.goto(`${address}/#/rig/${rig}/copies`);
    const archive = await saved(page, () => hand.press('Save everything (.zip)'));
    rmSync(archive.path);
    expect(archive.bytes.includes(heic), 'the archive holds the very bytes').toBe(true);
  });
});

describe('figures on the round', () => {
  it('450 typed as psi is asked about, and kept in the unit that was meant', async () => {
    const { page } = phone;
    await toStop(TYRE);
    await hand.type('450');
    const asked = await until(page, 'the question', (s) => s.text.includes('Did you mean'));
    expect(asked.text.replaceAll('\u00a0', ' ')).toMatch(/450 psi is unusual here\. Did you mean .*450 kPa/);
    expect(asked.primary.replaceAll('\u00a0', ' ')).toBe('Yes, 450 psi is right');
    await hand.press('Pressure in kPa instead');
    await until(page, 'no question left', (s) => !s.text.includes('Did you mean') && !s.primary.startsWith('Yes'));
    const entries = entriesOf(await exported());
    const tyre = stationCalled(entries, TYRE);
    const withdrawn = new Set(entries.flatMap((e) => (e.kind === 'withdrawal' ? (e.concerns ?? []) : [])));
    const kept = entries.filter((e) => e.kind === 'tyre-pressure' && e.place.at === 'station' && e.place.station === tyre && !withdrawn.has(e.id));
    expect(kept.map((e) => e.body['pressure'])).toEqual([{ typed: '450', unit: 'kpa', si: 450_000 }]);
  });

  it('a date code of week 00, of week 54, or still to come is refused in words and not kept', async () => {
    const { page } = phone;
    await toStop(TYRE);
    for (let now = await settled(page); now.asked !== 'Tyre date code'; now = await settled(page)) {
      if (now.disabled && now.text.includes('Since it was set')) await hand.press('Driven');
      const reading = READINGS.find(([asked]) => asked.test(now.primary));
      if (now.disabled && reading) await hand.type(reading[1]);
      else await hand.go();
    }
    const yearAhead = String((new Date().getFullYear() + 1) % 100).padStart(2, '0');
    const wrong: readonly (readonly [code: string, says: RegExp])[] = [
      ['0023', /There is no week 00\. The first two digits are the week\. Read the code again/],
      ['5423', /There is no week 54\./],
      [`10${yearAhead}`, /This would be the week from 20\d\d-\d\d-\d\d, which has not come yet\. Read the code again, and check that today's date is right\./],
    ];
    for (const [code, says] of wrong) {
      await hand.type(code);
      const now = await until(page, `${code} to be refused`, (s) => says.test(s.text));
      expect(now.disabled, `${code} cannot be kept`).toBe(true);
      for (const _ of code) await hand.press('Erase');
      await until(page, 'an empty field', (s) => s.primary === 'Type the date code');
    }
    await hand.type('2324');
    await until(page, 'the code read', (s) => !s.disabled && s.text.includes('the week from 9 June 2024'));
    await hand.go();
    // Straight to the copies, while the answer is still being kept: the walk does not pull the person back.
    const codes = entriesOf(await exported()).filter((e) => e.kind === 'tyre-date-code');
    expect(codes.map((e) => e.body['code'])).toEqual(['2324']);
  });
});

describe('files brought in', () => {
  let whole = '';
  let count = 0;

  /** The file ends in the middle of the line that stands halfway. */
  const half = (): { readonly text: string; readonly before: number } => {
    const before = Math.floor(count / 2);
    const line = recorded[before] ?? '';
    return { text: `${recorded.slice(0, before).join('\n')}\n${line.slice(0, line.length / 2)}`, before };
  };

  it('cut in half: what can be read is known already, and the page says where the file ends', async () => {
    whole = await exported();
    count = recorded.length;
    expect(count).toBeGreaterThan(6);
    const { text, before } = half();
    const told = await broughtIn(phone.page, 'half.jsonl', text);
    expect(told).toContain('Nothing new: all of it is here already.');
    expect(told).toContain(`The file ends in the middle of line ${before + 1}. What followed is not in this file. Export it again where it came from.`);
    expect(told).toContain('1 line could not be read and was left out; what was recorded here is unchanged.');
    expect(await exported(), 'not a byte is different here').toBe(whole);
  });

  it('cut in half, on a device without this rig: the entries before the cut are taken in, and the rig can be used', async () => {
    const elsewhere = await phone.browser.newContext({ viewport: PHONE });
    const page = await elsewhere.newPage();
    const server = await openServer();
    try {
      await page.goto(`${server.address}/#/record`);
      const { text, before } = half();
      await page.getByLabel('Open a copy').setInputFiles(inFile('half-elsewhere.jsonl', text));
      const told = await until(page, 'what was taken in', (s) => s.text.includes('taken in'));
      expect(told.text).toContain(`${before} entries were taken in.`);
      expect(told.text).toContain(`The file ends in the middle of line ${before + 1}.`);
      await page.goto(`${server.address}/#/rig/${rig}`);
      await until(page, 'the rig', (s) => s.primary === 'Go on with the round');
    } finally {
      await elsewhere.close();
      await server.stop();
    }
  });

  it('cut at a line end: every line can be read, and the missing closing line is told', async () => {
    const told = await broughtIn(phone.page, 'line-end.jsonl', `${recorded.slice(0, -2).join('\n')}\n`);
    expect(told).toContain('Nothing new: all of it is here already.');
    expect(told).toContain('The closing line is missing: the file was cut off at a line end, or it is not a whole export. Later entries may be missing.');
    expect(await exported()).toBe(whole);
  });

  it('the same file twice changes nothing', async () => {
    for (const name of ['once.jsonl', 'twice.jsonl']) expect(await broughtIn(phone.page, name, whole)).toBe(`${name}: Nothing new: all of it is here already.`);
    expect(await exported()).toBe(whole);
  });

  it('no logbook at all: nothing is taken in', async () => {
    const told = await broughtIn(phone.page, 'holiday.jsonl', 'Dear diary,\nit rained.\n');
    expect(told).toContain('Nothing was taken in. 2 lines could not be read and were left out; what was recorded here is unchanged.');
    expect(await exported()).toBe(whole);
  });

  it('a file of a copied device, whole by itself, disagrees with what is here: it is told, and both are kept', async () => {
    const last = recorded.at(-1) ?? '';
    const id = (JSON.parse(last) as { id: string }).id;
    const other = last.replace(id, `${id.slice(0, -4)}${id.endsWith('0000') ? '1111' : '0000'}`).replace('"2324"', '"2224"');
    expect(other).not.toBe(last);
    const { lines } = readLogbook(`${[...recorded.slice(0, -1), other].join('\n')}\n`);
    const copied = writeLogbook(lines);
    expect((await command(['verify', inFile('by-itself.jsonl', copied)])).status, 'whole by itself').toBe(0);
    const told = await broughtIn(phone.page, 'copied.jsonl', copied);
    expect(told).toContain(`1 entry was taken in, ${count - 1} were here already.`);
    expect(told).toContain('1 entry of the file disagrees with what is here: the same device wrote something else under the same number.');
    expect(told).toContain('Both are kept; nothing here was replaced.');
    const now = linesOf(await exported());
    expect(now).toHaveLength(count + 1);
    expect(now).toContain(other);
    expect(now).toContain(last);
  });

  it('a file with a line changed after it was written: which line, and what is here stays', async () => {
    const at = recorded.findIndex((l) => l.includes('"seal-grade"') && l.includes('"S4"'));
    const changed = recorded.map((l, i) => (i === at ? l.replace('"S4"', '"S0"') : l));
    const told = await broughtIn(phone.page, 'changed.jsonl', `${changed.join('\n')}\n${whole.trimEnd().split('\n').at(-1)}\n`);
    expect(told).toContain('1 entry was taken in');
    expect(told).toContain(`Line ${at + 1}`);
    expect(told).toContain('was changed after it was written');
    expect(told).toContain('Both are kept; nothing here was replaced.');
    await exported();
    await phone.page.goto(`${address}/#/rig/${rig}/plan`);
    // The line that was seen when later ones were written is the one that is read.
    await until(phone.page, 'the open seal, still on the plan', (s) => /Before rain[\s\S]*window 1/i.test(s.text));
  });
});
