import { defineKind, type Fields, type Side, type Station } from '../../../terms';
import { line, wordsOf } from '../../line';
import { SOUND, verdict, WHEN_WRONG } from '../verdict';

/** Ids are rows of the defects table. */
const defects = [
  { id: 'awning-fabric.seam', word: 'Seam thread going' },
  { id: 'awning-fabric.pinholes', word: 'Pinholes, thin fabric' },
  { id: 'awning-fabric.mildew', word: 'Mildew' },
  { id: 'awning-fabric.torn-rail', word: 'Torn at the rail or tube' },
  { id: 'awning-arm.bracket-loose', word: 'Bracket loose', line: 'or the wall behind it is crushed' },
  { id: 'awning-arm.travel-lock', word: 'Travel lock does not hold' },
  { id: 'awning-arm.bent', word: 'Arm bent or cracked' },
  { id: 'awning-arm.motor', word: 'Motor weak or wiring chafed' },
  { id: 'awning-rail.screws', word: 'Rail screws backing out' },
  { id: 'awning-rail.end-open', word: 'Rail end open' },
  { id: 'slide-topper.seam', word: 'Topper seam going' },
  { id: 'slide-topper.sag', word: 'Topper sags or flaps' },
  { id: 'slide-topper.debris', word: 'Debris on the topper' },
] as const;

const fields = {
  verdict,
  defects: { type: 'many', label: 'What is wrong', options: defects, optional: true, showIf: WHEN_WRONG },
} as const satisfies Fields;

const ASKED: readonly string[] = ['awning-fabric', 'awning-arm', 'slide-topper'];
const isAwning = (station: Station, side: Side): boolean => side === 'outside' && ASKED.includes(station.looks);

export const awningCondition = defineKind()({
  id: 'awning-condition',
  group: 'observation',
  version: 1,
  title: 'Awning',
  meaning: 'Fabric, arms, rail and travel lock of an awning or of a topper over a slide.',
  places: ['station'],
  sides: ['outside'],
  suits: isAwning,
  before_trip: isAwning,
  adds: (station, side) => side === 'outside' && station.looks === 'awning-rail',
  sound: SOUND,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line(body.verdict === 'sound' ? 'whole, locked for the road' : (wordsOf(defects, body.defects) ?? 'something wrong')),
});
