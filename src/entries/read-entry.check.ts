import { describe, expect, it } from 'vitest';
import { readLine } from '../logbook';
import type { Entry } from '../terms';
import { checkEntry, kinds, readBody, readEntry, sealGrade, tyreDateCode, tyrePressure, upcast } from '.';

/**
 * Whole entries from files: what is refused, what is kept unjudged, and that each refusal says where and what.
 * No outside source; the date codes of weeks 00, 53 and 54 follow the rule that the tyre room checks against its own.
 */
const entry = (over: Partial<Record<keyof Entry, unknown>>): Record<string, unknown> => ({
  id: '019960f0-2f00-7000-8000-0000000000ff',
  rig: 'heron',
  kind: 'seal-grade',
  version: 2,
  observed_at: '2026-09-19T10:12:00-04:00',
  recorded_at: '2026-09-19T10:12:05-04:00',
  by: 'owner',
  device: 'phone',
  counter: 1,
  previous: null,
  heads: [],
  place: { at: 'station', station: 'roof.skylight', side: 'outside' },
  body: { grade: 'S1' },
  ...over,
});

const refused = (value: unknown): readonly string[] => {
  const read = readEntry(kinds, value);
  return read.ok ? [] : read.refusals.map((r) => `${r.path}: ${r.code}`);
};

describe('a whole entry', () => {
  it('is read with its kind and body', () => {
    const read = readEntry(kinds, entry({}));
    expect(read.ok && read.value.kind?.id).toBe('seal-grade');
    expect(read.ok && read.value.body).toEqual({ grade: 'S1' });
  });

  it('of a kind or version that is not known here is kept and not judged', () => {
    for (const over of [
      { kind: 'from-the-future', body: { anything: 1 } },
      { version: 99, body: { anything: 1 } },
    ]) {
      const read = readEntry(kinds, entry(over));
      expect(read.ok && read.value.kind).toBeUndefined();
      expect(read.ok && read.value.body).toEqual({ anything: 1 });
    }
  });

  it('says everything that is wrong at once, and where', () => {
    expect(refused(entry({ place: { at: 'rig' }, body: { grade: 'S0', defects: ['edge-lifts'] } }))).toEqual(['place.at: place-not-fitting', 'body.defects: not-asked']);
    expect(refused(entry({ place: { at: 'station', station: 'roof.skylight', side: 'inside' } }))).toEqual(['place.side: side-not-fitting']);
    expect(refused(entry({ place: { at: 'stretch', station: 'curb.roof-edge-rail', side: 'outside', from_m: 2, to_m: 1 } }))).toEqual(['place.to_m: empty-stretch']);
    expect(refused(entry({ kind: 'withdrawal', version: 1, body: {}, place: { at: 'rig' } }))).toEqual(['concerns: concerns-not-fitting']);
    expect(refused(entry({ observed_at: '2026-13-01' }))).toEqual(['observed_at: no-such-time']);
    expect(refused(undefined)).toHaveLength(1);
    expect(refused('text')).toHaveLength(1);
  });

  it('has one sentence for people in every refusal', () => {
    const read = readEntry(kinds, entry({ counter: -3, previous: 'x', body: {} }));
    expect(read.ok).toBe(false);
    if (!read.ok) for (const r of read.refusals) expect(r.sentence).toMatch(/^[A-Z“].*\.$/s);
  });

  it('is judged the same when the logbook has read its envelope', () => {
    for (const value of [entry({}), entry({ body: { grade: 'S9' } }), entry({ place: { at: 'rig' } }), entry({ kind: 'unheard-of' })]) {
      const line = readLine(JSON.stringify(value), checkEntry);
      expect(line.ok).toBe(readEntry(kinds, value).ok);
    }
  });
});

describe('numbers in a file', () => {
  const psi = 6894.757293168361;
  it('whose SI value and typed figure disagree are refused, by a digit or by a unit', () => {
    for (const si of [450 * psi, 450_001, -450_000, 0]) expect(readBody(tyrePressure, { pressure: { typed: '450', unit: 'kpa', si } }).ok).toBe(false);
    expect(readBody(tyrePressure, { pressure: { typed: '450', unit: 'kpa', si: 450_000 } }).ok).toBe(true);
  });
});

describe('date codes in a file', () => {
  const code = (text: string, recorded_at = '2026-09-19T10:12:05-04:00') =>
    refused(
      entry({ kind: 'tyre-date-code', version: 1, recorded_at, observed_at: recorded_at, body: { code: text }, place: { at: 'station', station: 'road.tyre', side: 'outside' } }),
    );
  it('of weeks 00 and 54, and from the future, are refused', () => {
    expect(code('2319')).toEqual([]);
    for (const bad of ['0019', '5419', '5319']) expect(code(bad), bad).toEqual([expect.stringContaining('body.code')]);
    expect(code('4026')).toEqual(['body.code: future-date-code']);
    expect(code('4026', '2027-01-05T10:00:00-05:00')).toEqual([]);
  });
  it('are read without a day as well, when nobody can say which', () => {
    expect(readBody(tyreDateCode, { code: '4026' }).ok).toBe(true);
  });
});

describe('older versions', () => {
  it('a bare number becomes a step of the scale', () => {
    expect(upcast(sealGrade, 1, { grade: 4, defects: ['edge-lifts'] })).toEqual({ grade: 'S4', defects: ['edge-lifts'] });
    expect(readBody(sealGrade, upcast(sealGrade, 1, { grade: 9 })).ok).toBe(false);
  });
  it('“not driven” of version 1 is not taken for certainty', () => {
    const pressure = { typed: '64', unit: 'psi', si: 64 * 6894.757293168361 };
    expect(upcast(tyrePressure, 1, { pressure, driven: true })).toEqual({ pressure, driven_since_set: 'yes' });
    expect(upcast(tyrePressure, 1, { pressure, driven: false })).toEqual({ pressure, driven_since_set: 'not-known' });
    expect(upcast(tyrePressure, 1, { pressure })).toEqual({ pressure });
  });
});

describe('hostile fields', () => {
  it('named like what every object has are refused like any other', () => {
    for (const text of ['{"grade":"S1","__proto__":{"defects":[]}}', '{"grade":"S1","constructor":1}', '{"grade":"S1","toString":1}', '{"__proto__":{"grade":"S1"}}'])
      expect(readBody(sealGrade, JSON.parse(text)).ok, text).toBe(false);
  });
});
