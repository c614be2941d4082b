import * as z from 'zod/mini';
import { defineKind, type Fields } from '../../../terms';
import { parseWhen, type Refusal } from '../../../units';
import { line } from '../../line';
import { placeSchema } from '../../place-schema';

/**
 * What is changed. Under `body` each field that changes: a value puts it, null takes it away; what is not named stays.
 * The fields are in the terms of the version that the concerned entry was written in, or of `of_version` where that is given.
 */
const changed = z.strictObject({
  body: z.optional(z.record(z.string(), z.unknown())),
  place: z.optional(placeSchema),
  observed_at: z.optional(z.string().check(z.maxLength(60))),
  of_version: z.optional(z.int().check(z.minimum(1), z.maximum(1000))),
});

const fields = {
  changed: { type: 'data', label: 'What is changed', schema: changed },
  why: { type: 'text', label: 'Why', most: 500, optional: true },
} as const satisfies Fields;

const saysNothing = (to: z.output<typeof changed>): readonly Refusal[] =>
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
      ];

const noSuchTime = (text: string | undefined): readonly Refusal[] =>
  text === undefined || parseWhen(text)
    ? []
    : [{ code: 'no-such-time', path: 'changed.observed_at', expected: 'a time that exists', received: `“${text}”`, sentence: `There is no such time as ${text}.` }];

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
  refuse: ({ changed: to }) => [...saysNothing(to), ...noSuchTime(to.observed_at)],
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
