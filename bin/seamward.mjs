#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const main = join(dirname(dirname(fileURLToPath(import.meta.url))), 'dist', 'cli', 'main.js');
if (!existsSync(main)) {
  console.error('Seamward has not been built yet. Run: npm run build');
  process.exit(1);
}
await import(pathToFileURL(main).href);
