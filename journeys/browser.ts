import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { ensureChromium, HOW_TO_GET_ONE } from '../scripts/chromium.mjs';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));

export const PHONE = { width: 390, height: 844 } as const;
export const DESK = { width: 1440, height: 900 } as const;

/** A Chromium of our own start, so that it can be killed as a phone kills it: the whole process group, at once. */
export type OpenBrowser = {
  readonly browser: Browser;
  readonly context: BrowserContext;
  readonly page: Page;
  /** SIGKILL to every process of the browser. */
  readonly kill: () => Promise<void>;
  readonly close: () => Promise<void>;
};

/** Browsers that are still open; none outlives the process that opened it. */
const open = new Set<ChildProcess>();
const killGroup = (child: ChildProcess): void => {
  if (child.pid === undefined) return;
  try {
    process.kill(-child.pid, 'SIGKILL');
  } catch {
    // already gone
  }
};
process.once('exit', () => open.forEach(killGroup));

const FLAGS = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-dev-shm-usage',
  '--hide-scrollbars',
  '--force-color-profile=srgb',
  '--remote-debugging-port=0',
];

/** A profile folder that outlives the browser, as a phone's storage outlives the page. */
export const newProfile = (): string => mkdtempSync(join(tmpdir(), 'seamward-profile-'));
export const dropProfile = (folder: string): void => rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });

const portOf = async (profile: string, child: ChildProcess): Promise<string> => {
  const file = join(profile, 'DevToolsActivePort');
  for (let tries = 0; tries < 300; tries += 1) {
    if (child.exitCode !== null) throw new Error('Chromium ended before it could be reached');
    if (existsSync(file)) {
      const [port] = readFileSync(file, 'utf8').split('\n');
      if (port) return port;
    }
    await wait(100);
  }
  throw new Error('Chromium gave no debugging port in 30 s');
};

const ended = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => (child.exitCode !== null || child.signalCode !== null ? resolve() : child.once('exit', () => resolve())));

export const openBrowser = async (profile: string, viewport: { readonly width: number; readonly height: number } = PHONE, ...flags: readonly string[]): Promise<OpenBrowser> => {
  const executable = ensureChromium();
  if (executable === undefined) throw new Error(HOW_TO_GET_ONE);
  rmSync(join(profile, 'DevToolsActivePort'), { force: true });
  const child = spawn(executable, [...FLAGS, ...flags, `--window-size=${viewport.width},${viewport.height}`, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true,
    stdio: 'ignore',
  });
  open.add(child);
  child.once('exit', () => open.delete(child));
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${await portOf(profile, child)}`);
  const context = browser.contexts()[0] ?? (await browser.newContext());
  const page = context.pages()[0] ?? (await context.newPage());
  await page.setViewportSize(viewport);
  const kill = async (): Promise<void> => {
    killGroup(child);
    await ended(child);
    await browser.close().catch(() => undefined);
  };
  return {
    browser,
    context,
    page,
    kill,
    close: async () => {
      await browser.close().catch(() => undefined);
      await kill();
    },
  };
};

export type OpenServer = { readonly address: string; readonly stop: () => Promise<void> };

/** The real command, serving on a port of its own choice. */
export const openServer = async (...options: readonly string[]): Promise<OpenServer> => {
  const child = spawn(process.execPath, [join(root, 'bin', 'seamward.mjs'), 'serve', '--port', '0', ...options], { stdio: ['ignore', 'pipe', 'inherit'] });
  const address = await new Promise<string>((resolve, reject) => {
    let text = '';
    child.stdout.on('data', (bytes: Buffer) => {
      text += bytes.toString();
      const found = /https?:\/\/\S+/.exec(text);
      if (found) resolve(found[0]);
    });
    child.once('exit', () => reject(new Error(`the server ended: ${text}`)));
  });
  return {
    address,
    stop: async () => {
      child.kill('SIGKILL');
      await ended(child);
    },
  };
};

/** Runs the command and returns what it printed and how it ended. */
export const command = async (args: readonly string[], input = ''): Promise<{ readonly out: string; readonly err: string; readonly status: number }> => {
  const child = spawn(process.execPath, [join(root, 'bin', 'seamward.mjs'), ...args], { stdio: ['pipe', 'pipe', 'pipe'] });
  child.stdin.end(input);
  let out = '';
  let err = '';
  child.stdout.on('data', (bytes: Buffer) => {
    out += bytes.toString();
  });
  child.stderr.on('data', (bytes: Buffer) => {
    err += bytes.toString();
  });
  await ended(child);
  return { out, err, status: child.exitCode ?? -1 };
};
