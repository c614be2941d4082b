import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, dropProfile, newProfile, type OpenBrowser, openBrowser, openServer } from './browser';
import { type Hand, handOn, settled, until } from './hand';
import { beginRound, entriesOf, firstVisit, newTrailer, saved, stationCalled } from './walk';

/**
 * One reading of a pin meter, from thumb to paper: typed on a phone, kept with its SI value and nothing derived, corrected
 * once by its worksheet, judged, drawn and printed; the app and the command give the same plan, byte for byte.
 *
 * The figures: a meter calibrated for 20 °C shows 24.5 % in wood of 50 °F (10 °C). A resistance-meter manual adds 0.5 % for
 * every 5 °C below 20 °C: 25.5 %. Uncorrected it would lie in the trade's band from 20 %, corrected it lies in that from
 * 25 %: where the correction is lost on the way, another finding stands here.
 */
const RIG = 'Damp corner';
const TYPED = { percent: '24.5', fahrenheit: '50' } as const;
const CORRECTED_PERCENT = 24.5 + (0.5 * (20 - 10)) / 5;

type Because = {
  readonly text: string;
  readonly entries: readonly string[];
  readonly source: { readonly text: string };
  readonly worksheet?: { readonly id: string; readonly inputs: Readonly<Record<string, unknown>> };
};
type PlanFile = {
  readonly plan: {
    readonly findings: readonly {
      readonly id: string;
      readonly title: string;
      readonly urgency: string;
      readonly who: string;
      readonly station: string;
      readonly because: readonly Because[];
    }[];
  };
};

const profile = newProfile();
const log = join(profile, 'export.jsonl');
let phone: OpenBrowser;
let hand: Hand;
let address = '';
let stop: () => Promise<void>;
let rig = '';
let window = '';
let station = '';
let entry = '';
let appPlan: Buffer;
let finding: PlanFile['plan']['findings'][number];

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

beforeAll(async () => {
  const server = await openServer();
  ({ address, stop } = server);
  phone = await openBrowser(profile);
  hand = handOn(phone.page);
  await firstVisit(phone.page, address);
  await hand.press('Start with my rig');
  rig = await newTrailer(phone.page, hand, RIG);
  await beginRound(phone.page, hand);
  await phone.page.goto(`${address}/#/rig/${rig}/round/list`);
  await hand.press(/Window 1, curb side/);
  await until(phone.page, 'the window', (s) => s.heading.startsWith('Window 1, curb side'));
});

afterAll(async () => {
  await phone.close();
  await stop();
  dropProfile(profile);
});

