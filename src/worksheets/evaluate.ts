import type { AnyWorksheet, Input, Inputs, Outcome, Output, Source, Step, WorksheetValue } from '../terms';
import { accept, fromSi, quantities, type Refusal, type Result } from '../units';
import { type Key, keyOf } from './keys';
import { missing, readInput, received, usualValue } from './read-input';

/** A worksheet worked through, ready for JSON: keys end in their units, numbers are rounded to what their source is worth. */
export type Evaluation = {
  readonly id: string;
  readonly title: string;
  /** What was given, under the keys it was given in; left-out inputs with their usual value. */
  readonly inputs: Readonly<Record<string, WorksheetValue>>;
  readonly result: Readonly<Record<string, WorksheetValue>>;
  readonly working: readonly Step[];
  readonly sources: readonly Source[];
  readonly cautions: readonly string[];
  readonly limits: readonly string[];
  readonly remarks: readonly string[];
};

/** A worksheet worked through in SI, unrounded, for those who reckon on. */
export type Worked = {
  readonly given: Readonly<Record<string, WorksheetValue>>;
  readonly inputs: Readonly<Record<string, WorksheetValue>>;
  readonly usual: readonly Step[];
  readonly outcome: Outcome<string>;
};

type Gathered = { readonly given: Record<string, WorksheetValue>; readonly inputs: Record<string, WorksheetValue>; readonly usual: Step[]; readonly refusals: Refusal[] };

const gather = (inputs: Inputs, raw: Readonly<Record<string, unknown>>): Gathered => {
  const out: Gathered = { given: {}, inputs: {}, usual: [], refusals: [] };
  const keys = Object.keys(raw).map((given) => keyOf(inputs, given) ?? given);
  for (const key of keys) {
    if (typeof key !== 'string') continue;
    out.refusals.push({
      code: 'unknown-key',
      path: key,
      expected: `one of ${Object.keys(inputs).join(', ')}`,
      received: `“${key}”`,
      sentence: `This worksheet has no input “${key}”. It takes ${Object.keys(inputs).join(', ')}.`,
    });
  }
  for (const [declared, input] of Object.entries(inputs)) {
    const given = keys.filter((k): k is Key => typeof k !== 'string' && k.declared === declared && raw[k.given] !== undefined && raw[k.given] !== null);
    const [first, second] = given;
    if (second !== undefined)
      out.refusals.push({
        code: 'given-twice',
        path: second.given,
        expected: `${declared} in one unit only`,
        received: given.map((k) => k.given).join(', '),
        sentence: `The same input was given more than once: ${given.map((k) => k.given).join(', ')}. Keep one of them.`,
      });
    if (first === undefined) {
      const usual = usualValue(declared, input);
      if (usual === undefined) out.refusals.push(missing(declared, input));
      else {
        out.given[declared] = usual.got.si;
        out.inputs[declared] = usual.got.shown;
        out.usual.push(usual.step);
      }
      continue;
    }
    const read = readInput(first, input, raw[first.given]);
    if (!read.ok) out.refusals.push(...read.refusals);
    else {
      out.given[declared] = read.value.si;
      out.inputs[first.given] = read.value.shown;
    }
  }
  return out;
};

/** `times[3]` is the fourth figure of `times`. */
const ITEM = /^([^[]*)(\[\d+\])?$/;

/** A law names its parameter, a worksheet's key adds the unit: the refusal is told under the key that was given. */
const underKeys = (refusals: readonly Refusal[], inputs: Readonly<Record<string, WorksheetValue>>): readonly Refusal[] =>
  refusals.map((r) => {
    const [, name = r.path, item = ''] = ITEM.exec(r.path) ?? [];
    const key = Object.hasOwn(inputs, name) ? name : (Object.keys(inputs).find((k) => k.startsWith(`${name}_`)) ?? name);
    return { ...r, path: `${key}${item}` };
  });

/**
 * Works a worksheet through in SI.
 *
 * @param worksheet  one of `worksheets`
 * @param raw        an object whose keys end in units; numbers, or text as a person types it
 * @returns          the unrounded outcome, or everything that is wrong with the inputs at once
 */
export const work = (worksheet: AnyWorksheet, raw: unknown): Result<Worked> => {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
    return {
      ok: false,
      refusals: [
        {
          code: 'not-an-object',
          path: '',
          expected: `an object with ${Object.keys(worksheet.inputs).join(', ')}`,
          received: Array.isArray(raw) ? 'a list' : received(raw),
          sentence: 'The inputs must be one JSON object, such as {"temperature_c": 20}.',
        },
      ],
    };
  const gathered = gather(worksheet.inputs as Inputs, raw as Readonly<Record<string, unknown>>);
  if (gathered.refusals.length > 0) return { ok: false, refusals: gathered.refusals };
  const outcome = worksheet.calculate(gathered.given) as Result<Outcome<string>>;
  if (!outcome.ok) return { ok: false, refusals: underKeys(outcome.refusals, gathered.inputs) };
  return accept({ given: gathered.given, inputs: gathered.inputs, usual: gathered.usual, outcome: outcome.value });
};

const rounded = (n: number, decimals: number): number => {
  const r = Number(n.toFixed(decimals));
  return r === 0 ? 0 : r;
};

/** One result as it leaves the house: in the unit of its key, rounded to its decimals. The only place where results are rounded. */
export const resultOut = (value: WorksheetValue, output: Output): WorksheetValue => {
  if (output.type === 'text' || typeof value === 'string') return value;
  const out = (n: number): number => rounded(fromSi(n, output.quantity, output.unit), output.decimals);
  return typeof value === 'number' ? out(value) : value.map(out);
};

/**
 * Works a worksheet through and makes it ready for JSON: the command line, the page behind a figure and the docs show this.
 *
 * @param worksheet  one of `worksheets`
 * @param raw        an object whose keys end in units (`dry_bulb_c`, or any other unit of that quantity: `dry_bulb_f`)
 * @returns          inputs, result, working, sources, cautions; or refusals naming field, what was expected and what came
 */
export const evaluate = (worksheet: AnyWorksheet, raw: unknown): Result<Evaluation> => {
  const worked = work(worksheet, raw);
  if (!worked.ok) return worked;
  const { inputs, usual, outcome } = worked.value;
  const outputs = Object.entries(worksheet.results as Readonly<Record<string, Output>>);
  return accept({
    id: worksheet.id,
    title: worksheet.title,
    inputs,
    result: Object.fromEntries(outputs.map(([key, output]) => [key, resultOut(outcome.result[key] ?? '', output)])),
    working: [...usual, ...outcome.working],
    sources: worksheet.sources,
    cautions: worksheet.cautions,
    limits: worksheet.limits,
    remarks: outcome.remarks ?? [],
  });
};

/** Every unit a number input may be given in, as keys: `dry_bulb_c`, `dry_bulb_f`, `dry_bulb_k`. */
export const keysFor = (declared: string, input: Input): readonly string[] =>
  input.type === 'number' || input.type === 'numbers' ? quantities[input.quantity].units.map((u) => `${declared.slice(0, -input.unit.length)}${u.id}`) : [declared];
