import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { worksheetDocs } from './worksheet-docs';

/** The docs are made from the declarations, never by hand: the file must be what they say today. */
it('docs/worksheets.md is what the worksheets declare (write it with npm run docs)', () => {
  expect(readFileSync(new URL('../docs/worksheets.md', import.meta.url), 'utf8')).toBe(worksheetDocs());
});
