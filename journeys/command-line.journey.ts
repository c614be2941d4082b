import { mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { asGridpoint, asTable, type Told } from '../src/plan/forecast/trial-forecast';
import { command, type OpenServer, openServer } from './browser';

/** The built command as a person or a program runs it: results on standard output, refusals on standard error, useful exit statuses, never a stack trace. */
const folder = mkdtempSync(join(tmpdir(), 'seamward-command-'));
const log = join(folder, 'demo.jsonl');

beforeAll(async () => {
  const made = await command(['demo', '-o', log]);
  expect(made.status).toBe(0);
});
afterAll(() => rmSync(folder, { recursive: true }));

const noTrace = (text: string): void => expect(text).not.toMatch(/\n\s+at |node:internal/);

describe('the demo', () => {
  it('is the same bytes every time', async () => {
    const again = join(folder, 'again.jsonl');
    await command(['demo', '-o', again]);
    expect(readFileSync(again)).toEqual(readFileSync(log));
  });
});

describe('verify', () => {
  it('calls the demo whole, and a file cut at a line end or in the middle of a line not', async () => {
    const whole = await command(['verify', log]);
    expect(whole.status).toBe(0);
    expect(whole.out).toMatch(/^\d+ entries, whole/);
    const text = readFileSync(log, 'utf8');
    const atLineEnd = join(folder, 'line-end.jsonl');
    writeFileSync(atLineEnd, `${text.split('\n').slice(0, 200).join('\n')}\n`);
    const cut = await command(['verify', atLineEnd]);
    expect(cut.status).toBe(3);
    expect(cut.out).toContain('The closing line is missing');
    const middle = join(folder, 'middle.jsonl');
    writeFileSync(middle, text);
    truncateSync(middle, Math.floor(text.length / 2));
    const half = await command(['verify', middle]);
    expect(half.status).toBe(3);
    expect(half.out).toMatch(/ends in the middle of line \d+/);
  });

  it('names the line that was changed', async () => {
    const lines = readFileSync(log, 'utf8').split('\n');
    const at = lines.findIndex((l) => l.includes('"kind":"tyre-pressure"'));
    lines[at] = (lines[at] ?? '').replace('"by":"Robin"', '"by":"Robina"');
    const changed = join(folder, 'changed.jsonl');
    writeFileSync(changed, lines.join('\n'));
    const found = await command(['verify', changed]);
    expect(found.status).toBe(3);
    expect(found.out).toContain(`Line ${at + 1} was changed`);
  });
});

describe('plan', () => {
  it('gives the same bytes for the same day, and another plan on another day', async () => {
    const one = await command(['plan', log, '--json', '--on', '2026-10-04']);
    const two = await command(['plan', log, '--json', '--on', '2026-10-04']);
    const earlier = await command(['plan', log, '--json', '--on', '2024-11-01']);
    expect(one.status).toBe(0);
    expect(two.out).toBe(one.out);
    expect(earlier.out).not.toBe(one.out);
    expect((JSON.parse(one.out) as { plan: { ready: { answer: string } } }).plan.ready.answer).toBe('no');
  });

  it('is plain text in the person’s units', async () => {
    const us = await command(['plan', log, '--on', '2026-10-04']);
    const metric = await command(['plan', log, '--on', '2026-10-04', '--units', 'metric']);
    expect(us.out).toContain('Ready to roll: no, because');
    expect(us.out).toMatch(/\d+ ft/);
    expect(metric.out).not.toMatch(/\d+ ft \d+ in\./);
  });
});

describe('draw', () => {
  it('writes the whole rig and one face as SVG', async () => {
    for (const face of ['net', 'roof', 'underside']) {
      const out = join(folder, `${face}.svg`);
      const done = await command(['draw', log, '--face', face, '-o', out, '--on', '2026-10-04']);
      expect(done.status).toBe(0);
      expect(readFileSync(out, 'utf8')).toMatch(/^<svg[\s\S]*<\/svg>\s*$/);
    }
  });
});

describe('worksheet', () => {
  it('lists, answers from an argument and from standard input, and line by line in the same order', async () => {
    expect((await command(['worksheet'])).out).toContain('dew-point');
    const given = '{"dry_bulb_c":20,"relative_humidity_percent":65}';
    const fromArgument = await command(['worksheet', 'dew-point', given]);
    const fromInput = await command(['worksheet', 'dew-point'], given);
    expect(JSON.parse(fromArgument.out)).toMatchObject({ result: { dew_point_c: 13.2 } });
    expect(fromInput.out).toBe(fromArgument.out);
    const lines = await command(['worksheet', 'dew-point', '--lines'], `${given}\nnot json\n{"dry_bulb_c":20}\n`);
    const answers = lines.out
      .trim()
      .split('\n')
      .map((l) => JSON.parse(l) as Record<string, unknown>);
    expect(answers.map((a) => ('result' in a ? 'result' : 'refusals'))).toEqual(['result', 'refusals', 'refusals']);
    expect(lines.status).toBe(2);
  });
});

describe('air', () => {
  it('reads a logger’s hours with their gaps, and refuses a bad line by its number', async () => {
    const csv = join(folder, 'air.csv');
    const head = 'time,temperature_c,relative_humidity_percent\n';
    writeFileSync(csv, `${head}2026-09-01T00:00:00Z,20,85\n2026-09-01T01:00:00Z,20,85\n2026-09-01T04:00:00Z,20,85\n`);
    const read = await command(['air', csv, '--json']);
    expect(read.status, read.err).toBe(0);
    expect(JSON.parse(read.out)).toMatchObject({
      hours_measured: 3,
      hours_missing: 2,
      equilibrium: { result: { moisture_content_percent: expect.closeTo(18, 0) } },
      entry: { kind: 'lived-air', observed_at: '2026-09-01/2026-09-01', body: { hours: { temperature_k: [293.15, 293.15, null, null, 293.15] } } },
    });
    writeFileSync(csv, `${head}2026-09-01T00:00:00Z,20,85\n2026-09-01T01:00:00Z,warm,185\n`);
    const bad = await command(['air', csv]);
    expect(bad.status).toBe(2);
    expect(bad.err).toMatch(/Line 3: “warm” is not a number[\s\S]*Line 3: “185”/);
    expect(bad.out).toBe('');
    noTrace(bad.err);
  });
});

describe('plan with a forecast', () => {
  const START = '2026-10-03T04:00:00+00:00';
  const WHERE = ['--on', '2026-10-03', '--zone', 'America/New_York', '--place', '36.08,-79.95,270', '--colour', 'white', '--units', 'metric'];
  /** Two wet days, a fair one with a misty dawn, a dry one, and wet again: invented. */
  const wet: Told = { air_c: 7, dew_c: 6, wind_kmh: 12, cloud: 100, chance: 70, rain_mm: 1 };
  const dry: Told = { ...wet, air_c: 9, dew_c: 8, chance: 10, rain_mm: 0 };
  const fair = (h: number): Told => ({ air_c: h < 9 ? 7 : h < 12 ? 15 : 20, dew_c: 6, wind_kmh: 8, cloud: h < 9 ? 100 : 30, chance: 5, rain_mm: 0 });
  const hours = Array.from({ length: 6 * 24 }, (_, i): Told => {
    const [d, h] = [Math.floor(i / 24), i % 24];
    return d === 1 && h > 19 ? dry : d === 2 ? fair(h) : d === 3 && h < 20 ? dry : wet;
  });
  const files = { json: join(folder, 'forecast.json'), csv: join(folder, 'forecast.csv') };
  const windows = (file: string, ...more: readonly string[]) => command(['plan', log, '--forecast', file, ...WHERE, ...more]);

  it('prints the same windows from a gridpoint answer and from a table of the same hours, each with reasons', async () => {
    writeFileSync(files.json, asGridpoint(START, hours));
    writeFileSync(files.csv, asTable(START, hours));
    const [grid, table] = [await windows(files.json, '--json'), await windows(files.csv, '--json')];
    expect(grid.status, grid.err).toBe(0);
    expect(table.out).toBe(grid.out);
    const told = await windows(files.csv);
    expect(told.out).toMatch(/Best day: Mon 5 Oct/);
    expect(told.out).toMatch(/Closed Mon 5 Oct: 08:00 to 09:00 [^;]*dew/);
    expect(told.out).toMatch(/Open Mon 5 Oct/);
    const leaving = await windows(files.csv, '--departure', '2026-10-08');
    expect(leaving.out).toContain('would not be cured before you leave');
  });

  it('refuses a file, a place, a day and a time that are none, and what says nothing without a forecast', async () => {
    const bad = join(folder, 'bad-forecast.csv');
    writeFileSync(bad, asTable(START, hours).replace('2026-10-03T06:00:00+00:00', '2026-10-03T06:00:00'));
    for (const [args, says] of [
      [['--forecast', bad, ...WHERE], /line 4, time: Line 4.*offset.*expected.*received/],
      [['--forecast', files.csv, '--on', '2026-10-03'], /does not say where it holds/],
      [['--forecast', files.csv, ...WHERE, '--place', '136.08,-79.95'], /latitude.*−90 to 90°/],
      [['--forecast', files.csv, ...WHERE, '--departure', '2026-02-30'], /a day that exists/],
      [['--forecast', files.csv, ...WHERE, '--zone', 'America/Nowhere'], /a time zone/],
      [['--forecast', files.csv, ...WHERE, '--rain-chance', '120'], /rain-chance.*too high/],
      [['--departure', '2026-10-08'], /expected --forecast with it/],
    ] as const) {
      const done = await command(['plan', log, ...args]);
      expect(done.status, done.out).toBe(2);
      expect(done.err).toMatch(says);
      expect(done.out).toBe('');
      noTrace(done.err);
    }
  });
});

describe('refusals', () => {
  const cases: readonly (readonly [name: string, args: readonly string[], status: number, says: RegExp])[] = [
    ['a bad input names the field', ['worksheet', 'dew-point', '{"dry_bulb_c":"warm","relative_humidity_percent":65}'], 2, /dry_bulb_c.*expected.*received/],
    ['an unknown worksheet', ['worksheet', 'no-such'], 2, /no worksheet/],
    ['no such file', ['plan', join(folder, 'none.jsonl')], 1, /no such file/],
    ['a folder', ['verify', folder], 1, /cannot be read/],
    ['a day that does not exist', ['plan', log, '--on', '2026-02-30'], 2, /a day that exists/],
    ['an unknown face', ['draw', log, '--face', 'left', '-o', join(folder, 'x.svg')], 2, /expected one of/],
    ['a certificate without its key', ['serve', '--cert', 'c.pem'], 2, /both --cert and --key/],
    ['a port that is none', ['serve', '--port', 'ninety'], 2, /whole number/],
    ['an unknown command', ['walk'], 2, /unknown command/],
  ];
  it.each(cases)('%s', async (_name, args, status, says) => {
    const done = await command(args);
    expect(done.err).toMatch(says);
    expect(done.status).toBe(status);
    noTrace(done.err);
    expect(done.out).toBe('');
  });
});

describe('serve', () => {
  let server: OpenServer;
  beforeAll(async () => {
    server = await openServer();
  });
  afterAll(() => server.stop());

  /** Sends the path as it is: a browser's own tidying would hide a path that climbs out. */
  const raw = (path: string, method = 'GET'): Promise<{ readonly status: number; readonly headers: Readonly<Record<string, unknown>> }> =>
    new Promise((resolve, reject) => {
      const { hostname, port } = new URL(server.address);
      request({ hostname: hostname === 'localhost' ? '127.0.0.1' : hostname, port, path, method }, (answer) => {
        answer.resume();
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers }));
      })
        .on('error', reject)
        .end();
    });

  it('hands out the page with a policy that names no other host', async () => {
    const page = await raw('/');
    expect(page.status).toBe(200);
    expect(String(page.headers['content-security-policy'])).toContain("default-src 'self'");
    expect(page.headers['x-content-type-options']).toBe('nosniff');
  });

  it('hands out nothing from outside its folder, and only files', async () => {
    for (const path of ['/../package.json', '/..%2fpackage.json', '/%2e%2e/cli/main.js', '/assets/..%5c..%5cpackage.json', '/%00', '/.built-from', '/none.js'])
      expect((await raw(path)).status, path).toBe(404);
    expect((await raw('/', 'POST')).status).toBe(405);
  });

  it('says so when its port is taken', async () => {
    const taken = await command(['serve', '--port', new URL(server.address).port]);
    expect(taken.status).toBe(1);
    expect(taken.err).toMatch(/already in use/);
    noTrace(taken.err);
  });
});
