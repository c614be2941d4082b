import { applyLayout, type Rig } from '../../../rig';
import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';
import { layoutSchema } from '../rig-schema';

const fields = {
  layout: { type: 'data', label: 'Layout', meaning: 'Every face, axle, slide and station with its coordinates, as the starting layout gave it.', schema: layoutSchema },
} as const satisfies Fields;

export const layoutPlaced = defineKind<Rig>()({
  id: 'layout-placed',
  group: 'description',
  version: 1,
  title: 'Layout placed',
  meaning: 'The whole drawn rig as it was placed, with every station; a later change of a starting layout does not touch it.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'describes', apply: (rig, { layout }) => applyLayout(rig, layout) },
  line: ({ layout }) => line('layout placed', `${layout.faces.length} faces`, `${layout.stations.length} stations`),
});
