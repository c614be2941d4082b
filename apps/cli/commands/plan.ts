import type { Command } from 'commander';
import { planOf } from '../../../src/plan';
import { planDocument, planText } from '../../../src/report';
import { type CivilDay, dayOf, parseDay, type UnitSystem } from '../../../src/units';
import { openLogbook } from '../logbook-file';
import { EXIT, print, Stop } from '../outcome';

type Options = { readonly json?: boolean; readonly on?: string; readonly units: string };

/** The civil day of this machine's own clock and zone. */
export const today = (): CivilDay => {
  const now = new Date();
  return dayOf(now.getFullYear(), now.getMonth() + 1, now.getDate());
};

export const dayFrom = (text: string | undefined): CivilDay => {
  if (text === undefined) return today();
  const day = parseDay(text);
  if (day === undefined) throw new Stop(`--on: expected a day that exists, as 2026-10-04; received “${text}”`, EXIT.refused);
  return day;
};

export const unitSystem = (text: string): UnitSystem => {
  if (text !== 'us' && text !== 'metric') throw new Stop(`--units: expected us or metric; received “${text}”`, EXIT.refused);
  return text;
};

export const addPlan = (program: Command): void => {
  program
    .command('plan')
    .description('what must be settled, in what order, with each reason; what to buy; ready to roll or not')
    .argument('<log>', 'a .jsonl logbook')
    .option('--json', 'print the plan as JSON, the same bytes as the web app saves')
    .option('--on <day>', 'the civil day to judge, as 2026-10-04 (default: today)')
    .option('--units <system>', 'us or metric, for the plain text', 'us')
    .action(async (path: string, options: Options) => {
      const on = dayFrom(options.on);
      const system = unitSystem(options.units);
      const { rig, state } = await openLogbook(path);
      const plan = planOf(rig, state, on);
      print(options.json ? planDocument(plan, rig) : planText(plan, rig, { system, units: {} }));
    });
};
