import { applyStation, type Rig } from '../../../rig';
import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';
import { stationSchema } from '../rig-schema';

const fields = {
  station: { type: 'data', label: 'Station', meaning: 'The whole station, with its shape on the face.', schema: stationSchema },
} as const satisfies Fields;

export const stationAdded = defineKind<Rig>()({
  id: 'station-added',
  group: 'description',
  version: 1,
  title: 'Station added',
  meaning: 'A station that the starting layout does not have, or one put anew in the place of a station with the same id.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'describes', apply: (rig, { station }) => applyStation(rig, station) },
  line: ({ station }) => line(`added: ${station.name}`),
});
