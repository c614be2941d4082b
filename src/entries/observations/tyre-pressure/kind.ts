import { type BodyOf, defineKind, type Fields } from '../../../terms';
import { altitudeIf, line, reading, readingIf, wordIn } from '../../line';
import { ANY_ALTITUDE, ANY_TEMPERATURE, span, USUAL_OUTDOORS } from '../../span';
import { isWheel } from '../wheel';

const rested = [
  { id: 'cold', word: 'Cold', line: 'parked three hours or more, out of the sun' },
  { id: 'warm', word: 'Warm', line: 'driven lately, or in the sun' },
  { id: 'not-known', word: 'Not known' },
] as const;

const driven = [
  { id: 'no', word: 'Not moved since', line: 'parked ever since it was last at its set pressure' },
  { id: 'yes', word: 'Driven' },
  { id: 'not-known', word: 'Not known' },
] as const;

/**
 * Hard limits are what no gauge shows; the usual range is what rigs run on. 450 typed as psi (meant as kPa) lies between
 * the two and is therefore asked about.
 */
const fields = {
  pressure: {
    type: 'number',
    label: 'Pressure',
    meaning: 'What the gauge shows, above the air outside.',
    quantity: 'gauge-pressure',
    limits: span('gauge-pressure', 'kpa', 0, 7000),
    usual: span('gauge-pressure', 'psi', 20, 150),
    partner: 'tyre_temperature',
  },
  tyre_temperature: {
    type: 'number',
    label: 'Tyre temperature',
    meaning: 'Of the tyre; in the shade after hours parked, that of the air.',
    quantity: 'temperature',
    limits: ANY_TEMPERATURE,
    usual: USUAL_OUTDOORS,
    optional: true,
  },
  rested: { type: 'choice', label: 'Tyre is', options: rested, optional: true },
  driven_since_set: { type: 'choice', label: 'Since it was set', meaning: 'Asked because a tyre that ran low may be hurt inside.', options: driven, optional: true },
  altitude: { type: 'number', label: 'Height above sea level', quantity: 'length', limits: ANY_ALTITUDE, optional: true },
} as const satisfies Fields;

/** Version 1 asked only yes or no, so that “not known” could not be said: a plain no is therefore read as not known. */
type Version1 = Omit<BodyOf<typeof fields>, 'driven_since_set' | 'rested'> & { readonly driven?: boolean };

export const tyrePressure = defineKind()({
  id: 'tyre-pressure',
  group: 'observation',
  version: 2,
  title: 'Tyre pressure',
  meaning: 'One reading of a gauge at one tyre, with the temperature of the tyre; made comparable only by its worksheet.',
  places: ['station'],
  sides: ['outside'],
  suits: isWheel,
  before_trip: isWheel,
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  worksheet: 'tyre-pressure-after-change',
  upcasts: {
    1: ({ driven: was, ...rest }: Version1) => ({ ...rest, ...(was === undefined ? {} : { driven_since_set: was ? 'yes' : 'not-known' }) }),
  },
  line: (body, preferences) =>
    line(
      reading(body.pressure, 'gauge-pressure', preferences),
      readingIf('tyre ', body.tyre_temperature, 'temperature', preferences),
      body.rested === 'warm' && 'tyre warm',
      wordIn(driven, body.driven_since_set),
      altitudeIf(body.altitude, preferences),
    ),
});
