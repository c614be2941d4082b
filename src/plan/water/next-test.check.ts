import { describe, expect, it } from 'vitest';
import { blankRig, box, layoutFrom, type Rig, type WaterSpot } from '../../rig';
import { testInformation_bit } from '../../science';
import type { Station } from '../../terms';
import { dayOf } from '../../units';
import { caution } from '../trade';
import { rankEntryPoints } from './entry-points';
import type { LeakEvidence } from './evidence';
import { nextTest } from './next-test';
import { footOf, wets } from './run-off';
import { stepsFor } from './test-steps';
import { TESTS, type TestDone } from './water-tests';
import type { WaterTest } from './water-types';

/**
 * The order of a hose test, from the lowest suspect upward with what lies above kept dry, is the practice of building leak
 * tests (AAMA 501.2, ASTM E2128; from memory, unconfirmed). That a test tells as much as its fall of entropy is held in
 * science/leak; here that the proposed one may be done at all, and that no other that may be done tells more for a minute.
 */
const layout = layoutFrom({ name: 'Trial', kind: 'travel-trailer', skin: 'fibreglass', construction: 'bonded', roof: 'epdm' });
if (!layout.ok) throw new Error('no layout');
const rig: Rig = { ...blankRig('trial'), name: 'Trial', year: 2018, construction: 'bonded', skin: 'fibreglass', ...layout.value };
const find = (id: string): Station => {
  const station = rig.stations.find((s) => s.id === id);
  if (!station) throw new Error(`no ${id}`);
  return station;
};
const WINDOW = 'road.window-24x22';
const DOOR_BELOW = 'road.baggage-door-14x30';
const frame = box(find(WINDOW).shape);
const spot = (id: string, x: number, y: number, face = 'road'): WaterSpot => ({ id, face, side: 'inside', point_m: [x, y] });

const evidence = (more: Partial<LeakEvidence> = {}): LeakEvidence => ({
  rig,
  on: dayOf(2026, 5, 1),
  wet: [spot('w1', frame.x0 + 0.1, frame.y0 - 0.1), spot('w2', frame.x0 + 0.15, frame.y0 - 0.4)],
  dry: [],
  tilts: [{ nose_up_rad: 0, curb_up_rad: 0 }],
  driven_in_rain: false,
  clues: [],
  seals: new Map([[WINDOW, { grade: 'S4', graded: dayOf(2026, 4, 20), entries: ['g'] }]]),
  tests: [],
  ...more,
});
const proposed = (e: LeakEvidence): WaterTest | undefined => nextTest(e, rankEntryPoints(e));
const hosed = (station: string, came_in: boolean): TestDone => ({ entry: `${station} ${came_in}`, station, how: 'hose', came_in, kept_dry: true });

