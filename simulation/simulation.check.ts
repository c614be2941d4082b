import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FIRST_SEED, line, readResults, WORLDS } from './results';
import { simulationTables } from './table';
import { trial } from './trial';

/**
 * The published tables of the simulation. The whole takes minutes; here every thirtieth world is lived again and must give
 * the very line that is on file, and the tables of the docs must follow from the file.
 */
const at = (path: string): string => readFileSync(new URL(`../${path}`, import.meta.url), 'utf8');
const file = at('simulation/results.csv');
const results = readResults(file);

describe('simulation of leaks', () => {
  it('counts at least 500 noticed leaks, parked and driving, some at no opening at all', () => {
    expect(results).toHaveLength(WORLDS);
    expect(WORLDS).toBeGreaterThanOrEqual(500);
    expect(results.filter((t) => t.when === 'driving').length).toBeGreaterThan(WORLDS / 5);
    expect(results.filter((t) => t.listed === 'none').length).toBeGreaterThan(WORLDS / 15);
  });

  it('gives the same line again for every thirtieth world', () => {
    const lines = file.trim().split('\n').slice(1);
    for (let i = 0; i < results.length; i += 30) {
      const again = trial(results[i]?.seed ?? 0);
      expect(again && line(again)).toBe(lines[i]);
    }
  }, 240_000);

  it('skips only worlds that nobody would have noticed', () => {
    const kept = new Set(results.map((t) => t.seed));
    const last = results.at(-1)?.seed ?? 0;
    const skipped = Array.from({ length: last - FIRST_SEED + 1 }, (_, i) => FIRST_SEED + i).filter((seed) => !kept.has(seed));
    for (const seed of skipped.slice(0, 10)) expect(trial(seed), `world ${seed}`).toBeUndefined();
  });

  it('is what the docs show', () => {
    expect(at('docs/leak-simulation.md')).toContain(simulationTables(results));
  });

  it('beats guessing by the seals alone, in the first three', () => {
    const hits = (of: 'ranked' | 'by_prior'): number => results.filter((t) => t[of] > 0 && t[of] <= 3).length;
    expect(hits('ranked')).toBeGreaterThan(hits('by_prior'));
  });
});
