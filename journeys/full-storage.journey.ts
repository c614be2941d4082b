import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dropProfile, newProfile, type OpenBrowser, type OpenServer, openBrowser, openServer } from './browser';
import { type Hand, handOn, settled, until } from './hand';
import { answerSound, entriesOf, exportedLogbook, roundUnderWay } from './walk';

/**
 * A phone without room: the answer that could not be kept is not called kept and stays on the screen; the page says what
 * happened, what is safe and what to do; a copy can still be saved; and with room again the same press keeps it.
 */
const profile = newProfile();
let server: OpenServer;
let phone: OpenBrowser;
let hand: Hand;
let rig = '';

const exported = (): Promise<string> => exportedLogbook(phone.page, hand, server.address, rig);

/** What the browser gives this page from now on; without a figure as much as it has. [bytes] */
const room = async (quotaSize?: number): Promise<void> => {
  await devtools.send('Storage.overrideQuotaForOrigin', { origin: new URL(server.address).origin, ...(quotaSize === undefined ? {} : { quotaSize }) });
};
let devtools: Awaited<ReturnType<OpenBrowser['context']['newCDPSession']>>;

beforeAll(async () => {
  server = await openServer();
  phone = await openBrowser(profile);
  hand = handOn(phone.page);
  rig = await roundUnderWay(phone.page, hand, server.address, 'No room');
});

afterAll(async () => {
  await phone.close();
  await server.stop();
  dropProfile(profile);
});

describe('a phone without room', () => {
  let before = '';
  let here = '';

  it('does not call kept what was not, and says what happened, what is safe and what to do', async () => {
    before = await exported();
    // The browser asks for room anew when a logbook is first opened; later only every half minute.
    await phone.close();
    phone = await openBrowser(profile);
    hand = handOn(phone.page);
    devtools = await phone.context.newCDPSession(phone.page);
    await room(1);
    await phone.page.goto(`${server.address}/#/rig/${rig}/round`);
    here = (await settled(phone.page)).heading;
    await hand.go();
    const now = await until(phone.page, 'the problem in the title block', (s) => s.record.startsWith('Problem: no room'));
    expect(now.heading, 'the walk does not go on').toBe(here);
    expect(now.said).not.toBe(`Kept: ${here}.`);
    await phone.page.getByRole('link', { name: /^Problem:/ }).click();
    const told = await until(phone.page, 'the problem in words', (s) => s.heading === 'No room is left on this device');
    expect(told.text).toContain('There is no room left on this device, so the last entry was not kept.');
    expect(told.text).toContain('Everything that was called kept is still on this device.');
    expect(told.text).toContain('Copy the logbook to a file, make room on the device, then give the answer again.');
  });

  it('still saves a copy, with everything that had been called kept', async () => {
    expect(entriesOf(await exported())).toEqual(entriesOf(before));
  });

  it('keeps the answer once there is room, and the problem is over', async () => {
    await room();
    await phone.page.goto(`${server.address}/#/rig/${rig}/round`);
    const again = await settled(phone.page);
    expect(again.heading).toBe(here);
    await answerSound(phone.page, hand);
    const now = await settled(phone.page);
    expect(now.heading).not.toBe(here);
    expect(now.record).not.toMatch(/^Problem/);
    expect(entriesOf(await exported())).toHaveLength(entriesOf(before).length + 1);
  });
});
