import * as z from 'zod/mini';
import { applyMeter, type Rig } from '../../../rig';
import { defineKind, type Fields } from '../../../terms';
import type { Refusal } from '../../../units';
import { line, readingIf, wordIn } from '../../line';
import { ANY_TEMPERATURE, span } from '../../span';

const scales = [
  { id: 'pin', word: 'Pin meter', line: 'two pins pressed into the wood, per cent' },
  { id: 'pinless', word: 'Pinless meter', line: 'a plate laid on the surface, per cent' },
  { id: 'relative', word: 'Relative scale', line: 'a figure of its own from 0 to 100' },
] as const;

const corrections = [
  { id: 'linear', word: 'One point in ten degrees', line: 'half a point for every 5 °C, as pin meters’ manuals give it' },
  { id: 'pfaff-garrahan', word: 'Pfaff–Garrahan formula', line: 'for readings on the Douglas-fir scale' },
  { id: 'meter-does-it', word: 'The meter does it', line: 'it was told the temperature, or feels it itself' },
] as const;

const ofPins = { field: 'scale', in: ['pin'] } as const;
const ofPercent = { field: 'scale', in: ['pin', 'pinless'] } as const;

const kgPerKg = z.number().check(z.minimum(0), z.maximum(2));
const row = z.strictObject({ material: z.enum(['softwood', 'plywood', 'chipboard', 'hardwood']), shown: kgPerKg, corrected: kgPerKg });
const table = z.readonly(z.array(z.readonly(row)).check(z.minLength(2), z.maxLength(200)));

type Row = z.output<typeof row>;

const notRising = (material: string, at: number, was: Row, is: Row): Refusal => ({
  code: 'not-rising',
  path: `table.${at}`,
  expected: `more than ${was.shown} shown and no less than ${was.corrected} corrected`,
  received: `${is.shown} shown, ${is.corrected} corrected`,
  sentence: `Table for ${material}: row ${at + 1} does not lie above the row before it. Give each material’s rows in rising order, each figure once.`,
});

/** A table is read between its rows: one row says nothing, and a figure that stands twice says two things. */
const refuseTable = (rows: readonly Row[]): readonly Refusal[] => {
  const numbered = rows.map((r, at) => ({ r, at }));
  return [...new Set(rows.map((r) => r.material))].flatMap((material) => {
    const own = numbered.filter(({ r }) => r.material === material);
    if (own.length < 2)
      return [
        {
          code: 'too-few-rows',
          path: 'table',
          expected: 'two rows or more of each material',
          received: `one row of ${material}`,
          sentence: `Table for ${material}: one row alone cannot be read between. Give at least two.`,
        },
      ];
    return own.slice(1).flatMap(({ r, at }, i) => {
      const was = own[i]?.r ?? r;
      return r.shown > was.shown && r.corrected >= was.corrected ? [] : [notRising(material, at, was, r)];
    });
  });
};

const fields = {
  name: { type: 'text', label: 'Name', meaning: 'How you tell it from another one; readings name it by these words.', most: 60 },
  scale: { type: 'choice', label: 'What it shows', options: scales },
  calibrated_at: {
    type: 'number',
    label: 'Right at a wood temperature of',
    meaning: 'From its manual; where nothing is given, 20 °C (68 °F) is taken and said.',
    quantity: 'temperature',
    limits: ANY_TEMPERATURE,
    usual: span('temperature', 'c', 10, 35),
    optional: true,
    showIf: ofPins,
  },
  correction: { type: 'choice', label: 'Correction for temperature', options: corrections, optional: true, showIf: ofPins },
  repeatability: {
    type: 'number',
    label: 'Two readings of one place differ by',
    meaning: 'In points of moisture: read one place several times, a hand’s breadth aside.',
    quantity: 'moisture-content',
    limits: span('moisture-content', 'percent', 0, 20),
    usual: span('moisture-content', 'percent', 0.1, 5),
    optional: true,
    showIf: ofPercent,
  },
  table: {
    type: 'data',
    label: 'Its table of materials',
    meaning: 'From its manual: what it shows, and what that is in a material, as kg of water in kg of dry wood.',
    schema: table,
    optional: true,
    showIf: ofPercent,
  },
} as const satisfies Fields;

export const meter = defineKind<Rig>()({
  id: 'meter',
  group: 'description',
  version: 1,
  title: 'Moisture meter',
  meaning: 'A meter used on this rig: its scale, at what temperature it is right and how its figures are corrected; what it shows is another kind of entry.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  refuse: (body) => (body.table === undefined ? [] : refuseTable(body.table)),
  fold: {
    mode: 'describes',
    apply: (rig, { name, scale, calibrated_at, correction, repeatability, table: rows }) =>
      applyMeter(rig, {
        name,
        scale,
        ...(calibrated_at === undefined ? {} : { calibrated_at_k: calibrated_at.si }),
        ...(correction === undefined ? {} : { correction }),
        ...(repeatability === undefined ? {} : { repeatability: repeatability.si }),
        ...(rows === undefined ? {} : { table: rows }),
      }),
  },
  line: (body, preferences) =>
    line(
      `${body.name}: ${wordIn(scales, body.scale)}`,
      readingIf('right at ', body.calibrated_at, 'temperature', preferences),
      body.correction === 'linear' ? 'corrected by one point in ten degrees' : body.correction === 'pfaff-garrahan' ? 'corrected by the Pfaff–Garrahan formula' : undefined,
      body.correction === 'meter-does-it' && 'corrects for temperature itself',
      readingIf('repeats within ', body.repeatability, 'moisture-content', preferences),
      body.table && `table of ${[...new Set(body.table.map((r) => r.material))].join(', ')}`,
    ),
});
