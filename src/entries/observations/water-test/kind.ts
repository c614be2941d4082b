import { defineKind, type Fields } from '../../../terms';
import { showIn } from '../../../units';
import { line, wordOf } from '../../line';
import { span } from '../../span';

const ways = [
  { id: 'hose', word: 'Hose', line: 'plain flow without a jet; the lowest suspect first, openings above left dry' },
  { id: 'soap', word: 'Soap and slight pressure', line: 'a blower presses air out, suds bubble at the gap; every flame out first' },
] as const;

const results = [
  { id: 'came-in', word: 'Water came in', line: 'hose: seen or metered inside' },
  { id: 'stayed-dry', word: 'Stayed dry', line: 'hose: dry inside to the end' },
  { id: 'bubbles', word: 'Bubbles', line: 'soap: air comes out here' },
  { id: 'no-bubbles', word: 'No bubbles', line: 'soap: none seen' },
] as const;

const SHOWN_BY: Readonly<Record<(typeof ways)[number]['id'], readonly (typeof results)[number]['id'][]>> = { hose: ['came-in', 'stayed-dry'], soap: ['bubbles', 'no-bubbles'] };

const fields = {
  how: { type: 'choice', label: 'Tested with', options: ways },
  result: { type: 'choice', label: 'Result', options: results },
  ran_for: {
    type: 'number',
    label: 'It ran for',
    meaning: 'From start to stop; the time of the entry is the stop.',
    quantity: 'duration',
    units: { us: 'min', metric: 'min' },
    limits: span('duration', 'min', 0, 240),
    usual: span('duration', 'min', 0.5, 30),
    optional: true,
  },
  kept_dry: {
    type: 'flag',
    label: 'Openings above stayed dry',
    meaning: 'Covered, or well clear of the water; otherwise it may have come in through one of them.',
    optional: true,
  },
} as const satisfies Fields;

export const waterTest = defineKind()({
  id: 'water-test',
  group: 'observation',
  version: 1,
  title: 'Water test',
  meaning: 'One opening or seam tested by itself from outside, and what showed inside; a jet held close makes leaks that rain would not.',
  places: ['station'],
  sides: ['outside'],
  adds: (station, side) => side === 'outside' && (station.cut_through || station.group === 'seam'),
  repeatable: false,
  fields,
  refuse: ({ how, result }) =>
    SHOWN_BY[how].includes(result)
      ? []
      : [
          {
            code: 'result-not-fitting',
            path: 'result',
            expected: SHOWN_BY[how].map((id) => wordOf(results, id)).join(' or '),
            received: wordOf(results, result) ?? result,
            sentence: how === 'hose' ? 'A hose shows whether water comes in; bubbles belong to soap.' : 'Soap shows bubbles or none; whether water comes in is shown by a hose.',
          },
        ],
  fold: { mode: 'series' },
  line: (body) =>
    line(
      `${body.how === 'hose' ? 'hose' : 'soap'}: ${wordOf(results, body.result)?.toLowerCase()}`,
      body.ran_for && `after ${showIn(body.ran_for.si, 'duration', 'min')}`,
      body.kept_dry === true ? 'openings above kept dry' : body.kept_dry === false && 'openings above got wet too',
    ),
});
