import { defineKind, type Fields, type Side, type Station } from '../../../terms';
import { line, wordsOf } from '../../line';
import { SOUND, verdict, WHEN_WRONG } from '../verdict';

/** Ids are rows of the defects table. */
const defects = [
  { id: 'underbelly.sag-water', word: 'Sags with water' },
  { id: 'underbelly.hole', word: 'Hole or gap' },
  { id: 'underbelly.loose', word: 'Edge hanging' },
  { id: 'underbelly.floor-soft', word: 'Floor edge soft from below' },
  { id: 'frame.weld-crack', word: 'Cracked weld or bent member' },
  { id: 'frame.rust-scale', word: 'Flaking rust' },
  { id: 'frame.rust-light', word: 'Surface rust' },
  { id: 'suspension.crack', word: 'Broken leaf or cracked hanger' },
  { id: 'suspension.rub', word: 'Tyre rubs' },
  { id: 'suspension.uneven', word: 'One side lower' },
  { id: 'drain-outlet.drip', word: 'Drips at a cap' },
  { id: 'drain-outlet.hanging', word: 'Pipe hangs' },
  { id: 'drain-outlet.cap', word: 'Cap or strap missing' },
  { id: 'exhaust.leak', word: 'Exhaust holed' },
  { id: 'exhaust.short', word: 'Exhaust ends under the rig or by an opening' },
  { id: 'exhaust.hanger', word: 'Exhaust hanger broken' },
] as const;

const fields = {
  verdict,
  defects: { type: 'many', label: 'What is wrong', options: defects, optional: true, showIf: WHEN_WRONG },
} as const satisfies Fields;

const UNDER: readonly string[] = ['underbelly', 'frame', 'suspension', 'drain-outlet', 'exhaust'];
const isUnderside = (station: Station, side: Side): boolean =>
  side === 'outside' && UNDER.includes(station.looks) && (station.group === 'area' || station.bead === 'none' || station.bead === 'fastener-heads');

export const undersideCondition = defineKind()({
  id: 'underside-condition',
  group: 'observation',
  version: 1,
  title: 'Underside',
  meaning: 'Belly cover, frame, pipes and outlets as seen from beside the rig; nobody goes under a rig that stands on jacks alone.',
  places: ['station'],
  sides: ['outside'],
  suits: isUnderside,
  before_trip: (station, side) => isUnderside(station, side) && station.looks === 'drain-outlet',
  sound: SOUND,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line(body.verdict === 'sound' ? 'nothing loose, wet or cracked' : (wordsOf(defects, body.defects) ?? 'something wrong')),
});
