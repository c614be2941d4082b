import { rmSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Entry } from '../src/terms';
import { dropProfile, newProfile, type OpenBrowser, type OpenServer, openBrowser, openServer } from './browser';
import { type Hand, handOn, settled, until } from './hand';
import { entriesOf, firstVisit, newTrailer, saved, standing } from './walk';

/**
 * A wall metered beside the rig and a water test made there, by a phone whose browser is killed in between: half a figure on the
 * keys, right after a reading was kept, and while the hose runs. What the screen called kept is in the logbook once and no more;
 * what was half done stands there again. Places by touch, by steps, by lengths and by the keyboard alone.
 */
const profile = newProfile();
let server: OpenServer;
let phone: OpenBrowser;
let page: Page;
let hand: Hand;
let rig = '';

const WALL = 'curb/inside';
const open = async (address: string, heading: RegExp): Promise<void> => {
  await page.goto(`${server.address}/#/rig/${rig}/${address}`);
  await until(page, `${heading}`, (s) => heading.test(s.heading) && s.primary !== 'One moment' && s.primary !== '');
};
const again = async (): Promise<void> => {
  await phone.kill();
  phone = await openBrowser(profile);
  ({ page } = phone);
  hand = handOn(page);
};
const readCount = async (): Promise<number> => Number(/(\d+) read/.exec((await settled(page)).text)?.[1]);
const keptNow = async (n: number): Promise<void> => {
  await until(page, `${n} readings`, (s) => s.text.includes(`${n} read`) && /^(Touch|Next)/.test(s.primary));
};

/** By two lengths off a tape. */
const read = async (front: string, up: string, figure: string): Promise<void> => {
  await page.getByRole('button', { name: /^Place:/ }).click();
  await page.getByLabel(/^From the front/).fill(front);
  await page.getByLabel(/^Up from the floor/).fill(up);
  await page.keyboard.press('Enter');
  await until(page, 'the keys', (s) => s.primary === 'Type the reading');
  await hand.type(figure);
  await hand.go();
};

const logbook = async (): Promise<readonly Entry[]> => {
  await page.goto(`${server.address}/#/rig/${rig}/copies`);
  const file = await saved(page, () => hand.press('Save the logbook (.jsonl)'));
  rmSync(file.path);
  return standing(entriesOf(file.bytes.toString('utf8')));
};

beforeAll(async () => {
  server = await openServer();
  phone = await openBrowser(profile);
  ({ page } = phone);
  hand = handOn(page);
  await firstVisit(page, server.address);
  await hand.press('Start with my rig');
  rig = await newTrailer(page, hand, 'Metered');
});

afterAll(async () => {
  await phone.close();
  await server.stop();
  dropProfile(profile);
});

