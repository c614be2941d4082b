import * as z from 'zod/mini';
import { placeSchema } from './place-schema';

const name = z.string().check(z.minLength(1), z.maxLength(200));
const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/));
const uuid = z.string().check(z.regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/));
const count = (least: number) => z.int().check(z.minimum(least), z.maximum(Number.MAX_SAFE_INTEGER));
const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})$/;
const WHEN = /^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})|(\/\d{4}-\d{2}-\d{2})?)$/;

/** Everything of an entry but its body, as it stands in a file. Whether its dates exist is read apart. */
export const envelopeShape = {
  id: uuid,
  rig: name,
  kind: name,
  version: count(1),
  observed_at: z.string().check(z.regex(WHEN)),
  recorded_at: z.string().check(z.regex(INSTANT)),
  by: z.string().check(z.maxLength(200)),
  device: name,
  counter: count(1),
  previous: z.nullable(hash),
  heads: z.array(z.strictObject({ device: name, counter: count(1), hash })),
  place: placeSchema,
  concerns: z.optional(z.array(z.string().check(z.minLength(1), z.maxLength(400)))),
  round: z.optional(uuid),
  spent_s: z.optional(z.number().check(z.minimum(0))),
  note: z.optional(z.string()),
  photos: z.optional(
    z.array(
      z.strictObject({
        hash,
        media_type: z.string().check(z.minLength(1), z.maxLength(100)),
        size_bytes: count(0),
        taken_at: z.optional(z.string().check(z.maxLength(40))),
        taken_offset: z.optional(z.string().check(z.maxLength(10))),
        original_hash: z.optional(hash),
      }),
    ),
  ),
};

/** A newer version may add to the envelope; what is not known here is kept and passed on. */
export const envelopeSchema = z.looseObject({ ...envelopeShape, body: z.record(z.string(), z.unknown()) });
