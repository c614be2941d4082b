import { createInterface } from 'node:readline';
import { text } from 'node:stream/consumers';
import type { Command } from 'commander';
import type { AnyWorksheet, Input, Inputs, Output } from '../../../src/terms';
import { quantities, unitOf } from '../../../src/units';
import { evaluate, howMany, worksheetById, worksheets } from '../../../src/worksheets';
import { EXIT, print, printJson, refused, Stop } from '../outcome';

type Options = { readonly lines?: boolean; readonly json?: boolean };

const inputWords = (key: string, input: Input): string => {
  const usual = input.otherwise === undefined ? '' : `; ${String(input.otherwise)} when left out`;
  if (input.type === 'word') return `  ${key}  ${input.words.join(' | ')}  ${input.meaning}${usual}`;
  if (input.type === 'text') return `  ${key}  text, such as ${input.example}  ${input.meaning}${usual}`;
  const units = quantities[input.quantity].units.map((u) => u.id).join(', ');
  const list = input.type === 'numbers' ? ` a list of ${howMany(input)}, such as [61, 63.5, 64] or "61; 63.5; 64":` : '';
  return `  ${key} ${list} ${input.meaning}${usual}${units.includes(',') ? ` (units: ${units})` : ''}`;
};

const resultWords = (key: string, output: Output): string => {
  const symbol = output.type === 'text' ? '' : unitOf(output.quantity, output.unit).symbol;
  return `  ${key}  ${output.type === 'numbers' ? 'list: ' : ''}${output.meaning}${symbol === '' ? '' : ` [${symbol}]`}`;
};

const inWords = (worksheet: AnyWorksheet): string =>
  [
    `${worksheet.id}: ${worksheet.title}`,
    `  ${worksheet.tells}`,
    ...Object.entries(worksheet.inputs as Inputs).map(([key, input]) => inputWords(key, input)),
    '  gives',
    ...Object.entries(worksheet.results as Readonly<Record<string, Output>>).map(([key, output]) => resultWords(key, output)),
  ].join('\n');

const listed = (json: boolean): void => {
  if (json) printJson(worksheets.map(({ id, title, tells, inputs, results, limits, cautions, sources }) => ({ id, title, tells, inputs, results, limits, cautions, sources })));
  else print(worksheets.map(inWords).join('\n\n'));
};

const found = (id: string): AnyWorksheet => {
  const worksheet = worksheetById(id);
  if (worksheet === undefined) throw new Stop(`There is no worksheet “${id}”. \`seamward worksheet\` lists them.`, EXIT.refused);
  return worksheet;
};

const parse = (json: string): unknown => {
  try {
    return JSON.parse(json);
  } catch {
    throw new Stop(`The inputs are not JSON: expected one object, such as {"dry_bulb_c":20}; received “${json.trim().slice(0, 60)}”`, EXIT.refused);
  }
};

/** One line in, one line out, in the same order; a line that is refused says so in its place and does not stop the others. */
const throughLines = async (worksheet: AnyWorksheet): Promise<void> => {
  let bad = 0;
  for await (const line of createInterface({ input: process.stdin })) {
    if (line.trim() === '') continue;
    const answer = lineAnswer(worksheet, line);
    if ('refusals' in answer) bad += 1;
    print(JSON.stringify(answer));
  }
  if (bad > 0) throw new Stop(`${bad} ${bad === 1 ? 'line was' : 'lines were'} refused; each says why in its place.`, EXIT.refused);
};

const lineAnswer = (worksheet: AnyWorksheet, line: string): object => {
  let raw: unknown;
  try {
    raw = JSON.parse(line);
  } catch {
    const refusal = { code: 'not-json', path: '', expected: 'one JSON object', received: `“${line.slice(0, 60)}”`, sentence: 'This line is not JSON.' };
    return { refusals: [refusal] };
  }
  const evaluation = evaluate(worksheet, raw);
  return evaluation.ok ? evaluation.value : { refusals: evaluation.refusals };
};

export const addWorksheet = (program: Command): void => {
  program
    .command('worksheet')
    .description('list the worksheets, or work one through: result, working, sources, cautions')
    .argument('[id]', 'which worksheet')
    .argument('[inputs]', 'one JSON object whose keys end in units; standard input when left out')
    .option('--lines', 'read JSON Lines from standard input and answer each on a line of its own')
    .option('--json', 'list as JSON')
    .action(async (id: string | undefined, inputs: string | undefined, options: Options) => {
      if (id === undefined) return listed(options.json === true);
      const worksheet = found(id);
      if (options.lines) return throughLines(worksheet);
      const evaluation = evaluate(worksheet, parse(inputs ?? (await text(process.stdin))));
      if (!evaluation.ok) throw refused(evaluation.refusals);
      printJson(evaluation.value);
    });
};
