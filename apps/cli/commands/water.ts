import type { Command } from 'commander';
import { planOf } from '../../../src/plan';
import { waterDocument, waterText } from '../../../src/report';
import { openLogbook } from '../logbook-file';
import { print } from '../outcome';
import { dayFrom, unitSystem } from './plan';

type Options = { readonly json?: boolean; readonly on?: string; readonly units: string };

export const addWater = (program: Command): void => {
  program
    .command('water')
    .description('moisture readings against their yardsticks, where water most likely comes in, what to test next, and whether a repair held')
    .argument('<log>', 'a .jsonl logbook')
    .option('--json', 'print it as JSON, as it stands in the plan')
    .option('--on <day>', 'the civil day to judge, as 2026-10-04 (default: today)')
    .option('--units <system>', 'us or metric, for the plain text', 'us')
    .action(async (path: string, options: Options) => {
      const on = dayFrom(options.on);
      const system = unitSystem(options.units);
      const { rig, state } = await openLogbook(path);
      const plan = planOf(rig, state, on);
      print(options.json ? waterDocument(plan, rig) : waterText(plan.water, rig, { system, units: {} }));
    });
};
