import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, DESK, dropProfile, newProfile, type OpenBrowser, type OpenServer, openBrowser, openServer } from './browser';
import { type Hand, handOn, settled, until } from './hand';
import { beginRound, entriesOf, firstVisit, newTrailer, saved, standing, stationCalled } from './walk';

/**
 * One moisture reading from thumb to paper: 19.5 % typed in wood of 50 °F. The typed text stands in the logbook beside its
 * SI value and nothing derived; the value at calibration temperature, 20.5 %, stands in the plan's reason with its worksheet,
 * on the page of the finding, in the worksheet behind it, on paper, and on the command line.
 *
 * 20.5 % is the rule of a resistance-meter manual's correction page worked by hand: half a point more for each 5 °C below
 * 20 °C, and 50 °F are 10 °C, so 19.5 + 2 × 0.5. Uncorrected it would only be watched; from 20 % the way in is found before rain.
 * A wet wall is two questions, where it comes in and how wet it is: the second tells of the reading itself.
 */
const TYPED = '19.5';
const CORRECTED = '20.5';

type Reason = { readonly text: string; readonly entries: readonly string[]; readonly worksheet?: { readonly id: string; readonly inputs: Readonly<Record<string, number>> } };
type PlanRead = {
  readonly findings: readonly { readonly id: string; readonly rule: string; readonly title: string; readonly urgency: string; readonly because: readonly Reason[] }[];
};

const profile = newProfile();
let server: OpenServer;
let phone: OpenBrowser;
let hand: Hand;
let rig = '';
let station = '';
let log = '';
let entry = '';
let planText = '';
let finding: PlanRead['findings'][number] | undefined;

const findingOf = (text: string): PlanRead['findings'][number] | undefined =>
  (JSON.parse(text) as { readonly plan: PlanRead }).plan.findings.find((f) => f.rule === 'wet-wall' && f.because.some((b) => b.entries.includes(entry)));

beforeAll(async () => {
  server = await openServer();
  phone = await openBrowser(profile);
  hand = handOn(phone.page);
  await firstVisit(phone.page, server.address);
  await hand.press('Start with my rig');
  rig = await newTrailer(phone.page, hand, 'One reading');
  log = join(profile, 'reading.jsonl');
});

afterAll(async () => {
  await phone.close();
  await server.stop();
  dropProfile(profile);
});

describe('one reading, from thumb to paper', () => {
  it('the thumb: typed on the keys of the round’s card', async () => {
    await beginRound(phone.page, hand);
    await phone.page.goto(`${server.address}/#/rig/${rig}/round/list`);
    await phone.page.getByRole('link', { name: /Window, rear/ }).click();
    station = (await until(phone.page, 'the window', (s) => s.heading === 'Window, rear' && s.primary === 'S0 As new')).heading;
    await hand.press(/^S1/);
    await hand.press('Note or more');
    await hand.press('Moisture, pin meter');
    await until(phone.page, 'the keys', (s) => s.asked === 'Moisture, pin meter');
    await hand.type(TYPED);
    await until(phone.page, 'the temperature next', (s) => /wood temperature/i.test(s.primary));
    await hand.go();
    await hand.type('50');
    for (let now = await settled(phone.page); now.heading === station; now = await settled(phone.page)) await hand.go();
  });

  it('the logbook: what was typed beside its SI value, and never a derived result', async () => {
    await phone.page.goto(`${server.address}/#/rig/${rig}/copies`);
    const file = await saved(phone.page, () => hand.press('Save the logbook (.jsonl)'));
    rmSync(file.path);
    writeFileSync(log, file.bytes);
    const entries = entriesOf(file.bytes.toString('utf8'));
    const [reading, ...others] = standing(entries).filter((e) => e.kind === 'wood-moisture-pin');
    expect(others).toEqual([]);
    entry = reading?.id ?? '';
    expect(reading?.place).toEqual({ at: 'station', station: stationCalled(entries, station), side: 'outside' });
    expect(reading?.body).toEqual({
      reading: { typed: TYPED, unit: 'percent', si: expect.closeTo(0.195, 12) },
      wood_temperature: { typed: '50', unit: 'f', si: expect.closeTo(283.15, 6) },
    });
    expect(JSON.stringify(reading)).not.toContain(CORRECTED);
  });

  it('the plan: corrected in its reason, with the worksheet that made it', async () => {
    await phone.page.setViewportSize(DESK);
    await phone.page.goto(`${server.address}/#/rig/${rig}/plan`);
    const file = await saved(phone.page, () => hand.press('Save plan as JSON'));
    rmSync(file.path);
    planText = file.bytes.toString('utf8');
    finding = findingOf(planText);
    expect(finding).toMatchObject({ title: 'Wood damp', urgency: 'before-rain' });
    const reason = finding?.because.find((b) => b.worksheet);
    expect(reason?.text).toContain(`${TYPED} % by pin meter`);
    expect(reason?.text).toContain(`${CORRECTED} % at calibration temperature, give or take 1`);
    expect(reason?.worksheet).toEqual({ id: 'pin-meter-temperature', inputs: { reading_percent: 19.5, wood_temperature_c: 10 } });
  });

  it('the screen: the finding says it, and the worksheet behind the figure shows how', async () => {
    await phone.page.goto(`${server.address}/#/rig/${rig}/finding/${encodeURIComponent(finding?.id ?? '')}`);
    await expect.poll(() => phone.page.getByRole('main').textContent()).toContain(`${CORRECTED} % at calibration temperature`);
    await phone.page.getByRole('button', { name: 'worksheet' }).first().click();
    const sheet = phone.page.getByRole('dialog', { name: /^Worksheet: Pin meter/ });
    await sheet.waitFor();
    const words = (await sheet.textContent()) ?? '';
    expect(words).toContain(CORRECTED);
    expect(words).toContain('M = R + 0.1 (T₀ − T)');
    expect(words).toContain('Resistance-meter manual');
    await phone.page.keyboard.press('Escape');
  });

  it('paper: the condition record prints the same', async () => {
    await phone.page.goto(`${server.address}/#/rig/${rig}/print/condition-record`);
    await phone.page.locator('iframe').waitFor();
    await expect.poll(() => phone.page.frameLocator('iframe').locator('body').textContent(), { timeout: 10_000 }).toContain(`${CORRECTED} %`);
  });

  it('the command line: the same plan from the file, and the same figure from the worksheet', async () => {
    const plan = await command(['plan', '--json', log]);
    expect(plan.out).toBe(planText);
    expect(findingOf(plan.out)).toEqual(finding);
    const worksheet = await command(['worksheet', 'pin-meter-temperature', JSON.stringify(finding?.because.find((b) => b.worksheet)?.worksheet?.inputs)]);
    expect(JSON.parse(worksheet.out)).toMatchObject({ result: { corrected_percent: 20.5, plus_minus_percent: 1 } });
  });
});
