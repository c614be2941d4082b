// Drying, and whether a repair held, walked through by hand on an invented logbook. The chances of an order are exact tails of Kendall's S (four in
// order 0.0417, three 0.1667: counted permutations, held in science/statistics); the rules that use them follow the notes on drying and on leak tests
// as written: two real rains or the hose again, two dry readings a week apart, three points of a rise. Ours where they say so.
import { describe, expect, it } from 'vitest';
import { addMonths, civilDay, isoDay } from '../../units';
import { judge } from '../judge';
import { planOf } from '../plan';
import { day, nth, type Said, stateOf, station, trialRig, typed } from '../trial-logbook';
import { readingsNeeded } from './trend';
import { waterOf } from './water';
import type { Leak } from './water-types';

const WINDOW = 'curb.window';
const rig = trialRig([station(WINDOW, 'window'), station('curb.window-2', 'window')], { construction: 'hung' });
const percent = (n: number) => typed(n, 'moisture-content', 'percent');
const DRY = 11;

/** One metering: the window's wall, and three dry places beside it. */
const metered = (on: string, n: number, at = WINDOW): readonly Said[] => [
  ...[0, 1, 2].map(
    (i): Said => ({
      on,
      kind: 'wood-moisture-pin',
      at: { at: 'point', face: 'curb', side: 'inside', point_m: [5 + i, 1] },
      body: { reading: percent(DRY), material: 'softwood', dry_reference: true },
    }),
  ),
  { on, kind: 'wood-moisture-pin', at, side: 'inside', body: { reading: percent(n), material: 'softwood' } },
];
const rain = (on: string, mm = 12): Said => ({ on: `${on}/${on}`, kind: 'rain-fell', body: { amount: typed(mm, 'length', 'mm'), while: 'parked' } });
const rebed = (on: string, ...concerns: string[]): Said => ({
  on: `${on}T15:00:00Z`,
  kind: 'rebedded',
  at: WINDOW,
  body: { bedded_on: 'butyl-tape', wood: 'damp' },
  ...(concerns.length > 0 ? { concerns } : {}),
});
const hose = (on: string, result: string, at = WINDOW): Said => ({ on: `${on}T16:00:00Z`, kind: 'water-test', at, body: { how: 'hose', result, kept_dry: true } });

const leakAt = (on: string, ...said: readonly Said[]): Leak => {
  const { leaks } = waterOf(rig, stateOf(rig, said), day(on));
  const [leak] = leaks;
  if (!leak) throw new Error('a leak');
  expect(leaks).toHaveLength(1);
  return leak;
};
const course = (from: string, step: number, ...excesses: readonly number[]): readonly Said[] =>
  excesses.flatMap((n, i) => metered(isoDay(civilDay(day(from) + i * step)), DRY + n));

describe('the course of a place', () => {
  const trend = (...excesses: readonly number[]) => leakAt('2026-12-01', ...course('2026-05-03', 10, ...excesses)).spots[0]?.trend;

  it('is drying from four readings in order on, and with three it takes one more', () => {
    expect(trend(15, 13, 11)).toMatchObject({ word: 'watch', need: 1 });
    const four = trend(15, 13, 11, 9);
    expect(four).toMatchObject({ word: 'drying', probability: expect.closeTo(0.0417, 4), slope_per_d: expect.closeTo(-0.002, 9) });
    expect(four?.interval_per_d?.[1]).toBeLessThan(0);
  });

  it('with one or two readings says how many are missing, and draws no arrow', () => {
    expect(trend(15)).toMatchObject({ word: 'too-few', need: 3 });
    expect(trend(15, 13)).toMatchObject({ word: 'too-few', need: 2 });
  });

  it('asks for as many more as would do if each lay beyond all before', () => {
    expect(readingsNeeded([], true)).toBe(4);
    expect(readingsNeeded([5, 4, 3], true)).toBe(1);
    // One out of order: 4, 5, 3, 2 has S = −4; a fifth below all makes −8 of five, chance 0.0417.
    expect(readingsNeeded([4, 5, 3, 2], true)).toBe(1);
    expect(readingsNeeded([3, 4, 5], false)).toBe(1);
  });

  it('is getting wetter by its order, or by more than three points after a rain', () => {
    expect(trend(9, 11, 13, 15)?.word).toBe('wetting');
    const said = [...course('2026-05-03', 10, 12, 9), rain('2026-05-15')];
    expect(leakAt('2026-06-01', ...said, ...metered('2026-05-23', DRY + 12)).spots[0]?.trend?.word).not.toBe('wetting');
    expect(leakAt('2026-06-01', ...said, ...metered('2026-05-23', DRY + 12.1)).spots[0]?.trend?.word).toBe('wetting');
  });

  it('of equal readings has no slope and no direction', () => {
    expect(trend(12, 12, 12, 12, 12)).toMatchObject({ word: 'watch', slope_per_d: 0 });
  });

  it('of readings beyond what a pin meter tells apart is no drying: all of them say only that it is wet', () => {
    const found = trend(49, 41, 33, 25);
    expect(found?.word).not.toBe('drying');
    expect(found).toMatchObject({ slope_per_d: 0 });
    expect(found?.because.text).toContain('Above 30 % a pin meter tells only that wood is wet');
    expect(trend(33, 25, 15, 12, 9, 6)?.word).toBe('drying');
  });

  it('takes one point a day, the middle of several at one place', () => {
    const twice = [...metered('2026-05-03', 24), { ...(metered('2026-05-03', 26)[3] as Said), on: '2026-05-03T11:00:00Z' }];
    expect(leakAt('2026-05-04', ...twice).spots[0]?.trend?.points).toMatchObject([{ excess: expect.closeTo(0.14, 9) }]);
  });

  it('leaves out days without a dry place, and says how many', () => {
    const alone: Said = { on: '2026-05-13', kind: 'wood-moisture-pin', at: WINDOW, side: 'inside', body: { reading: percent(24), material: 'softwood' } };
    const found = leakAt('2026-05-20', ...metered('2026-05-03', 26), alone).spots[0]?.trend;
    expect(found?.points).toHaveLength(1);
    expect(found?.because.text).toContain('1 day has no dry place');
  });
});

