import { readDateCode, readTyreSize } from '../science';
import type { AnyKind, Field, Fields } from '../terms';
import { accept, type CivilDay, civilDay, parseDay, type Refusal, type Result, readQuantity, refuse, type Typed } from '../units';
import { isAsked } from './asked';
import { bodySchema } from './body-schema';
import { received, refusalsOf } from './refusals';

type Body = Readonly<Record<string, unknown>>;

/** After every date code that can be moulded: used where nobody can say what day it was. */
const NO_DAY = civilDay(2 ** 40);

/** How far a file's SI value may stand from the typed figure: rounding of one multiplication, no more. */
const ROUNDING = 1e-9;

const shapes = new WeakMap<Fields, ReturnType<typeof bodySchema>>();
const shapeOf = (fields: Fields): ReturnType<typeof bodySchema> => {
  const known = shapes.get(fields);
  if (known) return known;
  const made = bodySchema(fields);
  shapes.set(fields, made);
  return made;
};

const under = (path: string, refusals: readonly Refusal[]): readonly Refusal[] => refusals.map((r) => ({ ...r, path }));

const readTyped = (value: Typed, field: Extract<Field, { type: 'number' }>, path: string): readonly Refusal[] => {
  const read = readQuantity(value.typed, field.quantity, value.unit, field.limits, path);
  if (!read.ok) return read.refusals;
  if (Math.abs(read.value.si - value.si) <= ROUNDING * Math.max(1, Math.abs(read.value.si))) return [];
  return [
    {
      code: 'si-disagrees',
      path: `${path}.si`,
      expected: String(read.value.si),
      received: String(value.si),
      sentence: `${field.label}: “${value.typed}” in ${value.unit} is ${read.value.si}, but ${value.si} stands beside it. One of the two was changed.`,
    },
  ];
};

/** What the shape alone cannot say about one answer. */
const readAnswer = (value: unknown, field: Field, path: string, today: CivilDay): readonly Refusal[] => {
  switch (field.type) {
    case 'number':
      return readTyped(value as Typed, field, path);
    case 'many': {
      const given = value as readonly string[];
      return new Set(given).size === given.length
        ? []
        : [{ code: 'given-twice', path, expected: 'each answer once', received: given.join(', '), sentence: `${field.label}: an answer stands here twice.` }];
    }
    case 'day':
      return parseDay(value as string) === undefined
        ? [
            {
              code: 'no-such-day',
              path,
              expected: 'a day that exists, such as 2026-09-19',
              received: received(value),
              sentence: `${field.label}: there is no day ${String(value)}.`,
            },
          ]
        : [];
    case 'code': {
      const read = field.code === 'tyre-date' ? readDateCode(value as string, today) : readTyreSize(value as string);
      return read.ok ? [] : under(path, read.refusals);
    }
    default:
      return [];
  }
};

const missing = (field: Field, path: string): Refusal => ({
  code: 'missing',
  path,
  expected: field.label,
  received: 'nothing',
  sentence: `${field.label} is missing.`,
});

const notAsked = (field: Field, path: string, value: unknown, fields: Fields): Refusal => {
  const other = field.showIf ? (fields[field.showIf.field]?.label ?? field.showIf.field) : '';
  return {
    code: 'not-asked',
    path,
    expected: `only where ${other} is ${field.showIf?.in.join(' or ')}`,
    received: received(value),
    sentence: `${field.label} goes with another answer to “${other}”. Change that answer, or leave this out.`,
  };
};

/**
 * Reads the body of an entry of the kind's newest version.
 *
 * @param kind   the declaration it must meet
 * @param value  what a form or a file gave
 * @param before what stands before a field's name in a refusal's path
 * @param today  the day by which a tyre cannot be younger; left out, a date code from the future is not noticed
 * @returns      the body as it came, or everything that is wrong with it at once
 */
export const readBody = <Read = Body>(kind: AnyKind, value: unknown, before = '', today: CivilDay = NO_DAY): Result<Read> => {
  const path = (key: string): string => (before === '' ? key : `${before}.${key}`);
  const shape = shapeOf(kind.fields).safeParse(value);
  if (!shape.success) {
    const label = (at: readonly PropertyKey[]): string | undefined => kind.fields[String(at[0])]?.label;
    return refuse(...refusalsOf(shape.error.issues, value, before, label));
  }
  const body = value as Body;
  const found: Refusal[] = [];
  for (const [key, field] of Object.entries(kind.fields)) {
    const given = body[key];
    if (!isAsked(field, body)) {
      if (given !== undefined) found.push(notAsked(field, path(key), given, kind.fields));
    } else if (given === undefined) {
      if (!field.optional) found.push(missing(field, path(key)));
    } else found.push(...readAnswer(given, field, path(key), today));
  }
  if (found.length === 0) found.push(...(kind.refuse?.(body) ?? []).map((r) => ({ ...r, path: path(r.path) })));
  return found.length > 0 ? refuse(...found) : accept(body as Read);
};
