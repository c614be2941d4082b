import type { Meter } from '../../../src/rig';
import { accept, fromSi, type Refusal, type Result, readQuantity, refuse } from '../../../src/units';

type Row = NonNullable<Meter['table']>[number];

const MATERIALS: readonly string[] = ['softwood', 'plywood', 'chipboard', 'hardwood'];

const isRow = (value: unknown): value is Row => typeof value === 'object' && value !== null && 'material' in value && 'shown' in value && 'corrected' in value;

const percent = (kgPerKg: number): string => String(Number(fromSi(kgPerKg, 'moisture-content', 'percent').toPrecision(9)));

/** Rows as they are typed: `plywood 10 9`. */
export const tableText = (rows: unknown): string =>
  Array.isArray(rows)
    ? rows
        .filter(isRow)
        .map((r) => `${r.material} ${percent(r.shown)} ${percent(r.corrected)}`)
        .join('\n')
    : '';

const rowOf = (line: string, at: number): Result<Row> => {
  const path = `table.${at}`;
  const [material = '', ...figures] = line.trim().split(/[\s;]+/);
  const wrong = (received: string): Result<never> =>
    refuse({
      code: 'not-a-row',
      path,
      expected: 'a material and two figures, such as plywood 10 9',
      received,
      sentence: `Line ${at + 1}: “${line.trim()}” is not a row. Give softwood, plywood, chipboard or hardwood, then what the meter shows, then what that is: plywood 10 9.`,
    });
  if (!MATERIALS.includes(material.toLowerCase()) || figures.length !== 2) return wrong(line.trim());
  const [shown, corrected] = figures.map((figure) => readQuantity(figure, 'moisture-content', 'percent', { least: 0, most: 2 }, path));
  return shown?.ok && corrected?.ok ? accept({ material: material.toLowerCase(), shown: shown.value.si, corrected: corrected.value.si }) : wrong(line.trim());
};

/** A table as typed, a row a line; empty lines are passed over. */
export const readTable = (text: string): Result<readonly Row[]> => {
  const read = text.split('\n').flatMap((line, at) => (line.trim() === '' ? [] : [rowOf(line, at)]));
  const refusals: readonly Refusal[] = read.flatMap((r) => (r.ok ? [] : r.refusals));
  return refusals.length > 0 ? refuse(...refusals) : accept(read.flatMap((r) => (r.ok ? [r.value] : [])));
};
