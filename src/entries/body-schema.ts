import * as z from 'zod/mini';
import type { Field, Fields } from '../terms';
import { type QuantityId, quantities } from '../units';

/**
 * From a kind's fields to the shape of its body. One declaration serves what is typed on a phone, what a file holds,
 * and the published schema. What a shape cannot say (limits of a quantity, fields that are asked only after another
 * answer) is read in `read-body.ts`.
 */
export const TEXT_MOST = 4000;

/** An id of the defects table: `opening-roof.seal-open`. */
export const DEFECT_ID = /^[a-z0-9]+(-[a-z0-9]+)*\.[a-z0-9]+(-[a-z0-9]+)*$/;

/** A code as moulded, by shape alone; what it says is read by the tyre room. */
export const CODE = /^[A-Za-z0-9][A-Za-z0-9 ./×-]{1,39}$/;

/** ISO day by shape; whether the day exists is read later. */
const DAY = /^\d{4}-\d{2}-\d{2}$/;

const ids = (options: readonly { readonly id: string }[]): readonly [string, ...string[]] => options.map((o) => o.id) as unknown as readonly [string, ...string[]];

/** A number as typed, its unit and its SI value. */
const typedSchema = (quantity: QuantityId) =>
  z.strictObject({ typed: z.string().check(z.minLength(1), z.maxLength(40)), unit: z.enum(ids(quantities[quantity].units) as [string, ...string[]]), si: z.number() });

/** The shape of one answer. */
export const fieldSchema = (field: Field): z.ZodMiniType => {
  switch (field.type) {
    case 'choice':
      return z.enum(ids(field.options) as [string, ...string[]]);
    case 'many':
      return z.array(field.options === 'defects-of-station' ? z.string().check(z.regex(DEFECT_ID)) : z.enum(ids(field.options) as [string, ...string[]]));
    case 'number':
      return typedSchema(field.quantity);
    case 'text':
      return z.string().check(z.minLength(1), z.maxLength(field.most ?? TEXT_MOST));
    case 'code':
      return z.string().check(z.regex(CODE));
    case 'day':
      return z.string().check(z.regex(DAY));
    case 'flag':
      return z.boolean();
    case 'data':
      return field.schema;
  }
};

/** Whether a field may be missing whatever else is answered. */
export const mayBeMissing = (field: Field): boolean => field.optional === true || field.showIf !== undefined;

/** The shape of a whole body. Unknown fields are refused. */
export const bodySchema = (fields: Fields): z.ZodMiniType =>
  z.strictObject(Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, mayBeMissing(field) ? z.optional(fieldSchema(field)) : fieldSchema(field)])));
