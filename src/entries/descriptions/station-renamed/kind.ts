import { applyRename, type Rig } from '../../../rig';
import { defineKind, type Fields, stationOf } from '../../../terms';
import { line } from '../../line';

const fields = {
  name: { type: 'text', label: 'Name', most: 120 },
} as const satisfies Fields;

export const stationRenamed = defineKind<Rig>()({
  id: 'station-renamed',
  group: 'description',
  version: 1,
  title: 'Station renamed',
  meaning: 'A station has another name from now on; its id and its history stay.',
  places: ['station'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'describes', apply: (rig, { name }, place) => applyRename(rig, stationOf(place) ?? '', name) },
  line: (body) => line(`renamed: ${body.name}`),
});
