// What must hold for any logbook, tried on random ones: entries of many kinds at a few places, late and early, with care and decisions that
// name earlier findings, withdrawals and corrections, stays and legs. A plan brought up to date entry by entry is the plan made anew,
// byte for byte; every reason names entries that stand in the logbook and a source; no open place is drawn as sound.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kinds } from '../entries';
import { advance, type Book } from '../logbook';
import type { Rig } from '../rig';
import { civilDay, isoDay } from '../units';
import { isOpen, isWork } from './finding';
import { judge, judgePlace } from './judge';
import { sceneOf } from './places';
import { type Planned, planAfter, planOf } from './plan';
import { day, linesOf, nth, type Said, station, trialRig, typed } from './trial-logbook';

const rig = trialRig([
  station('roof.vent', 'vent-hatch'),
  station('roof.edge', 'roof-edge', { group: 'seam' }),
  station('curb.window', 'window', { bead: 'top-and-upper-sides' }),
  station('curb.tyre', 'tyre', { axle: 'axle' }),
  station('curb.step', 'step', { cut_through: false }),
  station('curb.wall', 'wall-laminated', { group: 'area', cut_through: false }),
]);
const START = day('2025-01-01');
const SPAN = 480;
const ON = civilDay(START + SPAN);

const grade = fc.constantFrom('S0', 'S1', 'S2', 'S3', 'S4', 'S5');
const looks: fc.Arbitrary<Omit<Said, 'on'>> = fc.oneof(
  fc.record({ kind: fc.constant('seal-grade'), at: fc.constantFrom('roof.vent', 'roof.edge', 'curb.window'), body: fc.record({ grade }) }),
  fc.record({
    kind: fc.constant('seal-grade'),
    at: fc.constant({ at: 'stretch' as const, station: 'roof.edge', side: 'outside' as const, from_m: 1, to_m: 2 }),
    body: fc.record({ grade, defects: fc.constant(['edge-lifts']) }),
  }),
  fc.record({
    kind: fc.constant('tyre-pressure'),
    at: fc.constant('curb.tyre'),
    body: fc.integer({ min: 35, max: 70 }).map((n) => ({ pressure: typed(n, 'gauge-pressure', 'psi'), tyre_temperature: typed(68, 'temperature', 'f'), rested: 'cold' })),
  }),
  fc.record({ kind: fc.constant('tyre-sidewall'), at: fc.constant('curb.tyre'), body: fc.record({ cracks: fc.constantFrom('none', 'fine', 'deepest') }) }),
  fc.record({ kind: fc.constant('tyre-date-code'), at: fc.constant('curb.tyre'), body: fc.record({ code: fc.constantFrom('2022', '1020', '1014', '317') }) }),
  fc.record({
    kind: fc.constant('step-condition'),
    at: fc.constant('curb.step'),
    body: fc.constantFrom({ verdict: 'sound' }, { verdict: 'something-wrong', defects: ['step.loose', 'step.rust'] }),
  }),
  fc.record({
    kind: fc.constant('look'),
    at: fc.constantFrom('roof.vent', 'curb.window'),
    body: fc.constantFrom({ verdict: 'sound' }, { verdict: 'something-wrong' }, { verdict: 'something-wrong', defects: ['window.weep-blocked', 'window.rubber-shrunk'] }),
  }),
  fc.record({
    kind: fc.constant('skin-condition'),
    at: fc.integer({ min: 0, max: 4 }).map((x) => ({ at: 'point' as const, face: 'curb', side: 'outside' as const, point_m: [x / 10, 1] as const })),
    body: fc.constantFrom({ verdict: 'sound' }, { verdict: 'something-wrong', signs: ['bubble'], warmth: 'hot' }, { verdict: 'something-wrong', signs: ['bubble', 'soft'] }),
  }),
  fc.record({ kind: fc.constant('could-not-see'), at: fc.constantFrom('roof.vent', 'curb.step'), body: fc.constant({ reason: 'not-safe' }) }),
  fc.record({ kind: fc.constant('out-of-the-ordinary'), body: fc.constantFrom({ what: 'squeaks' }, { what: 'smell', danger: ['gas-smell'] }) }),
  fc.record({
    kind: fc.constantFrom('wood-moisture-pin', 'wood-moisture-pinless'),
    at: fc.oneof(
      fc.constant('curb.window'),
      fc.integer({ min: 0, max: 3 }).map((x) => ({ at: 'point' as const, face: 'curb', side: 'inside' as const, point_m: [x, 1] as const })),
    ),
    side: fc.constant('inside' as const),
    body: fc.tuple(fc.integer({ min: 8, max: 32 }), fc.boolean()).map(([n, dry]) => ({
      reading: typed(n, 'moisture-content', 'percent'),
      material: 'softwood',
      ...(dry ? { dry_reference: true } : {}),
    })),
  }),
  fc.record({ kind: fc.constant('rain-fell'), body: fc.constantFrom({}, { amount: typed(12, 'length', 'mm'), while: 'driving' }) }),
  fc.record({
    kind: fc.constant('lived-air'),
    body: fc.integer({ min: 30, max: 90 }).map((rh) => ({ temperature: typed(68, 'temperature', 'f'), relative_humidity: typed(rh, 'relative-humidity', 'percent') })),
  }),
  fc.record({
    kind: fc.constant('water-test'),
    at: fc.constantFrom('curb.window', 'roof.vent'),
    body: fc.constantFrom({ how: 'hose', result: 'came-in' }, { how: 'hose', result: 'stayed-dry', kept_dry: true }),
  }),
  fc.record({ kind: fc.constant('other-cause'), body: fc.constantFrom({ cause: 'plumbing', answer: 'ruled-out' }, { cause: 'plumbing', answer: 'it-is-this' }) }),
  fc.record({ kind: fc.constant('set-pressure'), body: fc.integer({ min: 50, max: 65 }).map((n) => ({ axle: 'axle', pressure: typed(n, 'gauge-pressure', 'psi') })) }),
  fc.record({ kind: fc.constantFrom('stay', 'leg'), body: fc.constant({ place_name: 'yard' }) }),
  fc.record({ kind: fc.constant('round-begun'), body: fc.constant({ form: 'full', steps: [{ station: 'roof.vent', side: 'outside' }] }) }),
);

