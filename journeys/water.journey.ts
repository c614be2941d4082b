import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, dropProfile, newProfile, type OpenBrowser, type OpenServer, openBrowser, openServer } from './browser';
import { clockOf, type PageClock } from './clock';
import { type Hand, handOn, settled, until } from './hand';
import { COLD_NIGHT, DAMP_SHED } from './other-rigs';
import { entriesOf, exportedLogbook, firstVisit } from './walk';
import { demoMeteredOnly, demoUntil } from './water-after';

/**
 * Water, from readings to dry wood, on one phone. The sample rig's window leaks: its readings alone put it first, a hose finds
 * it, the repair is written down, the same places are metered again after two days, after two rains and on; the leak is closed
 * by the second rain, the wall only once it was dry twice, a week apart. A rig from a damp shed reads 18 % everywhere and has no
 * leak; another one sweats in a cold night and has none either. After each step the command is asked what it makes of the logbook.
 *
 * What stands behind the two figures: air of 20 °C and 85 % brings wood to 18 % (Wood Handbook, FPL-GTR-190, table 4-2, 70 °F and
 * 85 %: 17.9 %); air of 18 °C and 70 % wets what is colder than 12.4 °C (ASHRAE saturation pressures: 0.7 × 2064 Pa is that of 12.4 °C).
 */
const RIG = '01890000-0000-7000-8000-000000000001';
const WINDOW = 'road.window-24x22';
const WINDOW_NAME = 'Window 2, road side';

type Reading = { readonly as_read: number; readonly dry_reference: boolean };
type Spot = { readonly id: string; readonly point_m: readonly [number, number]; readonly state: string; readonly readings: readonly Reading[] };
type Leak = {
  readonly sentence: string;
  /** Ids of spots, which stand in their panels. */
  readonly spots: readonly string[];
  readonly candidates: readonly { readonly station: string; readonly word: string; readonly probability: number; readonly prior: number }[];
  readonly other_causes: readonly { readonly cause: string; readonly state: string }[];
  readonly confirmed?: string;
  readonly stop: { readonly state: string; readonly closed?: string };
  readonly dryness: { readonly state: string; readonly closed?: string };
};
type Finding = { readonly id: string; readonly rule: string; readonly life: string; readonly closed?: string; readonly leak?: string };
type Read = {
  readonly findings: readonly Finding[];
  readonly water: {
    readonly leaks: readonly Leak[];
    readonly panels: readonly { readonly spots: readonly Spot[] }[];
    readonly no_leak: readonly { readonly why: string; readonly because: readonly { readonly text: string }[] }[];
  };
};

const profile = newProfile();
let server: OpenServer;
let phone: OpenBrowser;
let hand: Hand;
let clock: PageClock;

const at = (path: string): string => `${server.address}/#/rig/${RIG}${path}`;

/** What the command makes of a logbook on a day. */
const planOf = async (text: string, day: string): Promise<Read> => {
  const log = join(profile, 'water.jsonl');
  writeFileSync(log, text);
  const done = await command(['plan', '--json', '--on', day, log]);
  expect(done.err).toBe('');
  return (JSON.parse(done.out) as { readonly plan: Read }).plan;
};

/** What the command makes of the phone's logbook; the phone stands at its water screen before and after. */
const known = async (day: string): Promise<Read & { readonly leak: Leak; readonly text: string }> => {
  const text = await exportedLogbook(phone.page, hand, server.address, RIG);
  const plan = await planOf(text, day);
  const [leak, ...more] = plan.water.leaks;
  if (!leak) throw new Error('no leak is known');
  expect(more).toEqual([]);
  await toWater();
  return { ...plan, leak, text };
};

const toWater = async () => {
  await phone.page.goto(at('/water'));
  await until(phone.page, 'the water screen', (s) => s.text.startsWith('Water') && !s.disabled);
  return settled(phone.page);
};

/** Another day, at nine: the page begins anew, as a phone does that was put away. */
const onDay = async (day: string): Promise<void> => {
  await clock.set(`${day}T13:00:00Z`);
  await phone.page.reload();
  await toWater();
};

const BASE = 11.1;

