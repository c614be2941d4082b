/**
 * Takes the pictures that README shows, of the real screens with the demo rig, in a real Chromium.
 * Run it after a screen has changed: `npm run pictures`.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { DESK, dropProfile, newProfile, type OpenBrowser, openBrowser, openServer, PHONE, root } from '../journeys/browser';
import { build } from './build.mjs';

const folder = join(root, 'docs', 'pictures');
mkdirSync(folder, { recursive: true });
build({ ifStale: true });

const server = await openServer();
const profile = newProfile();

const settled = async ({ page }: OpenBrowser): Promise<void> => {
  await page.waitForLoadState('networkidle');
  await page.waitForTimeout(700);
};

const take = async (open: OpenBrowser, name: string): Promise<void> => {
  await settled(open);
  await open.page.screenshot({ path: join(folder, `${name}.png`) });
  console.log(name);
};

const at = async (open: OpenBrowser, hash: string): Promise<void> => {
  await open.page.evaluate((h) => {
    location.hash = h;
  }, hash);
  await settled(open);
};

try {
  const open = await openBrowser(profile, PHONE);
  const { page } = open;
  await page.goto(server.address);
  await take(open, 'phone-first-minute');
  await page.getByText('Look at the sample rig').click();
  await page.waitForURL(/#\/rig\//);
  const rig = new URL(page.url()).hash.split('/')[2] ?? '';
  await at(open, `#/rig/${rig}/plan`);
  await take(open, 'phone-plan');
  await at(open, `#/rig/${rig}/water`);
  await page
    .getByText(/^Test window/i)
    .first()
    .waitFor();
  await take(open, 'phone-water');
  await at(open, `#/rig/${rig}/round`);
  await page.getByRole('button', { name: /Begin the round/ }).click();
  await page.waitForURL(/round\/(now|\d+)/);
  for (let stop = 0; stop < 40; stop += 1) {
    await settled(open);
    const crazed = page.getByRole('button', { name: /S4 Open/ }).first();
    if (await crazed.isVisible()) {
      await crazed.click();
      await settled(open);
      const through = page.getByRole('checkbox', { name: /Crack right through/ }).or(page.getByRole('button', { name: /Crack right through/ }));
      if (await through.first().isVisible()) await through.first().click();
      break;
    }
    await page.locator('button.act').first().click();
  }
  await take(open, 'phone-station');
  await page.setViewportSize(DESK);
  await at(open, `#/rig/${rig}`);
  await take(open, 'desk-sheet');
  await page
    .getByRole('link', { name: /Window 2/ })
    .first()
    .click();
  await page.waitForURL(/finding/);
  await take(open, 'desk-finding');
  await at(open, `#/rig/${rig}/plan`);
  await take(open, 'desk-plan');
  await at(open, `#/rig/${rig}/water`);
  await page.getByText('Chance of being', { exact: false }).first().waitFor();
  await take(open, 'desk-water');
  await open.close();
} finally {
  await server.stop();
  dropProfile(profile);
}
