// Tyres against the rules as written: 80 % of what the tyre should show (29 CFR 1910.177(f)(2), carried to temperature and height), never just air,
// a stay that covers the time, sidewall cracks whatever their depth. Entries are invented; 52 and 53 of 65 psi stand on both sides of the limit.
import { describe, expect, it } from 'vitest';
import { evaluate, worksheetById } from '../../worksheets';
import { judge } from '../judge';
import { remedy } from '../trade';
import { day, nth, type Said, stateOf, station, trialRig, typed } from '../trial-logbook';

const ON = day('2026-05-10');
const psi = (n: number) => typed(n, 'gauge-pressure', 'psi');
const f = (n: number) => typed(n, 'temperature', 'f');
const all = (_looks: 'tyre', said: readonly Said[], more: Parameters<typeof trialRig>[1] = {}) => {
  const rig = trialRig([station('curb.here', 'tyre', { axle: 'axle', face: 'curb' })], more);
  return judge(rig, stateOf(rig, said), ON);
};
const one = (looks: 'tyre', kind: string, body: Record<string, unknown>, more: Parameters<typeof trialRig>[1] = {}) =>
  all(looks, [{ on: '2026-05-03', kind, at: 'curb.here', body }], more);

describe('the 80 % rule for tyres', () => {
  const tyre = (said: readonly Said[]) => all('tyre', said);
  const reading = (on: string, n: number, more: Record<string, unknown> = {}): Said => ({
    on,
    kind: 'tyre-pressure',
    at: 'curb.here',
    body: { pressure: psi(n), tyre_temperature: f(68), rested: 'cold', ...more },
  });
  const set = (on: string, concerns: readonly string[] = []): Said => ({
    on,
    kind: 'pressure-set',
    at: 'curb.here',
    body: { pressure: psi(65), tyre_temperature: f(68) },
    concerns,
  });
  const stay = (span: string): Said => ({ on: span, kind: 'stay', body: { place_name: 'yard' } });

  it('takes the usual temperature and height of the worksheet where the rig does not say how it was set', () => {
    const sheet = worksheetById('tyre-run-flat');
    const inputs = tyre([reading('2026-05-03', 55)])[0]?.because[0]?.worksheet?.inputs;
    if (!sheet || !inputs) throw new Error('the finding names its worksheet');
    const { set_temperature_c: _, set_altitude_m: __, ...left } = inputs;
    const [told, usual] = [evaluate(sheet, inputs), evaluate(sheet, left)];
    expect(usual.ok && told.ok && usual.value.result).toEqual(told.ok && told.value.result);
    expect(Object.keys(inputs)).toEqual(expect.arrayContaining(['set_temperature_c', 'set_altitude_m']));
  });

  it('leaves a tyre alone at its pressure, and within what a gauge can tell', () => {
    expect(tyre([reading('2026-05-03', 65)])).toEqual([]);
    expect(tyre([reading('2026-05-03', 64)])).toEqual([]);
  });

  it('settles a low tyre before moving, oneself', () => {
    expect(tyre([reading('2026-05-03', 58)])[0]).toMatchObject({ urgency: 'before-moving', who: 'yourself', title: 'Tyre low', remedies: ['tyre-set'] });
  });

  it('counts 52 of 65 psi as run flat, and 53 as low', () => {
    expect(tyre([reading('2026-05-03', 52)])[0]).toMatchObject({ title: 'Tyre counts as run flat', who: 'professional', remedies: ['tyre-pro'] });
    expect(tyre([reading('2026-05-03', 53)])[0]).toMatchObject({ title: 'Tyre low', who: 'yourself' });
  });

  it('carries the set pressure to the temperature of the reading: 52 psi at 32 °F is not 80 %', () => {
    expect(tyre([reading('2026-05-03', 52, { tyre_temperature: f(32) })])[0]).toMatchObject({ title: 'Tyre low' });
    expect(tyre([reading('2026-05-03', 60, { tyre_temperature: f(32) })])).toEqual([]);
  });

  it('never says to add air to a tyre that counts as run flat', () => {
    const [found] = tyre([reading('2026-05-03', 40, { driven_since_set: 'yes' })]);
    expect(found?.because.map((b) => b.text).join(' ')).toContain('Do not add air');
    expect(remedy(found?.remedies[0] ?? '')?.steps.join(' ')).toContain('do not fill');
  });

  it('counts it as run flat when only the person says that it was not moved', () => {
    expect(tyre([reading('2026-05-03', 40, { driven_since_set: 'no' })])[0]?.title).toBe('Tyre counts as run flat');
  });

  it('takes it as not moved when one stay covers the time since it was right', () => {
    const found = tyre([stay('2026-01-01/2026-05-09'), reading('2026-02-01', 65), reading('2026-05-03', 40)])[0];
    expect(found).toMatchObject({ title: 'Tyre far down, not moved since it was right', who: 'yourself', urgency: 'before-moving', remedies: ['tyre-from-a-distance'] });
    expect(found?.because.flatMap((b) => b.entries)).toEqual(expect.arrayContaining([nth(1), nth(2), nth(3)]));
  });

  it('does not, when the stay began later, when there was a leg, or when it is said to have been driven', () => {
    expect(tyre([stay('2026-03-01/2026-05-09'), reading('2026-02-01', 65), reading('2026-05-03', 40)])[0]?.title).toBe('Tyre counts as run flat');
    expect(tyre([stay('2026-01-01/2026-05-09'), reading('2026-02-01', 65), { on: '2026-04-01', kind: 'leg', body: {} }, reading('2026-05-03', 40)])[0]?.title).toBe(
      'Tyre counts as run flat',
    );
    expect(tyre([stay('2026-01-01/2026-05-09'), reading('2026-02-01', 65), reading('2026-05-03', 40, { driven_since_set: 'yes' })])[0]?.title).toBe('Tyre counts as run flat');
  });

  it('gives it to a professional when it recurs', () => {
    const found = tyre([stay('2025-09-01/2026-05-09'), reading('2025-10-01', 65), reading('2025-12-01', 40), set('2025-12-02'), reading('2026-05-03', 40)])[0];
    expect(found).toMatchObject({ title: 'Tyre far down, not moved since it was right', who: 'professional', remedies: ['tyre-pro'] });
  });

  it('is not cured by air: a later good reading and a set pressure leave it run flat', () => {
    const finding = `tyre-pressure/curb.here@outside/${nth(1)}`;
    const found = tyre([reading('2026-05-03', 40), set('2026-05-04', [finding]), reading('2026-05-05', 65)]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ id: finding, life: 'open', title: 'Tyre counts as run flat', who: 'professional' });
  });

  it("is settled by a professional's work that names it, and by another tyre", () => {
    const finding = `tyre-pressure/curb.here@outside/${nth(1)}`;
    expect(
      tyre([
        reading('2026-05-03', 40),
        { on: '2026-05-04', kind: 'professional-work', at: 'curb.here', body: { what: 'taken off and looked at', who: 'tyre trade' }, concerns: [finding] },
        reading('2026-05-06', 65),
      ])[0]?.life,
    ).toBe('proved');
    expect(tyre([reading('2026-05-03', 40), { on: '2026-05-04', kind: 'tyre-fitted', at: 'curb.here', body: {} }])[0]?.life).toBe('proved');
  });

  it('cannot be judged without the pressure to set, and says so', () => {
    expect(all('tyre', [reading('2026-05-03', 40)], { set_pressure_pa: {} })[0]).toMatchObject({ urgency: 'watch', title: 'Tyre pressure read, set pressure not known' });
  });

  it('takes 4/32 in as the least tread on the steered tyres of a motorhome', () => {
    const axles = [
      { id: 'axle', x_m: 1, tyre: '', tyre_diameter_m: 0.7, tyre_width_m: 0.2, dual: false, kind: '', host_vehicle: false, outer_edge_m: 0 },
      { id: 'rear', x_m: 6, tyre: '', tyre_diameter_m: 0.7, tyre_width_m: 0.2, dual: true, kind: '', host_vehicle: false, outer_edge_m: 0 },
    ];
    const tread = (n: number, kind: 'class-a' | 'travel-trailer') => one('tyre', 'tyre-tread', { depth: typed(n, 'small-length', '32in') }, { kind, axles });
    expect(tread(4, 'class-a')[0]?.title).toBe('Tyre tread worn out');
    expect(tread(5, 'class-a')).toEqual([]);
    expect(tread(4, 'travel-trailer')).toEqual([]);
  });
});

describe('a sidewall crack', () => {
  const finding = `tyre-sidewall:cracks/curb.here@outside/${nth(1)}`;
  const cracked: Said = { on: '2026-05-03', kind: 'tyre-sidewall', at: 'curb.here', body: { cracks: 'fine' } };

  it('stays until a professional has looked, although a later look misses it', () => {
    expect(all('tyre', [cracked, { on: '2026-05-05', kind: 'tyre-sidewall', at: 'curb.here', body: { cracks: 'none' } }])[0]?.life).toBe('open');
    expect(all('tyre', [cracked, { on: '2026-05-05', kind: 'cleaned', at: 'curb.here', body: { with_what: 'soap-and-water' }, concerns: [finding] }])[0]?.life).toBe('open');
    expect(
      all('tyre', [cracked, { on: '2026-05-05', kind: 'professional-work', at: 'curb.here', body: { what: 'looked at', who: 'tyre trade' }, concerns: [finding] }])[0]?.life,
    ).toBe('proof-due');
  });

  it('shows the depth table and takes nothing from the urgency for it', () => {
    const [found] = all('tyre', [cracked]);
    expect(found?.because.map((b) => b.text).join(' ')).toContain('makes nothing less urgent');
  });
});
