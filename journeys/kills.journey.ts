import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { command, dropProfile, newProfile, type OpenBrowser, openBrowser, openServer } from './browser';
import { type Hand, handOn, seen, until } from './hand';
import { answerSound, entriesOf, firstVisit, newTrailer, saved, smallJpeg, standing, stationCalled } from './walk';

/**
 * Fifty kills of the browser at random moments while answers are being recorded: after each restart, without a server,
 * everything that the screen had called kept is in the logbook, the logbook is whole, and the round goes on.
 */
const KILLS = 50;
const RIG = 'Fifty kills';
/** Kills fall anywhere within this time of hard work. [ms] */
const LONGEST_MS = 1200;
const SEED = Number(process.env['SEAMWARD_SEED'] ?? 20_260_503);

/** A small generator, so that a run can be walked again by its seed. */
const randomFrom = (seed: number) => {
  let state = seed >>> 0;
  return (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
};
const random = randomFrom(SEED);

/** Names of stations whose answer, or whose photograph, the screen has called kept; a name may stand there for each of its kinds. */
const calledKept: string[] = [];
const photosKept: string[] = [];

/** Hears the quiet voice of every page that opens in this browser. What it says while the browser dies may be lost, never invented. */
const listen = async (page: Page): Promise<void> => {
  await page.exposeFunction('hearSeamward', (said: string) => {
    const kept = /^Kept: (.+)\.$/.exec(said)?.[1];
    if (kept !== undefined) calledKept.push(kept);
    const photo = /^Photo of (.+) is kept\.$/.exec(said)?.[1];
    if (photo !== undefined) photosKept.push(photo);
  });
  await page.addInitScript(() => {
    const hear = (globalThis as unknown as { readonly hearSeamward: (said: string) => void }).hearSeamward;
    let last = '';
    new MutationObserver(() => {
      const said = document.querySelector('[role=status].unseen')?.textContent ?? '';
      if (said === last) return;
      last = said;
      hear(said.replaceAll('\u00a0', ''));
    }).observe(document, { subtree: true, childList: true, characterData: true });
  });
};

const FIGURES: readonly (readonly [asked: RegExp, figure: string])[] = [
  [/pressure/, '65'],
  [/tread/, '8'],
  [/date code/, '2324'],
];

/** One touch or two on whatever stands there: sound answers, findings, photographs, undo. Never waits for anything to be kept. */
const touch = async (page: Page, hand: Hand, photo: Awaited<ReturnType<typeof smallJpeg>>): Promise<void> => {
  const now = await seen(page);
  const figure = FIGURES.find(([asked]) => now.disabled && asked.test(now.primary))?.[1];
  if (figure !== undefined) return hand.type(figure);
  if (now.primary === 'See the plan') return wait(50);
  const choice = random();
  if (choice < 0.12 && (await page.getByLabel(/^Photo/).count()) > 0) return page.getByLabel(/^Photo/).setInputFiles(photo);
  if (choice < 0.35 && now.primary === 'S0 As new') return hand.press(/^S[1-4]/);
  if (now.disabled) return wait(20);
  await hand.go();
};

/** To a stop of the round that is open, or of a new one, without loading the page anew. */
const intoRound = async (page: Page, hand: Hand, rig: string): Promise<void> => {
  await page.evaluate((address) => location.assign(address), `#/rig/${rig}/round`);
  const now = await until(page, 'the round', (s) => s.stop !== undefined || (s.primary === 'Begin the round' && !s.disabled));
  if (now.primary === 'Begin the round') await hand.go();
  await until(page, 'a stop of the round', (s) => s.stop !== undefined);
};

const profile = newProfile();
let phone: OpenBrowser | undefined;

afterAll(async () => {
  await phone?.close();
  dropProfile(profile);
});

const countOf = (names: readonly string[]): ReadonlyMap<string, number> => names.reduce((all, name) => new Map(all).set(name, (all.get(name) ?? 0) + 1), new Map<string, number>());

type Entries = ReturnType<typeof entriesOf>;
const at = (entries: Entries, name: string): Entries => entries.filter((e) => e.place.at === 'station' && e.place.station === stationCalled(entries, name));

/** Everything that the screen had called kept until now stands in the exported logbook. */
const nothingMissing = (entries: Entries, kill: number): void => {
  for (const [name, times] of countOf(calledKept)) {
    const there = at(entries, name).filter((e) => e.kind !== 'withdrawal');
    expect(there.length, `after kill ${kill}, seed ${SEED}: ${name} was called kept ${times} times`).toBeGreaterThanOrEqual(times);
  }
};

/** Photographs join an answer; before there is one they wait in the draft of their stop. */
const noPhotoMissing = (entries: Entries): void => {
  for (const [name, times] of countOf(photosKept)) {
    const photos = at(standing(entries), name).reduce((n, e) => n + (e.photos?.length ?? 0), 0);
    expect(photos, `seed ${SEED}: a photograph of ${name} was called kept ${times} times`).toBeGreaterThanOrEqual(times);
  }
};

/** Touches without a pause until the browser is dead. */
const untilDead = async (page: Page, hand: Hand, photo: Awaited<ReturnType<typeof smallJpeg>>, kill: () => Promise<void>): Promise<void> => {
  const death = wait(Math.floor(random() * LONGEST_MS)).then(kill);
  try {
    for (;;) await touch(page, hand, photo);
  } catch (cause) {
    await death;
    if (!/closed|crashed|detached|disconnected|navigat/i.test(String(cause))) throw cause;
  }
};

describe(`${KILLS} kills at random moments, seed ${SEED}`, () => {
  it('nothing that the screen had called kept is missing after any of them', { timeout: 480_000 }, async () => {
    console.log(`kills: seed ${SEED}`);
    const server = await openServer();
    const { address } = server;
    phone = await openBrowser(profile);
    await firstVisit(phone.page, address);
    await server.stop();
    const first = handOn(phone.page);
    await first.press('Start with my rig');
    const rig = await newTrailer(phone.page, first, RIG);
    const photo = await smallJpeg(phone.page, 'bead');
    const copies = `${address}/#/rig/${rig}/copies`;
    let text = '';
    let before = 0;
    for (let kill = 0; kill <= KILLS; kill += 1) {
      const { page } = phone;
      const hand = handOn(page);
      if (kill > 0) await listen(page);
      await page.goto(copies);
      if (kill === KILLS) {
        // What was still a draft at the last kill becomes an answer.
        await intoRound(page, hand, rig);
        await answerSound(page, hand);
        await page.goto(copies);
      }
      const file = await saved(page, () => hand.press('Save the logbook (.jsonl)'));
      rmSync(file.path);
      text = file.bytes.toString('utf8');
      const entries = entriesOf(text);
      expect(entries.length, `after kill ${kill} nothing was lost`).toBeGreaterThanOrEqual(before);
      before = entries.length;
      nothingMissing(entries, kill);
      if (kill === KILLS) noPhotoMissing(entries);
      else {
        await intoRound(page, hand, rig);
        await untilDead(page, hand, photo, phone.kill);
        phone = await openBrowser(profile);
      }
    }
    expect(calledKept.length, 'answers were being recorded all the while').toBeGreaterThan(KILLS / 2);
    const log = join(profile, 'export.jsonl');
    writeFileSync(log, text);
    expect((await command(['verify', log])).out).toContain('whole');
    console.log(`kills: ${calledKept.length} answers and ${photosKept.length} photographs were called kept; ${before} entries stand`);
  });
});