describe('a place with no dry place beside it', () => {
  const air: Said = {
    on: '2026-04-01/2026-07-30',
    kind: 'lived-air',
    body: { temperature: typed(20, 'temperature', 'c'), relative_humidity: typed(65, 'relative-humidity', 'percent') },
  };
  const alone = (on: string, n: number): Said => ({ on, kind: 'wood-moisture-pin', at: WINDOW, side: 'inside', body: { reading: percent(n), material: 'softwood' } });
  const trend = (...said: readonly Said[]) => leakAt('2026-12-01', ...said).spots[0]?.trend;

  it('is held against its air, and says so', () => {
    const said = [air, alone('2026-05-03', 27), alone('2026-05-20', 22), alone('2026-06-10', 13.5), alone('2026-06-20', 13)];
    expect(trend(...said)).toMatchObject({ word: 'dry', because: { text: 'Within 2.0 points of what its air explains twice, a week apart, on 20 June 2026.' } });
  });

  it('is not put on one line with days that had one', () => {
    // Its air explains 12 %, its dry places read 11 %: the day without them is left out, though its air is known.
    const said = [air, ...metered('2026-05-03', 25), alone('2026-05-13', 24), ...metered('2026-05-23', 23)];
    expect(trend(...said)?.points.map((p) => p.excess)).toEqual([expect.closeTo(0.14, 9), expect.closeTo(0.12, 9)]);
  });

  it('by the bands alone is said to be so, though dry places were read earlier', () => {
    const said = [...metered('2026-05-03', 25), alone('2026-06-10', 13.5), alone('2026-06-20', 13)];
    expect(trend(...said)?.because.text).toBe('Below 15 % by pin meter twice, a week apart, on 20 June 2026; no dry place was read beside it.');
  });
});

