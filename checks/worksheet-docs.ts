import type { AnyWorksheet, Input, Output, Source } from '../src/terms';
import { showIn, unitOf } from '../src/units';
import { evaluate, howMany, keysFor, worksheets } from '../src/worksheets';

const STATUS: Readonly<Record<Source['status'], string>> = { seen: 'read', practice: 'common practice', memory: 'from memory', own: 'our own' };

const limitsOf = (input: Input): string => {
  if (input.type === 'word') return input.words.map((w) => `\`${w}\``).join(', ');
  if (input.type === 'text') return `text, such as \`${input.example}\``;
  const { least, most } = input.limits;
  const show = (si: number | undefined): string => (si === undefined ? '…' : showIn(si, input.quantity, input.unit));
  return `${input.type === 'numbers' ? `${howMany(input)}, each ` : ''}${show(least)} to ${show(most)}`;
};

const inputLine = (key: string, input: Input): string => {
  const others = keysFor(key, input).filter((k) => k !== key);
  const usual = input.otherwise === undefined ? '' : ` Left out: ${String(input.otherwise)}.`;
  const units = others.length === 0 ? '' : ` Also ${others.map((k) => `\`${k}\``).join(', ')}.`;
  return `| \`${key}\` | ${input.meaning.replaceAll('|', '∣')}.${usual}${units} | ${limitsOf(input)} |`;
};

const outputLine = (key: string, output: Output): string =>
  `| \`${key}\` | ${output.meaning} | ${output.type === 'text' ? 'words' : `${output.type === 'numbers' ? 'a list, ' : ''}${unitOf(output.quantity, output.unit).symbol || 'a number'}`} |`;

const sourceLine = ({ status, text, address }: Source): string => `- ${text}${status === 'memory' ? '' : ` (${STATUS[status]})`}${address === undefined ? '' : `, <${address}>`}`;

const section = (w: AnyWorksheet): string => {
  const worked = evaluate(w, w.example);
  if (!worked.ok) throw new Error(`${w.id}: ${JSON.stringify(worked.refusals)}`);
  const { result, working, remarks } = worked.value;
  return [
    `## ${w.title}`,
    '',
    w.tells,
    '',
    `\`seamward worksheet ${w.id} '${JSON.stringify(w.example)}'\``,
    '',
    '| input | meaning | limits |',
    '| --- | --- | --- |',
    ...Object.entries(w.inputs as Readonly<Record<string, Input>>).map(([k, i]) => inputLine(k, i)),
    '',
    '| result | meaning | unit |',
    '| --- | --- | --- |',
    ...Object.entries(w.results as Readonly<Record<string, Output>>).map(([k, o]) => outputLine(k, o)),
    '',
    'Worked through:',
    '',
    ...working.map((s) => `- ${s.what}: ${s.formula}${s.numbers === '' ? '' : `; ${s.numbers}`} → ${s.gives}`),
    ...remarks.map((r) => `- ${r}`),
    '',
    `Gives ${Object.entries(result)
      .map(([k, v]) => `\`${k}\` ${typeof v === 'object' ? v.join('; ') : v}`)
      .join(', ')}.`,
    '',
    'Where it holds:',
    '',
    ...w.limits.map((l) => `- ${l}`),
    ...(w.cautions.length === 0 ? [] : ['', 'Cautions:', '', ...w.cautions.map((c) => `- ${c}`)]),
    '',
    'Sources:',
    '',
    ...w.sources.map(sourceLine),
  ].join('\n');
};

/** The page of docs that is made from the worksheets' own declarations; `npm run docs` writes it, a check compares it. */
export const worksheetDocs = (): string =>
  [
    '# Worksheets',
    '',
    'Every calculation, laid open. This page is made from the declarations in `src/worksheets/` by `npm run docs`; what is wrong here is mended there.',
    'Inputs may be given in any unit of their quantity: the key ends in the unit. How well each agrees with published values stands in the agreement table (`npm run scores`).',
    '',
    ...worksheets.map(
      (w) =>
        `- [${w.title}](#${w.title
          .toLowerCase()
          .replace(/[^a-z0-9 -]/g, '')
          .replaceAll(' ', '-')}): \`${w.id}\``,
    ),
    '',
    worksheets.map(section).join('\n\n'),
    '',
  ].join('\n');
