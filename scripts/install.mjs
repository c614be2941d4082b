// Installs what the lock file names when node_modules does not match it. Plain Node: it must run before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Seamward needs Node 20.19 or newer; this is ${process.versions.node}. Install a supported release of Node and try again.`);
  process.exit(1);
}

/** Runs a command in the project's folder, its output passed through. Returns its exit status. */
export const run = (command, args, options = {}) => {
  const done = spawnSync(command, args, { cwd: root, stdio: 'inherit', ...options });
  if (done.error) {
    console.error(`${command} could not be started: ${done.error.message}`);
    return 1;
  }
  return done.status ?? 1;
};

/** A tool from node_modules, started with this same Node. */
export const tool = (script, args, options) => run(process.execPath, [join(root, 'node_modules', script), ...args], options);

const stamp = join(root, 'node_modules', '.installed-from');

export const ensureInstalled = () => {
  const wanted = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.log('Installing what is missing …');
  // No package of ours needs an install script; switching them off keeps a poisoned one from running.
  const npm = process.env.npm_execpath;
  const args = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error', '--include=dev'];
  const status = npm ? run(process.execPath, [npm, ...args]) : run('npm', args, { shell: process.platform === 'win32' });
  if (status !== 0) {
    console.error('Installing failed: is there a network, and room on the disk?');
    process.exit(status);
  }
  writeFileSync(stamp, wanted);
};