/** Reads the same places again, as the screen leads: dry ones as they were, then wet ones with what is left of their excess. */
const meterAgain = async ({ leak, water }: Read & { readonly leak: Leak }, first: ReadonlyMap<string, number>, left: number): Promise<number> => {
  const now = await settled(phone.page);
  if (now.primary === 'Meter the same places') await hand.go();
  else await hand.press(/^Meter the same places again/);
  let read = 0;
  const all = water.panels.flatMap((p) => p.spots);
  const wet = leak.spots.flatMap((id) => all.find((s) => s.id === id) ?? []);
  const dry = all.filter((s) => s.readings.at(-1)?.dry_reference);
  for (const spot of [...dry, ...wet]) {
    const percent = first.get(spot.id);
    if (percent === undefined) throw new Error(`no first reading of ${spot.point_m.join(', ')}`);
    const figure = (wet.includes(spot) ? BASE + (percent - BASE) * left : percent).toFixed(1);
    await until(phone.page, 'the next place', (s) => s.primary === 'Next place');
    await hand.go();
    await until(phone.page, 'the keys', (s) => s.primary === 'Type the reading');
    await hand.type(figure);
    await until(phone.page, `the figure ${figure}`, (s) => s.primary.startsWith(`Keep ${figure}`));
    await hand.go();
    read += 1;
  }
  await until(phone.page, 'all of them read', (s) => /All \d+ places read again/.test(s.text));
  return read;
};

const itRains = async (): Promise<void> => {
  await phone.page.goto(at('/water-note/rain-fell'));
  await until(phone.page, 'the form of a rain', (s) => s.heading === 'Rain' && s.primary === 'Keep it' && !s.disabled);
  await hand.go();
  await phone.page.waitForURL(/\/water$/);
};

const findingOf = (plan: Read, rule: string): Finding | undefined => plan.findings.find((f) => f.rule === rule && (f.leak === undefined || f.id.includes(f.leak)));

beforeAll(async () => {
  server = await openServer();
  phone = await openBrowser(profile);
  hand = handOn(phone.page);
  clock = clockOf(phone.page);
  await clock.set('2026-10-04T13:00:00Z');
  await firstVisit(phone.page, server.address);
  await hand.press(/sample rig/i);
  await until(phone.page, 'the sample rig', (s) => s.heading.startsWith('Not ready to roll'));
});

afterAll(async () => {
  await phone.close();
  await server.stop();
  dropProfile(profile);
});

