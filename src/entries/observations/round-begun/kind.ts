import * as z from 'zod/mini';
import { defineKind, type Fields } from '../../../terms';
import { line, wordOf } from '../../line';

const forms = [
  { id: 'full', word: 'Full round', line: 'every station, outside and where a reading is wanted inside' },
  { id: 'partial', word: 'Partial round', line: 'the stations chosen now' },
  { id: 'pre-trip', word: 'Round before a trip', line: 'what must be right before the wheels turn' },
] as const;

const steps = z.array(z.strictObject({ station: z.string().check(z.minLength(1)), side: z.enum(['outside', 'inside']) }));

const fields = {
  form: { type: 'choice', label: 'Which round', options: forms },
  steps: { type: 'data', label: 'Stations in walking order', meaning: 'The order as it was when the round began; later changes of the rig do not alter it.', schema: steps },
} as const satisfies Fields;

export const roundBegun = defineKind()({
  id: 'round-begun',
  group: 'observation',
  version: 1,
  title: 'Round begun',
  meaning: 'The start of one walk round the rig by one person, with the stations it sets out to visit; entries made on it name it.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body) => line(wordOf(forms, body.form), `${body.steps.length} ${body.steps.length === 1 ? 'stop' : 'stops'}`),
});
