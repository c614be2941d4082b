// Finds a Chromium or Chrome for the journeys; on Debian as root it installs the package. A missing browser is a failure, never a skip.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

const PLACES = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

export const findChromium = () => PLACES.find((path) => path && existsSync(path));

const onDebianAsRoot = () => process.getuid?.() === 0 && existsSync('/etc/debian_version') && /debian/i.test(readFileSync('/etc/os-release', 'utf8'));

export const ensureChromium = () => {
  const found = findChromium();
  if (found) return found;
  if (onDebianAsRoot()) {
    console.log('Installing the chromium package …');
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit', env });
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { stdio: 'inherit', env });
  }
  return findChromium();
};

export const HOW_TO_GET_ONE = 'No Chromium or Chrome found: install one (Debian: apt-get install chromium), or set CHROMIUM to its path.';