describe('a window that leaks', () => {
  let first: ReadonlyMap<string, number> = new Map();

  it('is found from readings alone: the ranking puts it first', async () => {
    const { leak, water, text } = await known('2026-10-04');
    expect(entriesOf(text).filter((e) => e.kind === 'leak-clue' || e.kind === 'water-test')).toEqual([]);
    expect(leak.candidates[0]).toMatchObject({ station: WINDOW, word: 'likely' });
    expect(leak.candidates.length).toBeGreaterThan(3);
    // The roof seam above was graded as badly: it is the places that tell the two apart.
    const seam = leak.candidates.find((c) => c.station === 'roof.roof-front-termination');
    expect(leak.candidates[0]?.probability ?? 0).toBeGreaterThan(3 * (seam?.probability ?? 1));
    first = new Map(water.panels.flatMap((p) => p.spots).flatMap((s) => (s.readings.length > 0 ? [[s.id, 100 * (s.readings.at(-1)?.as_read ?? 0)] as const] : [])));
    const screen = await toWater();
    expect(screen.text).toMatch(new RegExp(`1\\s+${WINDOW_NAME}[\\s\\S]*Likely`));
  });

  it('is confirmed by the hose: opening after opening as the phone proposes, each by itself', async () => {
    const tested: string[] = [];
    for (let now = await toWater(); !/Record the repair/.test(now.primary); now = await toWater()) {
      expect(tested.length, `a way in is found within three tests: ${tested.join('; ')}`).toBeLessThan(3);
      expect(now.primary).toMatch(/^Test /);
      await hand.go();
      const before = await until(phone.page, 'what to do', (s) => /start$/.test(s.primary));
      expect(before.text).toMatch(/no (nozzle|jet)/i);
      tested.push(before.heading);
      await hand.go();
      await until(phone.page, 'the clock', (s) => s.primary === 'Water came in');
      await hand.press('Kept dry');
      await clock.forward(6 * 60_000);
      // The clock on the screen moves on once a second.
      await phone.page.waitForTimeout(1500);
      if (before.heading === WINDOW_NAME) await hand.go();
      else {
        await clock.forward(9 * 60_000);
        await hand.press(/^Stayed dry/);
      }
      await until(phone.page, 'what it changed', (s) => /^(Water came in|It stayed dry)/.test(s.heading) && (before.heading !== WINDOW_NAME || s.primary === 'On to the repair'));
      await hand.go();
    }
    expect(tested.at(-1)).toBe(WINDOW_NAME);
    const { leak, text } = await known('2026-10-04');
    expect(leak.confirmed).toBe(WINDOW);
    expect(leak.candidates[0]).toMatchObject({ station: WINDOW, word: 'likely' });
    expect(leak.candidates[0]?.probability).toBeGreaterThan(0.95);
    const tests = entriesOf(text).filter((e) => e.kind === 'water-test');
    expect(tests.at(-1)?.body).toMatchObject({ how: 'hose', result: 'came-in', kept_dry: true, ran_for: { typed: '6', unit: 'min' } });
  });

  it('is repaired, which closes nothing by itself', async () => {
    await toWater();
    await hand.go();
    await until(phone.page, 'the form of the work', (s) => /^Keep/.test(s.primary));
    await answerRepair();
    const plan = await known('2026-10-04');
    expect(plan.leak.stop.state).toBe('repaired');
    expect(findingOf(plan, 'water-coming-in')).toMatchObject({ life: 'proof-due' });
  });

  it('after two days is metered again, and stays open', async () => {
    await onDay('2026-10-06');
    expect(await meterAgain(await known('2026-10-06'), first, 0.93)).toBeGreaterThan(15);
    const plan = await known('2026-10-06');
    expect(plan.leak.stop.state).toBe('repaired');
    expect(plan.leak.dryness.state).not.toBe('dry');
  });

  it('after two real rains without a rise the leak is closed, and the wall is not', async () => {
    await onDay('2026-10-10');
    await itRains();
    await onDay('2026-10-16');
    await itRains();
    await onDay('2026-10-18');
    await meterAgain(await known('2026-10-18'), first, 0.72);
    const plan = await known('2026-10-18');
    expect(plan.leak.stop).toMatchObject({ state: 'stopped', closed: '2026-10-18' });
    expect(findingOf(plan, 'water-coming-in')).toMatchObject({ life: 'proved' });
    expect(plan.leak.dryness.state).not.toBe('dry');
    expect(findingOf(plan, 'wet-wall')?.closed).toBeUndefined();
    expect((await toWater()).heading).toMatch(/^Leak stopped/);
  });

  it('is drying by the fourth reading in falling order', async () => {
    for (const [day, left] of [
      ['2026-11-01', 0.48],
      ['2026-11-15', 0.27],
    ] as const) {
      await onDay(day);
      await meterAgain(await known(day), first, left);
    }
    const plan = await known('2026-11-15');
    expect(plan.leak.dryness.state).toBe('drying');
    expect(plan.leak.stop.state).toBe('stopped');
    expect((await toWater()).heading).toBe('Leak stopped, drying');
  });

  it('is called dry at the second time, more than a week after the first, and not before', async () => {
    await onDay('2026-12-06');
    await meterAgain(await known('2026-12-06'), first, 0.09);
    const once = await known('2026-12-06');
    expect(once.leak.dryness.state).toBe('drying');
    expect(findingOf(once, 'wet-wall')?.closed).toBeUndefined();
    await onDay('2026-12-14');
    await meterAgain(await known('2026-12-14'), first, 0.06);
    const twice = await known('2026-12-14');
    expect(twice.leak.dryness).toMatchObject({ state: 'dry', closed: '2026-12-14' });
    expect(findingOf(twice, 'wet-wall')).toMatchObject({ life: 'proved', closed: '2026-12-14' });
    expect((await toWater()).heading).toBe('Leak stopped, dry again');
  });
});

/** Butyl tape under a flange that was taken off; other work is chosen where the form begins with something else. */
const answerRepair = async (): Promise<void> => {
  const now = await settled(phone.page);
  if (!/^Re-bedded/.test(now.heading)) {
    await hand.press('Other work');
    await hand.press(/^Re-bedded/);
    await until(phone.page, 're-bedding', (s) => /^Re-bedded/.test(s.heading));
  }
  await hand.press('Bedded on: choose');
  await hand.press(/^Butyl tape/);
  await until(phone.page, 'the work told', (s) => /^Keep/.test(s.primary) && !s.disabled);
  await hand.go();
  await until(phone.page, 'the work kept', (s) => /^Kept/.test(s.said));
};

