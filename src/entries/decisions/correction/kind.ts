import * as z from 'zod/mini';
import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';
import { placeSchema } from '../../place-schema';

/**
 * What is changed. Under `body` each field that changes, in the terms of the concerned kind's newest version: a value puts it, null takes it away.
 * What is not named stays as it was.
 */
const changed = z.strictObject({
  body: z.optional(z.record(z.string(), z.unknown())),
  place: z.optional(placeSchema),
  observed_at: z.optional(z.string()),
});

const fields = {
  changed: { type: 'data', label: 'What is changed', schema: changed },
  why: { type: 'text', label: 'Why', most: 500, optional: true },
} as const satisfies Fields;

export const correction = defineKind()({
  id: 'correction',
  group: 'decision',
  version: 1,
  title: 'Correction',
  meaning: 'One earlier entry is to be read with the fields given here; the earlier entry stays as it was written.',
  places: ['rig', 'station', 'point', 'outline', 'stretch'],
  sides: ['outside', 'inside'],
  concerns: 'one',
  repeatable: false,
  fields,
  refuse: ({ changed: to }) =>
    Object.keys(to.body ?? {}).length > 0 || to.place !== undefined || to.observed_at !== undefined
      ? []
      : [
          {
            code: 'changes-nothing',
            path: 'changed',
            expected: 'at least one changed field, place or time',
            received: 'nothing',
            sentence: 'This correction changes nothing. Say which field is to be read differently.',
          },
        ],
  fold: { mode: 'amends', amendment: 'correction' },
  line: (body) =>
    line(
      'corrected',
      Object.keys(body.changed.body ?? {})
        .join(', ')
        .replaceAll('_', ' '),
      body.changed.place && 'place',
      body.changed.observed_at && 'time',
      body.why,
    ),
});
