// The command's words about water, on small invented logbooks: what is said where a yardstick is missing, why a test comes first, and the cautions.
import { describe, expect, it } from 'vitest';
import { planOf } from '../plan';
import { day, type Said, stateOf, station, trialRig, typed } from '../plan/trial-logbook';
import { blankRig, layoutFrom, type Rig } from '../rig';
import { waterText } from './water-text';

const WINDOW = 'curb.window';
const rig = trialRig([station(WINDOW, 'window')], { construction: 'hung' });
const read = (on: string, n: number, kind = 'wood-moisture-pin', more: object = {}): Said => ({
  on,
  kind,
  at: WINDOW,
  side: 'inside',
  body: { reading: typed(n, 'moisture-content', 'percent'), material: 'softwood', ...more },
});
const layout = layoutFrom({ name: 'Trial', kind: 'travel-trailer', skin: 'fibreglass', construction: 'bonded', roof: 'epdm' });
if (!layout.ok) throw new Error('no layout');
const whole: Rig = { ...blankRig('trial'), name: 'Trial', construction: 'bonded', ...layout.value };
const text = (...said: readonly Said[]): string => textOn(rig, said);
const textOn = (rig: Rig, said: readonly Said[]): string =>
  waterText(planOf(rig, stateOf(rig, said), day('2026-08-01')).water, rig, { system: 'us', units: {} }).replace(/\s+/g, ' ');

describe('water in words', () => {
  it('asks for what is missing: dry places or the air for a pin meter; for others nothing but dry places helps', () => {
    expect(text(read('2026-05-03', 18))).toContain('Three places that are surely dry, read with it, or the air it has stood in');
    const pinless = text(read('2026-05-03', 18, 'wood-moisture-pinless'));
    expect(pinless).toContain('without one such a meter says nothing by itself');
    expect(pinless).not.toContain('the bands and the air');
  });

  it('tells mould where it was too dry for rot', () => {
    const warm = { wood_temperature: typed(24, 'temperature', 'c') };
    expect(text(...['2026-05-01', '2026-06-15', '2026-07-30'].map((on) => read(on, 22, 'wood-moisture-pin', warm)))).toContain('Mould by a model');
  });

  it('says what other causes are to be ruled out, and what the next test is worth', () => {
    const window = whole.stations.find((s) => s.looks === 'window' && s.face === 'road');
    const { x_m, y_m } = window?.shape.form === 'rect' ? window.shape : { x_m: 1, y_m: 1 };
    const found = textOn(whole, [{ ...read('2026-05-03', 27), at: { at: 'point', face: 'road', side: 'inside', point_m: [x_m + 0.2, y_m - 0.2] } }]);
    expect(found).toContain('Other causes, to be ruled out first: condensation not looked into');
    expect(found).toMatch(/Test next: .* is expected to tell/);
    expect(found).toMatch(/! .*(skin can be live|rig skin)/);
  });

  it('warns of wires, gas and mould wherever a meter was used', () => {
    expect(text(read('2026-05-03', 9))).toContain('Wires and gas lines run in walls');
    expect(text()).not.toContain('Wires and gas');
  });
});
