import type { AnyKind, Field, Fields } from '../terms';
import { type Preferences, usualUnit } from '../units';

type Answers = Readonly<Record<string, unknown>>;

/** Whether a field is asked, given the other answers: it always is, or another field has one of the answers it waits for. */
export const isAsked = (field: Field, body: Answers): boolean => {
  if (!field.showIf) return true;
  const given = body[field.showIf.field];
  const wanted = field.showIf.in;
  return Array.isArray(given) ? given.some((g) => wanted.includes(g)) : typeof given === 'string' && wanted.includes(given);
};

/** The fields that a form shows for what has been answered so far, in the kind's order. */
export const askedFields = (fields: Fields, body: Answers): readonly (readonly [key: string, field: Field])[] => Object.entries(fields).filter(([, field]) => isAsked(field, body));

/** The same answers without those that are no longer asked: a person who turns S4 into S0 takes the defects back with it. */
export const keepAsked = (fields: Fields, body: Answers): Answers => {
  const asked = new Set(askedFields(fields, body).map(([key]) => key));
  const kept = Object.fromEntries(Object.entries(body).filter(([key]) => !(key in fields) || asked.has(key)));
  return Object.keys(kept).length === Object.keys(body).length ? body : keepAsked(fields, kept);
};

/** The whole body that says “nothing wrong here”, for kinds that have one. */
export const soundBody = (kind: AnyKind): Answers | undefined => (kind.sound ? { [kind.sound.field]: kind.sound.answer } : undefined);

/** The unit that stands beside a number field at first: the person's own choice for the quantity, else the field's, else the usual one. */
export const unitFor = (field: Extract<Field, { type: 'number' }>, preferences: Preferences): string =>
  preferences.units[field.quantity] ?? field.units?.[preferences.system] ?? usualUnit(field.quantity, preferences);
