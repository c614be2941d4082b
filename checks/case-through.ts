import { fromSi, type QuantityId } from '../src/units';
import { work, worksheetById } from '../src/worksheets';

/** What a worksheet gave for a case: unrounded results, in whatever unit the case speaks. */
type Answer = {
  readonly refused: readonly string[];
  readonly figure: (key: string, unit: string) => number;
  readonly figures: (key: string, unit: string) => readonly number[];
  readonly word: (key: string) => string;
};

export const through = (id: string, raw: Readonly<Record<string, unknown>>): Answer => {
  const worksheet = worksheetById(id);
  if (worksheet === undefined) throw new Error(`no worksheet ${id}`);
  const worked = work(worksheet, raw);
  if (!worked.ok) return { refused: worked.refusals.map((r) => r.code), figure: () => Number.NaN, figures: () => [], word: () => 'refused' };
  const { result } = worked.value.outcome;
  const quantityOf = (key: string): QuantityId => {
    const output = worksheet.results[key];
    if (output === undefined || output.type === 'text') throw new Error(`${id} gives no figure ${key}`);
    return output.quantity;
  };
  return {
    refused: [],
    figure: (key, unit) => fromSi(Number(result[key]), quantityOf(key), unit),
    figures: (key, unit) => [result[key] ?? []].flat().map((n) => fromSi(Number(n), quantityOf(key), unit)),
    word: (key) => String(result[key]),
  };
};

export type Values = Readonly<Record<string, unknown>>;
export type CaseRun = (inputs: Values, expected: Values) => Values;
