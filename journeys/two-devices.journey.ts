import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, DESK, dropProfile, newProfile, type OpenBrowser, type OpenServer, openBrowser, openServer } from './browser';
import { handOn } from './hand';
import { entriesOf, newTrailer, saved, stationCalled } from './walk';

/**
 * One rig on two devices without a server between them: an export taken in elsewhere gives the same digest, owner and
 * technician merge both ways to the same digest, and two corrections of one entry stand side by side until a person settles them.
 */
/** What of a plan's file is read here. */
type PlanRead = { readonly findings: readonly { readonly station?: string; readonly because: readonly { readonly text: string }[] }[] };
type Device = { readonly page: Page; readonly by: string };

const profile = newProfile();
let browser: OpenBrowser;
let server: OpenServer;
let owner: Device;
let technician: Device;
let rig = '';
let station = '';

const open = async (device: Device, address: string): Promise<void> => {
  await device.page.goto(`${server.address}/#/${address}`);
  await device.page.getByRole('heading', { level: 1 }).waitFor();
};

const exported = async (device: Device): Promise<string> => {
  await open(device, `rig/${rig}/copies`);
  const file = await saved(device.page, () => device.page.getByRole('button', { name: 'Save the logbook (.jsonl)' }).click());
  rmSync(file.path);
  return file.bytes.toString('utf8');
};

/** Opens a file where the rig is known already; resolves to what the page says of it. */
const takeIn = async (device: Device, text: string): Promise<string> => {
  await open(device, `rig/${rig}/logbook`);
  await open(device, `rig/${rig}/copies`);
  await device.page.getByLabel('Open files').setInputFiles({ name: 'from-elsewhere.jsonl', mimeType: 'application/jsonl', buffer: Buffer.from(text) });
  const told = device.page.getByRole('status').filter({ hasText: 'from-elsewhere.jsonl:' });
  await told.waitFor();
  return (await told.textContent()) ?? '';
};

const closing = (text: string): { readonly count: number; readonly digest: string } => JSON.parse(text.trimEnd().split('\n').at(-1) ?? '{}').trailer;

const grade = async (device: Device, at: string, option: RegExp): Promise<void> => {
  await open(device, `rig/${rig}/add?kind=seal-grade&station=${at}`);
  await device.page.getByRole('radio', { name: option }).check();
  await device.page.getByRole('button', { name: 'Keep it' }).click();
  await device.page.getByRole('button', { name: 'Keep it' }).waitFor({ state: 'detached' });
};

const correct = async (device: Device, entry: string, option: RegExp): Promise<void> => {
  await open(device, `rig/${rig}/correct/${entry}`);
  await device.page.getByRole('radio', { name: option }).check();
  await device.page.getByRole('button', { name: 'Keep the correction' }).click();
  await device.page.waitForURL(/\/logbook/);
};

const doubts = (device: Device) => device.page.getByRole('region', { name: 'Needs your word' });

beforeAll(async () => {
  server = await openServer();
  browser = await openBrowser(profile, DESK);
  owner = { page: browser.page, by: 'Robin' };
  const elsewhere = await browser.browser.newContext({ viewport: DESK, acceptDownloads: true });
  technician = { page: await elsewhere.newPage(), by: 'Workshop' };
  for (const device of [owner, technician]) {
    await open(device, 'settings');
    await device.page.getByRole('textbox', { name: 'Written beside every entry from this device' }).fill(device.by);
  }
  await open(owner, 'new');
  rig = await newTrailer(owner.page, handOn(owner.page), 'Shared rig');
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  dropProfile(profile);
});

describe('one rig, two devices, no server between them', () => {
  it('an export taken in on another device gives the same file and the same digest', async () => {
    const text = await exported(owner);
    station = stationCalled(entriesOf(text), 'Window, rear');
    await open(technician, 'rigs');
    expect(await technician.page.getByText('Shared rig').count(), 'the other device knows nothing yet').toBe(0);
    await open(technician, 'record');
    await technician.page.getByLabel('Open a copy').setInputFiles({ name: 'shared.jsonl', mimeType: 'application/jsonl', buffer: Buffer.from(text) });
    await technician.page
      .getByRole('region', { name: 'What was taken in' })
      .getByText(`${closing(text).count} entries were taken in.`)
      .waitFor();
    await open(technician, 'rigs');
    await technician.page.getByRole('link', { name: /^Shared rig/ }).waitFor();
    expect(await exported(technician)).toBe(text);
  });

  it('entries of owner and technician merge both ways to the same digest', async () => {
    const drawn = await exported(owner);
    const before = closing(drawn).count;
    const elsewhere = stationCalled(entriesOf(drawn), 'Window 1, curb side');
    await grade(owner, elsewhere, /^S1/);
    await grade(technician, station, /^S3/);
    const [ours, theirs] = [await exported(owner), await exported(technician)];
    expect(closing(ours).digest).not.toBe(closing(theirs).digest);
    expect(await takeIn(owner, theirs)).toMatch(/1 entry was taken in, \d+ were here already\./);
    expect(await takeIn(technician, ours)).toMatch(/1 entry was taken in, \d+ were here already\./);
    const [both, same] = [await exported(owner), await exported(technician)];
    expect(closing(both)).toMatchObject({ count: before + 2 });
    expect(closing(same).digest).toBe(closing(both).digest);
    expect(same).toBe(both);
    expect(
      entriesOf(both)
        .filter((e) => e.kind === 'seal-grade')
        .map((e) => e.by)
        .toSorted(),
    ).toEqual(['Robin', 'Workshop']);
  });

  it('two corrections of one entry are shown on both devices, settled by a person, and settled on both', async () => {
    const entry = entriesOf(await exported(owner)).find((e) => e.kind === 'seal-grade' && e.by === 'Workshop')?.id ?? '';
    await correct(owner, entry, /^S2/);
    await correct(technician, entry, /^S4/);
    const [ours, theirs] = [await exported(owner), await exported(technician)];
    await takeIn(owner, theirs);
    await takeIn(technician, ours);
    for (const device of [owner, technician]) {
      await open(device, `rig/${rig}/logbook`);
      await doubts(device).waitFor();
      expect(await doubts(device).textContent()).toContain('was changed twice, on devices that did not know of each other');
      expect(await doubts(device).getByRole('listitem').count()).toBe(2);
    }
    await doubts(owner).getByRole('listitem').filter({ hasText: 'by Robin' }).getByRole('button', { name: 'Let this one count' }).click();
    await doubts(owner).waitFor({ state: 'detached' });
    const settled = await exported(owner);
    await takeIn(technician, settled);
    await open(technician, `rig/${rig}/logbook`);
    await technician.page.getByRole('listitem').filter({ hasText: 'S2' }).first().waitFor();
    expect(await doubts(technician).count(), 'settled on the other device too').toBe(0);
    expect(await exported(technician)).toBe(settled);
    for (const kept of [...entriesOf(ours), ...entriesOf(theirs)]) expect(settled, 'both corrections stay in the logbook').toContain(kept.id);
    const log = join(profile, 'shared.jsonl');
    writeFileSync(log, settled);
    expect((await command(['verify', log])).out).toContain('whole');
    const { plan } = JSON.parse((await command(['plan', '--json', log])).out) as { readonly plan: PlanRead };
    const because = plan.findings.filter((f) => f.station === station).flatMap((f) => f.because.map((b) => b.text));
    expect(because.join(' '), 'the plan reads it as it was settled').toMatch(/S2/);
    expect(because.join(' ')).not.toMatch(/S4/);
  });
});
