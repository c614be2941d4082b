// One command on a fresh machine: install what is missing, build what has changed, serve, and print the address.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from './build.mjs';
import { root } from './install.mjs';

build({ ifStale: true });
process.argv.splice(2, 0, 'serve');
await import(pathToFileURL(join(root, 'dist', 'cli', 'main.js')).href);
