import type { Input, Step, WorksheetValue } from '../terms';
import { accept, fromSi, itemPath, outsideLimits, type Refusal, type Result, readQuantities, readQuantity, showIn, toSi } from '../units';
import type { Key } from './keys';

/** One input as it was given and as the calculation gets it. */
export type Got = { readonly key: string; readonly shown: WorksheetValue; readonly si: WorksheetValue };

type NumberInput = Extract<Input, { type: 'number' }>;
type NumbersInput = Extract<Input, { type: 'numbers' }>;

export const received = (value: unknown): string =>
  value === undefined ? 'nothing' : typeof value === 'string' ? `“${value}”` : (JSON.stringify(value)?.slice(0, 60) ?? typeof value);

const wrongType = (path: string, expected: string, value: unknown): Refusal => ({
  code: 'wrong-type',
  path,
  expected,
  received: received(value),
  sentence: `${path} must be ${expected}, but ${received(value)} came.`,
});

type Figure = { readonly shown: number; readonly si: number };

const readFigure = (path: string, unit: string, { quantity, limits }: NumberInput | NumbersInput, value: unknown): Result<Figure> => {
  if (typeof value === 'string') {
    const typed = readQuantity(value, quantity, unit, limits, path);
    return typed.ok ? accept({ shown: Number(value.replace(',', '.')) || fromSi(typed.value.si, quantity, unit), si: typed.value.si }) : typed;
  }
  if (typeof value !== 'number' || !Number.isFinite(value)) return { ok: false, refusals: [wrongType(path, `a number in ${unit}`, value)] };
  const si = toSi(value, quantity, unit);
  const outside = outsideLimits(si, quantity, unit, limits, path, String(value));
  return outside ? { ok: false, refusals: [outside] } : accept({ shown: value + 0, si });
};

const readNumber = (key: Key, input: NumberInput, value: unknown): Result<Got> => {
  const read = readFigure(key.given, key.unit, input, value);
  return read.ok ? accept({ key: key.given, ...read.value }) : read;
};

/** How many figures a list may hold, in words. */
export const howMany = ({ least, most }: NumbersInput): string => (least === most ? `${least} figures` : `${least} to ${most} figures`);

const wrongCount = (path: string, input: NumbersInput, n: number): Refusal => {
  const few = n < input.least;
  return {
    code: few ? 'too-few' : 'too-many',
    path,
    expected: howMany(input),
    received: `${n} ${n === 1 ? 'figure' : 'figures'}`,
    sentence: `${path} needs ${howMany(input)}, but ${n} ${n === 1 ? 'is' : 'are'} given.`,
  };
};

/** Every figure of a list, from text or from an array whose items may themselves be typed. */
const figuresOf = (key: Key, input: NumbersInput, value: unknown): Result<readonly Figure[]> => {
  if (typeof value === 'string') {
    const typed = readQuantities(value, input.quantity, key.unit, input.limits, key.given);
    return typed.ok ? accept(typed.value.map((t) => ({ shown: Number(t.typed.replace(',', '.')) || fromSi(t.si, input.quantity, key.unit), si: t.si }))) : typed;
  }
  if (!Array.isArray(value)) return { ok: false, refusals: [wrongType(key.given, `a list of numbers in ${key.unit}`, value)] };
  const read = value.map((item: unknown, i) => readFigure(itemPath(key.given, i), key.unit, input, item));
  const refusals = read.flatMap((r) => (r.ok ? [] : r.refusals));
  return refusals.length > 0 ? { ok: false, refusals } : accept(read.flatMap((r) => (r.ok ? [r.value] : [])));
};

const readNumbers = (key: Key, input: NumbersInput, value: unknown): Result<Got> => {
  const read = figuresOf(key, input, value);
  if (!read.ok) return read;
  const n = read.value.length;
  if (n < input.least || n > input.most) return { ok: false, refusals: [wrongCount(key.given, input, n)] };
  return accept({ key: key.given, shown: read.value.map((f) => f.shown), si: read.value.map((f) => f.si) });
};

/** Reads one input: a figure or a list as a program or a person gives it, a word, or text. */
export const readInput = (key: Key, input: Input, value: unknown): Result<Got> => {
  if (input.type === 'number') return readNumber(key, input, value);
  if (input.type === 'numbers') return readNumbers(key, input, value);
  if (typeof value !== 'string')
    return { ok: false, refusals: [wrongType(key.given, input.type === 'word' ? `one of ${input.words.join(', ')}` : `text, such as “${input.example}”`, value)] };
  if (input.type === 'word' && !input.words.includes(value))
    return {
      ok: false,
      refusals: [
        {
          code: 'unknown-word',
          path: key.given,
          expected: `one of ${input.words.join(', ')}`,
          received: received(value),
          sentence: `${received(value)} is not known here. Choose one of ${input.words.join(', ')}.`,
        },
      ],
    };
  if (value.trim() === '')
    return { ok: false, refusals: [{ code: 'missing', path: key.given, expected: input.meaning, received: 'nothing', sentence: `${key.given} is empty: ${input.meaning}.` }] };
  return accept({ key: key.given, shown: value, si: value });
};

type Usual = { readonly si: WorksheetValue; readonly gives: string };

const usualOf = (input: Input): Usual | undefined => {
  if (input.otherwise === undefined) return undefined;
  if (input.type === 'number') {
    const si = toSi(input.otherwise, input.quantity, input.unit);
    return { si, gives: showIn(si, input.quantity, input.unit) };
  }
  if (input.type === 'numbers') {
    const si = input.otherwise.map((n) => toSi(n, input.quantity, input.unit));
    return { si, gives: si.map((n) => showIn(n, input.quantity, input.unit)).join('; ') };
  }
  return { si: input.otherwise, gives: input.otherwise };
};

const asText = (value: WorksheetValue): string => (typeof value === 'object' ? value.join('; ') : String(value));

/** The usual value of an input that was left out, and a line of working that says so. */
export const usualValue = (declared: string, input: Input): { readonly got: Got; readonly step: Step } | undefined => {
  const usual = usualOf(input);
  if (usual === undefined || input.otherwise === undefined) return undefined;
  return {
    got: { key: declared, shown: input.otherwise, si: usual.si },
    step: { what: `Not given, so the usual value is taken: ${input.meaning}`, formula: declared, numbers: asText(input.otherwise), gives: usual.gives },
  };
};

const wanted = (input: Input): string => {
  if (input.type === 'number') return `a number in ${input.unit}: ${input.meaning}`;
  if (input.type === 'numbers') return `${howMany(input)} in ${input.unit}: ${input.meaning}`;
  return input.type === 'word' ? `one of ${input.words.join(', ')}` : `text, such as “${input.example}”`;
};

export const missing = (declared: string, input: Input): Refusal => ({
  code: 'missing',
  path: declared,
  expected: wanted(input),
  received: 'nothing',
  sentence: `${declared} is missing: ${input.meaning}.`,
});
