import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EntryEvidence, entryPosterior, testInformation_bit, testPosterior } from '.';

/**
 * Three worked cases of the noisy-OR network and one of a test run through their worksheets (worksheets/cases/leak.jsonl,
 * closed forms; Pearl 1988 from memory, unconfirmed). Here: the same sums counted in another way, by listing every
 * combination as a row of a table without carrying anything along, to within 1e-10; and what must hold of any such ranking.
 */
const value = (e: EntryEvidence) => {
  const result = entryPosterior(e);
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};

/** Every combination as a row, each factor taken straight from the definition. */
const counted = ({ prior, pass, background, wet, likelihoods = [] }: EntryEvidence) => {
  const rows = Array.from({ length: 2 ** prior.length }, (_, bits) => prior.map((__, i) => Math.floor(bits / 2 ** i) % 2 === 1));
  const weigh = (leaks: readonly boolean[]): number => {
    const before = prior.map((p, i) => (leaks[i] ? p : 1 - p));
    const places = wet.map((isWet, j) => {
      const wettened = 1 - pass.reduce((dry, row, i) => dry * (leaks[i] ? 1 - (row[j] ?? 0) : 1), 1 - (background[j] ?? 0));
      return isWet ? wettened : 1 - wettened;
    });
    const tests = likelihoods.map((l) => (leaks[l.source] ? l.if_leaks : l.if_not));
    return [...before, ...places, ...tests].reduce((a, b) => a * b, 1);
  };
  const weights = rows.map(weigh);
  const all = weights.reduce((a, b) => a + b, 0);
  // A source's water missing every wet place is an event of its own: then the places are wet without it.
  const missing = (leaks: readonly boolean[], source: number): number => {
    const rest = leaks.map((l, i) => l && i !== source);
    const before = prior.map((p, i) => (leaks[i] ? p : 1 - p));
    const places = wet.map((isWet, j) => {
      const dryWithoutIt = pass.reduce((dry, row, i) => dry * (rest[i] ? 1 - (row[j] ?? 0) : 1), 1 - (background[j] ?? 0));
      const itMisses = 1 - (pass[source]?.[j] ?? 0);
      return itMisses * (isWet ? 1 - dryWithoutIt : dryWithoutIt);
    });
    const tests = likelihoods.map((l) => (leaks[l.source] ? l.if_leaks : l.if_not));
    return [...before, ...places, ...tests].reduce((a, b) => a * b, 1);
  };
  return {
    evidence: all,
    through: prior.map((_, i) => rows.reduce((sum, row, at) => sum + (row[i] ? (weights[at] ?? 0) - missing(row, i) : 0), 0) / all),
    posterior: prior.map((_, i) => rows.reduce((sum, row, at) => sum + (row[i] ? (weights[at] ?? 0) : 0), 0) / all),
    none: (weights[0] ?? 0) / all,
  };
};

/** Sure ones and impossible ones too. */
const anyChance = fc.oneof({ weight: 8, arbitrary: fc.double({ min: 0.01, max: 0.95, noNaN: true }) }, { weight: 1, arbitrary: fc.constantFrom(0, 1) });
const chance = fc.double({ min: 0.01, max: 0.95, noNaN: true });
const evidence = (sources: { min: number; max: number }, places: { min: number; max: number }): fc.Arbitrary<EntryEvidence> =>
  fc.tuple(fc.integer(sources), fc.integer(places)).chain(([n, m]) =>
    fc.record({
      prior: fc.array(anyChance, { minLength: n, maxLength: n }),
      pass: fc.array(fc.array(fc.oneof(fc.constant(0), chance), { minLength: m, maxLength: m }), { minLength: n, maxLength: n }),
      background: fc.array(chance, { minLength: m, maxLength: m }),
      wet: fc.array(fc.boolean(), { minLength: m, maxLength: m }),
      likelihoods: fc.array(fc.record({ source: fc.integer({ min: 0, max: n - 1 }), if_leaks: chance, if_not: chance }), { maxLength: 4 }),
    }),
  );

