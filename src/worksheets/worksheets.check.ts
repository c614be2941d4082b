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
  utc: ['2026-06-21T13:30:00Z', '2026-12-21T20:30:00-05:00', '2026-02-30T00:00:00Z', 'noon'],
  day: ['2026-06-21', '2026-12-21', '2026-13-01'],
  from: ['2026-06-21T15:00:00Z', '2026-03-08T02:30:00'],
  to: ['2026-06-21T21:00:00Z', '2026-06-21T09:00:00Z'],
  size: ['ST225/75R15 117/112N', '8R19.5', '31x10.50R15LT', 'nonsense'],
  service_description: ['117/112N', '121', '135', '155K', '30'],
};

/** Ten digits, as fine as any instrument: figures that differ in their last binary digit only are not two figures. */
const asGiven = (n: number): number => (Math.abs(n) < 1e-9 ? 0 : Number(n.toPrecision(10)));
const anyFigure = ({ limits, quantity, unit }: Extract<Input, { type: 'number' | 'numbers' }>): fc.Arbitrary<number> =>
  fc.double({ min: limits.least ?? -1e6, max: limits.most ?? 1e6, noNaN: true }).map((si) => asGiven(fromSi(si, quantity, unit)));

/** Any input a person may give: within limits, or left out where that is allowed. */
const anyInput = ([key, input]: readonly [string, Input], length: number): fc.Arbitrary<unknown> => {
  if (input.type === 'numbers') {
    const n = Math.min(Math.max(length, input.least), input.most);
    const list = fc.array(anyFigure(input), { minLength: n, maxLength: n });
    return input.otherwise === undefined ? list : fc.option(list, { nil: undefined });
  }
  const given: fc.Arbitrary<unknown> =
    input.type === 'word' ? fc.constantFrom(...input.words) : input.type === 'text' ? fc.constantFrom(...(TEXTS[key] ?? [input.example])) : anyFigure(input);
  return input.otherwise === undefined ? given : fc.option(given, { nil: undefined });
};
/** Lists that belong together are of one length, or every answer would be a refusal; sometimes they are not. */
const anyInputs = (w: AnyWorksheet): fc.Arbitrary<Readonly<Record<string, unknown>>> =>
  fc
    .tuple(fc.nat({ max: 12 }), fc.nat({ max: 9 }))
    .chain(([length, odd]) => fc.record(Object.fromEntries(inputsOf(w).map((entry, i) => [entry[0], anyInput(entry, odd === i ? length + 1 : length)]))));

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
      if (field.type !== 'number' && field.type !== 'numbers') continue;
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
            expect(known, `path of ${r.code}`).toContain(r.path.replace(/\[\d+\]$/, ''));
            for (const word of [r.code, r.expected, r.received, r.sentence]) expect(word).not.toBe('');
          }
          return;
        }
        expect(Object.keys(evaluated.value.result)).toEqual(outputsOf(worksheet).map(([key]) => key));
        for (const v of Object.values(evaluated.value.result)) {
          if (typeof v === 'string') expect(v).not.toBe('');
          else for (const n of [v].flat()) expect(Number.isFinite(n)).toBe(true);
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
            if (input.type !== 'number' && input.type !== 'numbers') return [[key, value]];
            const units = quantities[input.quantity].units;
            const unit = units[pick % units.length]?.id ?? input.unit;
            const turned = (n: number): number => fromSi(toSi(n, input.quantity, input.unit), input.quantity, unit);
            return [[`${key.slice(0, -input.unit.length)}${unit}`, Array.isArray(value) ? value.map((n) => turned(Number(n))) : turned(Number(value))]];
          }),
        );
        const a = work(worksheet, raw);
        const b = work(worksheet, other);
        expect(b.ok).toBe(a.ok);
        if (!a.ok || !b.ok) return;
        for (const [key, v] of Object.entries(a.value.outcome.result)) {
          const w = b.value.outcome.result[key];
          if (typeof v === 'string') expect(w).toBe(v);
          // Whole packages may step where a unit's last digit falls on the edge.
          else if (!key.endsWith('_count'))
            for (const [i, n] of [v].flat().entries()) expect(Math.abs(Number([w].flat()[i]) - n)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(n)));
        }
      }),
      { numRuns: 100 },
    );
  });

  it('refuses a number just outside each limit, and names the field', () => {
    const [sample] = fc.sample(anyInputs(worksheet), { numRuns: 1, seed: 7 });
    for (const [key, input] of inputsOf(worksheet)) {
      if (input.type !== 'number' && input.type !== 'numbers') continue;
      const { least, most } = input.limits;
      const beyond = [...(least === undefined ? [] : [least - 1e-3 * Math.max(1, Math.abs(least))]), ...(most === undefined ? [] : [most + 1e-3 * Math.max(1, Math.abs(most))])];
      expect(beyond.length, `${key} has a limit`).toBeGreaterThan(0);
      for (const si of beyond) {
        const figure = fromSi(si, input.quantity, input.unit);
        const list = input.type === 'numbers' ? [...Array<number>(input.least).fill(fromSi(least ?? most ?? 0, input.quantity, input.unit)), figure] : undefined;
        const evaluated = evaluate(worksheet, { ...sample, [key]: list ?? figure });
        const path = list ? `${key}[${list.length - 1}]` : key;
        expect(evaluated.ok ? [] : evaluated.refusals.map((r) => r.path), `${key} at ${si}`).toContain(path);
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

describe('a list of figures', () => {
  const slope = worksheetById('trend-slope') as AnyWorksheet;
  const answer = (raw: unknown): unknown => {
    const e = evaluate(slope, raw);
    return e.ok ? e.value.result : e.refusals.map((r) => `${r.code} ${r.path}`);
  };
  const readings_percent = [31, 28, 24.5, 22, 19.5];
  const times_d = [0, 3, 7, 10, 14];
  const expected = answer({ times_d, readings_percent });

  it('may be an array, or text as a person types it, in any unit of its quantity', () => {
    expect(expected).toMatchObject({ slope_percentday: -0.845 });
    expect(answer({ times_d: '0; 3; 7; 10; 14', readings_percent: '31 28 24,5 22 19,5' })).toEqual(expected);
    expect(answer({ times_h: times_d.map((d) => 24 * d), readings_kgkg: '0.31, 0.28, 0.245, 0.22, 0.195' })).toEqual(expected);
    const e = evaluate(slope, { times_d: '0; 3; 7', readings_percent: [31, '28,5', 24.5] });
    expect(e.ok ? e.value.inputs : e.refusals).toEqual({ times_d: [0, 3, 7], readings_percent: [31, 28.5, 24.5] });
  });

  it('is refused at the figure that is wrong', () => {
    expect(answer({ times_d: [0, 3, 'x', 10, 14], readings_percent })).toEqual(['not-a-number times_d[2]']);
    expect(answer({ times_d, readings_percent: [31, 28, 900, null, 19.5] })).toEqual(['above-limit readings_percent[2]', 'wrong-type readings_percent[3]']);
    expect(answer({ times_d: '0; 3; 7; x; 14', readings_percent })).toEqual(['not-a-number times_d[3]']);
    expect(answer({ times_d: 5, readings_percent })).toEqual(['wrong-type times_d']);
    expect(answer({ times_d: [0], readings_percent })).toEqual(['too-few times_d']);
    expect(answer({ times_d: Array<number>(61).fill(1), readings_percent })).toEqual(['too-many times_d']);
    expect(answer({ times_d: [0, 3, 7], readings_percent })).toEqual(['lengths-differ readings_percent']);
    expect(answer({ times_h: [5, 5, 5, 5, 5], readings_percent })).toEqual(['times-all-equal times_h']);
    expect(answer({ times_d: '61,63', readings_percent })).toEqual(['two-meanings times_d']);
  });
});
