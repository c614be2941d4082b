import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, dropProfile, newProfile, type OpenBrowser, openBrowser, openServer } from './browser';
import { type Hand, handOn, settled, until } from './hand';
import { answerSound, beginRound, entriesOf, firstVisit, goOnWith, type Kept, newTrailer, saved, smallJpeg, standing, stationCalled } from './walk';

/**
 * The main job on one phone without a signal: after one visit the server is gone; a rig is described, every station is
 * walked with findings and photographs, the browser is killed twice on the way, and the plan that the app saves is byte
 * for byte the plan that the command makes of the exported logbook. Nothing that the screen had called kept is missing.
 */
const RIG = 'Long walk';
/** As many taps as the issue of a full round allows, for each station. */
const TAPS_A_STATION = 100 / 80;

const profile = newProfile();
let phone: OpenBrowser;
let hand: Hand;
let address = '';
const kept: Kept[] = [];
let stops = 0;
let text = '';

const reopened = async (): Promise<number> => {
  await phone.kill();
  phone = await openBrowser(profile);
  hand = handOn(phone.page);
  return goOnWith(phone.page, hand, address, RIG);
};

/** A leaking window: graded, what was seen, how wide, with a photograph; then the browser dies before the person has walked on. */
const openSeal = async (): Promise<void> => {
  const { page } = phone;
  const { heading } = await settled(page);
  await hand.press(/^S4/);
  await hand.press('Edge lifts');
  await until(page, 'a verdict', (s) => s.text.includes('Before rain'));
  await page.getByLabel(/^Photo/).setInputFiles(await smallJpeg(page, 'window bead'));
  await until(page, 'the photograph called kept', (s) => s.said.startsWith('Photo of'));
  const answered = await reopened();
  expect(answered, 'the rig’s screen counts what was answered before the kill').toBe(stopsDone + 1);
  kept.push({ station: heading, body: { grade: 'S4', defects: ['edge-lifts'] }, photos: 1 });
};

/** A tyre that lost air: the browser dies when half of the reading is typed. */
const lowTyre = async (): Promise<void> => {
  const { heading } = await settled(phone.page);
  await hand.type('4');
  await until(phone.page, 'the first digit', (s) => !s.disabled || s.primary !== 'Type the pressure');
  // A draft is not called kept; it is on disk a moment after the touch.
  await phone.page.waitForTimeout(400);
  await reopened();
  const now = await settled(phone.page);
  expect(now.heading).toBe(heading);
  expect(await phone.page.getByRole('button', { name: /^Pressure:/ }).getAttribute('aria-label'), 'the draft of a reading survives').toBe('Pressure: 4 psi');
  await hand.type('8');
  await until(phone.page, 'the temperature next', (s) => /tyre temperature/i.test(s.primary));
  await hand.go();
  await hand.type('68');
  await until(phone.page, 'what the rules say of it', (s) => s.text.includes('Before moving'));
  kept.push({ station: heading, body: { pressure: { typed: '48', unit: 'psi' }, tyre_temperature: { typed: '68' } } });
  for (let on = await settled(phone.page); on.heading === heading && on.asked === 'Tyre pressure'; on = await settled(phone.page)) {
    if (on.disabled && on.text.includes('Since it was set')) await hand.press('Driven');
    await hand.go();
  }
};

const couldNotSee = async (): Promise<void> => {
  const { heading } = await settled(phone.page);
  await hand.press('Could not see it');
  await hand.press(/^Something in the way/);
  await until(phone.page, 'the next stop', (s) => s.heading !== heading);
  kept.push({ station: heading, body: { reason: 'in-the-way' } });
};

const somethingWrong = async (): Promise<void> => {
  const { heading } = await settled(phone.page);
  await hand.press(/^Something wrong/);
  const defect = phone.page.getByRole('group', { name: 'What is wrong' }).getByRole('button').first();
  const words = (await defect.textContent())?.trim() ?? '';
  await defect.click();
  await until(phone.page, 'the answer kept', (s) => s.said.startsWith('Kept:') || s.text.includes('Watch') || s.text.includes('This season') || s.text.includes('Before'));
  await hand.press('Note or more');
  await hand.fill('Note', `Seen today: ${words}`);
  await hand.press(/^Done/);
  await hand.go();
  await until(phone.page, 'the next stop', (s) => s.heading !== heading);
  kept.push({ station: heading, body: { verdict: 'something-wrong' }, note: `Seen today: ${words}` });
};

/** A hairline crack, and a reading of the wood beside it. */
const moisture = async (): Promise<void> => {
  const { heading } = await settled(phone.page);
  await hand.press(/^S1/);
  await hand.press('Note or more');
  await hand.press('Moisture, pin meter');
  await until(phone.page, 'the keys for the reading', (s) => s.asked === 'Moisture, pin meter');
  await hand.type('17.5');
  await until(phone.page, 'the wood’s temperature next', (s) => /wood temperature/i.test(s.primary));
  await hand.go();
  await hand.type('50');
  kept.push({ station: heading, body: { grade: 'S1' } }, { station: heading, body: { reading: { typed: '17.5', unit: 'percent' }, wood_temperature: { typed: '50' } } });
  for (let now = await settled(phone.page); now.heading === heading; now = await settled(phone.page)) await hand.go();
};

