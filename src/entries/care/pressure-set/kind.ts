import { defineKind, type Fields } from '../../../terms';
import { altitudeIf, line, reading, readingIf } from '../../line';
import { ANY_ALTITUDE, ANY_TEMPERATURE, span, USUAL_OUTDOORS } from '../../span';

const fields = {
  pressure: {
    type: 'number',
    label: 'Set to',
    meaning: 'What the gauge showed when it was done, cold.',
    quantity: 'gauge-pressure',
    limits: span('gauge-pressure', 'kpa', 0, 7000),
    usual: span('gauge-pressure', 'psi', 20, 150),
    partner: 'tyre_temperature',
  },
  tyre_temperature: { type: 'number', label: 'Tyre temperature', quantity: 'temperature', limits: ANY_TEMPERATURE, usual: USUAL_OUTDOORS, optional: true },
  altitude: { type: 'number', label: 'Height above sea level', quantity: 'length', limits: ANY_ALTITUDE, optional: true },
} as const satisfies Fields;

export const pressureSet = defineKind()({
  id: 'pressure-set',
  group: 'care',
  version: 1,
  title: 'Pressure set',
  meaning: 'Air was let in or out until the gauge showed this, at this temperature; slow loss is counted from here.',
  places: ['station'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  worksheet: 'tyre-pressure-after-change',
  line: (body, preferences) =>
    line(
      `set to ${reading(body.pressure, 'gauge-pressure', preferences)}`,
      readingIf('tyre ', body.tyre_temperature, 'temperature', preferences),
      altitudeIf(body.altitude, preferences),
    ),
});
