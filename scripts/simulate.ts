import { readFileSync, writeFileSync } from 'node:fs';
import { FIRST_SEED, resultsFile, WORLDS } from '../simulation/results';
import { simulationTables } from '../simulation/table';
import { type Trial, trial } from '../simulation/trial';

/** Runs every world of the simulation of leaks, and writes its results and the tables of docs/leak-simulation.md. */
const at = (path: string): URL => new URL(`../${path}`, import.meta.url);

const trials: Trial[] = [];
for (let seed = FIRST_SEED; trials.length < WORLDS; seed++) {
  const one = trial(seed);
  if (one) trials.push(one);
  if (one && trials.length % 50 === 0) process.stderr.write(`${trials.length} of ${WORLDS}\n`);
}
writeFileSync(at('simulation/results.csv'), resultsFile(trials));
const doc = readFileSync(at('docs/leak-simulation.md'), 'utf8');
writeFileSync(
  at('docs/leak-simulation.md'),
  doc.replace(/(<!-- tables -->)[\s\S]*?(<!-- \/tables -->)/, (_all, open: string, close: string) => `${open}\n${simulationTables(trials)}\n${close}`),
);
