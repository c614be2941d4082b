import { describe, expect, it } from 'vitest';
import { blankRig, box, layoutFrom, type Rig, type WaterSpot } from '../../rig';
import { day, type Said, stateOf, typed } from '../trial-logbook';
import { type LeakEvidence, leakEvidence } from './evidence';
import { waterRecord } from './record';

/** What the logbook says of a leak, as things stood when the water showed. What comes of it is held in entry-points.check.ts. */
const layout = layoutFrom({ name: 'Trial', kind: 'travel-trailer', skin: 'fibreglass', construction: 'bonded', roof: 'epdm' });
if (!layout.ok) throw new Error('no layout');
const rig: Rig = { ...blankRig('trial'), name: 'Trial', year: 2018, construction: 'bonded', skin: 'fibreglass', ...layout.value };
const WINDOW = 'road.window-24x22';
const frame = box(rig.stations.find((s) => s.id === WINDOW)?.shape ?? { form: 'rect', x_m: 0, y_m: 0, w_m: 0, h_m: 0 });
const wet: readonly WaterSpot[] = [{ id: 'w', face: 'road', side: 'inside', point_m: [frame.x0 + 0.1, frame.y0 - 0.2] }];

const SHOWED = '2026-05-01';
const gathered = (said: readonly Said[], on = '2026-08-01'): LeakEvidence => leakEvidence(rig, waterRecord(stateOf(rig, said)), day(on), wet, [], day(SHOWED));
const degrees = (n: number) => typed(n, 'angle', 'deg');
const grade = (on: string, g: string, at: Said['at'] = WINDOW): Said => ({ on, kind: 'seal-grade', at, body: { grade: g } });
const resealed = (on: string): Said => ({ on, kind: 'resealed', at: WINDOW, body: { removed: 'all', product_family: 'hybrid' } });
const hosed = (on: string, result: string, more: object = {}): Said => ({ on, kind: 'water-test', at: WINDOW, body: { how: 'hose', result, ...more } });

