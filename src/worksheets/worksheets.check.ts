import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AnyWorksheet, Input, Output } from '../terms';
import { fromSi, quantities, toSi } from '../units';
import { evaluate, keysFor, work, worksheetById, worksheets } from '.';

/**
 * What every declared calculation must be, whatever it calculates. Numbers are held against published values in
 * checks/agreements.check.ts; here it is the declaration: keys end in their units, limits bite, nothing answers NaN,
 * the working shows the figure that the result gives.
 */
const inputsOf = (w: AnyWorksheet): readonly (readonly [string, Input])[] => Object.entries(w.inputs as Readonly<Record<string, Input>>);
const outputsOf = (w: AnyWorksheet): readonly (readonly [string, Output])[] => Object.entries(w.results as Readonly<Record<string, Output>>);

const TEXTS: Readonly<Record<string, readonly string[]>> = {
  code: ['3416', '317', 'DOT MDHHA51V 3416', '0012', 'x'],
  today: ['2026-05-03', '2026-02-30'],
  size: ['ST225/75R15 117/112N', '8R19.5', '31x10.50R15LT', 'nonsense'],
  service_description: ['117/112N', '121', '135', '155K', '30'],
};

/** Any input a person may give: within limits, or left out where that is allowed. */
const anyInput = ([key, input]: readonly [string, Input]): fc.Arbitrary<unknown> => {
  const given: fc.Arbitrary<unknown> =
    input.type === 'word'
      ? fc.constantFrom(...input.words)
      : input.type === 'text'
        ? fc.constantFrom(...(TEXTS[key] ?? [input.example]))
        : fc.double({ min: input.limits.least ?? -1e6, max: input.limits.most ?? 1e6, noNaN: true }).map((si) => fromSi(si, input.quantity, input.unit));
  return input.otherwise === undefined ? given : fc.option(given, { nil: undefined });
};
const anyInputs = (w: AnyWorksheet): fc.Arbitrary<Readonly<Record<string, unknown>>> => fc.record(Object.fromEntries(inputsOf(w).map((entry) => [entry[0], anyInput(entry)])));

describe.each(worksheets.map((w) => [w.id, w] as const))('%s', (id, worksheet) => {
  it('is found by its id, and says where it comes from and where it holds', () => {
    expect(worksheetById(id)).toBe(worksheet);
    expect(worksheets.filter((w) => w.id === id)).toHaveLength(1);
    expect(worksheet.sources.length).toBeGreaterThan(0);
    expect(worksheet.limits.length).toBeGreaterThan(0);
    for (const sentence of [worksheet.tells, ...worksheet.limits, ...worksheet.cautions]) expect(sentence).toMatch(/^[A-Z0].*[.]$/);
  });

  it('answers its own example', () => expect(evaluate(worksheet, worksheet.example)).toMatchObject({ ok: true }));

  it('has keys that end in their units', () => {
    for (const [key, field] of [...inputsOf(worksheet), ...outputsOf(worksheet)]) {
      if (field.type !== 'number') continue;
      expect(key.endsWith(`_${field.unit}`), key).toBe(true);
      expect(
        quantities[field.quantity].units.some((u) => u.id === field.unit),
        key,
      ).toBe(true);
    }
  });

  it('has usual values within its own limits and words', () => {
    for (const [key, input] of inputsOf(worksheet)) {
      if (input.otherwise === undefined) continue;
      if (input.type === 'word') expect(input.words).toContain(input.otherwise);
      if (input.type === 'number') {
        const si = toSi(input.otherwise, input.quantity, input.unit);
        expect(si, key).toBeGreaterThanOrEqual((input.limits.least ?? -Infinity) - 1e-9);
        expect(si, key).toBeLessThanOrEqual((input.limits.most ?? Infinity) + 1e-9);
      }
    }
  });

  it('answers or refuses, never NaN, and survives JSON', () => {
    fc.assert(
      fc.property(anyInputs(worksheet), (raw) => {
        const evaluated = evaluate(worksheet, raw);
        if (!evaluated.ok) {
          expect(evaluated.refusals.length).toBeGreaterThan(0);
          const known = inputsOf(worksheet).flatMap(([key, input]) => keysFor(key, input));
          for (const r of evaluated.refusals) {
            expect(known, `path of ${r.code}`).toContain(r.path);
            for (const word of [r.code, r.expected, r.received, r.sentence]) expect(word).not.toBe('');
          }
          return;
        }
        expect(Object.keys(evaluated.value.result)).toEqual(outputsOf(worksheet).map(([key]) => key));
        for (const v of Object.values(evaluated.value.result)) {
          if (typeof v === 'number') expect(Number.isFinite(v)).toBe(true);
          else expect(v).not.toBe('');
        }
        expect(evaluated.value.working.length).toBeGreaterThan(0);
        expect(JSON.stringify(evaluated.value)).not.toMatch(/NaN|Infinity|undefined/);
        expect(JSON.parse(JSON.stringify(evaluated.value))).toEqual(evaluated.value);
      }),
      { numRuns: 200 },
    );
  });

  it('gives the same in every unit its inputs may be given in', () => {
    fc.assert(
      fc.property(anyInputs(worksheet), fc.nat(), (raw, pick) => {
        const other = Object.fromEntries(
          inputsOf(worksheet).flatMap(([key, input]) => {
            const value = raw[key];
            if (value === undefined) return [];
            if (input.type !== 'number' || typeof value !== 'number') return [[key, value]];
            const units = quantities[input.quantity].units;
            const unit = units[pick % units.length]?.id ?? input.unit;
            return [[`${key.slice(0, -input.unit.length)}${unit}`, fromSi(toSi(value, input.quantity, input.unit), input.quantity, unit)]];
          }),
        );
        const a = work(worksheet, raw);
        const b = work(worksheet, other);
        expect(b.ok).toBe(a.ok);
        if (!a.ok || !b.ok) return;
        for (const [key, v] of Object.entries(a.value.outcome.result)) {
          const w = b.value.outcome.result[key];
          if (typeof v !== 'number') expect(w).toBe(v);
          // Whole packages may step where a unit's last digit falls on the edge.
          else if (!key.endsWith('_count')) expect(Math.abs(Number(w) - v)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(v)));
        }
      }),
      { numRuns: 100 },
    );
  });

  it('refuses a number just outside each limit, and names the field', () => {
    const [sample] = fc.sample(anyInputs(worksheet), { numRuns: 1, seed: 7 });
    for (const [key, input] of inputsOf(worksheet)) {
      if (input.type !== 'number') continue;
      const { least, most } = input.limits;
      const beyond = [...(least === undefined ? [] : [least - 1e-3 * Math.max(1, Math.abs(least))]), ...(most === undefined ? [] : [most + 1e-3 * Math.max(1, Math.abs(most))])];
      expect(beyond.length, `${key} has a limit`).toBeGreaterThan(0);
      for (const si of beyond) {
        const evaluated = evaluate(worksheet, { ...sample, [key]: fromSi(si, input.quantity, input.unit) });
        expect(evaluated.ok ? [] : evaluated.refusals.map((r) => r.path), `${key} at ${si}`).toContain(key);
      }
    }
  });
});

