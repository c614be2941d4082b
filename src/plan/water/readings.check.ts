// Readings made comparable. Against the rule of a resistance-meter manual worked by hand (half a point for every 5 °C from 20 °C), a meter's
// table read between its rows, and the wood handbook's table 4-2 for air (70 °F, 85 %: 17.9 %). What gives no number follows the rules as written.
import { describe, expect, it } from 'vitest';
import type { Rig } from '../../rig';
import { day, linesOf, type Said, stateOf, station, trialRig, typed } from '../trial-logbook';
import { comparable } from './readings';
import { waterOf } from './water';
import type { Comparable } from './water-types';

const percent = (n: number) => typed(n, 'moisture-content', 'percent');
const celsius = (n: number) => typed(n, 'temperature', 'c');
const curb = {
  id: 'curb',
  name: 'Curb side',
  outline_m: [
    [0, 0.4],
    [6, 0.4],
    [6, 2.6],
    [0, 2.6],
  ],
  x_axis: 'from the front',
  y_axis: 'from the ground',
  inside_name: 'wall',
} as const;
const meters = [
  {
    name: 'Grey',
    scale: 'pin',
    calibrated_at_k: 293.15,
    table: [
      { material: 'plywood', shown: 0.1, corrected: 0.09 },
      { material: 'plywood', shown: 0.2, corrected: 0.17 },
    ],
  },
  { name: 'Steep', scale: 'pin', correction: 'pfaff-garrahan' },
  { name: 'Knows', scale: 'pin', correction: 'meter-does-it', repeatability: 0.02 },
] as const;
const rig: Rig = trialRig([station('curb.window', 'window')], { faces: [curb], meters });

const read = (kind: string, body: Record<string, unknown>, point_m: readonly [number, number] = [1, 1]): Comparable => {
  const said: Said = { on: '2026-05-03', kind, at: { at: 'point', face: 'curb', side: 'inside', point_m }, body };
  const state = stateOf(rig, [said]);
  const [entry] = linesOf([said]);
  const found = comparable([...state.standing.values()].find((s) => s.entry.id === entry?.entry.id) as never, rig);
  if (!found) throw new Error('a place on the rig');
  return found;
};
const pin = (body: Record<string, unknown>) => read('wood-moisture-pin', body);
const value = (c: Comparable): number => Number(((c.value ?? Number.NaN) * 100).toFixed(3));

describe('a meter without pins', () => {
  const skinned: Rig = { ...rig, skin: 'corrugated-aluminium' };
  const state = (kind: string, side: 'inside' | 'outside') => {
    const said: Said = { on: '2026-05-03', kind, at: { at: 'point', face: 'curb', side, point_m: [1, 1] }, body: { reading: percent(40) } };
    return waterOf(skinned, stateOf(skinned, [said]), day('2026-05-04')).panels[0]?.spots[0]?.readings[0]?.no_number;
  };

  it('gives no number through a metal skin from outside, and one from inside', () => {
    expect(state('wood-moisture-pinless', 'outside')).toBe('no-wood');
    expect(state('wood-moisture-pinless', 'inside')).toBeUndefined();
  });
});