describe('what speaks for or against a way in', () => {
  it('is nothing for an empty logbook, with no tilt, no test and no seal known', () => {
    expect(gathered([])).toMatchObject({ wet, dry: [], tilts: [], clues: [], tests: [], other_causes: [] });
    expect(gathered([]).seals.size).toBe(0);
    expect(gathered([]).driven_in_rain).toBeUndefined();
  });

  it('takes the tilts of stays before the water showed; of those in which it rained, where rain is recorded', () => {
    const dry: Said = { on: '2026-02-01/2026-02-20', kind: 'stay', body: { place_name: 'A', nose_up: degrees(-2) } };
    const rainy: Said = { on: '2026-03-01/2026-03-20', kind: 'stay', body: { place_name: 'B', nose_up: degrees(1), curb_up: degrees(0.5) } };
    const later: Said = { on: '2026-06-01/2026-06-20', kind: 'stay', body: { place_name: 'C', nose_up: degrees(4) } };
    const shed: Said = { on: '2026-04-01/2026-04-20', kind: 'stay', body: { place_name: 'D', nose_up: degrees(5), cover: 'indoors' } };
    const noses = (said: readonly Said[]) => gathered(said).tilts.map((t) => Math.round((t.nose_up_rad * 180) / Math.PI));
    expect(noses([dry, rainy, later, shed]).toSorted()).toEqual([-2, 1].toSorted());
    expect(noses([dry, rainy, later, shed, { on: '2026-03-10', kind: 'rain-fell', body: { while: 'parked' } }])).toEqual([1]);
  });

  it('knows that it was driven in rain only where somebody recorded it', () => {
    expect(gathered([{ on: '2026-03-10', kind: 'rain-fell', body: { while: 'driving' } }]).driven_in_rain).toBe(true);
    expect(gathered([{ on: '2026-06-10', kind: 'rain-fell', body: { while: 'driving' } }]).driven_in_rain).toBeUndefined();
    // As stays: up to 365 days before, which is the same day a year earlier.
    expect(gathered([{ on: '2025-05-01', kind: 'rain-fell', body: { while: 'driving' } }]).driven_in_rain).toBe(true);
    expect(gathered([{ on: '2025-04-30', kind: 'rain-fell', body: { while: 'driving' } }]).driven_in_rain).toBeUndefined();
  });

  it('takes the latest grade and sealing before the water showed, and grades up to the repair', () => {
    const known = gathered([resealed('2022-05-01'), grade('2021-05-01', 'S4'), grade('2025-05-01', 'S1'), grade('2026-05-03', 'S3')]).seals.get(WINDOW);
    expect(known).toMatchObject({ grade: 'S3', graded: day('2026-05-03'), sealed: day('2022-05-01') });
    const mended = gathered([grade('2026-05-03', 'S3'), resealed('2026-06-01'), grade('2026-06-02', 'S0')]).seals.get(WINDOW);
    expect(mended).toMatchObject({ grade: 'S3' });
    expect(mended?.sealed).toBeUndefined();
  });

  it('takes the worst stretch of a seam', () => {
    const seam = rig.stations.find((s) => s.group === 'seam' && s.face === 'road')?.id ?? '';
    const stretch = (from: number): Said['at'] => ({ at: 'stretch', station: seam, side: 'outside', from_m: from, to_m: from + 1 });
    expect(gathered([grade('2026-04-01', 'S1', stretch(0)), grade('2026-04-01', 'S4', stretch(2)), grade('2026-04-02', 'S2', stretch(4))]).seals.get(seam)?.grade).toBe('S4');
  });

  it('counts tests up to the repair; what was hosed after it proves the repair', () => {
    const said = [hosed('2026-05-10', 'came-in', { kept_dry: true }), resealed('2026-06-01'), hosed('2026-06-03', 'stayed-dry')];
    expect(gathered(said).tests).toMatchObject([{ station: WINDOW, how: 'hose', came_in: true, kept_dry: true }]);
    expect(gathered([hosed('2024-05-10', 'stayed-dry')]).tests).toEqual([]);
    expect(gathered([hosed('2026-04-10', 'came-in')]).tests).toHaveLength(1);
    expect(gathered([hosed('2026-04-10', 'came-in'), resealed('2026-04-12')]).tests).toEqual([]);
    expect(gathered([hosed('2026-09-10', 'stayed-dry')], '2026-08-01').tests).toEqual([]);
  });

  it('hears clues of this water, not of one long before it: up to 90 days before it showed', () => {
    const clue = (on: string): Said => ({ on, kind: 'leak-clue', body: { when: ['pump-on'] } });
    expect(gathered([clue('2026-01-30')]).clues).toEqual([]);
    expect(gathered([clue('2026-01-31')]).clues).toHaveLength(1);
    expect(gathered([clue('2026-07-01')]).clues).toHaveLength(1);
  });

  it('hears clues and other causes of the whole rig and near the wet place, not those of elsewhere', () => {
    const at = (x: number, y: number): Said['at'] => ({ at: 'point', face: 'road', side: 'inside', point_m: [x, y] });
    const clue = (place: Said['at']): Said => ({ on: '2026-05-02', kind: 'leak-clue', ...(place ? { at: place } : {}), body: { when: ['only-driving-rain', 'wind-from-front'] } });
    expect(gathered([clue(undefined)]).clues.map((c) => c.id)).toEqual(['only-driving-rain', 'wind-from-front']);
    expect(gathered([clue(at(frame.x0, frame.y0))]).clues).toHaveLength(2);
    expect(gathered([clue(at(frame.x0 + 5, frame.y0))]).clues).toEqual([]);
    expect(gathered([{ on: '2026-05-02', kind: 'other-cause', body: { cause: 'plumbing', answer: 'ruled-out' } }]).other_causes).toMatchObject([
      { cause: 'plumbing', answer: 'ruled-out' },
    ]);
    expect(gathered([{ on: '2025-05-02', kind: 'other-cause', body: { cause: 'plumbing', answer: 'it-is-this' } }]).other_causes).toEqual([]);
  });
});
