import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyLayout, blankRig, layoutFrom, type Rig } from '../../rig';
import type { FacePoint, Place, Side } from '../../terms';
import { judge } from '../judge';
import { day, type Said, stateOf, typed } from '../trial-logbook';
import type { Delamination, LooseSkins } from './delamination';
import { adviceOn, type Known } from './delamination-advice';
import type { AdviceWord } from './loose-skin-types';
import { judgeWater } from './water';

/**
 * A loose skin against the trade's own order (repair-shop pages, read): the way in is closed first, nothing is injected over a
 * wet core, what carries load goes to the trade, and outlines are compared at like temperature alone. Sizes and distances are
 * ours; areas are held against worked examples in src/science/geometry. What a wall really hides no calculation can say.
 */
const layout = layoutFrom({ kind: 'travel-trailer', name: 'ours', skin: 'fibreglass', construction: 'bonded', roof: 'tpo' });
if (!layout.ok) throw new Error('no layout');
const rig: Rig = applyLayout({ ...blankRig('trial'), name: 'ours', kind: 'travel-trailer', construction: 'bonded', skin: 'fibreglass', roof: 'tpo' }, layout.value);

const box = (x: number, y: number, w: number, h: number): readonly FacePoint[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];
const outline = (points: readonly FacePoint[], face = 'curb'): Place => ({ at: 'outline', face, side: 'outside', outline_m: points });
const at = (x: number, y: number, side: Side = 'inside', face = 'curb'): Place => ({ at: 'point', face, side, point_m: [x, y] });

type More = { readonly skin?: number; readonly warmth?: string; readonly signs?: readonly string[] };
const bubble = (on: string, points: readonly FacePoint[], more: More = {}, face = 'curb'): Said => ({
  on,
  kind: 'skin-condition',
  at: outline(points, face),
  body: {
    verdict: 'something-wrong',
    signs: more.signs ?? ['bubble'],
    ...(more.warmth === undefined ? {} : { warmth: more.warmth }),
    ...(more.skin === undefined ? {} : { skin_temperature: typed(more.skin, 'temperature', 'c') }),
  },
});
const pin = (on: string, x: number, y: number, percent: number, face = 'curb'): Said => ({
  on,
  kind: 'wood-moisture-pin',
  at: at(x, y, 'inside', face),
  body: { reading: typed(percent, 'moisture-content', 'percent'), material: 'softwood' },
});
const tap = (on: string, x: number, y: number, sound: string): Said => ({ on, kind: 'tap-sound', at: at(x, y, 'outside'), body: { sound } });

/** Plain wall of the curb side, between wheel and rear: away from everything that carries load. */
const PATCH = box(6.4, 1.0, 0.3, 0.3);
const dryCore = (on: string): readonly Said[] => [pin(on, 6.5, 1.1, 9), pin(on, 6.6, 1.2, 10), pin(on, 6.45, 1.25, 9.5)];

const all = (said: readonly Said[], on = '2026-07-01', of: Rig = rig): LooseSkins => judgeWater(of, stateOf(of, said), day(on)).loose;
const one = (said: readonly Said[], on = '2026-07-01', of: Rig = rig): Delamination => {
  const [first] = all(said, on, of).open;
  if (!first) throw new Error('nothing found');
  return first;
};
const word = (said: readonly Said[], on?: string): AdviceWord => one(said, on).advice.word;