describe('a pin reading', () => {
  it('is brought to calibration temperature by the simple rule of meter manuals: 15 % at 10 °C is 16 %, at 30 °C 14 %', () => {
    expect(value(pin({ reading: percent(15), wood_temperature: celsius(10), material: 'softwood' }))).toBe(16);
    expect(value(pin({ reading: percent(15), wood_temperature: celsius(30), material: 'softwood' }))).toBe(14);
  });

  it('takes the kind of wood first, by the meter’s own table between its rows, then the temperature; what was worked keeps that order', () => {
    const c = pin({ reading: percent(15), wood_temperature: celsius(10), material: 'plywood', meter: 'Grey' });
    expect(value(c)).toBe(14);
    expect(c.worked?.inputs).toMatchObject({ reading_percent: expect.closeTo(13, 6), wood_temperature_c: 10, calibrated_at_c: 20 });
  });

  it('is never read beyond the table’s rows, nor by the table of another material: both are said', () => {
    const beyond = pin({ reading: percent(25), material: 'plywood', meter: 'Grey', wood_temperature: celsius(20) });
    expect([value(beyond), beyond.remark]).toEqual([25, 'The table of Grey does not reach this figure: it stands as shown.']);
    expect(pin({ reading: percent(15), material: 'hardwood', meter: 'grey', wood_temperature: celsius(20) }).remark).toContain('has no hardwood');
  });

  it('follows the rule that its owner chose, and none where the meter does it itself', () => {
    expect(value(pin({ reading: percent(15), wood_temperature: celsius(10), meter: 'Steep', material: 'softwood' }))).not.toBe(16);
    const knows = pin({ reading: percent(15), wood_temperature: celsius(10), meter: 'Knows', material: 'softwood' });
    expect([value(knows), knows.plus_minus]).toEqual([15, 0.02]);
  });

  it('says that it could not be corrected where nobody took the temperature of the wood', () => {
    expect(pin({ reading: percent(15), material: 'softwood' }).remark).toContain('that of the wood was not taken');
  });

  it('gives no number when frozen, wet on its surface or without wood behind, whatever it shows', () => {
    expect(pin({ reading: percent(12), wood_temperature: celsius(-1) })).toMatchObject({ value: undefined, no_number: 'frozen' });
    expect(pin({ reading: percent(12), surface: 'frozen' }).no_number).toBe('frozen');
    expect(pin({ reading: percent(28), surface: 'wet' }).no_number).toBe('surface-wet');
    for (const material of ['foam', 'metal', 'no-wood']) expect(pin({ reading: percent(28), material }).no_number, material).toBe('no-wood');
  });

  it('above fibre saturation stands as read and says only wet; below 7 % only dry', () => {
    expect(pin({ reading: percent(34), wood_temperature: celsius(10), material: 'softwood' })).toMatchObject({ value: 0.34, no_number: 'beyond-meter' });
    expect(pin({ reading: percent(5), material: 'softwood' }).no_number).toBe('beyond-meter');
  });
});

describe('the three scales', () => {
  it('are never one panel, and a pinless or relative figure is not corrected for temperature nor banded', () => {
    const at = { at: 'point', face: 'curb', side: 'inside', point_m: [1, 1] } as const;
    const said: readonly Said[] = [
      { on: '2026-05-03', kind: 'wood-moisture-pin', at, body: { reading: percent(22), material: 'softwood' } },
      { on: '2026-05-03', kind: 'wood-moisture-pinless', at, body: { reading: percent(22), material: 'softwood' } },
      { on: '2026-05-03', kind: 'moisture-relative', at, body: { reading: typed(80, 'relative-scale', 'points') } },
    ];
    const { panels, set_aside } = waterOf(rig, stateOf(rig, said), day('2026-05-04'));
    expect(panels.map((p) => [p.scale, p.spots.length])).toEqual([
      ['pin', 1],
      ['pinless', 1],
      ['relative', 1],
    ]);
    expect(panels.map((p) => p.spots[0]?.state)).toEqual(['wet', 'not-known', 'not-known']);
    expect(panels[2]?.spots[0]?.readings[0]?.as_read).toBe(0.8);
    expect(set_aside.map((b) => b.text)).toEqual(['One place was read with two meters or on two scales: those are two courses, and never put on one line.']);
  });

  it('two meters at one place are two courses', () => {
    const at = { at: 'point', face: 'curb', side: 'inside', point_m: [1, 1] } as const;
    const one = (on: string, meter: string, n: number): Said => ({ on, kind: 'wood-moisture-pin', at, body: { reading: percent(n), material: 'softwood', meter } });
    const { panels } = waterOf(rig, stateOf(rig, [one('2026-05-03', 'Grey', 22), one('2026-05-10', 'Knows', 16), one('2026-05-17', 'Grey', 21)]), day('2026-05-18'));
    expect(panels.map((p) => [p.meter, p.spots[0]?.readings.length])).toEqual([
      ['Grey', 2],
      ['Knows', 1],
    ]);
  });
});

describe('a reading off its panel', () => {
  it('is judged by itself, told, and kept from the map and from the ways in', () => {
    const c = read('wood-moisture-pin', { reading: percent(26), material: 'softwood' }, [9, 1]);
    expect(c).toMatchObject({ off_panel: true, value: 0.26 });
    const said: Said = {
      on: '2026-05-03',
      kind: 'wood-moisture-pin',
      at: { at: 'point', face: 'curb', side: 'inside', point_m: [9, 1] },
      body: { reading: percent(26), material: 'softwood' },
    };
    const water = waterOf(rig, stateOf(rig, [said]), day('2026-05-04'));
    expect(water.set_aside[0]?.text).toMatch(/^A reading lies outside the face as it is drawn/);
    expect(water.leaks[0]?.sentence).toMatch(/^What is wet lies outside its face as that is drawn/);
    expect(water.leaks[0]?.candidates).toEqual([]);
  });
});
