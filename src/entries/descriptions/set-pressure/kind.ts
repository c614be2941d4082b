import { applyFacts, type Rig } from '../../../rig';
import { defineKind, type Fields } from '../../../terms';
import { altitudeIf, line, reading, readingIf } from '../../line';
import { ANY_ALTITUDE, ANY_TEMPERATURE, span, USUAL_OUTDOORS } from '../../span';

const fields = {
  axle: { type: 'text', label: 'Axle', meaning: 'As the drawing names it: A1 is the foremost.', most: 40 },
  pressure: {
    type: 'number',
    label: 'Cold pressure to set',
    meaning: 'From the placard, the manual or the tyre maker’s table for the weighed load; never above what tyre and wheel allow.',
    quantity: 'gauge-pressure',
    limits: span('gauge-pressure', 'kpa', 50, 7000),
    usual: span('gauge-pressure', 'psi', 20, 150),
    partner: 'temperature',
  },
  temperature: {
    type: 'number',
    label: 'At',
    meaning: 'The temperature for which it holds, where the source names one.',
    quantity: 'temperature',
    limits: ANY_TEMPERATURE,
    usual: USUAL_OUTDOORS,
    optional: true,
  },
  altitude: { type: 'number', label: 'Height above sea level', quantity: 'length', limits: ANY_ALTITUDE, optional: true },
} as const satisfies Fields;

export const setPressure = defineKind<Rig>()({
  id: 'set-pressure',
  group: 'description',
  version: 1,
  title: 'Set pressure of an axle',
  meaning: 'The cold pressure that the tyres of one axle are to have; what a gauge showed is another kind of entry.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: {
    mode: 'describes',
    apply: (rig, { axle, pressure, temperature, altitude }) =>
      applyFacts(rig, {
        set_pressure_pa: { [axle]: pressure.si },
        ...(temperature === undefined ? {} : { set_temperature_k: temperature.si }),
        ...(altitude === undefined ? {} : { set_altitude_m: altitude.si }),
      }),
  },
  line: (body, preferences) =>
    line(
      `axle ${body.axle}: ${reading(body.pressure, 'gauge-pressure', preferences)}`,
      readingIf('at ', body.temperature, 'temperature', preferences),
      altitudeIf(body.altitude, preferences),
    ),
});
