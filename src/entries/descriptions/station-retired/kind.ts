import { applyRetire, type Rig } from '../../../rig';
import { defineKind, type Fields, stationOf } from '../../../terms';
import { line } from '../../line';

const fields = {
  why: { type: 'text', label: 'Why', most: 300, optional: true },
} as const satisfies Fields;

export const stationRetired = defineKind<Rig>()({
  id: 'station-retired',
  group: 'description',
  version: 1,
  title: 'Station retired',
  meaning: 'A station that the rig does not have, or has no more; no round visits it, and its history stays. Withdrawing this entry brings it back.',
  places: ['station'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'describes', apply: (rig, _body, place) => applyRetire(rig, stationOf(place) ?? '') },
  line: (body) => line('retired', body.why),
});
