import * as z from 'zod/mini';
import type { AnyKind, Field, Fields } from '../terms';
import { fieldSchema, mayBeMissing } from './body-schema';
import { envelopeShape } from './envelope-schema';

/** A JSON Schema as plain data. */
export type JsonSchema = { readonly [key: string]: unknown };

const DRAFT = 'https://json-schema.org/draft/2020-12/schema';

/** Room for rounding at a limit, so that a figure that was accepted by the form is accepted by the schema. */
const slack = (n: number): number => 1e-9 * Math.max(1, Math.abs(n));

const plain = (schema: z.ZodMiniType): Record<string, unknown> => {
  const { $schema: _draft, ...rest } = z.toJSONSchema(schema, { target: 'draft-2020-12' }) as Record<string, unknown>;
  return rest;
};

const words = (field: Field): Record<string, unknown> => ({ title: field.label, ...(field.meaning === undefined ? {} : { description: field.meaning }) });

const answer = (field: Field): JsonSchema => {
  const schema = plain(fieldSchema(field));
  if (field.type === 'many') return { ...words(field), ...schema, uniqueItems: true };
  if (field.type === 'day') return { ...words(field), ...schema, format: 'date' };
  if (field.type !== 'number') return { ...words(field), ...schema };
  const { least, most } = field.limits;
  const properties = schema['properties'] as Record<string, Record<string, unknown>>;
  return {
    ...words(field),
    ...schema,
    properties: {
      ...properties,
      si: { ...properties['si'], ...(least === undefined ? {} : { minimum: least - slack(least) }), ...(most === undefined ? {} : { maximum: most + slack(most) }) },
    },
  };
};

/** A field that waits for another answer: required once it is asked, not allowed while it is not. */
const conditionsOf = (key: string, field: Field, fields: Fields): readonly JsonSchema[] => {
  if (!field.showIf) return [];
  const { field: other, in: answers } = field.showIf;
  const given = fields[other]?.type === 'many' ? { contains: { enum: answers } } : { enum: answers };
  const asked = { properties: { [other]: given }, required: [other] };
  return [{ anyOf: [asked, { properties: { [key]: false } }] }, ...(field.optional ? [] : [{ anyOf: [{ not: asked }, { required: [key] }] }])];
};

/** The body of a kind's newest version, as a schema for programs of other people. */
const bodyJsonSchema = (kind: AnyKind): JsonSchema => {
  const entries = Object.entries(kind.fields);
  const required = entries.filter(([, field]) => !mayBeMissing(field)).map(([key]) => key);
  const conditions = entries.flatMap(([key, field]) => conditionsOf(key, field, kind.fields));
  return {
    type: 'object',
    properties: Object.fromEntries(entries.map(([key, field]) => [key, answer(field)])),
    ...(required.length === 0 ? {} : { required }),
    additionalProperties: false,
    ...(conditions.length === 0 ? {} : { allOf: conditions }),
  };
};

const placeOf = (kind: AnyKind): JsonSchema => {
  const forms = (plain(envelopeShape.place)['oneOf'] as readonly { readonly properties: Record<string, Record<string, unknown>> }[]).filter((form) =>
    kind.places.some((at) => form.properties['at']?.['const'] === at),
  );
  const withSides = forms.map((form) => ('side' in form.properties ? { ...form, properties: { ...form.properties, side: { type: 'string', enum: kind.sides } } } : form));
  return { oneOf: withSides };
};

/**
 * A whole entry of one kind, draft 2020-12, complete in itself.
 * It cannot say that a figure's SI value agrees with what was typed, nor that a day exists: `seamward verify` does.
 */
export const jsonSchema = (kind: AnyKind): JsonSchema => {
  const envelope = plain(z.looseObject({ ...envelopeShape, body: z.record(z.string(), z.unknown()) }));
  const concerns = kind.concerns === undefined ? {} : { minItems: 1, ...(kind.concerns === 'one' ? { maxItems: 1 } : {}) };
  const properties = envelope['properties'] as Record<string, Record<string, unknown>>;
  return {
    $schema: DRAFT,
    $id: `seamward:${kind.id}:${kind.version}`,
    title: kind.title,
    description: `${kind.meaning} Entry of kind ${kind.id}, version ${kind.version}. Numbers stand as typed, with unit and SI value.`,
    ...envelope,
    properties: {
      ...properties,
      kind: { const: kind.id },
      version: { const: kind.version },
      place: placeOf(kind),
      concerns: { ...properties['concerns'], ...concerns },
      body: bodyJsonSchema(kind),
    },
    required: [...(envelope['required'] as readonly string[]), ...(kind.concerns === undefined ? [] : ['concerns'])],
  };
};
