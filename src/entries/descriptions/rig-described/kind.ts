import { applyFacts, type Rig } from '../../../rig';
import { defineKind, type Fields } from '../../../terms';
import { line, wordIn } from '../../line';

export const RIG_KINDS = [
  { id: 'travel-trailer', word: 'Travel trailer' },
  { id: 'fifth-wheel', word: 'Fifth wheel' },
  { id: 'class-a', word: 'Motorhome, Class A' },
  { id: 'class-b', word: 'Motorhome, Class B' },
  { id: 'class-c', word: 'Motorhome, Class C' },
  { id: 'truck-camper', word: 'Truck camper' },
  { id: 'folding-camper', word: 'Folding camper' },
  { id: 'teardrop', word: 'Teardrop' },
] as const;

/** What a kind of rig is called inside a sentence: `travel trailer`, `motorhome, Class A`. */
export const rigKindWord = (kind: Rig['kind']): string => wordIn(RIG_KINDS, kind) ?? kind;

export const WALL_SKINS = [
  { id: 'fibreglass', word: 'Fibreglass' },
  { id: 'corrugated-aluminium', word: 'Corrugated aluminium' },
  { id: 'sheet-aluminium', word: 'Aluminium sheet' },
  { id: 'moulded-fibreglass', word: 'Moulded fibreglass shell' },
  { id: 'painted-steel', word: 'Painted steel' },
  { id: 'unknown', word: 'Not known' },
] as const;

export const CONSTRUCTIONS = [
  { id: 'bonded', word: 'Bonded', line: 'skin, core and lining are one glued panel; flat and stiff' },
  { id: 'hung', word: 'Hung on a frame', line: 'the skin hangs on wood or metal framing and may move a little' },
  { id: 'moulded', word: 'Moulded shell' },
  { id: 'unknown', word: 'Not known' },
] as const;

export const ROOFS = [
  { id: 'epdm', word: 'EPDM rubber', line: 'black backing under a white face that chalks' },
  { id: 'tpo', word: 'TPO', line: 'same colour right through, a faint sheen' },
  { id: 'pvc', word: 'PVC' },
  { id: 'coated', word: 'Liquid-coated' },
  { id: 'fibreglass', word: 'Fibreglass' },
  { id: 'aluminium', word: 'Aluminium' },
  { id: 'painted-steel', word: 'Painted steel' },
  { id: 'unknown', word: 'Not known' },
] as const;

const fields = {
  name: { type: 'text', label: 'Name', meaning: 'What you call it.', most: 80 },
  kind: { type: 'choice', label: 'Kind', options: RIG_KINDS },
  year: { type: 'number', label: 'Model year', quantity: 'count', limits: { least: 1920, most: 2100 }, optional: true },
  skin: { type: 'choice', label: 'Wall skin', options: WALL_SKINS },
  construction: { type: 'choice', label: 'Wall construction', options: CONSTRUCTIONS },
  roof: { type: 'choice', label: 'Roof covering', options: ROOFS },
} as const satisfies Fields;

export const rigDescribed = defineKind<Rig>()({
  id: 'rig-described',
  group: 'description',
  version: 1,
  title: 'Rig described',
  meaning: 'What the rig is called and made of, as a whole; a later one replaces an earlier one.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: {
    mode: 'describes',
    apply: (rig, { name, kind, year, skin, construction, roof }) => applyFacts(rig, { name, kind, skin, construction, roof, year: year === undefined ? 'unknown' : year.si }),
  },
  line: (body) => line(body.name, wordIn(RIG_KINDS, body.kind), body.year?.typed, wordIn(WALL_SKINS, body.skin), wordIn(ROOFS, body.roof)),
});