describe('the same story told by a second phone, to the command alone', () => {
  const told: readonly (readonly [until: string, stop: string, dryness: string])[] = [
    ['2026-10-03', 'reopened', 'wetting'],
    ['2026-10-04T11', 'reopened', 'wetting'],
    ['2026-10-04', 'repaired', 'wetting'],
    ['2026-10-18', 'stopped', 'wet'],
    ['2026-11-15', 'stopped', 'drying'],
    ['2026-12-06', 'stopped', 'drying'],
    ['2026-12-14', 'stopped', 'dry'],
  ];
  it.each(told)('until %s: leak %s, wall %s', async (until, stop, dryness) => {
    const [leak, ...more] = (await planOf(demoUntil(until), until.slice(0, 10))).water.leaks;
    expect(more).toEqual([]);
    expect([leak?.stop.state, leak?.dryness.state]).toEqual([stop, dryness]);
    expect(leak?.candidates[0]?.station).toBe(WINDOW);
    expect(leak?.confirmed).toBe(until === '2026-10-03' ? undefined : WINDOW);
  });

  it('puts the window first even where nobody ever looked at a seal or saw a stain: meter, thermometer and rain gauge alone', async () => {
    const [leak] = (await planOf(demoMeteredOnly(), '2026-10-04')).water.leaks;
    const [first, second] = leak?.candidates ?? [];
    expect(first).toMatchObject({ station: WINDOW, word: 'likely' });
    expect(first?.probability ?? 0).toBeGreaterThan(2 * (second?.probability ?? 1));
    expect(first?.prior ?? 1).toBeLessThan(0.2);
  });

  it('opens again by itself when the wall rises after a storm', async () => {
    const plan = await planOf(demoUntil('2026-10-25', 'came-back'), '2026-10-25');
    expect(plan.water.leaks[0]?.stop.state).toBe('reopened');
    expect(findingOf(plan, 'water-coming-in')).toMatchObject({ life: 'reopened' });
    expect(findingOf(await planOf(demoUntil('2026-10-22'), '2026-10-22'), 'water-coming-in')).toMatchObject({ life: 'proved' });
  });
});

describe('rigs that read high and do not leak', () => {
  const broughtIn = async (text: string, name: string): Promise<string> => {
    await phone.page.goto(`${server.address}/#/record`);
    await phone.page.getByLabel('Open a copy').setInputFiles({ name: `${name}.jsonl`, mimeType: 'application/jsonl', buffer: Buffer.from(text) });
    await phone.page.getByRole('region', { name: 'What was taken in' }).waitFor();
    await phone.page.goto(`${server.address}/#/rigs`);
    await hand.press(new RegExp(`^${name}`));
    await until(phone.page, 'the rig', (s) => s.heading.includes('to roll'));
    await hand.press(/^Water/);
    return (await until(phone.page, 'the water screen', (s) => /leak/.test(s.heading))).text;
  };

  it('from a damp shed: 18 % everywhere, and the air says why', async () => {
    const text = DAMP_SHED();
    const plan = await planOf(text, '2026-10-11');
    expect(plan.water.leaks).toEqual([]);
    const read = plan.water.panels.flatMap((p) => p.spots);
    expect(read.length).toBeGreaterThan(20);
    for (const spot of read) expect(spot.state).toBe('weather');
    expect(plan.water.no_leak.map((n) => n.why)).toEqual(['weather', 'weather']);
    expect(plan.findings.filter((f) => f.rule === 'water-coming-in' || f.rule === 'wet-wall')).toEqual([]);
    expect(await broughtIn(text, 'Bittern')).toMatch(/no leak/);
  });

  it('in a cold night: the dew point says so', async () => {
    const text = COLD_NIGHT();
    const plan = await planOf(text, '2026-01-15');
    expect(plan.water.leaks).toEqual([]);
    const [said] = plan.water.no_leak;
    expect(said).toMatchObject({ why: 'condensation' });
    expect(said?.because.map((b) => b.text).join(' ')).toMatch(/12 °C/);
    expect(await broughtIn(text, 'Dipper')).toMatch(/sweats, no leak/);
  });
});
