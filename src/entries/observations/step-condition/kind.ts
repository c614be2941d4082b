import { defineKind, type Fields, type Side, type Station } from '../../../terms';
import { line, readingIf, wordOf, wordsOf } from '../../line';
import { span } from '../../span';
import { SOUND, verdict, WHEN_WRONG } from '../verdict';

/** Ids are rows of the defects table where it has them. */
const defects = [
  { id: 'step.loose', word: 'Not secure', line: 'bolts loose, or it gives under weight' },
  { id: 'step.wont-lock', word: 'Does not lock or fold' },
  { id: 'step.stiff', word: 'Does not move freely' },
  { id: 'step.rust', word: 'Rust' },
  { id: 'step.paint-worn', word: 'Paint worn' },
  { id: 'step.paint-chipped', word: 'Paint chipped' },
] as const;

const fields = {
  verdict,
  defects: { type: 'many', label: 'What is wrong', options: defects, optional: true, showIf: WHEN_WRONG },
  rust_share: {
    type: 'number',
    label: 'Rusted share of the surface',
    meaning: 'By eye, of the whole step.',
    quantity: 'share',
    limits: span('share', 'percent', 0, 100),
    optional: true,
    showIf: { field: 'defects', in: ['step.rust'] },
  },
} as const satisfies Fields;

const isStep = (station: Station, side: Side): boolean => side === 'outside' && station.looks === 'step';

export const stepCondition = defineKind()({
  id: 'step-condition',
  group: 'observation',
  version: 1,
  title: 'Step',
  meaning: 'Whether an entry step is secure and moves freely, and its rust and paint, tried by hand before anyone stands on it.',
  places: ['station'],
  sides: ['outside'],
  suits: isStep,
  before_trip: isStep,
  sound: SOUND,
  repeatable: true,
  fields,
  fold: { mode: 'latest' },
  line: (body, preferences) =>
    line(
      body.verdict === 'sound' ? 'secure, moves freely' : wordOf(verdict.options, body.verdict),
      wordsOf(defects, body.defects),
      readingIf('rust on ', body.rust_share, 'share', preferences),
    ),
});
