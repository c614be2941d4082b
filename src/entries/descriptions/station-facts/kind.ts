import { applyStationFacts, type Rig } from '../../../rig';
import { defineKind, type Fields, stationOf } from '../../../terms';
import { parseWhen } from '../../../units';
import { line, wordIn } from '../../line';
import { SEALANTS, SURFACES } from '../../sealing';

const fields = {
  sealed_with: {
    type: 'choice',
    label: 'Sealed with',
    meaning: 'Was silicone ever used here? Not known counts as yes until a test patch has held.',
    options: SEALANTS,
    optional: true,
  },
  sealed_to: { type: 'choice', label: 'Sealed to', options: SURFACES, optional: true },
  last_sealed: { type: 'text', label: 'Last sealed', meaning: 'A day, or the first and last day between which it was: 2022-03-01/2022-05-31.', most: 40, optional: true },
  behind: { type: 'text', label: 'What lies behind', most: 300, optional: true },
} as const satisfies Fields;

export const stationFacts = defineKind<Rig>()({
  id: 'station-facts',
  group: 'description',
  version: 1,
  title: 'Facts about a station',
  meaning: 'What is known about a station apart from its state: what it is sealed with and to, when last, what lies behind it.',
  places: ['station'],
  sides: ['outside'],
  repeatable: false,
  fields,
  refuse: ({ last_sealed }) =>
    last_sealed === undefined || last_sealed === 'unknown' || parseWhen(last_sealed)
      ? []
      : [
          {
            code: 'no-such-time',
            path: 'last_sealed',
            expected: 'a day or a span of days',
            received: `“${last_sealed}”`,
            sentence: `There is no such time as ${last_sealed}. Give a day such as 2022-05-14, or a span such as 2022-03-01/2022-05-31.`,
          },
        ],
  fold: { mode: 'describes', apply: (rig, facts, place) => applyStationFacts(rig, stationOf(place) ?? '', facts) },
  line: (body) =>
    line(
      body.sealed_with && `sealed with ${wordIn(SEALANTS, body.sealed_with) ?? 'something not known'}`,
      body.sealed_to && `to ${wordIn(SURFACES, body.sealed_to) ?? 'a surface not known'}`,
      body.last_sealed && `last sealed ${body.last_sealed}`,
      body.behind && `behind it ${body.behind}`,
    ) || 'No facts given',
});
