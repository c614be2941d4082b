import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type JsonSchema, jsonSchema, kinds, readBody, unitFor } from '../src/entries';
import type { AnyKind, Entry, Field, KindGroup } from '../src/terms';
import { type Preferences, quantities, showIn } from '../src/units';

/** What is published about the kinds of entries, made from their declarations: a schema for each, and one page for people. */
export type Published = Readonly<Record<string, string>>;

const FOLDER: Readonly<Record<KindGroup, string>> = { observation: 'observations', care: 'care', decision: 'decisions', whereabouts: 'whereabouts', description: 'descriptions' };

const HEADING: Readonly<Record<KindGroup, string>> = {
  observation: 'Observations: what was seen or measured',
  care: 'Care: what was done',
  decision: 'Decisions, corrections and withdrawals',
  whereabouts: 'Whereabouts: where it stood, and when it moved',
  description: 'Descriptions: what the rig is',
};

const US: Preferences = { system: 'us', units: {} };
const METRIC: Preferences = { system: 'metric', units: {} };

const text = (schema: JsonSchema): string => `${JSON.stringify(schema, null, 2)}\n`;

const spanText = (field: Extract<Field, { type: 'number' }>, limits: typeof field.limits): string => {
  const units = [...new Set([unitFor(field, METRIC), unitFor(field, US)])];
  return units.map((unit) => [limits.least, limits.most].flatMap((si) => (si === undefined ? [] : [showIn(si, field.quantity, unit)])).join(' to ')).join('; ');
};

const answerText = (field: Field): string => {
  switch (field.type) {
    case 'choice':
      return `one of ${field.options.map((o) => `\`${o.id}\` ${o.word}`).join(', ')}`;
    case 'many':
      return field.options === 'defects-of-station'
        ? 'any of the defects known for this kind of station'
        : `any of ${field.options.map((o) => `\`${o.id}\` ${o.word}`).join(', ')}`;
    case 'number': {
      const units = quantities[field.quantity].units.map((u) => `\`${u.id}\``).join(' ');
      return `${quantities[field.quantity].meaning}; units ${units}; ${spanText(field, field.limits)}${field.usual ? `; asked about outside ${spanText(field, field.usual)}` : ''}`;
    }
    case 'text':
      return `text, at most ${field.most ?? 4000} characters`;
    case 'code':
      return field.code === 'tyre-date' ? 'a tyre’s date code, as moulded' : 'a tyre’s size, as moulded';
    case 'day':
      return 'a day, such as 2026-09-19';
    case 'flag':
      return 'yes or no';
    case 'data':
      return 'data, see the schema';
  }
};

const whenText = (field: Field): string => {
  const where = field.showIf ? `where \`${field.showIf.field}\` is ${field.showIf.in.map((a) => `\`${a}\``).join(' or ')}` : '';
  return [field.optional ? 'may be left out' : 'needed', where].filter((t) => t !== '').join(', ');
};

const cell = (words: string): string => words.replaceAll('|', '\\|').replaceAll('\n', ' ');

const examples = (root: string, kind: AnyKind): readonly Entry[] =>
  (JSON.parse(readFileSync(join(root, 'src/entries', FOLDER[kind.group], kind.id, 'example.json'), 'utf8')) as Entry[]).filter((e) => e.version === kind.version);

const section = (root: string, kind: AnyKind): string => {
  const rows = Object.entries(kind.fields).map(
    ([key, field]) => `| \`${key}\` | ${cell(field.label)}${field.meaning ? `. ${cell(field.meaning)}` : ''} | ${cell(answerText(field))} | ${cell(whenText(field))} |`,
  );
  const facts = [
    `\`${kind.id}\`, version ${kind.version}`,
    `belongs to: ${kind.places.join(', ')}`,
    kind.places.some((p) => p !== 'rig') ? `side: ${kind.sides.join(' or ')}` : '',
    kind.repeatable ? '“same as last round” may repeat it' : '',
    kind.sound ? `sound when \`${kind.sound.field}\` is \`${kind.sound.answer}\`` : '',
    kind.concerns === 'one' ? 'names one entry' : kind.concerns === 'some' ? 'names the findings or entries it is about' : '',
    kind.worksheet ? `worksheet: \`${kind.worksheet}\`` : '',
  ].filter((f) => f !== '');
  const told = examples(root, kind).map((example) => {
    const read = readBody(kind, example.body);
    if (!read.ok) throw new Error(`${kind.id}: the example is not readable`);
    return `- ${kind.line(read.value, METRIC)}`;
  });
  return [
    `### ${kind.title}`,
    '',
    kind.meaning,
    '',
    `${facts.join('; ')}. [Schema](../schemas/${kind.id}.schema.json)`,
    '',
    '| field | what is asked | answer | |',
    '|---|---|---|---|',
    ...rows,
    '',
    'As told in the logbook:',
    '',
    ...told,
    '',
  ].join('\n');
};

const page = (root: string): string => {
  const groups = (Object.keys(HEADING) as KindGroup[]).map((group) => {
    const of = kinds.filter((k) => k.group === group);
    return [`## ${HEADING[group]}`, '', ...of.map((kind) => section(root, kind))].join('\n');
  });
  return [
    '# Kinds of entries',
    '',
    'Every kind of logbook entry, made from its declaration by `npm run schemas`; do not edit by hand, a check compares it.',
    'A number is kept as it was typed, with its unit and its SI value: `{ "typed": "65", "unit": "psi", "si": 448159.2240559812 }`. A file in which the two disagree is refused.',
    'Which findings follow from an entry is not said here: that is judged from the whole logbook.',
    '',
    `There are ${kinds.length} kinds.`,
    '',
    ...groups,
  ].join('\n');
};

/** Every published file by its path from the root of the project. */
export const publishedKinds = (root: string): Published => ({
  ...Object.fromEntries(kinds.map((kind) => [`schemas/${kind.id}.schema.json`, text(jsonSchema(kind))])),
  'docs/kinds.md': page(root),
});
