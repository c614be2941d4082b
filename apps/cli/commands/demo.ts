import { writeFileSync } from 'node:fs';
import type { Command } from 'commander';
import { writeLogbook } from '../../../src/logbook';
import { demoLines } from '../../demo';
import { print, Stop } from '../outcome';

export const addDemo = (program: Command): void => {
  program
    .command('demo')
    .description('write the demo logbook: an invented travel trailer with three years of rounds')
    .requiredOption('-o, --out <file>', 'where to write it')
    .action((options: { readonly out: string }) => {
      const lines = demoLines();
      try {
        writeFileSync(options.out, writeLogbook(lines));
      } catch (error) {
        throw new Stop(`${options.out} cannot be written: ${(error as NodeJS.ErrnoException).code}.`);
      }
      print(`${lines.length} entries written to ${options.out}. Invented data.`);
    });
};
