/**
 * Speed and memory, printed as a table: what was reached, the goal, and the ratio to a plain piece of work measured in the same run.
 * Never a timed test: a machine shared with others swings by a factor; the ratios and the range say more than one figure.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from '../scripts/build.mjs';
import { inBrowser } from './in-browser';
import { inNode } from './in-node';
import { table } from './table';
import { firstLoad } from './weight';

build({ ifStale: true });
const folder = mkdtempSync(join(tmpdir(), 'seamward-bench-'));
try {
  console.log(`Node ${process.versions.node}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}\n`);
  const rows = [...inNode(), firstLoad(), ...(await inBrowser(folder))];
  console.log(table(rows));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
