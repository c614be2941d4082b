import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { publishedKinds } from './published-kinds';

/** What is published about the kinds is what they declare: byte for byte, nothing missing, nothing left over. `npm run schemas` writes it anew. */
const root = dirname(dirname(fileURLToPath(import.meta.url)));
const files = publishedKinds(root);

it.each(Object.keys(files))('%s is up to date', (path) => {
  expect(readFileSync(join(root, path), 'utf8')).toBe(files[path]);
});

it('no schema is left over from a kind that is gone', () => {
  const held = readdirSync(join(root, 'schemas')).filter((name) => name.endsWith('.schema.json'));
  expect(held.map((name) => `schemas/${name}`).toSorted()).toEqual(
    Object.keys(files)
      .filter((path) => path.startsWith('schemas/'))
      .toSorted(),
  );
});