/** Care, decisions and proofs name one of the entries before them, by itself or as a finding. */
const acts = fc.record({
  act: fc.constantFrom(
    { kind: 'resealed', body: { removed: 'all', product_family: 'hybrid' } },
    { kind: 'professional-work', body: { what: 'done', who: 'workshop' } },
    { kind: 'covered', body: { with_what: 'tape' } },
    { kind: 'pressure-set', body: { pressure: typed(65, 'gauge-pressure', 'psi') } },
    { kind: 'tyre-fitted', body: {} },
    { kind: 'proof-seen', body: { result: 'held' } },
    { kind: 'proof-seen', body: { result: 'did-not-hold' } },
    { kind: 'put-off', body: { until: isoDay(civilDay(START + 300)) } },
    { kind: 'put-off', body: { until: isoDay(civilDay(START + 900)) } },
    { kind: 'declined', body: {} },
    { kind: 'judged-otherwise', body: { urgency: 'no-fault', why: 'looked' } },
    { kind: 'withdrawal', body: {} },
    { kind: 'correction', body: { changed: { observed_at: `${isoDay(civilDay(START + 50))}T08:00:00Z` } } },
  ),
  names: fc.nat(),
  asFinding: fc.boolean(),
});

const said = fc.array(fc.tuple(fc.oneof({ weight: 3, arbitrary: looks }, acts), fc.nat({ max: SPAN - 1 })), { minLength: 1, maxLength: 40 }).map((list) => {
  const all: Said[] = [];
  for (const [what, n] of list) {
    const on = isoDay(civilDay(START + n));
    if (!('act' in what)) {
      all.push({ ...what, on });
      continue;
    }
    if (all.length === 0) continue;
    const named = what.names % all.length;
    const target = all[named];
    const at = target?.at;
    const place =
      at === undefined
        ? 'rig'
        : typeof at === 'string'
          ? `${at}@${target?.side ?? 'outside'}`
          : 'station' in at
            ? `${at.station}@${at.side}`
            : `face:curb@${'side' in at ? at.side : 'outside'}`;
    const amends = what.act.kind === 'withdrawal' || what.act.kind === 'correction';
    const rule = target?.kind.startsWith('wood-moisture') ? (what.names % 2 === 0 ? 'wet-wall' : 'water-coming-in') : target?.kind;
    const concern = what.asFinding && !amends ? `${rule}/${place}/${nth(named + 1)}` : nth(named + 1);
    all.push({ on, ...what.act, ...(at === undefined || amends ? {} : { at }), concerns: [concern] });
  }
  return all;
});

