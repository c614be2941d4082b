import * as z from 'zod/mini';
import { defineKind, type Fields } from '../../../terms';
import { parseInstant, type Refusal } from '../../../units';
import { line, reading } from '../../line';
import { ANY_TEMPERATURE, span, USUAL_OUTDOORS } from '../../span';

/** A year of hours and some to spare. */
const HOURS_MOST = 9000;

/** An hour that was not measured is null: it is never filled in. */
const hourly = (least: number, most: number) => z.readonly(z.array(z.nullable(z.number().check(z.minimum(least), z.maximum(most)))).check(z.minLength(2), z.maxLength(HOURS_MOST)));

const hours = z.strictObject({
  from: z.string().check(z.minLength(1), z.maxLength(40)),
  step_s: z.number().check(z.minimum(60), z.maximum(86_400)),
  temperature_k: hourly(173.15, 383.15),
  relative_humidity: hourly(0, 1),
});

const fields = {
  temperature: {
    type: 'number',
    label: 'Temperature, typical of the span',
    quantity: 'temperature',
    limits: ANY_TEMPERATURE,
    usual: USUAL_OUTDOORS,
    partner: 'relative_humidity',
  },
  relative_humidity: {
    type: 'number',
    label: 'Relative humidity, typical of the span',
    meaning: 'Of the air in the rig over weeks, not of one hour: wood follows slowly.',
    quantity: 'relative-humidity',
    limits: span('relative-humidity', 'percent', 1, 100),
    usual: span('relative-humidity', 'percent', 15, 97),
  },
  hours: {
    type: 'data',
    label: 'Hour by hour',
    meaning: 'As a logger wrote it; the two figures above are then its means. An hour that is missing stays missing.',
    schema: hours,
    optional: true,
  },
} as const satisfies Fields;

type Hours = z.output<typeof hours>;

const refuseHours = ({ from, temperature_k, relative_humidity }: Hours): readonly Refusal[] => [
  ...(parseInstant(from) === undefined
    ? [
        {
          code: 'no-such-time',
          path: 'hours.from',
          expected: 'a time that exists, such as 2026-09-19T10:00:00-04:00',
          received: from,
          sentence: `There is no such time as ${from}.`,
        },
      ]
    : []),
  ...(temperature_k.length === relative_humidity.length
    ? []
    : [
        {
          code: 'unequal-lengths',
          path: 'hours',
          expected: `${temperature_k.length} of each`,
          received: `${temperature_k.length} temperatures, ${relative_humidity.length} humidities`,
          sentence: `There are ${temperature_k.length} temperatures and ${relative_humidity.length} humidities: every hour needs both, or neither.`,
        },
      ]),
  ...(temperature_k.some((t, i) => t !== null && relative_humidity[i] !== null)
    ? []
    : [{ code: 'says-nothing', path: 'hours', expected: 'at least one hour', received: 'none', sentence: 'No hour has both a temperature and a humidity.' }]),
];

export const livedAir = defineKind()({
  id: 'lived-air',
  group: 'whereabouts',
  version: 1,
  title: 'Air it stood in',
  meaning: 'The air that the rig lived in over a span of days, so that wood which is merely as damp as its air is not called a leak.',
  places: ['rig'],
  sides: ['outside', 'inside'],
  repeatable: false,
  fields,
  refuse: (body) => (body.hours === undefined ? [] : refuseHours(body.hours)),
  fold: { mode: 'series' },
  line: (body, preferences) =>
    line(
      `air of ${reading(body.temperature, 'temperature', preferences)} and ${reading(body.relative_humidity, 'relative-humidity', preferences)} humidity`,
      body.hours && `from ${body.hours.temperature_k.filter((t) => t !== null).length} readings of a logger`,
    ),
});
