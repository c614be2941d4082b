import { readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { Entry } from '../src/terms';
import { type Hand, settled, until } from './hand';

/** Loads the page once and waits until the whole program is kept on the device; from here on the server may be gone. */
export const firstVisit = async (page: Page, address: string): Promise<void> => {
  await page.goto(address);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
};

/** How a person with a papers folder in hand answers the questions of a new rig; what is not listed is left typical. */
const RIG_ANSWERS: readonly (readonly [question: RegExp, answer: (hand: Hand) => Promise<void>])[] = [
  [/^What kind of rig/, (hand) => hand.press('Travel trailer')],
  [/^How big/, (hand) => hand.press(/^More long/).then(hand.go)],
  [/^Which model year/, (hand) => hand.type('2014').then(hand.go)],
  [/wall’s skin/, (hand) => hand.press('Corrugated aluminium')],
  [/^How is the wall built/, (hand) => hand.press(/^Hung on a frame/)],
  [/^What covers the roof/, (hand) => hand.press('EPDM rubber')],
  [/^How many axles/, (hand) => hand.press('Two')],
  [/tyre pressure on the label/, (hand) => hand.type('65').then(hand.go)],
  [/^Slide-outs on the road side/, (hand) => hand.press('One')],
  [/^Slide-outs on the curb side/, (hand) => hand.press('None')],
];

/** A travel trailer as the layouts give it, with a few answers of a person's own. Ends on the rig's own screen; resolves to its id. */
export const newTrailer = async (page: Page, hand: Hand, name?: string): Promise<string> => {
  for (let now = await until(page, 'the first question', (s) => s.of !== undefined && s.stop === 1); now.primary !== 'Keep this rig'; ) {
    const { heading } = now;
    const answer = RIG_ANSWERS.find(([question]) => question.test(heading))?.[1] ?? ((h: Hand) => h.go());
    await answer(hand);
    now = await until(page, `a question after “${heading}”`, (s) => s.heading !== heading);
  }
  if (name !== undefined) await hand.fill('Name of the rig', name);
  await hand.go();
  await page.waitForURL(/#\/rig\/[^/]+$/);
  await until(page, 'the rig', (s) => s.heading.startsWith('Ready to roll'));
  return /#\/rig\/([^/]+)$/.exec(page.url())?.[1] ?? '';
};

/** From the rig's screen to the first stop of a full round. Resolves to the number of stops. */
export const beginRound = async (page: Page, hand: Hand): Promise<number> => {
  await until(page, 'the way into a round', (s) => s.primary === 'Walk a round');
  await hand.go();
  await until(page, 'the stops counted', (s) => s.primary === 'Begin the round' && /^\d+ stops/.test(s.second));
  await hand.go();
  return (await until(page, 'the first stop', (s) => s.stop === 1)).of ?? 0;
};

/** An answer that the screen has called kept: at which station, and what of the entry's body it must hold. */
export type Kept = { readonly station: string; readonly body: Readonly<Record<string, unknown>>; readonly note?: string; readonly photos?: number };

/** What a gauge, a tread gauge and a thermometer show on this trailer, in the units that stand beside the keys. */
export const READINGS: readonly (readonly [asked: RegExp, figure: string, holds: (typed: string) => Readonly<Record<string, unknown>>])[] = [
  [/^Type the pressure/, '65', (typed) => ({ pressure: { typed, unit: 'psi' } })],
  [/^Type the tread depth/, '8', (typed) => ({ depth: { typed } })],
  [/^Type the date code/, '2324', (code) => ({ code })],
];

const SOUND: Readonly<Record<string, Readonly<Record<string, unknown>>>> = { 'S0 As new': { grade: 'S0' }, Sound: { verdict: 'sound' }, None: { cracks: 'none' } };

/**
 * Answers what stands at the foot of the screen until the walk has gone on from this stop: sound in one tap, the same as
 * last round in one tap, readings typed. Nothing counts as kept before the screen has moved on from it or said so.
 */
export const answerSound = async (page: Page, hand: Hand, figures: Readonly<Record<string, string>> = {}): Promise<readonly Kept[]> => {
  const first = await settled(page);
  const kept: Kept[] = [];
  for (let guard = 0; guard < 24; guard += 1) {
    const now = await settled(page);
    if (now.stop !== first.stop || now.heading !== first.heading) return kept;
    const moved = (s: typeof now): boolean => s.primary !== now.primary || s.second !== now.second || s.disabled !== now.disabled || s.stop !== now.stop || s.asked !== now.asked;
    const reading = READINGS.find(([asked]) => asked.test(now.primary));
    if (now.disabled && reading) {
      const [asked, usual, holds] = reading;
      const figure = Object.entries(figures).find(([label]) => asked.source.includes(label))?.[1] ?? usual;
      await hand.clear();
      await hand.type(figure);
      kept.push({ station: now.heading, body: holds(figure) });
    } else {
      const sound = SOUND[now.primary];
      await hand.go();
      if (sound) kept.push({ station: now.heading, body: sound });
    }
    await until(page, `something after “${now.primary}” at ${now.heading}`, moved);
  }
  throw new Error(`the stop ${first.heading} does not end`);
};

/** After the browser was killed: the list of rigs, the rig, and the round where it was left. Resolves to how many stops the rig's screen says are answered. */
export const goOnWith = async (page: Page, hand: Hand, address: string, rig: string): Promise<number> => {
  await page.goto(address);
  await hand.press(new RegExp(`^${rig}`));
  const home = await until(page, 'the way back into the round', (s) => s.primary === 'Go on with the round');
  await hand.go();
  await until(page, 'a stop of the round', (s) => s.stop !== undefined && s.heading !== home.heading);
  return Number(/^(\d+) of/.exec(home.second)?.[1] ?? Number.NaN);
};

/** The entries of an exported logbook, without its closing line. */
export const entriesOf = (text: string): readonly Entry<Readonly<Record<string, unknown>>>[] =>
  text
    .trimEnd()
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line));