describe('a wall metered in the hand', () => {
  it('begins with one sentence and one button, and asks for dry places first', async () => {
    await open('water', /^Nothing metered yet$/);
    expect((await settled(page)).primary).toBe('Meter a wall');
    await hand.go();
    await until(page, 'the walls', (s) => s.primary === 'Curb wall, inside');
    await hand.go();
    await until(page, 'the wall', (s) => s.heading === 'Curb wall, inside');
    expect((await settled(page)).text).toContain('3 more dry places');
  });

  it('keeps a place touched on the drawing and a figure typed on the keys', async () => {
    await hand.press('Dry place');
    const wall = await page.locator('.wall').boundingBox();
    if (!wall) throw new Error('no wall');
    await page.mouse.click(wall.x + wall.width * 0.78, wall.y + wall.height * 0.45);
    await until(page, 'a place', (s) => s.primary === 'Type the reading');
    await hand.type('11');
    await hand.go();
    await until(page, 'the word that it is kept', (s) => /^Kept: 11 %/.test(s.said));
    await keptNow(1);
    expect((await settled(page)).text).toContain('2 more dry places');
  });

  it('takes places by steps and figures from the keyboard alone', async () => {
    for (const key of ['ArrowUp', 'ArrowUp', '1', '0', '.', '5']) await page.keyboard.press(key);
    await until(page, 'the figure', (s) => s.primary === 'Keep 10.5 %');
    await page.keyboard.press('Enter');
    await keptNow(2);
    await page.keyboard.press('u');
    await until(page, 'the place again', (s) => s.said === 'Taken back: 10.5.' && s.primary === 'Type the reading');
    expect(await readCount()).toBe(1);
    for (const key of ['1', '1', 'Enter']) await page.keyboard.press(key);
    await keptNow(2);
  });

  it('keeps half a figure over a killed browser, and counts what was kept once', async () => {
    await read('20 ft', '1 ft', '11.5');
    await keptNow(3);
    // The row of dry places is full: the next is an ordinary one.
    expect(await page.getByRole('button', { name: 'Dry place' }).getAttribute('aria-pressed')).toBe('false');
    await page.getByRole('button', { name: /^Place:/ }).click();
    await page.getByLabel(/^From the front/).fill('14 ft');
    await page.getByLabel(/^Up from the floor/).fill('2 ft');
    await page.keyboard.press('Enter');
    await hand.type('27');
    await until(page, 'the figure', (s) => s.primary === 'Keep 27 %');
    await page.waitForTimeout(300);
    await again();
    await open(`meter/${WALL}`, /^Curb wall/);
    expect(await settled(page)).toMatchObject({ primary: 'Keep 27 %', second: expect.stringMatching(/^14\sft\s0\sin from the front/) });
    await hand.go();
    await until(page, 'the word that it is kept', (s) => /^Kept: 27 %/.test(s.said));
    await again();
    await open(`meter/${WALL}`, /^Curb wall/);
    expect(await readCount()).toBe(4);
    expect((await settled(page)).primary).toMatch(/^(Touch|Next)/);
  });

  it('says what cannot be: a place off the wall, a figure beyond the meter', async () => {
    await page.getByRole('button', { name: /^Place:/ }).click();
    await page.getByLabel(/^From the front/).fill('90 ft');
    await page.getByLabel(/^Up from the floor/).fill('3 ft');
    expect(await until(page, 'off the wall', (s) => s.primary === 'Choose another place')).toMatchObject({ disabled: true, text: expect.stringContaining('off this wall') });
    await page.getByLabel(/^From the front/).fill('15 ft');
    await page.getByLabel(/^Up from the floor/).fill('2 ft');
    await page.keyboard.press('Enter');
    await hand.type('300');
    expect(await until(page, 'too high', (s) => s.primary === 'Check the figure')).toMatchObject({ disabled: true });
    await hand.clear();
    await hand.type('29');
    await hand.go();
    await keptNow(5);
    await read('14 ft', '1 ft', '24');
    await keptNow(6);
    await read('15 ft', '1 ft', '25');
    await keptNow(7);
    await read('17 ft', '2 ft', '11.5');
    await keptNow(8);
  });

  it('shows what was metered on a map, which says why it is none where too few were read', async () => {
    await page.getByRole('link', { name: '8 read: map' }).click();
    const map = await until(page, 'the map', (s) => s.primary === 'Meter this wall' && /a map needs 8/.test(s.text));
    expect(map.heading).toBe('Curb wall, inside');
    expect(map.text).toMatch(/Readings only: /);
    expect(map.text).not.toContain('Chance of being wet');
    expect(await page.locator('.map-frame text').allTextContents()).toEqual(expect.arrayContaining(['27', '29', '24', '25']));
    await hand.press('Back to water');
    await until(page, 'the leak', (s) => s.primary !== '' && /Does it dry\?/.test(s.text));
    await hand.press('Does it dry?');
    expect(await until(page, 'the trend', (s) => s.primary === 'Meter the same places')).toMatchObject({
      heading: 'Too few readings',
      text: expect.stringMatching(/Need \d more readings/),
    });
    await open(`meter/${WALL}`, /^Curb wall/);
    expect(await readCount()).toBe(8);
  });

  it('names no leak before other causes were looked into, each in one form', async () => {
    await open('water', /^Wet, cause not yet known$/);
    for (const cause of ['Condensation', 'Plumbing', 'Air conditioner', 'Weep holes']) {
      await hand.press(cause);
      if (cause === 'Condensation') {
        await until(page, 'air and surface', (s) => s.heading === 'Air and surface');
        await hand.press('Known otherwise');
      }
      await until(page, 'the other cause', (s) => s.heading === 'Another cause of wet');
      await hand.press('Ruled out');
      await hand.go();
      await until(page, 'back at water', (s) => /^(Wet, cause|Water is)/.test(s.heading));
    }
    await until(page, 'a leak', (s) => s.heading === 'Water is coming in' && s.primary.startsWith('Test '));
  });
});

