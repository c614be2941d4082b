import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lineOf, readLogbook, writeLogbook } from '../src/logbook';
import { command, dropProfile, newProfile, type OpenBrowser, type OpenServer, openBrowser, openServer } from './browser';
import { type Hand, handOn, settled, until } from './hand';
import { answerSound, entriesOf, exportedLogbook, roundUnderWay, stationCalled } from './walk';

/**
 * Files and figures that cannot be right: each is met with a sentence that says what is wrong and what is safe, and nothing
 * that was recorded is lost or changed by it.
 */
/** The last week of next year, as a tyre would bear it. */
const NEXT_YEAR = `52${String((new Date().getFullYear() + 1) % 100).padStart(2, '0')}`;

const profile = newProfile();
let server: OpenServer;
let phone: OpenBrowser;
let hand: Hand;
let rig = '';

const exported = (): Promise<string> => exportedLogbook(phone.page, hand, server.address, rig);

/** Opens a file as a person does, and reads what the page says of it. */
const opened = async (name: string, text: string): Promise<string> => {
  await phone.page.goto(`${server.address}/#/rigs`);
  await phone.page.goto(`${server.address}/#/record`);
  await phone.page.getByLabel('Open a copy').setInputFiles({ name, mimeType: 'application/jsonl', buffer: Buffer.from(text) });
  const told = phone.page.getByRole('region', { name: 'What was taken in' });
  await told.waitFor();
  return (await told.textContent()) ?? '';
};

const stopAt = async (name: RegExp): Promise<void> => {
  await phone.page.goto(`${server.address}/#/rig/${rig}/round/list`);
  await phone.page.getByRole('link', { name }).first().click();
  await until(phone.page, `the stop ${name}`, (s) => s.stop !== undefined && s.primary !== 'Go on with the round' && s.primary !== '');
};

beforeAll(async () => {
  server = await openServer();
  phone = await openBrowser(profile);
  hand = handOn(phone.page);
  rig = await roundUnderWay(phone.page, hand, server.address, 'Bad input');
});

afterAll(async () => {
  await phone.close();
  await server.stop();
  dropProfile(profile);
});

describe('a logbook file', () => {
  let own = '';
  let other = '';

  beforeAll(async () => {
    own = await exported();
    const file = join(profile, 'other.jsonl');
    await command(['demo', '-o', file]);
    other = readFileSync(file, 'utf8');
  });

  it('that is here already brings nothing new', async () => {
    expect(await opened('same.jsonl', own)).toContain('Nothing new: all of it is here already.');
    expect(await exported()).toBe(own);
  });

  it('cut in half is taken in as far as it goes, and the cut is named', async () => {
    const words = await opened('half.jsonl', other.slice(0, Math.floor(other.length / 2) + 7));
    expect(words).toMatch(/^\d+ entries were taken in\./);
    expect(words).toMatch(/This file is not whole\. The file ends in the middle of line \d+\./);
    expect(await exported()).toBe(own);
  });

  it('cut at a line end is told by its missing closing line', async () => {
    const lines = other.trimEnd().split('\n');
    const words = await opened('line-end.jsonl', `${lines.slice(0, -20).join('\n')}\n`);
    expect(words).toMatch(/taken in, \d+ were here already/);
    expect(words).toContain('The closing line is missing: the file was cut off at a line end');
  });

  it('whole at last brings the rest, and a second time nothing', async () => {
    expect(await opened('whole.jsonl', other)).toMatch(/^\d+ entries were taken in, \d+ were here already\.$/);
    expect(await opened('whole.jsonl', other)).toContain('Nothing new');
  });

  it('that disagrees with what is here is kept beside it, and both are named', async () => {
    const { lines } = readLogbook(own);
    const last = lines.find((l) => l.entry.counter === lines.length);
    if (!last) throw new Error('the logbook has no last line');
    const changed = lineOf({ ...last.entry, id: last.entry.id.replace(/.$/, (c) => (c === '0' ? '1' : '0')), note: 'written on a second device with the same data' });
    const words = await opened('other.jsonl', writeLogbook([...lines.filter((l) => l !== last), changed]));
    expect(words).toMatch(/1 entry was taken in, \d+ were here already\. 1 entry of the file disagrees with what is here/);
    expect(words).toContain('Both are kept; nothing here was replaced.');
    const now = await exported();
    for (const line of own.trimEnd().split('\n').slice(0, -1)) expect(now).toContain(line);
    expect(now).toContain('written on a second device');
  });

  it('that is none at all is refused, and changes nothing', async () => {
    const before = await exported();
    expect(await opened('letter.jsonl', 'Dear sir,\nthe roof leaks.\n')).toMatch(/Nothing was taken in\..*could not be read.*what was recorded here is unchanged/);
    await phone.page.getByLabel('Open a copy').setInputFiles({ name: 'broken.zip', mimeType: 'application/zip', buffer: Buffer.from('PK\u0003\u0004 this is no archive') });
    await phone.page.goto(`${server.address}/#/problems`);
    const problem = await until(phone.page, 'the trouble in words', (s) => s.heading === 'The file could not be opened');
    expect(problem.text).toContain('broken.zip was not taken in');
    expect(problem.text).toContain('Nothing already recorded was changed.');
    await hand.press('Settled');
    expect(await exported()).toBe(before);
  });
});