describe('for any logbook', () => {
  it('a plan brought up to date entry by entry is the plan made anew', () => {
    fc.assert(
      fc.property(said, fc.integer({ min: 1, max: 5 }), (entries, step) => {
        const lines = linesOf(entries);
        let book: Book<Rig> | undefined;
        let planned: Planned | undefined;
        for (let i = 0; i < lines.length; i += step) {
          book = advance(kinds, rig, book, lines.slice(i, i + step));
          planned = planAfter(planned, book.state.subject, book.state, ON);
        }
        const full = advance(kinds, rig, undefined, lines);
        if (!planned) return;
        expect(JSON.stringify(planned.plan)).toBe(JSON.stringify(planOf(full.state.subject, full.state, ON)));
      }),
      { numRuns: 150 },
    );
  });

  it('one place judged for itself gives the findings that the whole logbook has there', () => {
    fc.assert(
      fc.property(said, (entries) => {
        const { state } = advance(kinds, rig, undefined, linesOf(entries));
        const all = judge(state.subject, state, ON);
        for (const scene of ['roof.vent', 'roof.edge', 'curb.tyre', 'curb.window', 'face:curb@outside', 'face:curb@inside', 'rig'])
          expect(judgePlace(state.subject, state, ON, scene)).toEqual(all.filter((f) => sceneOf(f.place) === scene));
      }),
      { numRuns: 60 },
    );
  });

  it('every reason names entries that stand in the logbook, and a source', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(said, (entries) => {
        const { state } = advance(kinds, rig, undefined, linesOf(entries));
        const { plan } = planAfter(undefined, rig, state, ON);
        for (const finding of plan.findings) {
          seen.add(`${finding.urgency} ${finding.life}`);
          seen.add(finding.rule);
          expect(finding.because.length).toBeGreaterThan(0);
          expect(state.standing.has(finding.raised_by)).toBe(true);
          for (const because of finding.because) {
            expect(because.entries.length, because.text).toBeGreaterThan(0);
            for (const id of because.entries) expect(state.standing.has(id), because.text).toBe(true);
            expect(because.source.text).not.toBe('');
            expect(because.text).toMatch(/[.…]$/);
          }
        }
        for (const n of plan.not_seen) for (const id of n.because.entries) expect(state.standing.has(id)).toBe(true);
      }),
      { numRuns: 300, seed: 1 },
    );
    for (const urgency of ['do-not-use', 'before-moving', 'before-rain', 'this-season', 'watch'])
      expect(
        [...seen].some((s) => s.startsWith(urgency)),
        urgency,
      ).toBe(true);
    for (const rule of ['water-coming-in', 'wet-wall']) expect([...seen], rule).toContain(rule);
    for (const life of ['open', 'proof-due', 'proved', 'reopened', 'put-off', 'declined', 'judged-otherwise'])
      expect(
        [...seen].some((s) => s.endsWith(` ${life}`)),
        life,
      ).toBe(true);
  });

  it('findings have each their own name, every piece of work is in one job, and no open or unseen place is drawn as sound', () => {
    fc.assert(
      fc.property(said, (entries) => {
        const { state } = advance(kinds, rig, undefined, linesOf(entries));
        const { plan, marks, judged } = planAfter(undefined, rig, state, ON);
        expect(new Set(judged.findings.map((f) => f.id)).size).toBe(judged.findings.length);
        expect(new Set(plan.jobs.map((j) => j.id)).size).toBe(plan.jobs.length);
        expect(plan.jobs.flatMap((j) => j.findings).sort()).toEqual(
          plan.findings
            .filter((f) => isWork(f) || f.life === 'proof-due')
            .map((f) => f.id)
            .sort(),
        );
        for (const f of plan.findings) if (isOpen(f) && f.station !== undefined) expect(marks[f.station]).not.toBe('sound');
        for (const n of plan.not_seen) expect(marks[n.station]).not.toBe('sound');
        for (const s of rig.stations) if (marks[s.id] === 'sound') expect(judged.scenes.get(s.id)?.looked).toBeDefined();
        if (plan.findings.some((f) => isWork(f) && f.judged === undefined && (f.urgency === 'do-not-use' || f.urgency === 'before-moving'))) expect(plan.ready.answer).toBe('no');
        if (plan.ready.answer === 'no') expect(plan.ready.because.length).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
  });
});