describe('ranking of sources', () => {
  it('equals the same sums counted row by row, up to 9 sources and 8 places', () => {
    fc.assert(
      fc.property(evidence({ min: 1, max: 9 }, { min: 0, max: 8 }), (e) => {
        const [ours, theirs] = [value(e), counted(e)];
        expect(Math.abs(ours.evidence / theirs.evidence - 1)).toBeLessThan(1e-10);
        expect(Math.abs(ours.none - theirs.none)).toBeLessThan(1e-10);
        for (const [i, p] of ours.posterior.entries()) expect(Math.abs(p - (theirs.posterior[i] ?? 0))).toBeLessThan(1e-10);
        for (const [i, p] of ours.through.entries()) expect(Math.abs(p - (theirs.through[i] ?? 0))).toBeLessThan(1e-10);
      }),
      { numRuns: 200 },
    );
  });

  it('keeps the prior of a source from which water gets nowhere', () => {
    fc.assert(
      fc.property(evidence({ min: 2, max: 7 }, { min: 1, max: 5 }), (e) => {
        const apart = { ...e, pass: e.pass.map((row, i) => (i === 0 ? row.map(() => 0) : row)), likelihoods: [] };
        expect(value(apart).posterior[0]).toBeCloseTo(apart.prior[0] ?? 0, 10);
        expect(value(apart).through[0]).toBeCloseTo(0, 10);
      }),
    );
  });

  it('is never raised for a lone source by another dry place to which it leads', () => {
    fc.assert(
      fc.property(evidence({ min: 1, max: 1 }, { min: 1, max: 5 }), chance, chance, (e, w, l) => {
        const more = { ...e, pass: e.pass.map((row) => [...row, w]), background: [...e.background, l], wet: [...e.wet, false] };
        expect(value(more).posterior[0]).toBeLessThanOrEqual((value(e).posterior[0] ?? 0) + 1e-12);
      }),
    );
  });

  it('turns against a source by another dry place to which only that one leads, and with one wet place never against the rest', () => {
    fc.assert(
      fc.property(evidence({ min: 2, max: 7 }, { min: 1, max: 5 }), chance, (any, w) => {
        // Two wet places can tie two sources together, each explaining one of them; then the rest may fall as well.
        const e = { ...any, wet: any.wet.map((_, j) => j === 0) };
        const more = { ...e, pass: e.pass.map((row, i) => [...row, i === 0 ? w : 0]), background: [...e.background, 0.02], wet: [...e.wet, false] };
        const [before, after] = [value(e).posterior, value(more).posterior];
        expect(after[0]).toBeLessThanOrEqual((before[0] ?? 0) + 1e-12);
        for (let i = 1; i < before.length; i += 1) expect(after[i]).toBeGreaterThanOrEqual((before[i] ?? 0) - 1e-12);
      }),
    );
  });

  it('takes a test in by exactly Bayes, whatever else is known', () => {
    fc.assert(
      fc.property(evidence({ min: 1, max: 7 }, { min: 0, max: 5 }), chance, chance, fc.boolean(), (e, sensitivity, specificity, positive) => {
        const test = { source: 0, if_leaks: positive ? sensitivity : 1 - sensitivity, if_not: positive ? 1 - specificity : specificity };
        const after = value({ ...e, likelihoods: [...(e.likelihoods ?? []), test] }).posterior[0];
        expect(after).toBeCloseTo(testPosterior(value(e).posterior[0] ?? 0, { sensitivity, specificity }, positive), 10);
      }),
    );
  });

  it('does not depend on the order of sources or of places', () => {
    fc.assert(
      fc.property(evidence({ min: 2, max: 7 }, { min: 2, max: 5 }), (e) => {
        const turned = {
          prior: e.prior.toReversed(),
          pass: e.pass.toReversed().map((row) => row.toReversed()),
          background: e.background.toReversed(),
          wet: e.wet.toReversed(),
          likelihoods: (e.likelihoods ?? []).map((l) => ({ ...l, source: e.prior.length - 1 - l.source })),
        };
        for (const [i, p] of value(turned).posterior.toReversed().entries()) expect(p).toBeCloseTo(value(e).posterior[i] ?? 0, 10);
      }),
    );
  });

  it('answers for eighteen sources and twelve wet places, and for none at all', () => {
    const prior = Array.from({ length: 18 }, (_, i) => 0.02 + 0.01 * i);
    const pass = prior.map((_, i) => Array.from({ length: 12 }, (__, j) => ((i * 7 + j * 3) % 10) / 11));
    const many = value({ prior, pass, background: new Array(12).fill(0.02), wet: new Array(12).fill(true) });
    for (const p of many.posterior) expect(p).toBeGreaterThan(0);
    expect(value({ prior: [], pass: [], background: [], wet: [] })).toEqual({ evidence: 1, posterior: [], through: [], none: 1 });
    expect(value({ prior: [], pass: [], background: [0.1, 0.2], wet: [true, false] })).toEqual({
      evidence: expect.closeTo(0.08, 12),
      posterior: [],
      through: [],
      none: expect.closeTo(1, 12),
    });
  });

  it('refuses what it cannot answer', () => {
    const codes = (e: EntryEvidence) => {
      const r = entryPosterior(e);
      return r.ok ? 'answered' : r.refusals.map((x) => `${x.code} ${x.path}`).join('; ');
    };
    const one = { prior: [0.1], pass: [[0.5]], background: [0.1], wet: [true] };
    expect(codes(one)).toBe('answered');
    expect(codes({ ...one, prior: [1.2] })).toBe('not-a-probability prior');
    expect(codes({ ...one, prior: [Number.NaN] })).toBe('not-a-probability prior');
    expect(codes({ ...one, pass: [[-0.1]] })).toBe('not-a-probability pass');
    expect(codes({ ...one, pass: [] })).toBe('wrong-length pass');
    expect(codes({ ...one, pass: [[0.5, 0.5]] })).toBe('wrong-length pass');
    expect(codes({ ...one, background: [] })).toBe('wrong-length background');
    expect(codes({ ...one, likelihoods: [{ source: 3, if_leaks: 0.5, if_not: 0.5 }] })).toBe('wrong-length likelihoods');
    expect(codes({ ...one, pass: [[0]], background: [0] })).toBe('impossible-evidence wet');
    expect(codes({ prior: new Array(19).fill(0.1), pass: new Array(19).fill([0.5]), background: [0.1], wet: [true] })).toBe('outside-validity prior');
  });
});