const FINDINGS: readonly (readonly [station: RegExp, record: () => Promise<void>])[] = [
  [/^Window 1, curb side/, openSeal],
  [/^Tyre, curb side, rear axle/, lowTyre],
  [/^Furnace vent/, couldNotSee],
  [/^Porch lamp/, somethingWrong],
  [/^Window, rear/, moisture],
];
let stopsDone = 0;

beforeAll(async () => {
  const server = await openServer();
  ({ address } = server);
  phone = await openBrowser(profile);
  hand = handOn(phone.page);
  await firstVisit(phone.page, address);
  await server.stop();
});

afterAll(async () => {
  await phone.close();
  dropProfile(profile);
});

describe('the main job, on one phone, with the server stopped', () => {
  it('from an empty page to a drawn rig takes at most 25 actions', async () => {
    await expect(fetch(address), 'the server is gone').rejects.toThrow();
    await hand.press('Start with my rig');
    await newTrailer(phone.page, hand, RIG);
    expect(hand.taps() + hand.digits() - RIG.length).toBeLessThanOrEqual(25);
    expect((await settled(phone.page)).text).toContain('Ready to roll: not known');
  });

  it('walks round every station, with findings, and goes on where it was after each kill', async () => {
    stops = await beginRound(phone.page, hand);
    expect(stops).toBeGreaterThan(60);
    const found = new Set<RegExp>();
    for (stopsDone = 0; stopsDone < stops; stopsDone += 1) {
      const now = await settled(phone.page);
      expect(now.of).toBe(stops);
      const finding = FINDINGS.find(([name]) => name.test(now.heading));
      if (finding) {
        found.add(finding[0]);
        await finding[1]();
      }
      if ((await settled(phone.page)).heading === now.heading) kept.push(...(await answerSound(phone.page, hand)));
    }
    expect(found.size, 'every finding was met on the way').toBe(FINDINGS.length);
    const end = await until(phone.page, 'the end of the round', (s) => s.primary === 'Finish the round');
    expect(end.second).toBe(`${stops - 1} seen, 1 not seen`);
    await hand.go();
    await until(phone.page, 'the way to the plan', (s) => s.primary === 'See the plan');
  });

  it('shows the plan: what was found, with its urgency, and what was not seen', async () => {
    await hand.go();
    const plan = await until(phone.page, 'the plan', (s) => s.text.includes('Before moving'));
    expect(plan.heading).toContain('Not ready to roll');
    expect(plan.text).toMatch(/Before rain[\s\S]*Window 1, curb side/);
    expect(plan.text).toMatch(/Before moving[\s\S]*Tyre, curb side, rear axle/);
    expect(plan.text).toMatch(/Not seen\s+Furnace vent/);
  });

  it('exports the logbook, and every answer that the screen had called kept is in it', async () => {
    await phone.page.goto(`${phone.page.url().replace(/\/plan.*/, '')}/copies`);
    const file = await saved(phone.page, () => hand.press('Save the logbook (.jsonl)'));
    text = file.bytes.toString('utf8');
    rmSync(file.path);
    const entries = entriesOf(text);
    for (const k of kept) {
      const at = standing(entries).filter((e) => e.place.at === 'station' && e.place.station === stationCalled(entries, k.station));
      const match = at.filter((e) => {
        try {
          expect(e.body).toMatchObject(k.body);
          return (k.note === undefined || e.note === k.note) && (k.photos ?? 0) <= (e.photos?.length ?? 0);
        } catch {
          return false;
        }
      });
      expect(match.length, `${k.station} ${JSON.stringify(k)} among ${JSON.stringify(at.map((e) => [e.kind, e.body, e.note, e.photos]))}`).toBeGreaterThan(0);
    }
    expect(kept.length).toBeGreaterThan(stops);
  });

  it('the command makes the same plan of it, byte for byte, and finds the logbook whole', async () => {
    await phone.page.goto(`${address}/#/settings`);
    await phone.page.getByRole('radio', { name: 'The desk', exact: true }).check();
    await phone.page.goto(`${address}/#/rigs`);
    await hand.press(new RegExp(`^${RIG}`));
    await hand.press('Plan');
    const file = await saved(phone.page, () => hand.press('Save plan as JSON'));
    const log = join(profile, 'export.jsonl');
    writeFileSync(log, text);
    const plan = await command(['plan', '--json', log]);
    expect(plan.err).toBe('');
    expect(plan.status).toBe(0);
    expect(plan.out.length).toBeGreaterThan(5000);
    expect(Buffer.from(plan.out).equals(readFileSync(file.path)), 'the app’s plan and the command’s are the same bytes').toBe(true);
    rmSync(file.path);
    const verify = await command(['verify', log]);
    expect(verify.out).toContain('whole');
    expect(verify.status).toBe(0);
  });

  it('a second round with nothing new takes at most 100 taps for 80 stations, digits of readings apart', async () => {
    await phone.page.goto(`${address}/#/settings`);
    await phone.page.getByRole('radio', { name: /hand/ }).first().check();
    await phone.page.goto(`${address}/#/rigs`);
    await hand.press(new RegExp(`^${RIG}`));
    const again = await beginRound(phone.page, hand);
    const before = hand.taps();
    for (let i = 0; i < again; i += 1) await answerSound(phone.page, hand);
    await until(phone.page, 'the end of the round', (s) => s.primary === 'Finish the round');
    const taps = hand.taps() - before;
    console.log(`second round: ${taps} taps for ${again} stops`);
    expect(taps).toBeLessThanOrEqual(Math.floor(again * TAPS_A_STATION));
  });
});
