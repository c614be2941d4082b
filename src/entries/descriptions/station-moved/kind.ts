import { placedAs, type Rig } from '../../../rig';
import { defineKind, type Fields, stationOf } from '../../../terms';
import { line } from '../../line';
import { shapeSchema } from '../rig-schema';

const sizes = [
  { id: 'confirmed', word: 'Measured on this rig' },
  { id: 'typical', word: 'Typical, not measured' },
] as const;

const fields = {
  shape: { type: 'data', label: 'Where it is and how large', meaning: 'The outer outline on its own face.', schema: shapeSchema },
  size: { type: 'choice', label: 'The size is', options: sizes, optional: true },
} as const satisfies Fields;

export const stationMoved = defineKind<Rig>()({
  id: 'station-moved',
  group: 'description',
  version: 1,
  title: 'Station moved',
  meaning: 'A station stands elsewhere on its face, or has another size; its id and its history stay.',
  places: ['station'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: {
    mode: 'describes',
    apply: (rig, { shape, size }, place) => ({ ...rig, stations: rig.stations.map((s) => (s.id === stationOf(place) ? { ...placedAs(rig, s, shape), size: size ?? s.size } : s)) }),
  },
  line: ({ shape, size }) => line('moved', 'x_m' in shape && `to ${shape.x_m.toFixed(2)}, ${shape.y_m.toFixed(2)} m on its face`, size === 'confirmed' && 'size measured'),
});
