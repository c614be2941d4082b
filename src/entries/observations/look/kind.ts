import { defineKind, type Fields } from '../../../terms';
import { defectWords, line } from '../../line';
import { SOUND, verdict, WHEN_WRONG } from '../verdict';

const fields = {
  verdict,
  defects: {
    type: 'many',
    label: 'What is wrong',
    meaning: 'Rows of the defects table for this kind of station.',
    options: 'defects-of-station',
    optional: true,
    showIf: WHEN_WRONG,
  },
} as const satisfies Fields;

/** What must be looked at before the wheels turn and has no closer question of its own. */
const BEFORE_A_TRIP: readonly string[] = [
  'vent-hatch',
  'antenna',
  'stabiliser',
  'tongue-leg',
  'coupler',
  'kingpin',
  'safety-chain',
  'breakaway',
  'tow-plug',
  'tie-down',
  'inlet-power',
  'inlet-water',
  'cord-hatch',
  'lp-compartment',
  'drain-outlet',
  'window',
  'window-exit',
  'slide-mechanism',
  'folding-seal',
];

export const look = defineKind()({
  id: 'look',
  group: 'observation',
  version: 1,
  title: 'Look',
  meaning: 'What a person saw, felt and tried at a station that has no closer question of its own.',
  places: ['station', 'point', 'outline'],
  sides: ['outside', 'inside'],
  // The roof is looked over as well as felt: a cut in the covering is not felt by the palm.
  suits: (station, side) => side === 'outside' && station.group === 'area' && station.looks.startsWith('roof-'),
  before_trip: (station, side) => side === 'outside' && BEFORE_A_TRIP.includes(station.looks),
  adds: (_station, side) => side === 'outside',
  sound: SOUND,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body) => line(body.verdict === 'sound' ? 'sound' : (defectWords(body.defects) ?? 'something wrong')),
});