describe('measured', () => {
  it('area and longest side of the latest outline, the nearest opening, and the worksheet behind it', () => {
    const d = one([bubble('2026-06-20', PATCH)]);
    expect(d.outlines[0]?.area_m2).toBeCloseTo(0.09, 9);
    expect(d.outlines[0]?.longest_m).toBeCloseTo(Math.hypot(0.3, 0.3), 9);
    expect(d.measured[0]?.text).toBe('Outlined on 20 June 2026: 1.0 ft² (900 cm²), 17 in (0.42 m) at its longest.');
    expect(d.measured[0]?.worksheet?.id).toBe('outline-area');
    expect(d.nearest?.distance_m).toBeCloseTo(1.45 - 1.3, 6);
    expect(d.nearest?.station).toBe('curb.belt-line-trim');
  });
  it('an outline that crosses itself is said to, and is no area', () => {
    const d = one([
      bubble('2026-06-20', [
        [6.4, 1],
        [6.7, 1.3],
        [6.7, 1],
        [6.4, 1.3],
      ]),
    ]);
    expect(d.outlines).toEqual([]);
    expect(d.measured.some((b) => b.text.includes('crosses itself'))).toBe(true);
  });
  it('grows at like temperature; is not compared where the skin was warmer, or nobody said', () => {
    const larger = box(6.35, 0.95, 0.4, 0.4);
    const grown = one([bubble('2026-04-01', PATCH, { skin: 15 }), bubble('2026-06-20', larger, { skin: 22 })]).growth;
    expect(grown).toMatchObject({ known: true, growing: true });
    expect(grown?.known && grown.ratio).toBeCloseTo(0.16 / 0.09, 9);
    expect(grown?.because.worksheet?.id).toBe('outline-growth');
    for (const [a, b] of [
      [{ skin: 15 }, { skin: 40 }],
      [{ warmth: 'cool' }, { warmth: 'hot' }],
      [{}, {}],
      [{ skin: 15 }, {}],
    ] as const) {
      const growth = one([bubble('2026-04-01', PATCH, a), bubble('2026-06-20', larger, b)]).growth;
      expect(growth?.known, JSON.stringify([a, b])).toBe(false);
      expect(growth?.because.text).toMatch(/not compared/);
    }
    expect(one([bubble('2026-04-01', PATCH, { warmth: 'cool' }), bubble('2026-06-20', larger, { warmth: 'cool' })]).growth).toMatchObject({ known: true, growing: true });
  });
  it('a finger’s width more is no growth', () => {
    const growth = one([bubble('2026-04-01', PATCH, { skin: 15 }), bubble('2026-06-20', box(6.395, 0.995, 0.31, 0.31), { skin: 15 })]).growth;
    expect(growth).toMatchObject({ known: true, growing: false });
  });
  it('compares with the first outline that may be compared, not with the one before', () => {
    const d = one([
      bubble('2026-03-01', PATCH, { skin: 12 }),
      bubble('2026-05-01', box(6.4, 1, 0.31, 0.31), { skin: 35 }),
      bubble('2026-06-20', box(6.35, 0.95, 0.4, 0.4), { skin: 14 }),
    ]);
    expect(d.growth?.known && d.growth.since.day).toBe(day('2026-03-01'));
  });
  it('a look that finds it sound ends it; a loose skin on a hung wall is how it is built', () => {
    expect(all([bubble('2026-04-01', PATCH), { on: '2026-06-01', kind: 'skin-condition', at: outline(PATCH), body: { verdict: 'sound' } }]).open).toEqual([]);
    expect(all([bubble('2026-04-01', PATCH)], '2026-07-01', { ...rig, construction: 'hung' }).open).toEqual([]);
  });
});

