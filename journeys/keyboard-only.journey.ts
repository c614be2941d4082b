import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, DESK, dropProfile, newProfile, type OpenBrowser, type OpenServer, openBrowser, openServer } from './browser';
import { settled, until } from './hand';
import { entriesOf, firstVisit, saved, standing, stationCalled } from './walk';

/**
 * The whole job at a desk without a mouse: describe a rig, walk a side of it, read the plan and a finding, correct an
 * entry, save a copy. Every control is reached with Tab, shows that it has the focus, and does its work from the keyboard.
 */
const MOST_TABS = 260;

const profile = newProfile();
let browser: OpenBrowser;
let server: OpenServer;
let page: Page;
const press = (key: string): Promise<void> => page.keyboard.press(key);

/** Presses Tab until the control has the focus, and sees that the focus shows. */
const tabTo = async (control: Locator): Promise<void> => {
  await control.first().waitFor();
  for (let tabs = 0; tabs < MOST_TABS; tabs += 1) {
    await press('Tab');
    if (!(await control.first().evaluate((e) => e === document.activeElement || (e instanceof HTMLLabelElement && e.control === document.activeElement)))) continue;
    const shows = await page.evaluate(() => {
      const e = document.activeElement;
      if (!e) return false;
      const style = getComputedStyle(e);
      return e.matches(':focus-visible') && ((style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2) || style.boxShadow !== 'none');
    });
    expect(shows, `the focus on ${control} shows`).toBe(true);
    return;
  }
  throw new Error(`${control} is not reached with ${MOST_TABS} presses of Tab`);
};
const link = (name: string | RegExp): Locator => page.getByRole('link', typeof name === 'string' ? { name, exact: true } : { name });
const button = (name: string | RegExp): Locator => page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });
const enter = async (control: Locator): Promise<void> => {
  await tabTo(control);
  await press('Enter');
};
const heading = (name: string | RegExp): Promise<void> => page.getByRole('heading', { level: 1, name }).waitFor();

let station = '';

beforeAll(async () => {
  server = await openServer();
  browser = await openBrowser(profile, DESK);
  ({ page } = browser);
  await firstVisit(page, server.address);
  // Whoever moves a mouse here breaks the promise of this journey.
  await page.addInitScript(() => addEventListener('pointerdown', () => console.error('a pointer was used'), true));
  page.on('console', (m) => expect(m.text()).not.toBe('a pointer was used'));
  await page.reload();
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  dropProfile(profile);
});

describe('the whole job from the keyboard', () => {
  it('a new rig', async () => {
    await enter(link('Start with my rig'));
    await enter(button('Travel trailer'));
    for (let now = await until(page, 'the second question', (s) => s.stop === 2); now.primary !== 'Keep this rig'; ) {
      const before = now.heading;
      await press('Enter');
      now = await until(page, `a question after “${before}”`, (s) => s.heading !== before);
    }
    await tabTo(page.getByRole('textbox', { name: 'Name of the rig' }));
    await page.keyboard.type('By keys');
    await enter(button(/^Keep this rig/));
    await page.waitForURL(/#\/rig\/[^/]+$/);
    await link(/^By keys/)
      .first()
      .waitFor();
  });

  it('a round of one side, with a finding, a reading and a place that could not be seen', async () => {
    await enter(link('Round'));
    await heading('Which round?');
    await enter(button(/^Partial round/));
    await tabTo(button('Rear'));
    await press('Space');
    await until(page, 'the stops of the rear', (s) => /^\d+ stops/.test(s.second));
    await enter(button(/^Begin the round/));
    let stop = await until(page, 'the first stop', (s) => s.stop === 1);
    const of = stop.of ?? 0;
    expect(of).toBeGreaterThan(3);
    for (let i = 0; i < of; i += 1) {
      stop = await settled(page);
      const here = stop.heading;
      if (station === '' && stop.primary === 'S0 As new') {
        station = here;
        await press('5');
        await until(page, 'the verdict on S4', (s) => s.text.includes('Before rain'));
        await tabTo(button('Edge lifts'));
        await press('Space');
        await enter(button(/^Next:/));
      } else if (i === of - 1) {
        await press('x');
        await heading(here);
        await enter(button(/^Not safe today/));
      } else await press('Enter');
      stop = await until(page, `the stop after ${here}`, (s) => s.heading !== here);
    }
    expect(station).not.toBe('');
    expect((await settled(page)).second).toBe(`${of - 1} seen, 1 not seen`);
    await enter(button(/^Finish the round/));
    await enter(button(/^See the plan/));
  });

  it('the plan, and the page of a finding with its reason', async () => {
    await heading(/^Ready to roll: no/);
    await enter(page.getByRole('region', { name: 'Jobs' }).getByRole('listitem').filter({ hasText: station }).filter({ hasText: 'S4' }).getByRole('link'));
    await page.waitForURL(/\/finding\//);
    const finding = page.getByRole('main');
    await expect.poll(() => finding.textContent()).toContain(station);
    await expect.poll(() => finding.textContent()).toMatch(/S4/);
  });

  it('a correction of an entry', async () => {
    await enter(link('Logbook'));
    await enter(link(/^Correct: .*S4/));
    await heading(/^Correct: seal/);
    await tabTo(page.getByRole('radio', { name: /^S4/ }));
    await press('ArrowUp');
    await tabTo(page.getByRole('textbox', { name: /^Why/ }));
    await page.keyboard.type('read again with a card');
    await enter(button('Keep the correction'));
    await heading(/entries|logbook/i);
    await expect.poll(() => page.getByRole('main').textContent()).toContain('S3');
  });

  it('a copy, which the command finds whole, with everything in it', async () => {
    await enter(link('Copies'));
    const file = await saved(page, () => enter(button('Save the logbook (.jsonl)')));
    rmSync(file.path);
    const log = join(profile, 'keys.jsonl');
    writeFileSync(log, file.bytes);
    const entries = entriesOf(file.bytes.toString('utf8'));
    const seal = standing(entries).find((e) => e.kind === 'seal-grade' && e.body['grade'] === 'S4');
    expect(seal?.place).toMatchObject({ station: stationCalled(entries, station) });
    expect(entries.find((e) => e.kind === 'correction')).toMatchObject({ concerns: [seal?.id], body: { changed: { body: { grade: 'S3' } }, why: 'read again with a card' } });
    expect(entries.some((e) => e.kind === 'could-not-see' && e.body['reason'] === 'not-safe')).toBe(true);
    const verify = await command(['verify', log]);
    expect(verify.out).toContain('whole');
    const plan = await command(['plan', log]);
    expect(plan.out).toContain(station);
  });
});