describe('the next water test', () => {
  it('is admissible: nothing that it would wet below is still a suspect', () => {
    let tests: readonly TestDone[] = [];
    for (let i = 0; i < 8; i += 1) {
      const e = evidence({ tests });
      const ranking = rankEntryPoints(e);
      const test = nextTest(e, ranking);
      if (test === undefined) break;
      expect(tests.some((t) => t.station === test.station && t.how === test.how)).toBe(false);
      const chance = ranking.candidates.find((x) => x.station === test.station)?.probability ?? 0;
      if (test.how === 'hose')
        for (const c of ranking.candidates.filter((x) => x.probability >= Math.max(0.05, 0.1 * chance) && wets(rig, find(test.station), find(x.station))))
          expect(
            tests.some((t) => t.station === c.station && t.how === 'hose' && !t.came_in),
            `${c.station} below ${test.station}`,
          ).toBe(true);
      tests = [...tests, { ...hosed(test.station, false), how: test.how }];
    }
    expect(tests.length).toBeGreaterThan(2);
  });

  it('takes the lower opening first when water played on the likelier one would run over it', () => {
    expect(wets(rig, find(WINDOW), find(DOOR_BELOW))).toBe(true);
    expect(wets(rig, find(DOOR_BELOW), find(WINDOW))).toBe(false);
    const low = { wet: [spot('w1', frame.x0 + 0.1, frame.y0 - 0.2), spot('w2', 0.6, 0.55)] };
    const e = evidence({ ...low, seals: new Map([WINDOW, DOOR_BELOW].map((s) => [s, { grade: 'S4' as const, graded: dayOf(2026, 4, 20), entries: [] }])) });
    // The corner beside them reaches lowest of all; it was hosed already.
    const corner = hosed('road.corner-moulding', false);
    const first = proposed({ ...e, tests: [corner] });
    expect(first).toMatchObject({ station: DOOR_BELOW, how: 'hose' });
    expect(first?.keep_dry).toContain(WINDOW);
    const order = [DOOR_BELOW];
    for (let next = proposed({ ...e, tests: [corner, hosed(DOOR_BELOW, false)] }); next && order.at(-1) !== WINDOW; ) {
      order.push(next.station);
      next = proposed({ ...e, tests: [corner, ...order.map((s) => hosed(s, false))] });
    }
    expect(order.at(-1)).toBe(WINDOW);
    for (const id of order.slice(0, -1)) expect(footOf(rig, find(id))).toBeLessThan(footOf(rig, find(WINDOW)));
  });

  it('lies above nothing that it is told to keep dry', () => {
    const test = proposed(evidence());
    for (const id of test?.keep_dry ?? []) {
      expect(wets(rig, find(id), find(test?.station ?? ''))).toBe(true);
      expect(footOf(rig, find(id))).toBeGreaterThan(footOf(rig, find(test?.station ?? '')));
    }
  });

  it('states minutes and bits that its worksheet gives', () => {
    const test = proposed(evidence());
    const inputs = test?.because[0]?.worksheet?.inputs;
    expect(inputs?.['minutes_min']).toBe(test?.minutes);
    expect(test?.steps.some((step) => step.includes(`5 to ${test.run_minutes} minutes`))).toBe(true);
    expect(test?.run_minutes).toBeLessThanOrEqual(TESTS.hose.each_min);
    const worth = { sensitivity: Number(inputs?.['sensitivity_fraction']), specificity: Number(inputs?.['specificity_fraction']) };
    expect(test?.bits).toBeCloseTo(testInformation_bit(Number(inputs?.['prior_fraction']), worth), 12);
    expect(worth.specificity).toBeLessThanOrEqual(TESTS.hose.specificity);
  });

  it('warns of the close jet, asks for the reading first, and stops at first entry', () => {
    const test = proposed(evidence());
    const steps = test?.steps.join('\n') ?? '';
    for (const words of [/^Meter the wet place inside first/, /no nozzle and no jet/, /A close jet invents leaks/, /helper inside/, /5 to 10 minutes/, /Stop at the first water/])
      expect(steps).toMatch(words);
    for (const id of test?.cautions ?? []) expect(caution(id), id).toBeDefined();
    expect(test?.cautions).toContain('mains');
  });

  it('proposes a test again that was over too soon to say that it stayed dry', () => {
    const all = (ran_for_s: number) =>
      rankEntryPoints(evidence()).candidates.map((c): TestDone => ({ ...hosed(c.station, false), ran_for_s: c.station === WINDOW ? ran_for_s : 600 }));
    expect(proposed(evidence({ tests: all(60) }))).toMatchObject({ station: WINDOW, how: 'hose' });
    expect(proposed(evidence({ tests: all(600) }))?.how).toBe('soap');
  });

  it('follows a seam from its lower end on, and an opening from its lower edge up', () => {
    const seam = rig.stations.find((s) => s.group === 'seam' && s.face === 'road');
    expect(stepsFor(rig, find(seam?.id ?? ''), 'hose', []).join(' ')).toMatch(/the stretch of .* its lower end first/);
    expect(stepsFor(rig, find(WINDOW), 'hose', []).join(' ')).toMatch(/along the lower edge of window 2/);
  });

  it('says of the roof what is recorded of it: may, may not, or nobody has said', () => {
    const vent = find('roof.roof-vent-14');
    const said = (roof_walkable: Rig['roof_walkable']): string => stepsFor({ ...rig, roof_walkable }, vent, 'hose', []).join(' ');
    expect(said('no')).toMatch(/it is recorded that this roof is not to be walked on/);
    expect(said('no')).not.toMatch(/nobody has said/);
    expect(said('yes')).toMatch(/slippery even where it may be walked on/);
    expect(said('unknown')).toMatch(/nobody has said that this roof may be walked on/);
  });

  it('has mains and inverter off before the water is on, of an opening and of a seam', () => {
    for (const id of [WINDOW, 'road.corner-moulding', 'roof.roof-vent-14']) {
      const steps = stepsFor(rig, find(id), 'hose', []);
      const off = steps.findIndex((s) => /shore power unplugged, generator and inverter off/.test(s));
      expect(off, id).toBeGreaterThanOrEqual(0);
      expect(off, id).toBeLessThan(steps.findIndex((s) => /^Plain flow/.test(s)));
      if (steps.some((s) => /ladder/.test(s))) expect(off, id).toBeLessThan(steps.findIndex((s) => /ladder/.test(s)));
    }
  });

  it('proposes nothing once a hose test let water in, another cause was found, or nothing is wet', () => {
    expect(proposed(evidence({ tests: [hosed(WINDOW, true)] }))).toBeUndefined();
    expect(proposed(evidence({ other_causes: [{ cause: 'condensation', answer: 'it-is-this', entry: 'o' }] }))).toBeUndefined();
    expect(proposed(evidence({ wet: [] }))).toBeUndefined();
  });

  it('turns to soap where a hose may not or need not be used again, with every flame out and no pressure named', () => {
    const ranking = rankEntryPoints(evidence());
    const tests = ranking.candidates.map((c) => hosed(c.station, false));
    const e = evidence({ tests });
    const test = proposed(e);
    expect(test?.how).toBe('soap');
    expect(test?.steps[0]).toMatch(/^All flames and pilot lights out, gas shut at the cylinder/);
    expect(test?.steps.join(' ')).not.toMatch(/\d\s*(Pa|psi|mbar|in)\b/);
    expect(test?.cautions).toContain('lp-gas');
    expect(test?.keep_dry).toEqual([]);
  });

  it('adds ladder minutes and cautions for what is reached from a ladder', () => {
    const vent = find('roof.roof-vent-14');
    const under = box(vent.shape);
    const ceiling = [spot('c1', under.x0 - 0.05, (under.y0 + under.y1) / 2, 'roof')];
    const e = evidence({ wet: ceiling, seals: new Map([[vent.id, { grade: 'S5', graded: dayOf(2026, 4, 20), entries: [] }]]) });
    const below = rankEntryPoints(e)
      .candidates.filter((c) => c.station !== vent.id)
      .map((c) => hosed(c.station, false));
    const test = proposed({ ...e, tests: below });
    expect(test).toMatchObject({ station: vent.id, how: 'hose' });
    expect(test?.minutes).toBe(TESTS.hose.set_up_min + TESTS.hose.each_min + 15);
    expect(test?.cautions).toEqual(expect.arrayContaining(['ladder', 'roof', 'powerline']));
    expect(test?.steps.join(' ')).toMatch(/nobody has said that this roof may be walked on/);
  });
});