describe('what comes next', () => {
  it('without a meter: meter first, and no leak is assumed', () => {
    const d = one([bubble('2026-06-20', PATCH)]);
    expect(d.advice.word).toBe('meter-first');
    expect(d.core.because.text).toMatch(/without any water/);
  });
  it('two dry readings are not enough, three are; old ones count for nothing', () => {
    const [a, b, c] = dryCore('2026-06-20') as readonly [Said, Said, Said];
    expect(word([bubble('2026-06-20', PATCH), a, b])).toBe('meter-first');
    expect(word([bubble('2026-06-20', PATCH), a, b, c])).toBe('inject');
    expect(word([bubble('2026-06-20', PATCH), ...dryCore('2026-02-01')])).toBe('meter-first');
  });
  it('never into a wet core, whichever side was read', () => {
    expect(word([bubble('2026-06-20', PATCH), ...dryCore('2026-06-20'), pin('2026-06-20', 6.55, 1.15, 22)])).toBe('dry-first');
    expect(word([bubble('2026-06-20', PATCH), ...dryCore('2026-06-20'), pin('2026-06-20', 6.55, 1.15, 34)])).toMatch(/replace|dry-first/);
  });
  it('at 15 to 16 % it does not count as dry', () => {
    expect(word([bubble('2026-06-20', PATCH), ...dryCore('2026-06-20'), pin('2026-06-20', 6.55, 1.15, 15.4)])).toMatch(/^(meter|dry)-first$/);
  });
  it('a place that was frozen leaves the core in doubt, however many beside it are dry, until it is read thawed', () => {
    const ice: Said = { ...pin('2026-06-20', 6.55, 1.15, 9), body: { ...pin('2026-06-20', 6.55, 1.15, 9).body, surface: 'frozen' } };
    const d = one([bubble('2026-06-20', PATCH), ...dryCore('2026-06-20'), ice]);
    expect(d.core).toMatchObject({ state: 'doubtful', because: { entries: [expect.any(String)] } });
    expect(d.core.because.text).toBe(
      'A place in or beside it was frozen when last read, and a meter does not take ice for water: read again thawed before the core counts as dry.',
    );
    expect(d.advice.word).toBe('meter-first');
    expect(one([bubble('2026-06-20', PATCH), ...dryCore('2026-06-20'), ice, pin('2026-06-25', 6.55, 1.15, 10)]).core.state).toBe('dry');
  });
  it('soft goes to the trade, whatever the meter says', () => {
    expect(word([bubble('2026-06-20', PATCH, { signs: ['bubble', 'soft'] }), ...dryCore('2026-06-20')])).toBe('replace');
  });
  it('a leak beside it that nobody has shown to be closed comes first', () => {
    const leak = [pin('2026-06-20', 6.9, 1.6, 27), pin('2026-06-20', 7.0, 1.6, 26)];
    expect(word([bubble('2026-06-20', PATCH), ...dryCore('2026-06-20'), ...leak])).toBe('close-first');
  });
  it('too large, or across the frame, or growing: replaced', () => {
    const wide = box(6.3, 0.95, 0.5, 0.3);
    expect(word([bubble('2026-06-20', wide), ...dryCore('2026-06-20')])).toBe('replace');
    const tall = box(6.4, 0.75, 0.39, 0.99);
    expect(word([bubble('2026-06-20', tall), ...dryCore('2026-06-20')])).toBe('replace');
    expect(word([bubble('2026-04-20', PATCH, { skin: 15 }), bubble('2026-06-20', box(6.36, 0.96, 0.38, 0.38), { skin: 15 }), ...dryCore('2026-06-20')])).toBe('replace');
  });
  it('beside a slide-out, at the roof edge or at a hinge: to the trade', () => {
    const bySlide = box(4.2, 1.1, 0.2, 0.2);
    const dry = [pin('2026-06-20', 4.25, 1.15, 9, 'road'), pin('2026-06-20', 4.35, 1.2, 9, 'road'), pin('2026-06-20', 4.3, 1.25, 9, 'road')];
    const d = one([bubble('2026-06-20', bySlide, {}, 'road'), ...dry]);
    expect(d.advice.word).toBe('trade-looks');
    expect(d.loads[0]?.words).toBe('the opening of a slide-out');
    expect(one([bubble('2026-06-20', box(6.4, 2.5, 0.2, 0.2))]).loads.map((l) => l.words)).toContain('the roof edge');
    expect(one([bubble('2026-06-20', box(2.75, 1.2, 0.15, 0.15))]).loads.some((l) => l.words.startsWith('a hinge of Entry door'))).toBe(true);
  });
  it('dry and the same through three rounds: watched', () => {
    const still = ['2026-04-01', '2026-05-15', '2026-06-20'].map((on) => bubble(on, PATCH, { skin: 18 }));
    expect(word([...still, ...dryCore('2026-06-20')])).toBe('watch');
    expect(word([...still.slice(1), ...dryCore('2026-06-20')])).toBe('inject');
  });
  it('for anything that can be known: nothing is injected or only watched unless the core is dry, no water comes in, nothing is soft and no load is near', () => {
    const because = { text: '', entries: ['e'], source: { status: 'own', text: '' } } as const;
    const o = (area_m2: number): Known['outlines'][number] => ({
      entry: 'e',
      day: day('2026-06-01'),
      outline_m: PATCH,
      area_m2,
      longest_m: 1,
      worked: { worksheet: 'outline-area', inputs: {} },
    });
    const known: fc.Arbitrary<Known> = fc
      .record({
        areas: fc.array(fc.double({ min: 0.001, max: 0.5, noNaN: true }), { maxLength: 4 }),
        signs: fc.subarray(['bubble', 'ripple', 'soft', 'moves-under-hand']),
        growing: fc.constantFrom(undefined, true, false),
        core: fc.constantFrom('wet-through' as const, 'wet' as const, 'dry' as const, 'doubtful' as const, 'not-metered' as const),
        source: fc.constantFrom('open' as const, 'closed' as const, 'none-found' as const),
        load: fc.boolean(),
        crosses_frame: fc.boolean(),
      })
      .map((k) => ({
        look: 'e',
        outlines: k.areas.map(o),
        signs: k.signs,
        ...(k.growing === undefined ? {} : { growth: { known: true as const, ratio: k.growing ? 2 : 1, growing: k.growing, since: o(0.1), because } }),
        core: { state: k.core, readings: 3, because },
        source: { state: k.source, because },
        loads: k.load ? [{ station: 's', words: 'the roof edge', distance_m: 0.1 }] : [],
        crosses_frame: k.crosses_frame,
      }));
    fc.assert(
      fc.property(known, (k) => {
        const advice = adviceOn(k);
        expect(advice.because.length).toBeGreaterThan(0);
        expect(advice.steps.length).toBeGreaterThan(0);
        if (advice.word !== 'inject' && advice.word !== 'watch') return;
        expect(k.core.state).toBe('dry');
        expect(k.source.state).not.toBe('open');
        expect(k.signs).not.toContain('soft');
        expect(k.loads).toEqual([]);
        expect(k.growth?.known && k.growth.growing).not.toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('tapped', () => {
  const grid = (on: string, hollow: (x: number, y: number) => boolean): readonly Said[] =>
    [6.3, 6.38, 6.46, 6.54].flatMap((x) => [0.9, 0.98, 1.06, 1.14].map((y) => tap(on, x, y, hollow(x, y) ? 'hollow' : 'solid')));

  it('share and outline of what drums', () => {
    const d = one([bubble('2026-06-20', box(6.36, 0.96, 0.12, 0.12)), ...grid('2026-06-20', (x, y) => x > 6.35 && x < 6.5 && y > 0.95 && y < 1.1)]);
    expect(d.taps).toMatchObject({ solid: 12, hollow: 4, dull: 0, hollow_share: 0.25 });
    expect(d.taps?.hull_area_m2).toBeCloseTo(0.08 * 0.08, 9);
  });
  it('three hollow taps that nobody drew round are found all the same; two are not; solid again ends it', () => {
    const hollow = grid('2026-06-20', (x) => x > 6.5);
    const found = all(hollow).open;
    expect(found).toHaveLength(1);
    expect(found[0]?.advice.word).toBe('meter-first');
    expect(all([tap('2026-06-20', 6.3, 1, 'hollow'), tap('2026-06-20', 6.38, 1, 'hollow'), tap('2026-06-20', 6.46, 1, 'solid')]).open).toEqual([]);
    const again = all([...hollow, ...grid('2026-06-28', () => false)]);
    expect(again.open).toEqual([]);
    expect(again.healed).toHaveLength(1);
    const titles = (said: readonly Said[]): readonly string[] => judge(rig, stateOf(rig, said), day('2026-07-01')).map((f) => `${f.title} ${f.life}`);
    expect(titles(hollow)).toEqual(['Hollow to the tap open']);
    expect(titles([...hollow, ...grid('2026-06-28', () => false)])).toEqual(['Hollow to the tap seen-sound']);
  });
});

describe('on the plan', () => {
  it('the finding of the skin tells its size, the advice, and what to do next', () => {
    const [f] = judge(rig, stateOf(rig, [bubble('2026-06-20', PATCH, { warmth: 'cool' }), ...dryCore('2026-06-20')]), day('2026-07-01')).filter((x) => x.rule === 'skin-condition');
    expect(f?.urgency).toBe('this-season');
    expect(f?.because.some((b) => b.text.startsWith('Outlined on'))).toBe(true);
    expect(f?.because.some((b) => b.text.startsWith('Small, dry, firm'))).toBe(true);
    expect(f?.steps?.length).toBeGreaterThan(0);
  });
  it('a bubble in the heat stays a matter to look at again when it is cool', () => {
    const [f] = judge(rig, stateOf(rig, [bubble('2026-06-20', PATCH, { warmth: 'hot' }), ...dryCore('2026-06-20')]), day('2026-07-01')).filter((x) => x.rule === 'skin-condition');
    expect(f?.urgency).toBe('watch');
    expect(f?.title).toMatch(/heat/);
  });
});