describe('one reading, from thumb to paper', () => {
  it('is typed on the round’s screen, and judged before the person has walked on', async () => {
    const { page } = phone;
    ({ heading: window } = await settled(page));
    await hand.press(/^S1/);
    await hand.press('Note or more');
    await hand.press('Moisture, pin meter');
    await until(page, 'the keys for the reading', (s) => s.asked === 'Moisture, pin meter');
    await hand.type(TYPED.percent);
    await until(page, 'the wood’s temperature next', (s) => /wood temperature/i.test(s.primary));
    await hand.go();
    await hand.type(TYPED.fahrenheit);
    expect(await page.getByRole('button', { name: /^Reading:/ }).getAttribute('aria-label')).toBe('Reading: 24.5 %');
    expect(await page.getByRole('button', { name: /^Wood temperature:/ }).getAttribute('aria-label')).toBe('Wood temperature: 50 °F');
    await until(page, 'the judgement', (s) => s.text.includes('Before rain'));
    for (let now = await settled(page); now.heading === window; now = await settled(page)) {
      if (now.disabled) await hand.press(/^Softwood/);
      await hand.go();
    }
  });

  it('stands in the export as typed and in SI, with nothing derived', async () => {
    await phone.page.goto(`${address}/#/rig/${rig}/copies`);
    const file = await saved(phone.page, () => hand.press('Save the logbook (.jsonl)'));
    rmSync(file.path);
    const text = file.bytes.toString('utf8');
    writeFileSync(log, text);
    const entries = entriesOf(text);
    station = stationCalled(entries, window);
    const found = entries.filter((e) => e.kind === 'wood-moisture-pin');
    expect(found).toHaveLength(1);
    const [only] = found;
    if (!only) throw new Error('no reading');
    entry = only.id;
    expect(only.place).toMatchObject({ at: 'station', station });
    const { material, ...figures } = only.body;
    expect(['softwood', undefined]).toContain(material);
    expect(figures).toEqual({
      reading: { typed: TYPED.percent, unit: 'percent', si: expect.closeTo(0.245, 12) },
      wood_temperature: { typed: TYPED.fahrenheit, unit: 'f', si: expect.closeTo(283.15, 9) },
    });
  });

  it('the app and the command make the same plan of it, byte for byte', async () => {
    const { page } = phone;
    await page.goto(`${address}/#/settings`);
    await page.getByRole('radio', { name: 'The desk', exact: true }).check();
    await page.goto(`${address}/#/rig/${rig}/plan`);
    const file = await saved(page, () => hand.press('Save plan as JSON'));
    rmSync(file.path);
    appPlan = file.bytes;
    const own = await command(['plan', '--json', log]);
    expect(own.err).toBe('');
    expect(own.status).toBe(0);
    expect(Buffer.from(own.out).equals(appPlan), 'the same bytes').toBe(true);
  });

  it('the plan’s reason carries entry, corrected value, source and what the worksheet was given', async () => {
    const { plan } = JSON.parse(appPlan.toString('utf8')) as PlanFile;
    const here = plan.findings.filter((f) => f.because.some((b) => b.entries.includes(entry)));
    expect(here.map((f) => f.title)).toEqual(['Wood wet']);
    const [only] = here;
    if (!only) throw new Error('no finding');
    finding = only;
    expect(finding).toMatchObject({ urgency: 'before-rain', who: 'professional', station });
    const [because] = finding.because;
    expect(because?.entries).toEqual([entry]);
    expect(plain(because?.text ?? '')).toMatch(/^24\.5 % by pin meter on .*, 25\.5 % at calibration temperature, give or take 1(\.0)? %\. 25 to 30 %/);
    expect(because?.source.text).toContain('Moisture bands of the leisure-vehicle trade');
    expect(because?.worksheet).toEqual({ id: 'pin-meter-temperature', inputs: { reading_percent: 24.5, wood_temperature_c: 10 } });
  });

  it('the worksheet, given just that, answers what the manual’s rule gives', async () => {
    const { worksheet } = finding.because[0] ?? {};
    const answer = await command(['worksheet', worksheet?.id ?? '', JSON.stringify(worksheet?.inputs)]);
    expect(answer.status).toBe(0);
    expect((JSON.parse(answer.out) as { result: Readonly<Record<string, unknown>> }).result['corrected_percent']).toBe(CORRECTED_PERCENT);
  });

  it('the command draws the mark at that window, and no other', async () => {
    const svg = join(profile, 'net.svg');
    const done = await command(['draw', log, '--face', 'net', '-o', svg]);
    expect(done.err).toBe('');
    const drawn = readFileSync(svg, 'utf8');
    const labelOf = (id: string): string => new RegExp(`<g id="${id.replaceAll('.', '\\.')}"[^>]*aria-label="([^"]*)"`).exec(drawn)?.[1] ?? `no group ${id}`;
    expect(labelOf(station)).toMatch(/, wood wet, for a professional, last seen /);
    expect(labelOf(`mark/${finding.id}`)).toMatch(/wood wet/i);
    const groups = [...drawn.matchAll(/<g id="([^"]*)"[^>]*aria-label="[^"]*wood wet/gi)].map((m) => m[1]);
    expect(groups.toSorted(), 'the station and its mark, and nothing else').toEqual([station, `mark/${finding.id}`].toSorted());
  });

  it('the printed condition record shows it as typed and as corrected, with its source', async () => {
    const { page } = phone;
    await page.goto(`${address}/#/rig/${rig}/print/condition-record`);
    const file = await saved(page, () => hand.press('Save as a page'));
    rmSync(file.path);
    const sheet = await phone.context.newPage();
    await sheet.setContent(file.bytes.toString('utf8'));
    const words = plain(await sheet.evaluate(() => document.body.textContent ?? ''));
    await sheet.close();
    expect(words).toContain('Condition record');
    expect(words, 'as recorded').toMatch(/As recorded.*24\.5 % by pin meter, wood 50 °F/s);
    expect(words, 'as corrected').toMatch(/Because\..*24\.5 % by pin meter on .*25\.5 % at calibration temperature, give or take 1/s);
    expect(words, 'its source').toContain(plain(finding.because[0]?.source.text ?? 'no source'));
    expect(words).toMatch(/Wood wet/);
  });
});
