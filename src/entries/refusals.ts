import type { Refusal } from '../units';
import { CODE, DEFECT_ID } from './body-schema';

/** How what came is shown back: short, and never as a whole file. */
export const received = (value: unknown): string => {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (typeof value === 'string') return value === '' ? 'empty text' : `“${value.length > 60 ? `${value.slice(0, 57)}…` : value}”`;
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  return Array.isArray(value) ? `a list of ${value.length}` : 'a record';
};

type Issue = {
  readonly code: string;
  readonly path: readonly PropertyKey[];
  readonly expected?: unknown;
  readonly keys?: readonly string[];
  readonly values?: readonly unknown[];
  readonly minimum?: unknown;
  readonly maximum?: unknown;
  readonly options?: readonly unknown[];
  readonly pattern?: string;
};

const at = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((inside, key) => (typeof inside === 'object' && inside !== null ? (inside as Record<PropertyKey, unknown>)[key] : undefined), value);

export const pathText = (...keys: readonly PropertyKey[]): string => keys.filter((k) => k !== '').join('.');

/** What was expected, from a shape's own complaint. */
const expectation = (issue: Issue): string => {
  if (issue.values) return `one of: ${issue.values.join(', ')}`;
  if (issue.options) return `one of: ${issue.options.join(', ')}`;
  if (issue.minimum !== undefined) return `${String(issue.minimum)} or more`;
  if (issue.maximum !== undefined) return `${String(issue.maximum)} or less`;
  if (issue.pattern !== undefined) return PATTERNS.find(([pattern]) => issue.pattern === String(pattern))?.[1] ?? 'text in another form';
  return typeof issue.expected === 'string' ? (WORDS[issue.expected] ?? issue.expected) : 'something else';
};

/** What a pattern asks for, in words: nobody should have to read one. */
const PATTERNS: readonly (readonly [RegExp, string])[] = [
  [CODE, 'two or more letters or figures, as they stand on the tyre'],
  [DEFECT_ID, 'the name of a defect in the defects table'],
];

const WORDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a record',
  record: 'a record',
  int: 'a whole number',
};

/** `observed_at` read aloud: `Observed at`; an item of a list by the list. */
const named = (path: readonly PropertyKey[]): string => {
  const words = String(path.findLast((key) => typeof key === 'string') ?? 'This').replaceAll('_', ' ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
};

/** Turns a shape's complaints into our own refusals, one for each place. `label` names a field as people read it. */
export const refusalsOf = (issues: readonly Issue[], value: unknown, before: string, label: (path: readonly PropertyKey[]) => string | undefined): readonly Refusal[] =>
  issues.flatMap((issue) => {
    if (issue.keys) {
      return issue.keys.map((key) => ({
        code: 'unknown-field',
        path: pathText(before, ...issue.path, key),
        expected: 'no such field',
        received: received(at(value, [...issue.path, key])),
        sentence: `There is no field “${key}” here. It may come from a newer version, or be misspelt.`,
      }));
    }
    const came = at(value, issue.path);
    const expected = expectation(issue);
    const what = label(issue.path) ?? (issue.path.length === 0 ? 'This' : named(issue.path));
    return came === undefined
      ? [{ code: 'missing', path: pathText(before, ...issue.path), expected, received: 'nothing', sentence: `${what} is missing: expected ${expected}.` }]
      : [
          {
            code: issue.code.replaceAll('_', '-'),
            path: pathText(before, ...issue.path),
            expected,
            received: received(came),
            sentence: `${what} cannot be ${received(came)}: expected ${expected}.`,
          },
        ];
  });
