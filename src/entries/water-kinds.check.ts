import { describe, expect, it } from 'vitest';
import { blankRig, type Rig } from '../rig';
import type { AnyKind, Entry } from '../terms';
import { doubts, kindById, kinds, meter, readBody, readEntry, rigFacts } from '.';

/**
 * What the kinds about water refuse between their fields, and what they ask about. No outside source: which answer
 * belongs to which test follows from what a hose and what soap can show; the usual ranges are ours.
 */
const codes = (id: string, body: unknown): readonly string[] => {
  const kind = kindById(id);
  if (!kind) throw new Error(`there is no kind ${id}`);
  const read = readBody(kind, body);
  return read.ok ? [] : read.refusals.map((r) => `${r.code} ${r.path}`);
};

const percent = (n: number) => ({ typed: String(n), unit: 'percent', si: n / 100 });
const celsius = (n: number) => ({ typed: String(n), unit: 'c', si: n + 273.15 });

describe('a water test', () => {
  it.each([
    ['hose', 'came-in', []],
    ['hose', 'stayed-dry', []],
    ['soap', 'bubbles', []],
    ['soap', 'no-bubbles', []],
    ['hose', 'bubbles', ['result-not-fitting result']],
    ['hose', 'no-bubbles', ['result-not-fitting result']],
    ['soap', 'came-in', ['result-not-fitting result']],
    ['soap', 'stayed-dry', ['result-not-fitting result']],
  ])('by %s with %s', (how, result, expected) => expect(codes('water-test', { how, result })).toEqual(expected));

  it('of two hours is asked about, not refused', () => {
    const kind = kindById('water-test') as AnyKind;
    const body = { how: 'hose', result: 'stayed-dry', ran_for: { typed: '120', unit: 'min', si: 7200 } };
    expect(codes('water-test', body)).toEqual([]);
    expect(doubts(kind, body).map((d) => d.path)).toEqual(['ran_for']);
  });
});

describe('the air it stood in', () => {
  const base = { temperature: celsius(20), relative_humidity: percent(85) };
  const hours = { from: '2026-09-01T00:00:00Z', step_s: 3600, temperature_k: [293, null, 294], relative_humidity: [0.8, null, 0.9] };

  it('takes hours with gaps, and only as many of one as of the other', () => {
    expect(codes('lived-air', { ...base, hours })).toEqual([]);
    expect(codes('lived-air', { ...base, hours: { ...hours, temperature_k: [293, 294] } })).toEqual(['unequal-lengths hours']);
    expect(codes('lived-air', { ...base, hours: { ...hours, from: 'yesterday' } })).toEqual(['no-such-time hours.from']);
    expect(codes('lived-air', { ...base, hours: { ...hours, temperature_k: [null, 293, null], relative_humidity: [0.8, null, 0.9] } })).toEqual(['says-nothing hours']);
    expect(codes('lived-air', { ...base, hours: { ...hours, relative_humidity: [0.8, null, 90] } })).not.toEqual([]);
  });

  it('is not taken for a span that ends before it begins', () => {
    const entry = {
      id: '019960f0-2f00-7000-8000-0000000000ff',
      rig: 'heron',
      kind: 'lived-air',
      version: 1,
      recorded_at: '2027-01-05T12:00:00-05:00',
      by: 'owner',
      device: 'phone',
      counter: 1,
      previous: null,
      heads: [],
      place: { at: 'rig' },
      body: base,
    };
    expect(readEntry(kinds, { ...entry, observed_at: '2026-08-01/2026-09-01' }).ok).toBe(true);
    expect(readEntry(kinds, { ...entry, observed_at: '2026-09-01/2026-08-01' })).toMatchObject({ ok: false, refusals: [{ code: 'no-such-time', path: 'observed_at' }] });
  });
});

describe('when it gets wet', () => {
  it('does not take answers that deny each other, nor none', () => {
    expect(codes('leak-clue', { when: ['wind-from-curb', 'only-parked-rain'] })).toEqual([]);
    expect(codes('leak-clue', { when: ['only-parked-rain', 'only-driving-rain'] })).toEqual(['against-each-other when']);
    expect(codes('leak-clue', { when: ['only-driving-rain', 'dry-weather'] })).toEqual(['against-each-other when']);
    expect(codes('leak-clue', { when: [] })).toEqual(['says-nothing when']);
  });
});

