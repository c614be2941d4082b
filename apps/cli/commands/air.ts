import { readFile } from 'node:fs/promises';
import type { Command } from 'commander';
import { type HourlyAir, livedAir, readHourlyAir } from '../../../src/entries';
import { WHOLE_RIG } from '../../../src/terms';
import { type Preferences, type Result, show } from '../../../src/units';
import { type Evaluation, evaluate, worksheetById } from '../../../src/worksheets';
import { cannotRead } from '../logbook-file';
import { EXIT, print, printJson, refused, Stop } from '../outcome';
import { unitSystem } from './plan';

type Options = { readonly json?: boolean; readonly offset?: string; readonly units: string };

const OFFSET = /^([+-]\d{2}:\d{2}|Z)$/;

const equilibrium = ({ body }: HourlyAir): Result<Evaluation> => {
  const sheet = worksheetById('wood-equilibrium-moisture');
  if (sheet === undefined) throw new Error('there is no worksheet of equilibrium moisture');
  const { temperature, relative_humidity } = body;
  return evaluate(sheet, { [`temperature_${temperature.unit}`]: Number(temperature.typed), relative_humidity_percent: Number(relative_humidity.typed) });
};

const inWords = (air: HourlyAir, worked: Result<Evaluation>, preferences: Preferences): string => {
  const { temperature, relative_humidity } = air.body;
  return [
    `${air.observed_at.replace('/', ' to ')}: ${air.sentence}`,
    `On average ${show(temperature.si, 'temperature', preferences)} and ${show(relative_humidity.si, 'relative-humidity', preferences)} humidity.`,
    ...(worked.ok
      ? [
          `Wood comes to ${String(worked.value.result['moisture_content_percent'])} % in such air: a reading near that is no sign of a leak.`,
          ...worked.value.remarks,
          `Source: ${worked.value.sources[0]?.text ?? ''}`,
        ]
      : [`What moisture wood comes to cannot be said. ${worked.refusals.map((r) => r.sentence).join(' ')}`]),
  ].join('\n');
};

export const addAir = (program: Command): void => {
  program
    .command('air')
    .description('read the hourly file of a temperature and humidity logger: hours, gaps, means, and what moisture wood comes to in that air')
    .argument('<csv>', 'a file whose first line is time,temperature_c,relative_humidity_percent (or temperature_f)')
    .option('--offset <offset>', 'offset of the logger’s clock, as -04:00, for times without one')
    .option('--units <system>', 'us or metric, for the plain text', 'us')
    .option('--json', 'print JSON; `entry` is the entry that the web app would write')
    .action(async (path: string, options: Options) => {
      if (options.offset !== undefined && !OFFSET.test(options.offset)) throw new Stop(`--offset: expected an offset such as -04:00; received “${options.offset}”`, EXIT.refused);
      const system = unitSystem(options.units);
      const text = await readFile(path, 'utf8').catch((error: unknown) => {
        throw cannotRead(path, error);
      });
      const read = readHourlyAir(text, options.offset);
      if (!read.ok) throw refused(read.refusals);
      const air = read.value;
      const worked = equilibrium(air);
      if (!options.json) return print(inWords(air, worked, { system, units: {} }));
      const { body, observed_at, ...counted } = air;
      printJson({
        ...counted,
        equilibrium: worked.ok ? worked.value : { refusals: worked.refusals },
        entry: { kind: livedAir.id, version: livedAir.version, place: WHOLE_RIG, observed_at, body },
      });
    });
};
