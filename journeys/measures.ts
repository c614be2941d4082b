import type { Page } from 'playwright-core';

/** What falls short on a screen for the hand, each in words; nothing when all is as it should be. */
export const shortcomings = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    await Promise.all(document.getAnimations().map((a) => a.finished.catch(() => undefined)));
    const told: string[] = [];
    const name = (e: Element): string => `${e.tagName.toLowerCase()}.${e.className} “${(e.getAttribute('aria-label') ?? e.textContent ?? '').trim().slice(0, 40)}”`;
    const shown = (e: Element): boolean => e.checkVisibility({ opacityProperty: true, visibilityProperty: true, contentVisibilityAuto: true }) && !e.closest('.unseen, .notice');
    const field = document.querySelector('dialog[open]') ?? document.querySelector('.field');
    if (!field) return ['this is no screen for the hand'];

    const least = (selector: string, px: number, what: string): void => {
      for (const e of field.querySelectorAll(selector))
        if (shown(e) && e.getBoundingClientRect().height < px - 0.5) told.push(`${what} ${name(e)} is ${Math.round(e.getBoundingClientRect().height)} px high, not ${px}`);
    };
    least('.act', 96, 'the large control');
    least('.keys button:not(.small)', 72, 'the key');
    least('.rows a, .rows button, .press, .keys button.small, main .cell', 64, 'the row');
    // The title block and what folds open are no answers: large enough for a finger, not for a glove.
    least('.back, a.record, summary', 48, 'the link');

    // Gaps between things to press that stand side by side or one above the other.
    const pressed = [...field.querySelectorAll('.act, .press, .keys button, .cell')].filter(shown).map((e) => ({ e, r: e.getBoundingClientRect() }));
    for (const [i, a] of pressed.entries())
      for (const b of pressed.slice(i + 1)) {
        // What is scrolled goes on below the dock.
        if (a.e.contains(b.e) || b.e.contains(a.e) || a.e.closest('.dock') !== b.e.closest('.dock')) continue;
        const across = Math.max(a.r.left - b.r.right, b.r.left - a.r.right);
        const down = Math.max(a.r.top - b.r.bottom, b.r.top - a.r.bottom);
        if (across < 11.5 && down < 11.5) told.push(`${name(a.e)} and ${name(b.e)} stand ${Math.round(Math.max(across, down))} px apart, not 12`);
      }

    // Words: size, and contrast against what lies behind them.
    const channels = (colour: string): readonly number[] => (colour.match(/[\d.]+/g) ?? []).map(Number);
    const light = (rgb: readonly number[]): number => {
      const [r = 0, g = 0, b = 0] = rgb.map((c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4));
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const behind = (e: Element | null): readonly number[] => {
      if (!e) return [255, 255, 255];
      const c = channels(getComputedStyle(e).backgroundColor);
      return c.length === 3 || (c[3] ?? 0) > 0.99 ? c.slice(0, 3) : behind(e.parentElement);
    };
    const walker = document.createTreeWalker(field, NodeFilter.SHOW_TEXT);
    const seenWords = new Set<Element>();
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const e = node.parentElement;
      if (!e || (node.textContent ?? '').trim() === '' || seenWords.has(e) || e.closest('svg, select, option') || !shown(e)) continue;
      seenWords.add(e);
      const style = getComputedStyle(e);
      if (Number.parseFloat(style.fontSize) < 17.9) told.push(`the words ${name(e)} are ${style.fontSize}, not 18px`);
      if (e.closest(':disabled')) continue;
      const [a, b] = [light(channels(style.color).slice(0, 3)), light(behind(e))];
      const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
      if (ratio < 15) told.push(`the words ${name(e)} have a contrast of ${ratio.toFixed(1)}, not 15`);
    }
    return told;
  });

/** What sticks out at the right; nothing when the page is as wide as the window. */
export const sticksOut = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const wide = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= wide) return [];
    const out = [...document.querySelectorAll('body *')].filter((e) => e.getBoundingClientRect().right > wide + 1 && e.checkVisibility());
    return [
      `${document.documentElement.scrollWidth} px wide in ${wide}: ${out
        .slice(0, 4)
        .map((e) => `${e.tagName.toLowerCase()}.${e.getAttribute('class') ?? ''}`)
        .join(', ')}`,
    ];
  });
