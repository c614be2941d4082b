// What is bought for sealing: the family by the table of bonds for the surface that the layout itself records, one lap sealant for one visit
// where one does, and lengths that people of either system can read. Bonds were read from data sheets; that the non-sag grade stands in for
// the self-levelling one is common practice, no published source.
import { describe, expect, it } from 'vitest';
import { SURFACES } from '../entries';
import { layoutFrom, type RigKindId } from '../rig';
import { bonds, TOUCHED } from '../science';
import { planOf } from './plan';
import { day, type Said, stateOf, station, trialRig } from './trial-logbook';

const skylight = station('roof.skylight', 'skylight', { sealed_to: 'tpo' });
const seam = station('roof.seam', 'cap-seam', { group: 'seam', sealed_to: 'tpo', bead_m: 2.4 });
const window = station('curb.window', 'window', { sealed_to: 'fibreglass', bead: 'top-and-upper-sides', bead_m: 0.9 });
const rig = trialRig([skylight, seam, window], { roof: 'tpo' });
const open = (at: string): Said => ({ on: '2026-05-03', kind: 'seal-grade', at, body: { grade: 'S4' } });
const planned = (said: readonly Said[], of = rig) => planOf(of, stateOf(of, said), day('2026-05-10'));
const beads = (said: readonly Said[], of = rig): readonly string[] =>
  planned(said, of)
    .shopping.filter((m) => m.worked?.worksheet === 'packages-needed')
    .map((m) => m.material);

describe('what a bead is laid on', () => {
  it('is recorded by the layouts under the ids that the table of bonds knows', () => {
    const known: readonly string[] = SURFACES.map((s) => s.id);
    for (const b of bonds) expect([...known, 'old-silicone', 'asphalt'], b.surface).toContain(b.surface);
    expect(TOUCHED.map((t) => t.id)).toEqual(known);
    const kinds: readonly RigKindId[] = ['travel-trailer', 'fifth-wheel', 'class-a', 'class-b', 'class-c', 'truck-camper', 'folding-camper', 'teardrop'];
    const covers = [
      ['epdm', 'corrugated-aluminium', 'hung'],
      ['tpo', 'fibreglass', 'bonded'],
      ['aluminium', 'sheet-aluminium', 'hung'],
      ['coated', 'moulded-fibreglass', 'moulded'],
      ['pvc', 'painted-steel', 'bonded'],
    ] as const;
    for (const kind of kinds)
      for (const [roof, skin, construction] of covers) {
        const made = layoutFrom({ kind, name: 'ours', skin, construction, roof });
        if (!made.ok) throw new Error(JSON.stringify(made.refusals));
        for (const s of made.value.stations) expect(known, `${kind} ${s.id}`).toContain(s.sealed_to);
      }
  });
});

describe('on one visit', () => {
  it('one lap sealant does where one job needs the non-sag grade; each job and the list name the same', () => {
    expect(beads([open('roof.skylight')])).toEqual(['lap-self-levelling']);
    expect(beads([open('roof.seam')])).toEqual(['lap-non-sag']);
    expect(beads([open('roof.skylight'), open('roof.seam')])).toEqual(['lap-non-sag']);
    const { jobs, shopping } = planned([open('roof.skylight'), open('roof.seam')]);
    for (const job of jobs) expect(job.materials.map((m) => m.material)).toContain('lap-non-sag');
    expect(shopping.find((m) => m.material === 'lap-non-sag')?.length_m).toBe(5.2);
  });

  it('a wall keeps its own family, and what stays is not mixed with another', () => {
    expect(beads([open('roof.seam'), open('curb.window')])).toEqual(['hybrid', 'lap-non-sag']);
    const kept = trialRig([station('roof.vent', 'vent-hatch', { sealed_with: 'lap-self-levelling', sealed_to: 'epdm' }), seam], { roof: 'epdm' });
    expect(beads([open('roof.vent'), open('roof.seam')], kept)).toEqual(['lap-non-sag', 'lap-self-levelling']);
  });

  it('takes the better family by the table before the usual one', () => {
    const acrylic = trialRig([station('roof.skylight', 'skylight', { sealed_to: 'acrylic' }), seam], { roof: 'tpo' });
    expect(beads([open('roof.skylight')], acrylic)).toEqual(['hybrid']);
  });
});

describe('words of the shopping list', () => {
  const words = planned([open('roof.skylight'), open('roof.seam'), open('curb.window')]).shopping;

  it('tell lengths in both systems, and packages in their number', () => {
    for (const m of words) {
      if (m.length_m !== undefined) expect(m.because).toMatch(/^\d+ ft \d+ in \(\d+\.\d\d m\)/);
      expect(/^\w+s\b/.test(m.package_words), `${m.packages} ${m.package_words}`).toBe(m.packages !== 1);
    }
    expect(words.some((m) => m.packages > 1)).toBe(true);
  });

  it('keep capitals for the start of a sentence and for abbreviations, and say nothing twice', () => {
    const text = words.map((m) => m.because).join(' ');
    expect(text).toContain('Goes with fibreglass or gelcoat');
    expect(text).toContain('on TPO');
    for (const m of words) expect(m.because.split('. ').length).toBe(new Set(m.because.split('. ')).size);
  });
});