describe('a photograph', () => {
  it('of more than 40 MB is not kept: what happened, what is safe, what to do; the answer goes on without it', async () => {
    await stopAt(/Wall skin, front/);
    const here = await settled(phone.page);
    // Made in the page: so many bytes would take half a minute through the wire to the browser.
    await phone.page.getByLabel(/^Photo/).evaluate((input: HTMLInputElement) => {
      const bytes = new Uint8Array(42_000_000);
      bytes.set([0xff, 0xd8, 0xff, 0xe0, 0x00, 0x10, 0x4a, 0x46, 0x49, 0x46, 0x00, 0x01]);
      const files = new DataTransfer();
      files.items.add(new File([bytes], 'large.jpg', { type: 'image/jpeg' }));
      input.files = files.files;
      input.dispatchEvent(new Event('change', { bubbles: true }));
    });
    await until(phone.page, 'the problem in the title block', (s) => s.record.startsWith('Problem: a photo was not kept'));
    await phone.page.goto(`${server.address}/#/problems`);
    const told = await until(phone.page, 'the problem in words', (s) => s.heading === 'A photo was not kept');
    expect(told.text).toContain('This photograph has 42 MB; at most 40 MB can be kept.');
    expect(told.text).toContain('Your answers are safe without it. The picture on the phone was not changed.');
    expect(told.text).toContain('Go on without it');
    await hand.press('Settled');
    await stopAt(/Wall skin, front/);
    expect(await answerSound(phone.page, hand)).toEqual([{ station: here.heading, body: { verdict: 'sound' } }]);
  });

  it('that this browser cannot show (HEIC) is kept whole, and the card says that there is no preview', async () => {
    await stopAt(/Wall skin, curb side/);
    const { heading } = await settled(phone.page);
    const heic = Buffer.concat([Buffer.from([0, 0, 0, 0x18]), Buffer.from('ftypheic'), Buffer.from([0, 0, 0, 0]), Buffer.from('mif1heic'), Buffer.alloc(4000, 7)]);
    await phone.page.getByLabel(/^Photo/).setInputFiles({ name: 'IMG_1.HEIC', mimeType: 'image/heic', buffer: heic });
    await until(phone.page, 'the words in place of a picture', (s) => s.text.includes('Kept, but this browser cannot show it'));
    await answerSound(phone.page, hand);
    const text = await exported();
    const entry = entriesOf(text).find((e) => e.place.at === 'station' && e.place.station === stationCalled(entriesOf(text), heading) && e.photos?.length);
    expect(entry?.photos?.[0]).toMatchObject({ media_type: 'image/heic', size_bytes: heic.length });
  });
});

describe('a figure', () => {
  it('of 450 typed as psi is asked about, and kept only after a yes or a change of unit', async () => {
    await stopAt(/Tyre, curb side, front axle/);
    const before = entriesOf(await exported()).length;
    await stopAt(/Tyre, curb side, front axle/);
    await hand.type('450');
    const asked = await until(phone.page, 'the question about the figure', (s) => s.primary === 'Yes, 450 psi is right');
    expect(asked.text).toMatch(/450 psi[\s\S]*kPa/);
    expect(entriesOf(await exported()), 'nothing is kept while it is in doubt').toHaveLength(before);
    await stopAt(/Tyre, curb side, front axle/);
    await hand.press('Pressure in kPa instead');
    await until(phone.page, 'no doubt about 450 kPa', (s) => !s.primary.startsWith('Yes') && !s.disabled);
    for (let now = await settled(phone.page); now.asked === 'Tyre pressure'; now = await settled(phone.page)) {
      if (now.disabled && now.text.includes('Since it was set')) await hand.press('Not moved since');
      await hand.go();
    }
    expect(entriesOf(await exported()).find((e) => e.kind === 'tyre-pressure')?.body['pressure']).toMatchObject({ typed: '450', unit: 'kpa' });
  });

  it.each([
    ['0024', /week/i],
    ['5424', /week/i],
    [NEXT_YEAR, /has not come yet/],
  ])('of the date code %s is refused with its reason', async (code, reason) => {
    await stopAt(/Tyre, curb side, rear axle/);
    for (let guard = 0; guard < 12; guard += 1) {
      const now = await settled(phone.page);
      if (/date code/i.test(now.asked)) break;
      if (now.disabled) await hand.type(/tread/.test(now.primary) ? '8' : '65');
      else await hand.go();
      await until(phone.page, `something after ${now.primary}`, (s) => s.primary !== now.primary || s.asked !== now.asked || s.disabled !== now.disabled);
    }
    for (let i = 0; i < 4; i += 1) await phone.page.getByRole('button', { name: 'Erase', exact: true }).click();
    await hand.type(code);
    const refused = await until(phone.page, `why ${code} cannot be`, (s) => s.disabled && reason.test(s.second + s.text));
    expect(refused.primary).toMatch(/check/i);
    expect(refused.second === '' ? refused.text : refused.second).toMatch(reason);
    expect(
      entriesOf(await exported()).some((e) => e.kind === 'tyre-date-code'),
      'leaving the stop does not write it',
    ).toBe(false);
  });
});