describe('a water test', () => {
  it('is expected to tell what the fall of entropy through Bayes comes to', () => {
    const entropy = (p: number): number => (p <= 0 || p >= 1 ? 0 : -p * Math.log2(p) - (1 - p) * Math.log2(1 - p));
    fc.assert(
      fc.property(chance, chance, chance, (p, sensitivity, specificity) => {
        const test = { sensitivity, specificity };
        const positive = p * sensitivity + (1 - p) * (1 - specificity);
        const left = positive * entropy(testPosterior(p, test, true)) + (1 - positive) * entropy(testPosterior(p, test, false));
        expect(testInformation_bit(p, test)).toBeCloseTo(entropy(p) - left, 12);
      }),
    );
  });

  it('tells nothing when it is as likely to speak up either way, and all when it never errs', () => {
    expect(testInformation_bit(0.4, { sensitivity: 0.3, specificity: 0.7 })).toBeCloseTo(0, 12);
    expect(testInformation_bit(0.5, { sensitivity: 1, specificity: 1 })).toBe(1);
    expect(testInformation_bit(0, { sensitivity: 0.9, specificity: 0.97 })).toBe(0);
    expect(testInformation_bit(1, { sensitivity: 0.9, specificity: 0.97 })).toBe(0);
    expect(testPosterior(0, { sensitivity: 0.9, specificity: 1 }, true)).toBe(0);
  });
});