describe('a leak that was repaired', () => {
  const wet = metered('2026-05-03', 25);

  it('noticed only on the road is not stopped by rain on the parked rig', () => {
    const clue = (when: string): Said => ({ on: '2026-05-02', kind: 'leak-clue', body: { when: [when] } });
    const stateAfter = (when: string, fell: string): string =>
      leakAt(
        '2026-07-01',
        clue(when),
        ...metered('2026-05-03', DRY + 12),
        rebed('2026-05-10'),
        ...metered('2026-05-11', DRY + 12),
        ...['2026-05-15', '2026-05-20'].map((on): Said => ({ on: `${on}/${on}`, kind: 'rain-fell', body: { amount: typed(12, 'length', 'mm'), while: fell } })),
        ...metered('2026-05-22', DRY + 11),
      ).stop.state;
    expect(stateAfter('only-driving-rain', 'parked')).toBe('repaired');
    expect(stateAfter('only-driving-rain', 'driving')).toBe('stopped');
    expect(stateAfter('only-parked-rain', 'driving')).toBe('repaired');
    expect(stateAfter('only-parked-rain', 'both')).toBe('stopped');
  });

  it('is stopped after two real rains without a rise, and not after one, nor after two that hardly wetted the ground', () => {
    const said = [...wet, rebed('2026-05-04'), ...metered('2026-05-06', 24)];
    expect(leakAt('2026-05-07', ...said).stop.state).toBe('repaired');
    expect(leakAt('2026-05-20', ...said, rain('2026-05-08'), ...metered('2026-05-10', 22)).stop.state).toBe('repaired');
    expect(leakAt('2026-05-20', ...said, rain('2026-05-08'), rain('2026-05-12', 0.4), ...metered('2026-05-14', 21)).stop.state).toBe('repaired');
    expect(leakAt('2026-05-20', ...said, rain('2026-05-08'), rain('2026-05-12'), ...metered('2026-05-14', 21)).stop).toMatchObject({ state: 'stopped', closed: day('2026-05-14') });
  });

  it('needs a reading after the second rain', () => {
    expect(leakAt('2026-05-20', ...wet, rebed('2026-05-04'), rain('2026-05-08'), ...metered('2026-05-10', 22), rain('2026-05-12')).stop.state).toBe('repaired');
  });

  it('is stopped by the hose at the repaired place, and not by one held elsewhere', () => {
    expect(leakAt('2026-05-20', ...wet, rebed('2026-05-04'), hose('2026-05-10', 'stayed-dry')).stop.state).toBe('stopped');
    expect(leakAt('2026-05-20', ...wet, rebed('2026-05-04'), hose('2026-05-10', 'stayed-dry', 'curb.window-2')).stop.state).toBe('repaired');
  });

  it('is not stopped by a place that was first read after the rains, and has nothing to have risen from', () => {
    const other = (on: string, n: number): Said => ({
      on,
      kind: 'wood-moisture-pin',
      at: { at: 'point', face: 'curb', side: 'inside', point_m: [1.4, 0.6] },
      body: { reading: percent(n), material: 'softwood' },
    });
    const said = [...wet, rebed('2026-05-04'), rain('2026-05-08'), rain('2026-05-12'), ...metered('2026-05-14', 20)];
    expect(leakAt('2026-05-20', ...said).stop.state).toBe('stopped');
    expect(leakAt('2026-05-20', ...said, other('2026-05-14', 27)).stop.state).toBe('repaired');
    const later = [...said, other('2026-05-14', 27), rain('2026-05-20'), rain('2026-05-24'), ...metered('2026-05-26', 19)];
    expect(leakAt('2026-06-01', ...later, other('2026-05-26', 27)).stop.state).toBe('stopped');
  });

  it('is not stopped by rains while a place reads beyond what its meter tells apart', () => {
    const rained = (n: number) => [
      ...metered('2026-05-03', n),
      rebed('2026-05-04'),
      ...metered('2026-05-06', n),
      rain('2026-05-08'),
      rain('2026-05-12'),
      ...metered('2026-05-14', n),
    ];
    expect(leakAt('2026-05-20', ...rained(29)).stop.state).toBe('stopped');
    expect(leakAt('2026-05-20', ...rained(45)).stop.state).toBe('repaired');
  });

  it('stays open after water came in again, though the hose at the repaired place stays dry: it comes in elsewhere', () => {
    const again = [...wet, rebed('2026-05-04'), ...metered('2026-05-06', 20), rain('2026-05-08'), ...metered('2026-05-10', 27)];
    expect(leakAt('2026-05-20', ...again, hose('2026-05-12', 'stayed-dry')).stop.state).toBe('reopened');
    expect(leakAt('2026-05-20', ...again, rebed('2026-05-11'), hose('2026-05-12', 'stayed-dry')).stop.state).toBe('stopped');
  });

  it('opens again by itself after a rise of more than three points above its lowest since', () => {
    const said = [...wet, rebed('2026-05-04'), ...metered('2026-05-10', 20), rain('2026-05-12')];
    expect(leakAt('2026-05-20', ...said, ...metered('2026-05-14', 22.9)).stop.state).toBe('repaired');
    const again = [...said, ...metered('2026-05-14', 23.1)];
    expect(leakAt('2026-05-20', ...again).stop.state).toBe('reopened');
    expect(judge(rig, stateOf(rig, again), day('2026-05-20')).find((f) => f.rule === 'water-coming-in')?.life).toBe('reopened');
  });

  it('opens again after it was stopped, and is repaired again: measured from the reading before the new repair', () => {
    const stopped = [...wet, rebed('2026-05-04'), ...metered('2026-05-06', 24), rain('2026-05-08'), rain('2026-05-12'), ...metered('2026-05-14', 15)];
    const again = [...stopped, rain('2026-06-01'), ...metered('2026-06-02', 22)];
    expect(leakAt('2026-06-20', ...again).stop.state).toBe('reopened');
    expect(leakAt('2026-06-20', ...again, rebed('2026-06-03'), ...metered('2026-06-05', 22)).stop.state).toBe('repaired');
  });

  it('by work that came before water first showed is not repaired; it is said', () => {
    const leak = leakAt('2026-05-20', rebed('2026-04-01'), ...wet);
    expect(leak.repairs).toEqual([]);
    expect(leak.stop.state).toBe('open');
    const [said] = leak.stop.because.map((b) => b.text);
    expect(said).toBe(
      'What was done on 1 April 2026 came before water first showed on 3 May 2026: it does not count as a repair of this. Whether water came in since, or was in the wall already, is not known.',
    );
    const between = leakAt('2026-05-20', rebed('2026-04-01'), ...metered('2026-04-20', 11.5), ...wet);
    expect(between.stop.because[0]?.text).toContain('it did not stop this');
    expect(judge(rig, stateOf(rig, [rebed('2026-04-01'), ...wet]), day('2026-05-20')).find((f) => f.rule === 'water-coming-in')?.life).toBe('open');
  });

  it('counts from a stain that was seen before anybody metered the place', () => {
    const stain: Said = { on: '2026-05-01', kind: 'inside-signs', at: WINDOW, side: 'inside', body: { verdict: 'something-wrong', signs: ['stain'] } };
    const leak = leakAt('2026-05-20', stain, rebed('2026-05-02'), ...wet);
    expect(leak).toMatchObject({ since: day('2026-05-01'), repairs: [nth(2)], stop: { state: 'repaired' } });
  });

  it('is looked for anew where it came in again after a repair: a test from before that repair says nothing of it', () => {
    const tested = [...wet, hose('2026-05-03', 'came-in')];
    expect(leakAt('2026-05-20', ...tested)).toMatchObject({ confirmed: WINDOW });
    const again = [...tested, rebed('2026-05-04'), ...metered('2026-05-06', 20), rain('2026-05-08'), ...metered('2026-05-10', 27)];
    const leak = leakAt('2026-05-20', ...again);
    expect(leak.stop.state).toBe('reopened');
    expect(leak.confirmed).toBeUndefined();
    expect(leakAt('2026-05-20', ...again, hose('2026-05-12', 'came-in'))).toMatchObject({ confirmed: WINDOW });
  });

  it('is not held to be found by a test that wetted what lies above as well', () => {
    const wetted: Said = { ...hose('2026-05-04', 'came-in'), body: { how: 'hose', result: 'came-in', kept_dry: false } };
    expect(leakAt('2026-05-20', ...wet, wetted).confirmed).toBeUndefined();
  });

  it('is not explained by what was found to be the cause of something else, long before', () => {
    const plumbing = (on: string): Said => ({ on, kind: 'other-cause', body: { cause: 'plumbing', answer: 'it-is-this' } });
    const state = (on: string) => leakAt('2026-05-20', plumbing(on), ...wet).other_causes.find((c) => c.cause === 'plumbing')?.state;
    expect(state('2026-05-01')).toBe('it-is-this');
    expect(state('2025-03-01')).toBe('not-looked-at');
  });

  it('schedules its own metering: after a day or two, after the next two rains, until it is dry, at the next round', () => {
    const { due } = leakAt('2026-05-05', ...wet, rebed('2026-05-04'));
    expect(due.map((d) => [d.what, isoDay(d.from)])).toEqual([
      ['meter-again', '2026-05-05'],
      ['after-rain', '2026-05-05'],
      ['after-rain', '2026-05-05'],
      ['second-dry', '2026-05-11'],
      ['next-round', '2026-05-05'],
    ]);
    const plan = planOf(rig, stateOf(rig, [...wet, rebed('2026-05-04')]), day('2026-05-05'));
    const proof = plan.jobs.find((j) => j.id.startsWith('proof/water-coming-in'));
    expect(proof).toMatchObject({ due: day('2026-05-05'), urgency: 'this-season' });
    const later = leakAt('2026-05-20', ...wet, rebed('2026-05-04'), ...metered('2026-05-06', 24), rain('2026-05-08'), ...metered('2026-05-09', 23)).due;
    expect(later.filter((d) => d.done !== undefined).map((d) => d.what)).toEqual(['meter-again', 'after-rain']);
  });
});

