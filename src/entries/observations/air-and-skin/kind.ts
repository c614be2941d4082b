import { defineKind, type Fields } from '../../../terms';
import { line, reading } from '../../line';
import { ANY_TEMPERATURE, span, USUAL_OUTDOORS } from '../../span';

const fields = {
  air_temperature: {
    type: 'number',
    label: 'Air temperature',
    meaning: 'Of the air in front of the place, a hand’s breadth away from it.',
    quantity: 'temperature',
    limits: ANY_TEMPERATURE,
    usual: USUAL_OUTDOORS,
  },
  relative_humidity: {
    type: 'number',
    label: 'Relative humidity',
    quantity: 'relative-humidity',
    limits: span('relative-humidity', 'percent', 1, 100),
    usual: span('relative-humidity', 'percent', 10, 98),
  },
  skin_temperature: {
    type: 'number',
    label: 'Temperature of the surface',
    meaning: 'By a probe held against it or an infrared thermometer; bare metal and glass show false to infrared, a strip of tape on them does not.',
    quantity: 'temperature',
    limits: ANY_TEMPERATURE,
    usual: USUAL_OUTDOORS,
  },
} as const satisfies Fields;

export const airAndSkin = defineKind()({
  id: 'air-and-skin',
  group: 'observation',
  version: 1,
  title: 'Air and surface',
  meaning: 'Air and surface measured together at one place, to tell water that condensed there from water that came in; it names no leak.',
  places: ['station', 'point'],
  sides: ['inside', 'outside'],
  adds: (station, side) => side === 'inside' && station.group !== 'wheel',
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  line: (body, preferences) =>
    line(
      `air ${reading(body.air_temperature, 'temperature', preferences)}`,
      `${reading(body.relative_humidity, 'relative-humidity', preferences)} humidity`,
      `surface ${reading(body.skin_temperature, 'temperature', preferences)}`,
    ),
});
