// Days wet and warm, counted by hand on a straight line between readings; the mould model itself is held in science/mould. A reading above what a pin
// meter tells apart is the wettest there is, and must count.
import { describe, expect, it } from 'vitest';
import { day, type Said, stateOf, station, trialRig, typed } from '../trial-logbook';
import { waterOf } from './water';
import type { WetWarm } from './water-types';

const WINDOW = 'curb.window';
const read = (on: string, n: number, celsius: number | undefined, rig_meter?: string): Said => ({
  on,
  kind: 'wood-moisture-pin',
  at: WINDOW,
  side: 'inside',
  body: {
    reading: typed(n, 'moisture-content', 'percent'),
    material: 'softwood',
    ...(celsius === undefined ? {} : { wood_temperature: typed(celsius, 'temperature', 'c') }),
    ...(rig_meter === undefined ? {} : { meter: rig_meter }),
  },
});
const meters = [{ name: 'Knows', scale: 'pin', correction: 'meter-does-it' }] as const;
const rig = trialRig([station(WINDOW, 'window')], { construction: 'hung', meters });
const riskOf = (...said: readonly Said[]): WetWarm | undefined => waterOf(rig, stateOf(rig, said), day('2026-09-01')).leaks[0]?.spots[0]?.risk;

describe('how long a place stood wet and warm', () => {
  it('counts the days between two wet readings, and the wet part of a straight line', () => {
    expect(riskOf(read('2026-06-01', 26, 20), read('2026-06-11', 26, 20))?.days).toBe(10);
    // From 30 % down to 20 % at 20 °C: half of the way lies at or above 25 %.
    expect(riskOf(read('2026-06-01', 30, 20), read('2026-06-21', 20, 20))?.days).toBe(10);
  });

  it('counts wood wetter than the meter tells apart, and a meter that corrects by itself', () => {
    expect(riskOf(read('2026-06-01', 38, 20), read('2026-06-11', 38, 20))).toMatchObject({ days: 10 });
    expect(riskOf(read('2026-06-01', 27, 20, 'Knows'), read('2026-06-11', 27, 20, 'Knows'))).toMatchObject({ days: 10 });
  });

  it('is not told in the cold, over a gap of more than four months, or without the temperature of the wood', () => {
    expect(riskOf(read('2026-06-01', 28, 3), read('2026-06-11', 28, 3))?.days).toBe(0);
    expect(riskOf(read('2026-01-01', 28, 20), read('2026-06-11', 28, 20))).toBeUndefined();
    expect(riskOf(read('2026-06-01', 28, undefined), read('2026-06-11', 28, undefined))).toBeUndefined();
  });

  it('names mould where it was too dry for rot', () => {
    const risk = riskOf(...['2026-05-01', '2026-06-15', '2026-07-30'].map((on) => read(on, 22, 24)));
    expect(risk).toMatchObject({ days: 0 });
    expect(risk?.mould).not.toBe('low');
  });
});
