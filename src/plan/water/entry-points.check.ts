import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankRig, box, layoutFrom, type Rig, type WaterSpot, waterSources } from '../../rig';
import { testPosterior } from '../../science';
import type { Station } from '../../terms';
import { dayOf } from '../../units';
import { work, worksheetById } from '../../worksheets';
import { LIKELY, MOST_CANDIDATES, POSSIBLE, rankEntryPoints } from './entry-points';
import type { LeakEvidence } from './evidence';
import { TESTS, type TestDone } from './water-tests';

/**
 * What must hold of any ranking of ways in; the network itself is held against worked cases in science/leak. No published
 * ranking of leaks on a rig is known to us: how often it is right is measured by a simulation, not here.
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
const frame = box(find(WINDOW).shape);

const spot = (id: string, x: number, y: number, face = 'road'): WaterSpot => ({ id, face, side: 'inside', point_m: [x, y] });
const below = [spot('w1', frame.x0 + 0.1, frame.y0 - 0.1), spot('w2', frame.x0 + 0.15, frame.y0 - 0.4)];
const dryBeside = spot('d1', frame.x1 + 0.05, frame.y0 - 0.1);
const evidence = (more: Partial<LeakEvidence> = {}): LeakEvidence => ({
  rig,
  on: dayOf(2026, 5, 1),
  wet: below,
  dry: [],
  tilts: [{ nose_up_rad: 0, curb_up_rad: 0 }],
  driven_in_rain: false,
  clues: [],
  seals: new Map(),
  tests: [],
  ...more,
});
const chanceOf = (e: LeakEvidence, id: string): number => rankEntryPoints(e).candidates.find((c) => c.station === id)?.probability ?? 0;
const graded = (id: string, grade: 'S0' | 'S4' | 'S5') => new Map([[id, { grade, graded: dayOf(2026, 4, 20), entries: ['g'] }]]);
const hosed = (came_in: boolean, station = WINDOW): TestDone => ({ entry: 't', station, how: 'hose', came_in, kept_dry: true });

describe('ranking of ways in', () => {
  it('puts the window above the wet place first, likely once its bead was graded open', () => {
    const { candidates, sentence } = rankEntryPoints(evidence({ seals: graded(WINDOW, 'S4') }));
    expect(candidates[0]).toMatchObject({ station: WINDOW, word: 'likely' });
    expect(sentence).toBe('Water most likely comes in at window 2, road side.');
  });

  it('says why: how it lies to the wet place, its grade and age', () => {
    const texts = rankEntryPoints(evidence({ seals: graded(WINDOW, 'S4') })).candidates[0]?.because.map((b) => b.text) ?? [];
    expect(texts.at(-1)).toMatch(/before, .* with the wet and dry places: likely\.$/);
    expect(texts[0]).toMatch(/above the wet place/);
    expect(texts[1]).toMatch(/graded S4 on 20 April 2026/);
    for (const c of rankEntryPoints(evidence()).candidates) for (const b of c.because) expect(b.text).not.toMatch(/NaN|undefined|\. \./);
  });

  it('reaches every word within its stated limits', () => {
    const words = new Set<string>();
    for (const e of [evidence(), evidence({ seals: graded(WINDOW, 'S5') }), evidence({ seals: graded(WINDOW, 'S0') })])
      for (const { word, probability } of rankEntryPoints(e).candidates) {
        words.add(word);
        expect(word).toBe(probability >= LIKELY ? 'likely' : probability >= POSSIBLE ? 'possible' : 'unlikely');
      }
    expect([...words].toSorted()).toEqual(['likely', 'possible', 'unlikely']);
  });

  it('says honestly when nothing stands out', () => {
    const { sentence } = rankEntryPoints(
      evidence({ wet: [spot('w', 5.3, 1.3)], seals: new Map(waterSources(rig).map((s) => [s.id, { grade: 'S0', graded: dayOf(2026, 4, 20), entries: [] }])) }),
    );
    expect(sentence).toMatch(/^(Many ways in|No opening or seam explains|It may come in)/);
  });

  it('counts a dry place against what would have wetted it, and says so', () => {
    const under = spot('d', frame.x0 + 0.4, frame.y0 - 0.1);
    expect(chanceOf(evidence({ dry: [under] }), WINDOW)).toBeLessThan(chanceOf(evidence(), WINDOW));
    const texts = rankEntryPoints(evidence({ dry: [under] }))
      .candidates.find((c) => c.station === WINDOW)
      ?.because.map((b) => b.text);
    expect(texts?.some((t) => /found dry, which speaks against it/.test(t))).toBe(true);
  });

  it('raises with the grade and with age, never to certainty', () => {
    const at = (grade: 'S0' | 'S4' | 'S5') => chanceOf(evidence({ seals: graded(WINDOW, grade) }), WINDOW);
    expect(at('S0')).toBeLessThan(chanceOf(evidence(), WINDOW));
    expect(chanceOf(evidence(), WINDOW)).toBeLessThan(at('S4'));
    expect(at('S4')).toBeLessThan(at('S5'));
    expect(at('S5')).toBeLessThan(1);
    const sealed = (year: number) => chanceOf(evidence({ seals: new Map([[WINDOW, { sealed: dayOf(year, 4, 1), entries: [] }]]) }), WINDOW);
    expect(sealed(2026)).toBeLessThan(sealed(2021));
    expect(sealed(2021)).toBeLessThan(sealed(2012));
  });

  it('does not call an open seam likely whose water does not get to the wet place', () => {
    const far = waterSources(rig).find((s) => s.face === 'road' && s.looks === 'window' && s.id !== WINDOW) ?? find(WINDOW);
    expect(rankEntryPoints(evidence({ seals: graded(far.id, 'S5') })).candidates.find((c) => c.station === far.id)?.word ?? 'unlikely').toBe('unlikely');
  });

  it('moves by exactly Bayes with a water test', () => {
    for (const came_in of [true, false]) {
      const before = rankEntryPoints(evidence());
      const after = rankEntryPoints(evidence({ tests: [hosed(came_in)] }));
      expect(after.leaks.get(WINDOW)).toBeCloseTo(testPosterior(before.leaks.get(WINDOW) ?? 0, TESTS.hose, came_in), 10);
      const [was, is] = [before, after].map((r) => (r.candidates.find((c) => c.station === WINDOW)?.probability ?? 0) / (r.leaks.get(WINDOW) ?? 1));
      expect(is).toBeCloseTo(was ?? 0, 10);
    }
  });

  it('falls after a hose test that stayed dry, rises after one that let water in, and is then confirmed', () => {
    const plain = chanceOf(evidence(), WINDOW);
    expect(chanceOf(evidence({ tests: [hosed(false)] }), WINDOW)).toBeLessThan(plain);
    const wet = rankEntryPoints(evidence({ tests: [hosed(true)] }));
    expect(wet).toMatchObject({ confirmed: WINDOW, sentence: 'It comes in at window 2, road side: a hose test made it come in there.' });
    expect(wet.candidates[0]).toMatchObject({ station: WINDOW, word: 'likely' });
    expect(rankEntryPoints(evidence({ tests: [{ ...hosed(true), kept_dry: false }] })).confirmed).toBeUndefined();
  });

  it('names a tested opening from which no way was thought of', () => {
    const far = find('curb.window-egress-30x22');
    expect(rankEntryPoints(evidence({ wet: [spot('w', 7.5, 2.2)], tests: [hosed(true, far.id)] })).confirmed).toBe(far.id);
  });

  it('listens to clues, each with its own reason', () => {
    const front = spot('w', 1, 1.2, 'front');
    const road = rankEntryPoints(evidence({ wet: [front], driven_in_rain: true, clues: [{ id: 'only-driving-rain', entry: 'c' }] }));
    expect(road.clues).toHaveLength(1);
    expect(road.clues[0]?.entries).toEqual(['c']);
    expect(road.candidates[0]?.paths.some((p) => p.when === 'driving')).toBe(true);
    const pump = rankEntryPoints(evidence({ clues: [{ id: 'pump-on', entry: 'c' }] }));
    expect(pump.unknown_source).toBeGreaterThan(rankEntryPoints(evidence()).unknown_source);
    expect(chanceOf(evidence({ clues: [{ id: 'wind-from-curb', entry: 'c' }] }), WINDOW)).toBeLessThan(
      chanceOf(evidence({ clues: [{ id: 'wind-from-road', entry: 'c' }] }), WINDOW),
    );
  });

  it('gives the figures of its worksheet', () => {
    const { candidates } = rankEntryPoints(evidence({ dry: [dryBeside], tests: [hosed(false)] }));
    const sheet = worksheetById('entry-points');
    const inputs = candidates[0]?.because.at(-1)?.worksheet?.inputs;
    const worked = sheet && inputs ? work(sheet, inputs) : undefined;
    if (!worked?.ok) throw new Error('no worksheet');
    const through = [...(worked.value.outcome.result['through_fraction'] as readonly number[])].slice(0, -1).toSorted((a, b) => b - a);
    for (const [i, c] of candidates.entries()) expect(c.probability).toBeCloseTo(through[i] ?? 0, 12);
  });

  it('does not depend on the order in which anything was given', () => {
    const wet = [...below, spot('w3', frame.x0 + 0.3, frame.y0 - 0.7), spot('w4', frame.x0 + 0.12, frame.y0 - 0.12)];
    const dry = [dryBeside, spot('d2', 4, 1.2)];
    const tests = [hosed(false), { ...hosed(false, 'road.belt-line-trim'), entry: 't2' }];
    const plain = rankEntryPoints(evidence({ wet, dry, tests }));
    const turned = rankEntryPoints(evidence({ wet: wet.toReversed(), dry: dry.toReversed(), tests: tests.toReversed() }));
    expect(turned.candidates.map((c) => c.station)).toEqual(plain.candidates.map((c) => c.station));
    for (const [i, c] of turned.candidates.entries()) expect(c.probability).toBeCloseTo(plain.candidates[i]?.probability ?? 0, 12);
  });

  it('keeps to as many as can be weighed together and says what it left out', () => {
    const { candidates, left_out, assumes } = rankEntryPoints(evidence());
    expect(candidates.length).toBeLessThanOrEqual(MOST_CANDIDATES);
    expect(left_out.length).toBeGreaterThan(0);
    expect(assumes.join(' ')).toContain(`${left_out.length} more openings and seams`);
    expect(rankEntryPoints(evidence({ tilts: [] })).assumes[0]).toMatch(/taken as level/);
  });

  it('has no candidates when nothing is wet, or another cause was found', () => {
    expect(rankEntryPoints(evidence({ wet: [], dry: below }))).toMatchObject({ candidates: [], unknown_source: 0, sentence: 'Nothing is wet, so there is nothing to trace.' });
    const found = rankEntryPoints(evidence({ other_causes: [{ cause: 'plumbing', answer: 'it-is-this', entry: 'o' }] }));
    expect(found).toMatchObject({ candidates: [], sentence: 'It was found to be plumbing: no way in is looked for.' });
    const ruledOut = rankEntryPoints(evidence({ other_causes: [{ cause: 'plumbing', answer: 'ruled-out', entry: 'o' }] }));
    expect(ruledOut.unknown_source).toBeLessThan(rankEntryPoints(evidence()).unknown_source);
  });

  it('answers with figures for anything, wherever it is wet', () => {
    const faces = rig.faces.filter((f) => f.id !== 'tongue');
    const anySpot = fc
      .record({ face: fc.constantFrom(...faces), x: fc.double({ min: 0, max: 1, noNaN: true }), y: fc.double({ min: 0, max: 1, noNaN: true }) })
      .map(({ face, x, y }): WaterSpot => {
        const b = box({ form: 'poly', points_m: face.outline_m });
        return { id: `${face.id} ${x} ${y}`, face: face.id, side: 'inside', point_m: [b.x0 + x * (b.x1 - b.x0), b.y0 + y * (b.y1 - b.y0)] };
      });
    fc.assert(
      fc.property(fc.array(anySpot, { minLength: 1, maxLength: 3 }), fc.array(anySpot, { maxLength: 2 }), (wet, dry) => {
        const { candidates, unknown_source, sentence } = rankEntryPoints(evidence({ wet, dry }));
        for (const c of candidates) {
          expect(c.probability).toBeGreaterThanOrEqual(0);
          expect(c.probability).toBeLessThanOrEqual(1);
          expect(c.paths.length + c.tests.length).toBeGreaterThan(0);
        }
        expect(unknown_source).toBeGreaterThan(0);
        expect(sentence).not.toMatch(/NaN|undefined/);
      }),
      { numRuns: 12 },
    );
  }, 60_000);
});