describe('a bad input', () => {
  const wood = worksheetById('wood-equilibrium-moisture') as AnyWorksheet;
  const codes = (raw: unknown): readonly string[] => {
    const e = evaluate(wood, raw);
    return e.ok ? [] : e.refusals.map((r) => `${r.code} ${r.path}`);
  };

  it('is refused with everything that is wrong at once', () => {
    expect(codes({ temperature_c: 'warm', relative_humidity_percent: 101, colour: 'blue' })).toEqual([
      'unknown-key colour',
      'not-a-number temperature_c',
      'above-limit relative_humidity_percent',
    ]);
    expect(codes({})).toEqual(['missing temperature_c', 'missing relative_humidity_percent']);
    expect(codes({ temperature_c: null, relative_humidity_percent: undefined })).toEqual(['missing temperature_c', 'missing relative_humidity_percent']);
    expect(codes({ temperature_c: [20], relative_humidity_percent: true })).toEqual(['wrong-type temperature_c', 'wrong-type relative_humidity_percent']);
    expect(codes({ temperature_c: Number.NaN, relative_humidity_percent: Number.POSITIVE_INFINITY })).toEqual(['wrong-type temperature_c', 'wrong-type relative_humidity_percent']);
    expect(codes({ temperature_c: 20, temperature_f: 68, relative_humidity_percent: 50 })).toEqual(['given-twice temperature_f']);
    expect(codes({ temperature_k: 293, relative_humidity_psi: 50 })).toEqual(['unknown-key relative_humidity_psi', 'missing relative_humidity_percent']);
  });

  it.each([[null], [undefined], [[]], ['{}'], [5]])('that is no object (%s) is refused', (raw) => expect(codes(raw)).toEqual(['not-an-object ']));

  it('under a name every object has is unknown, not found', () => {
    expect(codes(JSON.parse('{"temperature_c":20,"relative_humidity_percent":50,"__proto__":1,"constructor":2}'))).toEqual(['unknown-key __proto__', 'unknown-key constructor']);
  });

  it('as a person types it is read: decimal comma, spaces, the minus of the screen', () => {
    const e = evaluate(wood, { temperature_c: '21,1', relative_humidity_percent: ' 65 ' });
    expect(e.ok ? e.value.result : e.refusals).toEqual({ moisture_content_percent: 12 });
    expect(e.ok ? e.value.inputs : {}).toEqual({ temperature_c: 21.1, relative_humidity_percent: 65 });
  });

  it('that is left out takes its usual value, and the working says so', () => {
    const e = evaluate(worksheetById('packages-needed') as AnyWorksheet, { section_mm2: 100, length_m: 23.2 });
    expect(e.ok ? e.value.inputs : {}).toEqual({ section_mm2: 100, length_m: 23.2, waste_percent: 15, solids_percent: 100, package_ml: 298.7 });
    expect(e.ok ? e.value.working.filter((s) => s.what.startsWith('Not given')).length : 0).toBe(3);
  });
});
