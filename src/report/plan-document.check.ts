// The plan as a file: the same plan gives the same bytes, days read as days, numbers are rounded here only, and nothing that the plan says is left out.
// Checked on an invented plan by hand; there is no outside table.
import { describe, expect, it } from 'vitest';
import { planOf } from '../plan';
import { day, stateOf, station, trialRig, typed } from '../plan/trial-logbook';
import { planDocument } from './plan-document';
import { planText } from './plan-text';

const rig = trialRig([station('roof.vent', 'vent-hatch'), station('curb.tyre', 'tyre', { axle: 'axle' })]);
const state = stateOf(rig, [
  { on: '2026-05-03', kind: 'seal-grade', at: 'roof.vent', body: { grade: 'S4' } },
  { on: '2026-05-03', kind: 'tyre-pressure', at: 'curb.tyre', body: { pressure: typed(50, 'gauge-pressure', 'psi'), tyre_temperature: typed(61, 'temperature', 'f') } },
]);
const plan = planOf(rig, state, day('2026-05-10'));
const text = planDocument(plan, rig);
const read = JSON.parse(text);

describe('the plan as a file', () => {
  it('is the same bytes for the same plan, whatever the order of its keys', () => {
    const turned = Object.fromEntries(Object.entries(plan).reverse()) as unknown as typeof plan;
    expect(planDocument(turned, rig)).toBe(text);
    expect(text.endsWith('}\n')).toBe(true);
  });

  it('writes days as days and holds every finding, job and thing to buy', () => {
    expect(read).toMatchObject({ format: 'seamward-plan', version: 1, rig: { name: 'Trial' }, plan: { on: '2026-05-10' } });
    expect(read.plan.findings.map((f: { since: string }) => f.since)).toEqual(['2026-05-03', '2026-05-03']);
    for (const part of ['findings', 'jobs', 'shopping', 'not_seen', 'service_due'] as const) expect(read.plan[part]).toHaveLength(plan[part].length);
    expect(read.plan.next_round.on).toBe('2026-05-10');
  });

  it('rounds numbers to six decimals and never writes minus nought', () => {
    const numbers = text.match(/-?\d+\.\d+/g) ?? [];
    expect(numbers.length).toBeGreaterThan(0);
    for (const n of numbers) expect(n.split('.')[1]?.length).toBeLessThanOrEqual(6);
    expect(text).not.toContain('-0,');
  });
});

describe('the plan as plain text', () => {
  it('opens with the answer and its reasons, and groups the work by urgency', () => {
    const plain = planText(plan, rig, { system: 'us', units: {} });
    expect(plain).toMatch(/^Trial, 10 May 2026\n\nReady to roll: no, because\n {2}curb tyre: tyre counts as run flat\.\n/);
    expect(plain.indexOf('Before moving (1)')).toBeLessThan(plain.indexOf('Before rain (1)'));
    expect(plain).toContain('Bead by practice: 9 ft 2 in.');
    expect(planText(plan, rig, { system: 'metric', units: {} })).toContain('Bead by practice: 2.80 m.');
    for (const line of plain.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  it('tells what is only watched in one line each, after the urgent, while the file keeps the reasons; and names jobs that belong together by number', () => {
    const said = stateOf(rig, [
      { on: '2026-05-03', kind: 'seal-grade', at: 'roof.vent', body: { grade: 'S1' } },
      { on: '2026-05-03', kind: 'seal-grade', at: 'roof.vent-2', body: { grade: 'S4' } },
      { on: '2026-05-03', kind: 'inside-signs', at: 'roof.vent-2', side: 'inside', body: { verdict: 'something-wrong', signs: ['stain'] } },
    ]);
    const two = trialRig([station('roof.vent', 'vent-hatch'), station('roof.vent-2', 'vent-hatch')]);
    const watched = planOf(two, said, day('2026-05-10'));
    const plain = planText(watched, two, { system: 'us', units: {} });
    expect(plain).toContain('Watch (1)\n  3. roof vent: Seal dull\n\n');
    expect(plain).not.toContain('Graded S1');
    expect(planDocument(watched, two)).toContain('Graded S1 on 3 May 2026.');
    expect(plain).toContain('Belongs with job 2: one repair may settle both.');
    expect(plain).toContain('Belongs with job 1: one repair may settle both.');
    expect(plain).toContain('For a professional if: reading over 30 %');
  });
});