describe('a meter', () => {
  const rows = (...figures: readonly (readonly [string, number, number])[]) => figures.map(([material, shown, corrected]) => ({ material, shown, corrected }));

  it('has a table that rises within each material, of two rows or more', () => {
    expect(codes('meter', { name: 'grey', scale: 'pin', table: rows(['softwood', 0.1, 0.1], ['plywood', 0.1, 0.09], ['softwood', 0.2, 0.2], ['plywood', 0.2, 0.17]) })).toEqual([]);
    expect(codes('meter', { name: 'grey', scale: 'pin', table: rows(['softwood', 0.2, 0.2], ['softwood', 0.1, 0.1]) })).toEqual(['not-rising table.1']);
    expect(codes('meter', { name: 'grey', scale: 'pin', table: rows(['softwood', 0.1, 0.1], ['softwood', 0.1, 0.12]) })).toEqual(['not-rising table.1']);
    expect(codes('meter', { name: 'grey', scale: 'pin', table: rows(['softwood', 0.1, 0.1], ['softwood', 0.2, 0.09]) })).toEqual(['not-rising table.1']);
    expect(codes('meter', { name: 'grey', scale: 'pin', table: rows(['softwood', 0.1, 0.1], ['softwood', 0.2, 0.2], ['plywood', 0.1, 0.1]) })).toEqual(['too-few-rows table']);
  });

  it('on a scale of its own has no table in per cent', () => {
    expect(codes('meter', { name: 'other', scale: 'relative', table: rows(['softwood', 0.1, 0.1], ['softwood', 0.2, 0.2]) })).toEqual(['not-asked table']);
    expect(codes('meter', { name: 'other', scale: 'relative', correction: 'linear' })).toEqual(['not-asked correction']);
  });

  const tell = (rig: Rig, kind: AnyKind<Rig>, body: unknown): Rig => {
    const read = readBody(kind, body);
    if (!read.ok) throw new Error(read.refusals[0]?.sentence);
    return kind.fold.mode === 'describes' ? kind.fold.apply(rig, read.value, { at: 'rig' }, { body } as Entry) : rig;
  };

  it('is described once by its name; what is not given anew stays, unless the scale is another', () => {
    const one = tell(blankRig('heron'), meter, { name: 'grey', scale: 'pin', calibrated_at: celsius(20), table: rows(['softwood', 0.1, 0.1], ['softwood', 0.2, 0.2]) });
    const two = tell(tell(one, meter, { name: 'plate', scale: 'pinless' }), meter, { name: 'grey', scale: 'pin', repeatability: percent(0.5) });
    expect(two.meters.map((m) => m.name)).toEqual(['grey', 'plate']);
    expect(two.meters[0]).toEqual({ name: 'grey', scale: 'pin', calibrated_at_k: 293.15, repeatability: 0.005, table: one.meters[0]?.table });
    expect(tell(two, meter, { name: 'grey', scale: 'relative' }).meters[0]).toEqual({ name: 'grey', scale: 'relative' });
  });

  it('leaves the rest of the rig alone, and the spacing of wall members is a fact of its own', () => {
    const rig = tell(tell(blankRig('heron'), rigFacts, { stud_spacing: { typed: '16', unit: 'in', si: 0.4064 } }), meter, { name: 'grey', scale: 'pin' });
    expect(rig).toEqual({ ...blankRig('heron'), stud_spacing_m: 0.4064, meters: [{ name: 'grey', scale: 'pin' }] });
  });
});

describe('figures typed in the wrong unit', () => {
  it.each([
    ['rain-fell', 'amount', { typed: '12', unit: 'in', si: 0.3048 }],
    ['rig-facts', 'stud_spacing', { typed: '1.6', unit: 'm', si: 1.6 }],
    ['lived-air', 'temperature', { typed: '68', unit: 'c', si: 341.15 }],
    ['air-and-skin', 'skin_temperature', { typed: '61', unit: 'c', si: 334.15 }],
    ['meter', 'calibrated_at', { typed: '68', unit: 'c', si: 341.15 }],
    ['skin-condition', 'skin_temperature', { typed: '95', unit: 'c', si: 368.15 }],
    ['wood-moisture-pin', 'wood_temperature', { typed: '59', unit: 'c', si: 332.15 }],
  ])('%s, %s is asked about', (id, key, value) => {
    const kind = kindById(id) as AnyKind;
    expect(doubts(kind, { [key]: value }).map((d) => d.path)).toEqual([key]);
  });
});
