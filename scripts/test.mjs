// The one gate: types, lint, unused code, every check, planted faults, and the journeys in a real Chromium.
// Runs everything even after a failure, so that one run tells all, and ends with one plain line.
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from './build.mjs';
import { ensureChromium, HOW_TO_GET_ONE } from './chromium.mjs';
import { ensureInstalled, root, tool } from './install.mjs';

ensureInstalled();
const reports = join(root, '.seamward', 'reports');
rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });

let passed = 0;
let failed = 0;
const seconds = (since) => `${((performance.now() - since) / 1000).toFixed(1)} s`;

const stage = (title, work) => {
  console.log(`\n── ${title}`);
  const since = performance.now();
  const [good, bad] = work();
  passed += good;
  failed += bad;
  console.log(`── ${title}: ${good} passed, ${bad} failed (${seconds(since)})`);
};

const one = (title, script, args) => stage(title, () => (tool(script, args) === 0 ? [1, 0] : [0, 1]));

/** Vitest's own report decides; a run that executed nothing, or whose exit status disagrees, counts as failed. */
const vitest = (config, name, env = {}) => {
  const report = join(reports, `${name}.json`);
  const status = tool('vitest/vitest.mjs', ['run', '--config', config, '--reporter=dot', '--reporter=json', `--outputFile.json=${report}`], { env: { ...process.env, ...env } });
  try {
    const r = JSON.parse(readFileSync(report, 'utf8'));
    const skipped = r.numPendingTests + r.numTodoTests;
    if (skipped > 0) console.log(`${skipped} checks did not run; a check that does not run counts as failed.`);
    const bad = r.numFailedTests + skipped + r.testResults.filter((f) => f.status === 'failed' && f.assertionResults.length === 0).length;
    const nothing = r.numPassedTests === 0 && bad === 0;
    return [r.numPassedTests, nothing || (bad === 0 && status !== 0) ? Math.max(bad, 1) : bad];
  } catch {
    return [0, 1];
  }
};

one('Types', 'typescript/bin/tsc', ['--noEmit']);
one('Types of the pure rooms: no browser, no Node', 'typescript/bin/tsc', ['--noEmit', '-p', 'tsconfig.core.json']);
one('Lint and format', '@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.']);
one('Unused code', 'knip/bin/knip.js', []);
stage('Checks', () => vitest('vitest.config.ts', 'checks'));
stage('Planted faults', () => {
  const status = tool('tsx/dist/cli.mjs', ['scripts/plant-faults.ts', join(reports, 'faults.json')]);
  try {
    const r = JSON.parse(readFileSync(join(reports, 'faults.json'), 'utf8'));
    return [r.caught, r.missed + (r.caught + r.missed === 0 || (status !== 0 && r.missed === 0) ? 1 : 0)];
  } catch {
    return [0, 1];
  }
});
stage('Journeys in Chromium', () => {
  const chromium = ensureChromium();
  if (!chromium) {
    console.log(HOW_TO_GET_ONE);
    return [0, 1];
  }
  build({ ifStale: true });
  return vitest('vitest.journeys.config.ts', 'journeys', { CHROMIUM: chromium });
});

console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
