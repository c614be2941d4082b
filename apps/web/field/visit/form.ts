import { askedFields, type Doubt, doubts, keepAsked, readBody, unitFor } from '../../../../src/entries';
import type { AnyKind, Field } from '../../../../src/terms';
import { accept, type CivilDay, type Preferences, type Refusal, type Result, readQuantity, type Typed } from '../../../../src/units';

/**
 * What a person has put into one kind's fields so far, before it is an entry: choices as ids, numbers as the very
 * characters typed with the unit that stood beside them. Pure: every change gives a new form.
 */
export type Raw = string | readonly string[] | boolean | { readonly text: string; readonly unit: string };
export type Answers = Readonly<Record<string, Raw>>;

export type Change =
  | { readonly do: 'choose'; readonly field: string; readonly option: string }
  | { readonly do: 'toggle'; readonly field: string; readonly option: string }
  | { readonly do: 'key'; readonly field: string; readonly key: string }
  | { readonly do: 'unit'; readonly field: string; readonly unit: string }
  | { readonly do: 'number'; readonly field: string; readonly text: string; readonly unit: string }
  | { readonly do: 'text'; readonly field: string; readonly text: string }
  | { readonly do: 'flag'; readonly field: string; readonly value: boolean }
  | { readonly do: 'clear'; readonly field: string };

const MOST_CHARACTERS = 9;
export const ERASE = 'erase';

const numberOf = (raw: Raw | undefined, unit: string): { readonly text: string; readonly unit: string } => (typeof raw === 'object' && 'text' in raw ? raw : { text: '', unit });

const without = (answers: Answers, field: string): Answers => Object.fromEntries(Object.entries(answers).filter(([k]) => k !== field));

const press = (text: string, key: string): string => {
  if (key === ERASE) return text.slice(0, -1);
  if (key === '−') return text.startsWith('-') ? text.slice(1) : `-${text}`;
  if (key === '.' && text.includes('.')) return text;
  return text.length >= MOST_CHARACTERS ? text : `${text}${key}`;
};

/** A date code has three or four digits and nothing else. */
const CODE_DIGITS = 4;
const pressCode = (text: string, key: string): string | undefined => {
  const next = key === ERASE ? text.slice(0, -1) : /^\d$/.test(key) ? `${text}${key}`.slice(0, CODE_DIGITS) : text;
  return next === '' ? undefined : next;
};

const put = (answers: Answers, field: string, raw: Raw | undefined): Answers => (raw === undefined ? without(answers, field) : { ...answers, [field]: raw });

const units = (kind: AnyKind, field: string, preferences: Preferences): string => {
  const declared: Field | undefined = kind.fields[field];
  return declared?.type === 'number' ? unitFor(declared, preferences) : '';
};

/** The form after one touch. Fields that are no longer asked are taken out with the answer that had called for them. */
export const changed = (kind: AnyKind, answers: Answers, change: Change, preferences: Preferences): Answers => {
  const now = answers[change.field];
  const next = ((): Answers => {
    switch (change.do) {
      case 'choose':
        return put(answers, change.field, change.option);
      case 'toggle': {
        const held = Array.isArray(now) ? (now as readonly string[]) : [];
        const chosen = held.includes(change.option) ? held.filter((o) => o !== change.option) : [...held, change.option];
        return put(answers, change.field, chosen.length === 0 ? undefined : chosen);
      }
      case 'key': {
        if (kind.fields[change.field]?.type === 'code') return put(answers, change.field, pressCode(typeof now === 'string' ? now : '', change.key));
        const { text, unit } = numberOf(now, units(kind, change.field, preferences));
        const typed = press(text, change.key);
        return put(answers, change.field, typed === '' || typed === '-' ? (typed === '' ? undefined : { text: typed, unit }) : { text: typed, unit });
      }
      case 'unit':
        return put(answers, change.field, { text: numberOf(now, change.unit).text, unit: change.unit });
      case 'number':
        return put(answers, change.field, change.text.trim() === '' ? undefined : { text: change.text, unit: change.unit });
      case 'text':
        return put(answers, change.field, change.text === '' ? undefined : change.text);
      case 'flag':
        return put(answers, change.field, change.value || undefined);
      case 'clear':
        return without(answers, change.field);
    }
  })();
  return keepAsked(kind.fields, next) as Answers;
};

/** Fields to show now, without those that no person types. */
export const shownFields = (kind: AnyKind, answers: Answers): readonly (readonly [key: string, field: Field])[] =>
  askedFields(kind.fields, answers).filter(([, f]) => f.type !== 'data');

export type Ready =
  | { readonly state: 'empty' }
  /** Something is given, and a required field is still missing. */
  | { readonly state: 'unfinished'; readonly missing: readonly string[] }
  | { readonly state: 'refused'; readonly refusals: readonly Refusal[] }
  /** Complete and within limits; doubts are asked about before it is kept. */
  | { readonly state: 'complete'; readonly body: Readonly<Record<string, unknown>>; readonly doubts: readonly Doubt[] };

const answered = (key: string, field: Field, raw: Raw): Result<unknown> => {
  if (field.type !== 'number') return accept(typeof raw === 'string' ? raw.trim() : raw);
  const { text, unit } = numberOf(raw, '');
  return readQuantity(text, field.quantity, unit, field.limits, key);
};

/**
 * Whether the form makes an entry now. The kind itself reads the body and has the last word.
 *
 * @param today  the day by which nothing can be younger
 */
export const ready = (kind: AnyKind, answers: Answers, today?: CivilDay): Ready => {
  const shown = shownFields(kind, answers);
  const given = shown.filter(([key]) => answers[key] !== undefined);
  if (given.length === 0) return { state: 'empty' };
  const values = given.map(([key, field]) => [key, answered(key, field, answers[key] as Raw)] as const);
  const refusals = values.flatMap(([, v]) => (v.ok ? [] : v.refusals));
  if (refusals.length > 0) return { state: 'refused', refusals };
  const missing = shown.filter(([key, field]) => answers[key] === undefined && !field.optional).map(([, f]) => f.label);
  if (missing.length > 0) return { state: 'unfinished', missing };
  const body = Object.fromEntries(values.flatMap(([key, v]) => (v.ok ? [[key, v.value] as const] : [])));
  const read = readBody(kind, body, '', today);
  return read.ok ? { state: 'complete', body, doubts: doubts(kind, body) } : { state: 'refused', refusals: read.refusals };
};

/** A kept body as a form again, to look at or to change. */
export const formOf = (kind: AnyKind, body: Readonly<Record<string, unknown>>): Answers =>
  Object.fromEntries(
    Object.entries(body).flatMap(([key, value]) => {
      const field: Field | undefined = kind.fields[key];
      if (!field || field.type === 'data' || value === undefined) return [];
      if (field.type === 'number') {
        const typed = value as Typed;
        return [[key, { text: typed.typed, unit: typed.unit }] as const];
      }
      return [[key, value as Raw] as const];
    }),
  );

/** Whether this answer alone says that nothing is wrong, and nothing else was added. */
export const saysSound = (kind: AnyKind, answers: Answers): boolean =>
  kind.sound !== undefined && answers[kind.sound.field] === kind.sound.answer && Object.keys(answers).length === 1;
