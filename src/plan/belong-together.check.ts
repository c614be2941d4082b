// Findings of one station with one likely cause, and what comes first among equals. There is no published table; expected answers follow the
// written rules: an open seal is the first suspect for water that shows at the same opening, and danger runs from fire through wheels, footing and
// what opens on the road to water and wear.
import { describe, expect, it } from 'vitest';
import { dangerOf } from './danger';
import { inUrgency, judge } from './judge';
import { planOf } from './plan';
import { defects } from './trade';
import { day, nth, type Said, stateOf, station, trialRig, typed } from './trial-logbook';

const window = station('curb.window', 'window', { bead: 'top-and-upper-sides', bead_m: 0.9 });
const other = station('curb.window-2', 'window', { bead: 'top-and-upper-sides', bead_m: 0.9, shape: { form: 'rect', x_m: 4, y_m: 1, w_m: 0.6, h_m: 0.6 } });
const tyre = station('curb.tyre', 'tyre', { axle: 'axle' });
const hatch = station('curb.hatch', 'compartment-door');
const step = station('curb.step', 'step', { cut_through: false });
const gas = station('curb.gas', 'lp-compartment');
const seam = station('roof.seam', 'cap-seam', { group: 'seam' });
const rig = trialRig([window, other, tyre, hatch, step, gas, seam]);
const ON = day('2026-05-10');
const plan = (...said: Said[]) => planOf(rig, stateOf(rig, said), ON);

const open: Said = { on: '2026-05-03', kind: 'seal-grade', at: 'curb.window', body: { grade: 'S4' } };
const stain: Said = { on: '2026-05-03', kind: 'inside-signs', at: 'curb.window', side: 'inside', body: { verdict: 'something-wrong', signs: ['stain'] } };
const damp: Said = {
  on: '2026-05-03',
  kind: 'wood-moisture-pin',
  at: 'curb.window',
  side: 'inside',
  body: { reading: typed(22, 'moisture-content', 'percent'), material: 'softwood' },
};

describe('an open seal and water at the same window', () => {
  const { findings, jobs } = plan(open, stain, damp);
  const wet = findings.filter((f) => f.rule !== 'seal-grade');

  it('have the seal as the first suspect, with the look that saw it open', () => {
    expect(wet.map((f) => f.rule)).toEqual(['inside-signs', 'water-coming-in', 'wet-wall']);
    for (const f of wet) {
      expect(f.suspects?.[0]).toBe('curb.window');
      expect(f.because.at(-1)).toMatchObject({ entries: [nth(1)] });
      expect(f.because.at(-1)?.text).toContain('The first suspect is the seal of this place itself: seal open, seen on 3 May 2026.');
    }
  });

  it('are jobs that name each other, the seal first in the steps of the wet', () => {
    const [a, b] = jobs;
    expect(jobs).toHaveLength(2);
    expect([a?.belongs_with, b?.belongs_with]).toEqual([[b?.id], [a?.id]]);
    expect(jobs.find((j) => j.remedy === 'wet-inside')?.steps[0]).toMatch(/^Close the seal of this place first \(seal open\)/);
  });

  it('are told alike by the whole history', () => {
    expect(judge(rig, stateOf(rig, [open, stain, damp]), ON)).toEqual(findings);
  });

  it('are apart when the seal is at another window, is only dull, or was closed', () => {
    const resealed: Said = { on: '2026-05-04', kind: 'resealed', at: 'curb.window', body: { removed: 'all', product_family: 'hybrid' }, concerns: [nth(1)] };
    for (const said of [
      [{ ...open, at: 'curb.window-2' }, stain],
      [{ ...open, body: { grade: 'S1' } }, stain],
      [open, stain, resealed],
    ]) {
      const apart = plan(...said);
      for (const j of apart.jobs) expect(j.belongs_with).toBeUndefined();
      expect(JSON.stringify(apart)).not.toContain('The first suspect is the seal');
    }
  });
});

describe('the most dangerous first among equals', () => {
  const wrong = (at: string, ...ids: string[]): Said => ({ on: '2026-05-03', kind: 'look', at, body: { verdict: 'something-wrong', defects: ids } });
  const said: readonly Said[] = [
    { on: '2026-05-03', kind: 'seal-grade', at: 'roof.seam', body: { grade: 'S4', defects: ['edge-lifts'] } },
    wrong('curb.hatch', 'lock-latch.no-hold'),
    { on: '2026-05-03', kind: 'tyre-pressure', at: 'curb.tyre', body: { pressure: typed(57, 'gauge-pressure', 'psi'), tyre_temperature: typed(68, 'temperature', 'f') } },
    wrong('curb.gas', 'lp-compartment.loose'),
  ];

  it('is gas, then the tyre, then the latch, then the seal: jobs, findings and reasons alike', () => {
    const { jobs, findings, ready } = plan(...said);
    const order = ['curb.gas', 'curb.tyre', 'curb.hatch', 'roof.seam'];
    expect(new Set(jobs.map((j) => j.urgency))).toEqual(new Set(['before-moving']));
    expect(jobs.map((j) => j.station)).toEqual(order);
    expect(findings.map((f) => f.station)).toEqual(order);
    expect(ready.because.slice(0, 4).map((b) => b.station)).toEqual(order);
  });

  it('never comes before urgency', () => {
    const { jobs } = plan(...said, { on: '2026-05-03', kind: 'step-condition', at: 'curb.step', body: { verdict: 'something-wrong', defects: ['step.loose'] } });
    expect(jobs.map((j) => j.station)[0]).toBe('curb.step');
  });

  it('knows a level for every defect, and every level has some', () => {
    const [any] = plan(...said).findings;
    if (!any) throw new Error('there is a finding');
    const levels = defects.map((d) => dangerOf({ ...any, id: `look:${d.id}`, rule: 'trade-defect', defect: d.id }, undefined));
    expect(new Set(levels)).toEqual(new Set([0, 1, 2, 3, 4]));
    expect(inUrgency([], rig)).toEqual([]);
  });
});

describe('a tyre that is low', () => {
  const reading = (on: string, psi: number): Said => ({
    on,
    kind: 'tyre-pressure',
    at: 'curb.tyre',
    body: { pressure: typed(psi, 'gauge-pressure', 'psi'), tyre_temperature: typed(68, 'temperature', 'f') },
  });

  it('tells what it lost since it was right, where to look, and when it is for a professional', () => {
    const [finding] = plan(reading('2026-01-10', 65), reading('2026-05-03', 55)).findings;
    const told = finding?.because.at(-1);
    expect(told?.text).toContain('It was right on 10 January 2026, and has lost about 10 psi since, temperature taken out.');
    expect(told?.text).toContain('valve, rim edge, a nail');
    expect(told?.text).toContain('a professional');
    expect(told?.entries).toEqual([nth(1), nth(2)]);
    expect(plan(reading('2026-05-03', 55)).findings[0]?.because.at(-1)?.text).toContain('read it again after a day');
  });

  it('has the limit of one’s own work on the job', () => {
    const [job] = plan(reading('2026-05-03', 55)).jobs;
    expect(job?.hand_over).toContain('loses air again');
    expect(job?.steps.at(-1)).toBe('Loses air again: to a professional');
  });
});
