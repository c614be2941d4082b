import { describe, expect, it } from 'vitest';
import { type RigKindId, type StartingLayout, startingLayout } from '../rig';
import type { Station } from '../terms';
import { asksAt, kinds, soundBody } from '.';

/**
 * What a round asks, over every station of every starting layout of this project. No outside source: which question fits
 * which part is common practice, no published source. The budget of taps is the project's own goal.
 */
const RIGS: readonly RigKindId[] = ['travel-trailer', 'fifth-wheel', 'class-a', 'class-b', 'class-c', 'truck-camper', 'folding-camper', 'teardrop'];

const layoutOf = (kind: RigKindId): StartingLayout => {
  const made = startingLayout({ kind, name: 'Heron', skin: 'unknown', construction: 'unknown', roof: 'unknown' });
  if (!made.ok) throw new Error(made.refusals.map((r) => r.sentence).join(' '));
  return made.value;
};

const stations = (kind: RigKindId): readonly Station[] => layoutOf(kind).layout.stations;
const idsAt = (...at: Parameters<typeof asksAt>): readonly string[] => asksAt(...at).asks.map((k) => k.id);

const any = (looks: string): Station => {
  const found = RIGS.flatMap(stations).find((s) => s.looks === looks);
  if (!found) throw new Error(`no starting layout has a station that looks like ${looks}`);
  return found;
};

describe.each(RIGS)('%s', (rig) => {
  it('asks something at every station outside, and signs inside behind it', () => {
    for (const station of stations(rig)) {
      expect(asksAt(station, 'outside').asks.length, station.id).toBeGreaterThan(0);
      expect(idsAt(station, 'inside'), station.id).toEqual(['inside-signs']);
    }
  });

  it('asks nothing twice, and offers nothing to add that it asks', () => {
    for (const station of stations(rig)) {
      const { asks, also } = asksAt(station, 'outside');
      const ids = [...asks, ...also].map((k) => k.id);
      expect(new Set(ids).size).toBe(ids.length);
      expect(ids).toContain('out-of-the-ordinary');
    }
  });

  it('never leaves out a part that is cut through roof or wall', () => {
    for (const station of stations(rig).filter((s) => s.cut_through)) expect(idsAt(station, 'outside').length, station.id).toBeGreaterThan(0);
  });
});

describe('a round', () => {
  it('with nothing wrong takes at most 100 taps at the travel trailer, digits not counted', () => {
    const all = stations('travel-trailer');
    const known = new Set(kinds.filter((k) => k.once).map((k) => k.id));
    const taps = all.reduce((sum, station) => sum + asksAt(station, 'outside', 'full', known).asks.length, 0);
    expect(all.length).toBeGreaterThanOrEqual(75);
    expect(taps).toBeLessThanOrEqual(100);
  });

  it('asks for a sound answer in one tap, or for a number', () => {
    for (const station of RIGS.flatMap(stations))
      for (const kind of asksAt(station, 'outside').asks) expect(soundBody(kind) !== undefined || !kind.repeatable || kind.once === true, `${kind.id} at ${station.id}`).toBe(true);
  });

  it('reaches every kind that a round can ask, at some station of some starting layout', () => {
    const asked = new Set(RIGS.flatMap(stations).flatMap((s) => [...idsAt(s, 'outside'), ...idsAt(s, 'inside')]));
    expect(kinds.filter((k) => k.suits && !asked.has(k.id)).map((k) => k.id)).toEqual([]);
    const added = new Set(RIGS.flatMap(stations).flatMap((s) => [...asksAt(s, 'outside').also, ...asksAt(s, 'inside').also].map((k) => k.id)));
    expect(kinds.filter((k) => k.adds && !added.has(k.id)).map((k) => k.id)).toEqual([]);
  });

  it('asks first what is closest to the part', () => {
    expect(idsAt(any('window'), 'outside')[0]).toBe('seal-grade');
    expect(idsAt(any('lamp'), 'outside')).toEqual(['lamp-condition']);
    expect(idsAt(any('step'), 'outside')).toEqual(['step-condition']);
    expect(idsAt(any('slide-seals'), 'outside')).toEqual(['slide-seal']);
    expect(idsAt(any('awning-arm'), 'outside')).toEqual(['awning-condition']);
    expect(idsAt(any('coupler'), 'outside')).toEqual(['look']);
    expect(idsAt(any('tyre'), 'outside')).toEqual(['tyre-pressure', 'tyre-sidewall', 'tyre-tread', 'tyre-date-code']);
    expect(idsAt(any('tyre'), 'outside', 'full', new Set(['tyre-date-code', 'tyre-pressure']))).toEqual(['tyre-pressure', 'tyre-sidewall', 'tyre-tread']);
    expect(idsAt(any('entry-door'), 'outside')).toContain('latch-condition');
  });

  it('lets a bead be graded wherever there is one, even where something else is asked first', () => {
    const lamp = RIGS.flatMap(stations).find((s) => s.looks === 'lamp' && s.bead === 'top-and-upper-sides') as Station;
    expect(asksAt(lamp, 'outside').also.map((k) => k.id)).toContain('seal-grade');
  });

  it('before a trip stops at tyres, steps, latches, awnings, slides, vents, lamps and hitch, and not at seams', () => {
    for (const looks of ['tyre', 'step', 'entry-door', 'awning-arm', 'slide-seals', 'vent-hatch', 'lamp', 'coupler', 'stabiliser'])
      expect(idsAt(any(looks), 'outside', 'pre-trip').length, looks).toBeGreaterThan(0);
    for (const looks of ['corner-moulding', 'cap-seam', 'skylight']) expect(idsAt(any(looks), 'outside', 'pre-trip'), looks).toEqual([]);
    expect(idsAt(any('tyre'), 'outside', 'pre-trip')).toEqual(['tyre-pressure', 'tyre-sidewall']);
  });
});
