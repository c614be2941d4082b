import type { Command } from 'commander';
import { planOf } from '../../../src/plan';
import { planDocument, planText } from '../../../src/report';
import { type CivilDay, dayOf, parseDay, type UnitSystem } from '../../../src/units';
import { openLogbook } from '../logbook-file';
import { EXIT, print, Stop } from '../outcome';
import { type WindowOptions, windowsFor, withForecastOnly } from './plan-windows';

type Options = WindowOptions & { readonly json?: boolean; readonly on?: string; readonly units: string };

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
    .option('--forecast <file>', 'a forecast by the hour: print in which hours each job can be done, and why not in the others')
    .option('--place <lat,lon>', 'where the rig stands, as 36.08,-79.95 or with metres above sea level behind, 36.08,-79.95,270; not needed where the forecast says it')
    .option('--departure <day>', 'the day the wheels turn: what would cure later is refused')
    .option('--zone <zone>', 'time zone for the hours, as America/New_York (default: this machine’s)')
    .option('--dry-since <time>', 'since when it has not rained, as 2026-10-04T06:00:00-04:00')
    .option('--rain-chance <percent>', 'an hour with a higher chance counts as rain (default: 20)')
    .option('--rain-amount <mm>', 'so does an hour with more of it (default: 0.254 mm, 0.01 in); “any” does not ask')
    .option('--colour <colour>', 'of the skin: white, light, medium, dark, black or aluminium-coat (default: white and dark, the cautious of both)')
    .action(async (path: string, options: Options) => {
      const on = dayFrom(options.on);
      const system = unitSystem(options.units);
      withForecastOnly(options);
      const opened = await openLogbook(path);
      const { rig, state } = opened;
      const plan = planOf(rig, state, on);
      if (options.forecast !== undefined) print(await windowsFor(opened, plan, options.forecast, options, { system, units: {} }));
      else print(options.json ? planDocument(plan, rig) : planText(plan, rig, { system, units: {} }));
    });
};