/** Entries that were not withdrawn. */
export const standing = <E extends Entry>(entries: readonly E[]): readonly E[] => {
  const withdrawn = new Set(entries.flatMap((e) => (e.kind === 'withdrawal' ? (e.concerns ?? []) : [])));
  return entries.filter((e) => !withdrawn.has(e.id));
};

/** The id of the station that the layout has given this name. */
export const stationCalled = (entries: readonly Entry<Readonly<Record<string, unknown>>>[], name: string): string => {
  const layout = entries.find((e) => e.kind === 'layout-placed')?.body['layout'];
  const { stations = [] } = (layout ?? {}) as { readonly stations?: readonly { readonly id: string; readonly name: string }[] };
  return stations.find((s) => s.name === name)?.id ?? `no station is called ${name}`;
};

/** Presses a control that hands out a file, and reads the file. */
export const saved = async (page: Page, press: () => Promise<void>): Promise<{ readonly name: string; readonly bytes: Buffer; readonly path: string }> => {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  const path = join(tmpdir(), `seamward-${process.pid}-${Date.now()}-${download.suggestedFilename()}`);
  await download.saveAs(path);
  return { name: download.suggestedFilename(), bytes: readFileSync(path), path };
};

/** A real photograph's bytes: a picture drawn and pressed into JPEG by the browser itself. */
export const smallJpeg = async (page: Page, words: string): Promise<{ readonly name: string; readonly mimeType: string; readonly buffer: Buffer }> => {
  const address = await page.evaluate((text) => {
    const canvas = document.createElement('canvas');
    canvas.width = 160;
    canvas.height = 120;
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('no canvas');
    pen.fillStyle = '#8a8f98';
    pen.fillRect(0, 0, 160, 120);
    pen.fillStyle = '#222';
    pen.fillText(text, 12, 60);
    return canvas.toDataURL('image/jpeg', 0.8);
  }, words);
  return { name: `${words}.jpg`, mimeType: 'image/jpeg', buffer: Buffer.from(address.slice(address.indexOf(',') + 1), 'base64') };
};

/** The logbook as the app hands it out. */
export const exportedLogbook = async (page: Page, hand: Hand, address: string, rig: string): Promise<string> => {
  await page.goto(`${address}/#/rig/${rig}/copies`);
  const file = await saved(page, () => hand.press('Save the logbook (.jsonl)'));
  rmSync(file.path);
  return file.bytes.toString('utf8');
};

/** A first visit, a new travel trailer of this name, a round begun and its first three stops answered as sound. Resolves to the rig. */
export const roundUnderWay = async (page: Page, hand: Hand, address: string, name: string): Promise<string> => {
  await firstVisit(page, address);
  await hand.press('Start with my rig');
  const rig = await newTrailer(page, hand, name);
  await beginRound(page, hand);
  for (let i = 0; i < 3; i += 1) await answerSound(page, hand);
  return rig;
};
