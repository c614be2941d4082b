import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DESK, dropProfile, newProfile, type OpenBrowser, type OpenServer, openBrowser, openServer, PHONE } from './browser';
import { type Hand, handOn, until } from './hand';
import { shortcomings, sticksOut } from './measures';
import { firstVisit } from './walk';

/**
 * Every screen, at the width of a phone and of a desk, empty and with the sample rig: no axe violation, nothing wider than
 * the window at 390, 320 and 1440 px, sizes and contrast of the screens for the hand as promised, no error in the console
 * and nothing refused by the content policy. An address that is linked anywhere and not looked at here is a failure.
 */
const SMALL = { width: 320, height: 640 } as const;

const profile = newProfile();
let browser: OpenBrowser;
let server: OpenServer;
let page: Page;
let hand: Hand;
let rig = '';
const wrong: string[] = [];
const linked = new Set<string>();
const looked = new Set<string>();

/** An address without what names one rig, station or entry: what it has in common with others of its screen. */
const shape = (address: string): string =>
  address
    .replace(/^.*#\//, '')
    .replace(/\?.*$/, '')
    .split('/')
    .map((part, i, all) => (i === 1 || (i === 3 && !['list', 'finished', 'start', 'shopping'].includes(part)) || (i === 1 && all[0] === 'worksheets') ? '*' : part))
    .join('/');

const violations = async (): Promise<readonly string[]> => {
  const { violations: found } = await new AxeBuilder({ page }).setLegacyMode(true).analyze();
  return found.map(
    (v) =>
      `${v.id}: ${v.help} — ${v.nodes
        .slice(0, 3)
        .map((n) => n.html.slice(0, 160))
        .join(' ¦ ')}`,
  );
};

/** Looks at what stands on the screen now, at one width after another. */
const lookHere = async (what: string): Promise<void> => {
  looked.add(shape(page.url()));
  for (const address of await page.locator('a[href^="#/"]').evaluateAll((all) => all.map((a) => a.getAttribute('href') ?? ''))) linked.add(shape(address));
  const told: string[] = [];
  await page.setViewportSize(PHONE);
  await page.waitForTimeout(60);
  if (await page.locator('.field').count()) told.push(...(await shortcomings(page)));
  told.push(...(await violations()), ...(await sticksOut(page)));
  await page.setViewportSize(SMALL);
  await page.waitForTimeout(60);
  told.push(...(await sticksOut(page)).map((t) => `at 320: ${t}`));
  await page.setViewportSize(PHONE);
  if (told.length > 0) wrong.push(...told.map((t) => `${what}: ${t}`));
};

const lookAtDesk = async (what: string): Promise<void> => {
  const told = [...(await violations()), ...(await sticksOut(page))];
  if (told.length > 0) wrong.push(...told.map((t) => `${what} at the desk: ${t}`));
};

const open = async (address: string): Promise<void> => {
  await page.goto(`${server.address}/#/${address}`);
  await page.locator('h1').first().waitFor();
  await page.waitForFunction(() => !/One moment|Opening the logbook|is opening/.test(document.querySelector('.opening')?.textContent ?? ''));
};

const reported = (): readonly string[] => wrong.splice(0);

beforeAll(async () => {
  server = await openServer();
  browser = await openBrowser(profile);
  ({ page } = browser);
  page.on('console', (m) => {
    if (m.type() === 'error' || m.type() === 'warning') wrong.push(`console: ${m.text()}`);
  });
  page.on('pageerror', (e) => wrong.push(`page: ${e.message}`));
  await page.addInitScript(() =>
    document.addEventListener('securitypolicyviolation', (e) => console.error(`refused by the content policy: ${e.violatedDirective} ${e.blockedURI} ${e.sample}`)),
  );
  hand = handOn(page);
  await firstVisit(page, server.address);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  dropProfile(profile);
});

describe('screens, before anything is recorded', () => {
  it('at the width of a phone', async () => {
    for (const address of ['rigs', 'record', 'problems', 'settings', 'worksheets', 'worksheets/dew-point', 'no-such-page', 'rig/none']) {
      await open(address);
      await lookHere(`empty ${address}`);
    }
    await open('new');
    for (let i = 0; i < 12; i += 1) {
      const now = await until(page, 'a question', (s) => s.primary !== '');
      await lookHere(`new rig, ${now.heading}`);
      if (now.primary === 'Keep this rig') break;
      if (now.disabled) await hand.press('Travel trailer');
      else await hand.go();
      await until(page, 'the next question', (s) => s.heading !== now.heading);
    }
    expect(reported()).toEqual([]);
  });
  it('at the desk', async () => {
    await page.setViewportSize(DESK);
    for (const address of ['rigs', 'new', 'record', 'problems', 'settings', 'worksheets', 'worksheets/dew-point']) {
      await open(address);
      await lookAtDesk(`empty ${address}`);
    }
    await page.setViewportSize(PHONE);
    expect(reported()).toEqual([]);
  });
});

describe('screens, with the sample rig', () => {
  let addresses: readonly string[] = [];

  it('the rig, the round and its sheets at the width of a phone', async () => {
    await open('rigs');
    await hand.press(/sample rig/i);
    await page.waitForURL(/#\/rig\/[^/]+$/);
    rig = /#\/rig\/([^/]+)$/.exec(page.url())?.[1] ?? '';
    await until(page, 'the sample rig', (s) => s.primary !== '');
    await lookHere('the rig');
    await open('rigs');
    await lookHere('the list of rigs');
    await open(`rig/${rig}/round`);
    await until(page, 'the stops counted', (s) => /stops/.test(s.second));
    await lookHere('before a round');
    await hand.go();
    await until(page, 'the first stop', (s) => s.stop === 1);
    await lookHere('a stop');
    await hand.press('Could not see it');
    await until(page, 'the reasons', (s) => s.text.includes('Not seen. Why?'));
    await lookHere('could not see it');
    await hand.press('I can see it');
    await open(`rig/${rig}/round/list`);
    await lookHere('all stops');
    // A seal and a tyre are the two long cards.
    const stop = async (name: RegExp): Promise<void> => {
      await open(`rig/${rig}/round/list`);
      await page.getByRole('link', { name }).first().click();
      await until(page, `the stop ${name}`, (s) => name.test(s.heading));
    };
    await stop(/^(\d+ )?Tyre/);
    await lookHere('a tyre');
    await stop(/^(\d+ )?(Window|Skylight)/);
    await lookHere('a seal');
    await hand.press(/^S4/);
    await until(page, 'the verdict', (s) => /Before rain|Before moving/.test(s.text));
    await lookHere('a seal that is open');
    await hand.press('Note or more');
    await lookHere('note or more');
    await hand.press(/^Done/);
    await open(`rig/${rig}/round/finished`);
    await lookHere('the end of a round');
    expect(reported()).toEqual([]);
  });

  it('every other page of the rig at the width of a phone', async () => {
    await open(`rig/${rig}/plan`);
    const job = await page.locator('a[href*="/job/"]').first().getAttribute('href');
    expect(job).toBeTruthy();
    await open(`rig/${rig}/logbook`);
    const correct = await page.locator('a[href*="/correct/"]').first().getAttribute('href');
    await open(`rig/${rig}/sheet`);
    const place = await page.locator('a[href*="/place/"]').first().getAttribute('href');
    await open(place?.replace('#/', '') ?? '');
    const describe_ = await page.locator('a[href*="/describe/"]').first().getAttribute('href');
    await open(`rig/${rig}/water`);
    const test = await page.locator('a[href*="/water-test/"]').first().getAttribute('href');
    expect(test).toBeTruthy();
    const map = await page.getByRole('link', { name: /^Map/ }).first().getAttribute('href');
    const dries = await page.getByRole('link', { name: 'Does it dry?' }).first().getAttribute('href');
    await page.setViewportSize(DESK);
    await open(`rig/${rig}/plan`);
    const finding = await page.locator('a[href*="/finding/"]').first().getAttribute('href');
    await page.setViewportSize(PHONE);
    const more = [test, map, dries, job, job?.replace('/job/', '/care/'), correct, place, describe_, finding].map((a) => a?.replace('#/', '') ?? 'missing');
    const own = [
      'plan',
      'plan/shopping',
      'more',
      'sheet',
      'underside',
      'inside/curb',
      'describe',
      'slides',
      'logbook',
      'add',
      'add?kind=stay',
      'add?kind=wood-moisture-pin',
      'copies',
      'print',
      'water',
      'meter',
      'meter/road/inside',
      'meter/roof/outside',
      'water-note',
      ...['rain-fell', 'leak-clue', 'other-cause', 'air-and-skin', 'resealed'].map((k) => `water-note/${k}`),
    ].map((p) => `rig/${rig}/${p}`);
    addresses = [...own, ...more];
    for (const address of addresses) {
      await open(address);
      await lookHere(address.replace(rig, '*'));
    }
    expect(reported()).toEqual([]);
  });

  it('a wall that is metered, and a test that runs', async () => {
    await open(`rig/${rig}/meter/road/inside`);
    await page.getByRole('button', { name: /^Place:/ }).click();
    await page.getByLabel(/^From the front/).fill('900');
    await page.getByLabel(/^Up from/).fill('20');
    await until(page, 'no wall', (s) => s.primary === 'Choose another place');
    await lookHere('a place off the wall');
    await hand.press('Left');
    await hand.press('6 in');
    await lookHere('a place by steps');
    await hand.press('All places');
    await until(page, 'the places', (s) => s.primary === 'Back to the wall');
    await lookHere('the places of a wall');
    await page.locator('main li button').first().click();
    await until(page, 'the keys', (s) => s.primary === 'Type the reading');
    await hand.type('88');
    await until(page, 'a doubt', (s) => s.primary.startsWith('Yes, 88'));
    await lookHere('a figure that is doubted');
    await open(`rig/${rig}/water`);
    await page.locator('a[href*="/water-test/"]').first().click();
    await until(page, 'the test', (s) => /start$/.test(s.primary));
    await hand.go();
    await until(page, 'the clock', (s) => s.primary === 'Water came in');
    await lookHere('a water test that runs');
    await hand.press(/^Stayed dry/);
    await until(page, 'what it showed', (s) => s.heading.startsWith('It stayed dry'));
    await lookHere('what a water test showed');
    expect(reported()).toEqual([]);
  });

  it('the map of a wall, whole and closer, and a leak through time', async () => {
    await open(`rig/${rig}/water`);
    await page.getByRole('link', { name: /^Map/ }).first().click();
    await page.getByRole('button', { name: 'Chance of being wet' }).waitFor();
    await lookHere('the map of a wall');
    await hand.press('Closer');
    await lookHere('the map of a wall, closer');
    const frame = page.getByRole('region', { name: /arrow keys move the map/ });
    const scrolled = (): Promise<readonly [number, number]> => frame.evaluate((f) => [f.scrollLeft, f.scrollTop] as const);
    const before = await scrolled();
    await page.getByRole('button', { name: 'Up', exact: true }).click();
    const up = await scrolled();
    expect(up[1]).toBeLessThan(before[1]);
    await frame.focus();
    await page.keyboard.press('ArrowDown');
    expect((await scrolled())[1]).toBeGreaterThan(up[1]);
    // Only the figures of contours and the tenths of readings are smaller than what stands beside the map.
    const least = await frame.evaluate((f) =>
      Math.min(...[...f.querySelectorAll('text')].filter((t) => !/^\d$/.test(t.textContent ?? '')).map((t) => Number(t.getAttribute('font-size')) * (t.getScreenCTM()?.a ?? 0))),
    );
    expect(least).toBeGreaterThan(16);
    await hand.press('How uncertain');
    await lookHere('how uncertain a map is');
    for (const words of ['All readings', 'What the map assumes']) await page.getByText(words, { exact: true }).click();
    await lookHere('all readings of a map');
    await hand.press('Does it dry?');
    await page.getByRole('heading', { name: 'Places of this leak' }).waitFor();
    await lookHere('a leak through time');
    await page.locator('.choices.lines button').last().click();
    await lookHere('another place through time');
    expect(reported()).toEqual([]);
  });

  it('the same at the desk', async () => {
    await page.setViewportSize(DESK);
    for (const address of ['rigs', 'settings', 'worksheets/pin-meter-temperature', `rig/${rig}`, ...addresses]) {
      await open(address);
      await lookAtDesk(address.replace(rig, '*'));
    }
    await page.setViewportSize(PHONE);
    expect(reported()).toEqual([]);
  });

  it('no screen is linked that was not looked at', () => {
    expect([...linked].filter((l) => !looked.has(l))).toEqual([]);
  });
});
