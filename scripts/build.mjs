// Builds the static web app (dist/web) and the command (dist/cli). With --if-stale it does nothing when nothing has changed.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, root, tool } from './install.mjs';

const stamp = join(root, 'dist', '.built-from');
const parts = ['src', 'apps', 'package-lock.json', 'vite.config.ts', 'vite.cli.config.ts', 'tsconfig.json'];

const addTo = (hash, path) => {
  if (!existsSync(path)) return;
  const stat = statSync(path);
  if (stat.isDirectory()) for (const name of readdirSync(path).sort()) addTo(hash, join(path, name));
  else
    hash
      .update(`${path.slice(root.length)}\0`)
      .update(readFileSync(path))
      .update('\0');
};

const fingerprint = () => {
  const hash = createHash('sha256');
  for (const part of parts) addTo(hash, join(root, part));
  return hash.digest('hex');
};

export const build = ({ ifStale = false } = {}) => {
  ensureInstalled();
  const now = fingerprint();
  if (ifStale && existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return;
  console.log('Building …');
  for (const config of ['vite.config.ts', 'vite.cli.config.ts']) {
    const status = tool('vite/bin/vite.js', ['build', '--config', config, '--logLevel', 'warn']);
    if (status !== 0) process.exit(status);
  }
  mkdirSync(join(root, 'dist'), { recursive: true });
  writeFileSync(stamp, now);
};

if (process.argv[1] && import.meta.url.endsWith('/build.mjs') && process.argv[1].endsWith('build.mjs')) build({ ifStale: process.argv.includes('--if-stale') });
