import { setTimeout as wait } from 'node:timers/promises';
import type { Page } from 'playwright-core';

/** What a person reads off a screen made for the hand. */
export type Seen = {
  readonly heading: string;
  /** `13 of 82`, as two numbers; undefined where no stop is shown. */
  readonly stop: number | undefined;
  readonly of: number | undefined;
  /** The kind that is asked now, where a stop asks several. */
  readonly asked: string;
  readonly primary: string;
  readonly second: string;
  readonly disabled: boolean;
  /** The cell about the record: `14 not copied yet`. */
  readonly record: string;
  /** What the quiet voice said last. */
  readonly said: string;
  readonly text: string;
};

/** Read in one go, so that nothing is half of one screen and half of the next. */
export const seen = (page: Page): Promise<Seen> =>
  page.evaluate(() => {
    const words = (selector: string): string => document.querySelector(selector)?.textContent?.replaceAll('\u00a0', ' ').trim() ?? '';
    const header = [...(document.querySelector('header')?.children ?? [])]
      .map((cell) => cell.textContent ?? '')
      .join(' | ')
      .replaceAll('\u00a0', ' ');
    const stop = /(\d+) of (\d+)/.exec(header);
    const act = document.querySelector('footer button, footer a');
    return {
      heading: words('h1'),
      stop: stop ? Number(stop[1]) : undefined,
      of: stop ? Number(stop[2]) : undefined,
      asked: document.querySelector('main h2 small') ? words('main h2').replace(/ \d+ of \d+ here$/, '') : '',
      primary: act?.querySelector('span')?.textContent ?? '',
      second: act?.querySelector('small')?.textContent ?? '',
      disabled: act instanceof HTMLButtonElement && act.disabled,
      record: /(\d+ not copied yet|All kept|Problem: [^|]*)/.exec(header)?.[0] ?? '',
      said: words('[role=status].unseen'),
      // biome-ignore lint/performance/useDomNodeTextContent: what a person sees, as it stands in lines, and nothing hidden
      text: document.body.innerText,
    };
  });

const PATIENCE_MS = 20_000;
const SHORT_MS = 8000;

/** Waits until the screen is as it should be; the refusal says what stood there instead. */
export const until = async (page: Page, what: string, holds: (now: Seen) => boolean): Promise<Seen> => {
  const end = Date.now() + PATIENCE_MS;
  for (;;) {
    const now = await seen(page);
    if (holds(now)) return now;
    if (Date.now() > end) throw new Error(`waited in vain for: ${what}. The screen says: ${JSON.stringify({ ...now, text: now.text.slice(0, 600) })}`);
    await wait(25);
  }
};

/** What the large control says while it may not be pressed yet. */
const BUSY: readonly string[] = ['', 'One moment', 'Keeping it'];

/** The screen once it has come to rest: a person looks before pressing. */
export const settled = async (page: Page): Promise<Seen> => {
  let before = '';
  return until(page, 'a screen at rest', (now) => {
    const text = JSON.stringify(now);
    const rests = text === before && !BUSY.includes(now.primary);
    before = text;
    return rests;
  });
};

const KEY_NAMES: Readonly<Record<string, string>> = { '.': 'Decimal point' };

/** A hand that presses by the names of things and counts: taps, and the digits of readings apart from them. */
export const handOn = (page: Page) => {
  let taps = 0;
  let digits = 0;
  const primary = page.getByRole('contentinfo').locator('button, a').first();
  return {
    taps: (): number => taps,
    digits: (): number => digits,
    /** The large control at the foot. */
    go: async (): Promise<void> => {
      await primary.click({ timeout: SHORT_MS }).catch(async (cause: unknown) => {
        const { heading, primary: words, second, asked, text } = await seen(page);
        throw new Error(`the large control could not be pressed: ${JSON.stringify({ heading, asked, words, second, text: text.slice(0, 500) })}`, { cause });
      });
      taps += 1;
    },
    press: async (name: string | RegExp): Promise<void> => {
      await page
        .getByRole('button', typeof name === 'string' ? { name, exact: true } : { name })
        .or(page.getByRole('link', typeof name === 'string' ? { name, exact: true } : { name }))
        .first()
        .click();
      taps += 1;
    },
    /** On the screen's own keys. */
    type: async (figure: string): Promise<void> => {
      const keys = page.getByRole('group', { name: /^Keys for/ });
      for (const digit of figure) {
        await keys.getByRole('button', { name: KEY_NAMES[digit] ?? digit, exact: true }).click();
        digits += 1;
      }
    },
    /** Takes back what an earlier page left half typed: a draft survives a killed browser. */
    clear: async (): Promise<void> => {
      const erase = page.getByRole('group', { name: /^Keys for/ }).getByRole('button', { name: 'Erase', exact: true });
      for (let i = 0; i < 5; i += 1) await erase.click();
    },
    /** A field that calls up the phone's own keyboard. */
    fill: async (name: string | RegExp, text: string): Promise<void> => {
      await page.getByRole('textbox', { name }).first().fill(text);
      digits += text.length;
    },
  };
};

export type Hand = ReturnType<typeof handOn>;
