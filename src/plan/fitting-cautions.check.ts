// Cautions stand only where what they warn of can happen. There is no published table; expected answers follow each caution's own trigger:
// a way out is an exit window, a door to go through or a roof hatch, a ladder is for what is not reached from the ground, a roof is stepped on only at the roof.
import { describe, expect, it } from 'vitest';
import type { Station } from '../terms';
import { fits, narrowed } from './fitting-cautions';
import { planOf } from './plan';
import { caution, cautions, defect, looks, remedies } from './trade';
import { day, type Said, stateOf, station, trialRig } from './trial-logbook';

const at = (id: string, looksKind: string, x: number, more: Partial<Station> = {}): Station =>
  station(id, looksKind, { shape: { form: 'rect', x_m: x, y_m: 1, w_m: 0.6, h_m: 0.6 }, bead: 'top-and-upper-sides', bead_m: 0.9, ...more });

const exit = at('curb.exit', 'window-exit', 1);
const beside = at('curb.window', 'window', 1.9);
const far = at('curb.window-2', 'window', 4);
const high = at('curb.window-3', 'window', 6, { reach: 'ladder', top_m: 2.2 });
const hatch = at('curb.hatch', 'compartment-door', 3);
const door = at('curb.door', 'entry-door', 7);
const vent = at('roof.vent', 'vent-hatch', 2, { reach: 'ladder' });
const seam = at('roof.seam', 'cap-seam', 0, { group: 'seam', reach: 'ladder' });
const rig = trialRig([exit, beside, far, high, hatch, door, vent, seam]);

const jobsFor = (...said: Said[]) => planOf(rig, stateOf(rig, said), day('2026-05-10')).jobs;
const wrong = (where: string, ...defects: string[]): Said => ({ on: '2026-05-03', kind: 'look', at: where, body: { verdict: 'something-wrong', defects } });
const sealed = (where: string): Said => ({ on: '2026-05-03', kind: 'seal-grade', at: where, body: { grade: 'S4' } });

describe('the way out', () => {
  it('is warned of at a door to go through, not at the door of a compartment', () => {
    expect(jobsFor(wrong('curb.door', 'lock-latch.no-hold'))[0]?.cautions).toContain('egress');
    expect(jobsFor(wrong('curb.hatch', 'lock-latch.no-hold'))[0]?.cautions).not.toContain('egress');
  });

  it('is warned of when the exit or what lies beside it is sealed, and not when it is far away', () => {
    for (const where of ['curb.exit', 'curb.window']) expect(jobsFor(sealed(where))[0]?.cautions, where).toContain('egress');
    expect(jobsFor(sealed('curb.window-2'))[0]?.cautions).not.toContain('egress');
  });
});

describe('ladder and roof', () => {
  it('are warned of only where one is needed and where one may step', () => {
    expect(jobsFor(sealed('curb.window-2'))[0]?.cautions).not.toContain('ladder');
    expect(jobsFor(sealed('curb.window-3'))[0]?.cautions).toContain('ladder');
    expect(jobsFor(sealed('roof.vent'))[0]?.cautions).toEqual(expect.arrayContaining(['ladder', 'roof']));
    expect(jobsFor(wrong('curb.door', 'entry-door.sill-soft'))[0]?.cautions).not.toContain('roof');
  });
});

describe('what is taken in the hand', () => {
  it('is warned of when it is bought for the job: polyurethane; and wires only where there are some', () => {
    expect(jobsFor(sealed('curb.window-2'))[0]?.materials.map((m) => m.material)).toContain('hybrid');
    expect(jobsFor(sealed('curb.window-2'))[0]?.cautions).not.toContain('isocyanate');
    expect(jobsFor(sealed('curb.window-2'))[0]?.cautions).not.toContain('mains');
    expect(jobsFor(sealed('roof.seam'))[0]?.cautions).not.toContain('insects');
  });
});

describe('narrowing', () => {
  it('names cautions that exist, and leaves each of a remedy to at least one kind of station that the remedy is for', () => {
    for (const id of narrowed) expect(caution(id), id).toBeDefined();
    for (const r of remedies)
      for (const c of r.cautions) {
        const anywhere = r.for.some((d) => {
          const kind = d.split('.')[0] ?? '';
          return [...looks.filter((l) => l.id === kind || l.also === kind).map((l) => l.id), kind].some((k) =>
            (['ground', 'ladder'] as const).some((reach) =>
              ['roof', 'curb'].some((face) => {
                const here = at(`${face}.x`, k, 1, { face, reach });
                return ['polyurethane', 'hybrid'].some((family) =>
                  fits(c, { rig: trialRig([here, exit]), station: here, remedy: r.id, seals: true, beads: [family], defects: [defect(d)?.id ?? ''] }),
                );
              }),
            ),
          );
        });
        expect(anywhere, `${r.id}: ${c}`).toBe(true);
      }
    expect(cautions.length).toBeGreaterThan(narrowed.length);
  });
});
