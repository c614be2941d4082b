import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { firstPicture } from './first-picture';

/** The picture on the first screen is a file; it must be what the drawing room makes today. No outside source. */
it('the kept picture is the drawn one', () => {
  const kept = readFileSync(new URL('../public/first-picture.svg', import.meta.url), 'utf8');
  expect(kept === firstPicture(), 'run: node scripts/run.mjs scripts/first-picture.ts').toBe(true);
});
