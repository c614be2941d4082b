import { rmSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dropProfile, newProfile, type OpenBrowser, openBrowser, openServer } from './browser';
import { type Hand, handOn, seen, settled, until } from './hand';
import { answerSound, beginRound, entriesOf, firstVisit, goOnWith, newTrailer, saved, stationCalled } from './walk';

/**
 * A cold start without any server: the first visit keeps the whole program, then the browser ends, the server ends, and
 * the profile is opened anew. The rig is there, a round goes on where it was, and an answer is kept. Where a page
 * cannot work offline at all (plain http from another machine), it says so, says why, and what to do.
 */
const RIG = 'Cold morning';

const profile = newProfile();
let phone: OpenBrowser;
let hand: Hand;
let address = '';

const reopened = async (): Promise<void> => {
  await phone.kill();
  phone = await openBrowser(profile);
  hand = handOn(phone.page);
};

/** Any request that gets an answer from outside the device makes the journey fail. */
const answeredFromOutside: string[] = [];
const listen = (): void => {
  phone.page.on('response', (answer) => {
    if (!answer.fromServiceWorker() && answer.url().startsWith('http')) answeredFromOutside.push(answer.url());
  });
};

describe('a cold start with no server at all', () => {
  beforeAll(async () => {
    const server = await openServer();
    ({ address } = server);
    phone = await openBrowser(profile);
    hand = handOn(phone.page);
    await firstVisit(phone.page, address);
    await hand.press('Start with my rig');
    await newTrailer(phone.page, hand, RIG);
    await beginRound(phone.page, hand);
    await answerSound(phone.page, hand);
    await server.stop();
    await reopened();
    listen();
  });
  afterAll(async () => {
    await phone.close();
    dropProfile(profile);
  });

  it('the rig is there, and the round goes on after the stop that was answered', async () => {
    await expect(fetch(address), 'the server is gone').rejects.toThrow();
    expect(await goOnWith(phone.page, hand, address, RIG), 'stops answered before').toBe(1);
    expect((await settled(phone.page)).stop).toBe(2);
  });

  it('an answer given now is kept, through a second cold start, and stands in the export', async () => {
    const kept = await answerSound(phone.page, hand);
    const [first] = kept;
    if (!first) throw new Error('the second stop asked nothing');
    expect((await settled(phone.page)).stop).toBe(3);
    await reopened();
    listen();
    expect(await goOnWith(phone.page, hand, address, RIG), 'both stops are answered').toBe(2);
    await phone.page.goto(`${phone.page.url().replace(/\/round.*/, '')}/copies`);
    const file = await saved(phone.page, () => hand.press('Save the logbook (.jsonl)'));
    rmSync(file.path);
    const entries = entriesOf(file.bytes.toString('utf8'));
    const here = entries.filter((e) => e.place.at === 'station' && e.place.station === stationCalled(entries, first.station));
    for (const { body } of kept) expect(here.map((e) => e.body)).toContainEqual(expect.objectContaining(body));
  });

  it('every other page opens too: plan, sheet, printing, worksheets, settings', async () => {
    const rig = /#\/rig\/([^/]+)/.exec(phone.page.url())?.[1] ?? '';
    const pages: readonly (readonly [path: string, says: RegExp])[] = [
      [`rig/${rig}/plan`, /Ready to roll|Not ready to roll/],
      [`rig/${rig}/print`, /condition record/i],
      [`rig/${rig}/logbook`, /Layout|Described|Round/i],
      ['worksheets', /Dew point/i],
      ['settings', /Units/i],
      ['record', /The whole program is kept on this device. It starts without a signal./],
    ];
    for (const [path, says] of pages) {
      await phone.page.goto(`${address}/#/${path}`);
      await until(phone.page, `${path} to say ${says}`, (s) => s.heading !== '' && says.test(s.text));
    }
  });

  it('nothing of all that came from outside the device', () => {
    expect(answeredFromOutside).toEqual([]);
  });
});

describe('a page opened over plain http from another machine', () => {
  const elsewhere = newProfile();
  let far: OpenBrowser;
  let stop: () => Promise<void>;
  let there = '';
  beforeAll(async () => {
    const server = await openServer();
    ({ stop } = server);
    there = `http://rig.test:${new URL(server.address).port}`;
    far = await openBrowser(elsewhere, undefined, '--host-resolver-rules=MAP rig.test 127.0.0.1');
  });
  afterAll(async () => {
    await far.close();
    await stop();
    dropProfile(elsewhere);
  });

  it('says that it cannot work offline there, why, what is safe and what to do', async () => {
    const { page } = far;
    await page.goto(there);
    expect(await page.evaluate(() => window.isSecureContext)).toBe(false);
    const notice = page.getByRole('complementary', { name: 'Working offline' });
    await notice.getByText('This page cannot work offline here.', { exact: true }).click();
    await notice.getByText(/^What you record is kept in this browser either way/).waitFor();
    const words = (await seen(page)).text;
    expect(words).toContain('It was opened over plain http from another machine, and browsers allow offline pages only over https or on the machine itself.');
    expect(words).toContain('start the server with a certificate (seamward serve --cert … --key …)');
    expect(words).toContain('http://localhost');
  });

  it('says the same where the record is, and still records', async () => {
    const { page } = far;
    const farHand = handOn(page);
    await farHand.press('I have a saved copy');
    await until(page, 'the words under “Without a signal”', (s) => /Without a signal\s+This page cannot work offline here\..*Open it over https/s.test(s.text));
    await page.goto(`${there}/#/new`);
    await newTrailer(page, farHand, 'Over http');
    await beginRound(page, farHand);
    const { heading } = await settled(page);
    await answerSound(page, farHand);
    await until(page, 'the next stop', (s) => s.heading !== heading && s.stop === 2);
  });
});