describe('the two findings of a leak', () => {
  const wet = metered('2026-05-03', 24);
  const rained = [...wet, rebed('2026-05-04'), ...metered('2026-05-06', 22), rain('2026-05-08'), rain('2026-05-12'), ...metered('2026-05-14', 18)];
  const lives = (on: string, ...said: readonly Said[]) => Object.fromEntries(judge(rig, stateOf(rig, said), day(on)).map((f) => [f.rule, f.life]));

  it('close apart: the leak by the rains, the wall when it was dry twice, a week apart', () => {
    expect(lives('2026-05-20', ...rained)).toMatchObject({ 'water-coming-in': 'proved', 'wet-wall': 'open' });
    const once = [...rained, ...metered('2026-06-10', 12.9)];
    expect(lives('2026-06-11', ...once)['wet-wall']).toBe('open');
    expect(lives('2026-06-20', ...once, ...metered('2026-06-16', 12.5))['wet-wall']).toBe('open');
    expect(lives('2026-06-20', ...once, ...metered('2026-06-17', 12.5))['wet-wall']).toBe('proved');
    expect(leakAt('2026-06-20', ...once, ...metered('2026-06-17', 12.5)).dryness).toMatchObject({ state: 'dry', closed: day('2026-06-17') });
  });

  it('keep their names while the logbook grows, and take decisions and care by them', () => {
    const [first] = judge(rig, stateOf(rig, wet), day('2026-05-04')).filter((f) => f.rule === 'water-coming-in');
    expect(first?.id).toBe(`water-coming-in/${WINDOW}@inside/${nth(4)}`);
    const put: Said = { on: '2026-05-04', kind: 'put-off', at: WINDOW, side: 'inside', body: { until: '2026-07-01', why: 'no dry day' }, concerns: [first?.id ?? ''] };
    const decided = judge(rig, stateOf(rig, [...wet, put, ...metered('2026-05-10', 24.5)]), day('2026-05-11')).find((f) => f.rule === 'water-coming-in');
    expect(decided).toMatchObject({ id: first?.id, life: 'put-off' });
    const old: Said = { ...put, concerns: [`moisture-pin/${WINDOW}@inside/${nth(4)}`] };
    expect(judge(rig, stateOf(rig, [...wet, old]), day('2026-05-11')).find((f) => f.rule === 'wet-wall')?.life).toBe('put-off');
  });

  it('are closed by a proof that names them', () => {
    const proof = (result: string): Said => ({ on: '2026-05-10', kind: 'proof-seen', at: WINDOW, body: { result, by: 'hose' }, concerns: [nth(5)] });
    expect(lives('2026-05-20', ...wet, rebed('2026-05-04'), proof('held'))['water-coming-in']).toBe('proved');
    expect(lives('2026-05-20', ...wet, rebed('2026-05-04'), proof('did-not-hold'))['water-coming-in']).toBe('reopened');
  });

  it('that dried without any repair are found sound, twice a week apart, also by the bands alone where no dry place was read', () => {
    expect(lives('2026-07-01', ...wet, ...metered('2026-06-01', 12), ...metered('2026-06-10', 12))).toMatchObject({ 'water-coming-in': 'seen-sound', 'wet-wall': 'seen-sound' });
    const alone = (on: string, n: number): Said => ({ on, kind: 'wood-moisture-pin', at: WINDOW, side: 'inside', body: { reading: percent(n), material: 'softwood' } });
    expect(lives('2026-07-01', alone('2026-05-03', 22), alone('2026-06-01', 12))).toMatchObject({ 'wet-wall': 'open' });
    expect(lives('2026-07-01', alone('2026-05-03', 22), alone('2026-06-01', 12), alone('2026-06-10', 13))).toMatchObject({ 'wet-wall': 'seen-sound' });
  });

  it('say that a bonded wall does not dry by itself, with the reason, and hand it on', () => {
    const bonded = { ...rig, construction: 'bonded' as const };
    const plan = planOf(bonded, stateOf(bonded, rained), day('2026-05-20'));
    const wall = plan.findings.find((f) => f.rule === 'wet-wall');
    expect(wall).toMatchObject({ who: 'professional', urgency: 'this-season' });
    const slow = wall?.because.find((b) => b.worksheet?.id === 'drying-time');
    // A foot against an eighth of an inch: 96 times the way, 9216 times as long.
    expect(slow?.text).toContain('about 9000 times as long');
    expect(plan.water.leaks[0]?.due.find((d) => d.what === 'second-dry')?.from).toBe(civilDay(day('2026-05-14') + 30));
  });

  it('open a wall again that had been dry', () => {
    const dry = [...rained, ...metered('2026-06-10', 12.5), ...metered('2026-06-20', 12)];
    const again = leakAt(isoDay(addMonths(day('2026-06-20'), 3)), ...dry, ...metered('2026-09-01', 19));
    expect(again.dryness.state).toBe('reopened');
    expect(again.stop.state).toBe('reopened');
  });
});
