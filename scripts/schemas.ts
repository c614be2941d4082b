/** Writes what is published about the kinds of entries: schemas/ and docs/kinds.md. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { publishedKinds } from './published-kinds';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const files = publishedKinds(root);
mkdirSync(join(root, 'schemas'), { recursive: true });
mkdirSync(join(root, 'docs'), { recursive: true });
for (const name of readdirSync(join(root, 'schemas'))) if (name.endsWith('.schema.json') && !(`schemas/${name}` in files)) rmSync(join(root, 'schemas', name));
for (const [path, content] of Object.entries(files)) writeFileSync(join(root, path), content);
console.log(`${Object.keys(files).length} files written`);