describe('a water test in the hand', () => {
  let tested = '';

  it('outlives a killed browser while the water runs, and ends at the first sign', async () => {
    await hand.go();
    tested = (await until(page, 'the test', (s) => s.primary === 'Water on: start')).heading;
    await hand.go();
    await until(page, 'the clock', (s) => s.primary === 'Water came in');
    await page.waitForTimeout(2500);
    await again();
    await open('water', /^Water is coming in$/);
    expect(await settled(page)).toMatchObject({ primary: 'Go on with the water test', second: tested });
    await hand.go();
    await until(page, 'the clock', (s) => s.primary === 'Water came in');
    await hand.press('Kept dry');
    await hand.go();
    await until(page, 'what it changed', (s) => s.heading.startsWith('Water came in: '));
    await until(page, 'the ways in, before and now', (s) => /was (likely|possible|unlikely)/.test(s.text) && s.text.includes('Likely'));
    await hand.go();
    expect(await until(page, 'the way in', (s) => s.heading === 'Way in found')).toMatchObject({ primary: 'Record the repair', second: tested });
  });

  it('all of it stands in the logbook, once', async () => {
    const entries = await logbook();
    const readings = entries.filter((e) => e.kind === 'wood-moisture-pin');
    expect(readings.map((e) => (e.body as { readonly reading: { readonly typed: string } }).reading.typed).sort()).toEqual(['11', '11', '11.5', '11.5', '24', '25', '27', '29']);
    for (const e of readings) expect(e).toMatchObject({ place: { at: 'point', face: 'curb', side: 'inside' }, body: { surface: 'dry' } });
    expect(readings.filter((e) => (e.body as { readonly dry_reference?: boolean }).dry_reference)).toHaveLength(3);
    const tests = entries.filter((e) => e.kind === 'water-test');
    expect(tests).toHaveLength(1);
    expect(tests[0]).toMatchObject({
      place: { at: 'station', side: 'outside' },
      body: { how: 'hose', result: 'came-in', kept_dry: true, ran_for: { unit: 'min', typed: expect.stringMatching(/^\d/) } },
    });
    expect(entries.filter((e) => e.kind === 'other-cause')).toHaveLength(4);
  });

  it('the repair is written down at the way in, where nobody had graded a seal, and not at the wet wall', async () => {
    await open('water', /^Way in found$/);
    await hand.go();
    await until(page, 'the form of the repair', (s) => s.heading === 'Resealed' && s.text.includes(tested));
    await hand.press(/^All old sealant removed/);
    await hand.press(/^New sealant/);
    await hand.press(/^Lap sealant, self-levelling/);
    await until(page, 'the repair told', (s) => s.primary === 'Keep it' && !s.disabled && s.second === tested);
    await hand.go();
    await until(page, 'the proof due', (s) => s.heading === 'Repaired, to be proved');
    const entries = await logbook();
    const test = entries.find((e) => e.kind === 'water-test');
    expect(entries.filter((e) => e.kind === 'resealed').map((e) => e.place)).toEqual([test?.place]);
  });
});
