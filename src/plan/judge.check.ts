// The life of a finding, walked through by hand on an invented logbook: raised, worse, mended, proved, reopened, decided about.
// There is no published table for this; the expected answers follow the rules as they are written in the docs of this room.
import { describe, expect, it } from 'vitest';
import { judge } from './judge';
import { day, nth, type Said, stateOf, station, trialRig } from './trial-logbook';

const vent = 'roof.vent';
const rig = trialRig([station(vent, 'vent-hatch', { sealed_with: 'lap-self-levelling' })]);
const grade = (on: string, g: string, defects: readonly string[] = []): Said => ({
  on,
  kind: 'seal-grade',
  at: vent,
  body: { grade: g, ...(defects.length > 0 ? { defects } : {}) },
});
const reseal = (on: string, ...concerns: string[]): Said => ({ on, kind: 'resealed', at: vent, body: { removed: 'loose', product_family: 'lap-self-levelling' }, concerns });
const FIRST = `seal-grade/${vent}@outside/${nth(1)}`;
const at = (on: string, ...said: Said[]) => judge(rig, stateOf(rig, said), day(on));

describe('the life of a finding', () => {
  it('is raised by the first look that shows it and keeps that name when later looks show it again', () => {
    const [finding, ...more] = at('2026-09-20', grade('2026-05-03', 'S3'), grade('2026-09-19', 'S4', ['cracked-through']));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      id: FIRST,
      raised_by: nth(1),
      life: 'open',
      title: 'Seal open',
      urgency: 'before-rain',
      since: day('2026-05-03'),
      last_seen: day('2026-09-19'),
    });
  });

  it('counts its urgency from the look that made it so urgent', () => {
    expect(at('2026-09-20', grade('2025-05-03', 'S1'), grade('2026-05-03', 'S4'))[0]).toMatchObject({ id: FIRST, urgency: 'before-rain', since: day('2026-05-03') });
  });

  it('is mended by care that names it, with its proof due from the first day that counts', () => {
    expect(at('2026-05-05', grade('2026-05-03', 'S4'), reseal('2026-05-04', FIRST))[0]).toMatchObject({ life: 'proof-due', due: day('2026-05-11'), settled_by: nth(2) });
  });

  it('is not mended by care that does not name it', () => {
    expect(at('2026-05-05', grade('2026-05-03', 'S4'), reseal('2026-05-04'))[0]).toMatchObject({ life: 'open' });
  });

  it('may be named by the entry that raised it, and by a later look that showed it', () => {
    expect(at('2026-05-05', grade('2026-05-03', 'S4'), reseal('2026-05-04', nth(1)))[0]?.life).toBe('proof-due');
    expect(at('2026-05-15', grade('2026-05-03', 'S3'), grade('2026-05-10', 'S4'), reseal('2026-05-14', `seal-grade/${vent}@outside/${nth(2)}`))[0]?.life).toBe('proof-due');
  });

  it('is proved by a sound look on or after the day that counts, and not by one before it', () => {
    expect(at('2026-06-01', grade('2026-05-03', 'S4'), reseal('2026-05-04', FIRST), grade('2026-05-10', 'S0'))[0]).toMatchObject({ life: 'proof-due' });
    expect(at('2026-06-01', grade('2026-05-03', 'S4'), reseal('2026-05-04', FIRST), grade('2026-05-11', 'S0'))[0]).toMatchObject({
      life: 'proved',
      settled_by: nth(3),
      closed: day('2026-05-11'),
    });
  });

  it('is reopened when a look after the care shows it again', () => {
    const [finding] = at('2026-06-01', grade('2026-05-03', 'S4'), reseal('2026-05-04', FIRST), grade('2026-05-20', 'S3'));
    expect(finding).toMatchObject({ id: FIRST, life: 'reopened', settled_by: nth(3) });
    expect(finding?.because.at(-1)?.entries).toEqual([nth(2), nth(3)]);
  });

  it('is mended again by care after the reopening', () => {
    expect(at('2026-06-02', grade('2026-05-03', 'S4'), reseal('2026-05-04', FIRST), grade('2026-05-20', 'S3'), reseal('2026-06-01', FIRST))[0]).toMatchObject({
      life: 'proof-due',
      settled_by: nth(4),
    });
  });

  it('is closed by a sound look without care, and a later bad look raises a new finding', () => {
    const findings = at('2026-09-20', grade('2026-05-03', 'S4'), grade('2026-06-03', 'S0'), grade('2026-09-03', 'S3'));
    expect(findings.map((f) => [f.raised_by, f.life])).toEqual([
      [nth(3), 'open'],
      [nth(1), 'seen-sound'],
    ]);
  });

  it('is proved when the mended seal is only dull later on; the dull seal is a new finding to watch', () => {
    const findings = at('2026-09-20', grade('2026-05-03', 'S4'), reseal('2026-05-04', FIRST), grade('2026-09-03', 'S1'));
    expect(findings.map((f) => [f.raised_by, f.urgency, f.life])).toEqual([
      [nth(3), 'watch', 'open'],
      [nth(1), 'before-rain', 'proved'],
    ]);
  });

  it('keeps its care when the entry that raised it is withdrawn and a later look still shows it', () => {
    const findings = at('2026-06-01', grade('2026-05-03', 'S4'), grade('2026-05-04', 'S4'), reseal('2026-05-05', FIRST), {
      on: '2026-05-06',
      kind: 'withdrawal',
      concerns: [nth(1)],
    });
    expect(findings.map((f) => [f.raised_by, f.life])).toEqual([[nth(2), 'proof-due']]);
  });

  it('is judged by when it was so, not by when it was written down', () => {
    expect(at('2026-09-20', grade('2026-09-03', 'S0'), grade('2026-05-03', 'S4'))[0]).toMatchObject({ raised_by: nth(2), life: 'seen-sound' });
  });

  it('on a stretch of a seam is closed by a sound look at the whole seam', () => {
    const stretch: Said = { on: '2026-05-03', kind: 'seal-grade', at: { at: 'stretch', station: vent, side: 'outside', from_m: 1, to_m: 2 }, body: { grade: 'S4' } };
    expect(at('2026-09-20', stretch, grade('2026-06-03', 'S0')).map((f) => f.life)).toEqual(['seen-sound']);
    expect(at('2026-09-20', stretch, grade('2026-05-02', 'S0')).map((f) => f.life)).toEqual(['open']);
  });
});

const decide = (on: string, kind: string, body: Record<string, unknown>): Said => ({ on, kind, at: vent, body, concerns: [FIRST] });

describe('decisions about a finding', () => {
  const s3 = grade('2026-05-03', 'S3');

  it('keep it on the plan with who decided and why', () => {
    const [finding] = at('2026-06-01', s3, decide('2026-05-04', 'put-off', { until: '2026-07-01', why: 'no dry day' }));
    expect(finding).toMatchObject({ life: 'put-off', due: day('2026-07-01'), settled_by: nth(2), urgency: 'before-rain' });
    expect(finding?.because.at(-1)?.text).toContain('R. Rider');
    expect(finding?.because.at(-1)?.text).toContain('no dry day');
    expect(at('2026-06-01', s3, decide('2026-05-04', 'declined', { why: 'selling it' }))[0]).toMatchObject({ life: 'declined', urgency: 'before-rain' });
    expect(at('2026-06-01', s3, decide('2026-05-04', 'handed-over', { to: 'workshop' }))[0]).toMatchObject({ life: 'handed-over', who: 'professional' });
  });

  it('raise it again on the day to which it was put off', () => {
    expect(at('2026-06-30', s3, decide('2026-05-04', 'put-off', { until: '2026-07-01' }))[0]?.life).toBe('put-off');
    expect(at('2026-07-01', s3, decide('2026-05-04', 'put-off', { until: '2026-07-01' }))[0]).toMatchObject({ life: 'open', settled_by: nth(2) });
  });

  it('do not outlast a look that finds it worse, and do outlast one that finds it the same', () => {
    const s2 = grade('2026-05-03', 'S2');
    const off = decide('2026-05-04', 'put-off', { until: '2027-01-01' });
    expect(at('2026-06-01', s2, off, grade('2026-05-20', 'S4'))[0]).toMatchObject({ life: 'reopened', settled_by: nth(3), urgency: 'before-rain' });
    expect(at('2026-06-01', s2, off, grade('2026-05-20', 'S2'))[0]).toMatchObject({ life: 'put-off' });
  });

  it('show both judgements when a person judges otherwise; the rule is not silenced', () => {
    const [finding] = at('2026-06-01', s3, decide('2026-05-04', 'judged-otherwise', { urgency: 'watch', why: 'only the skin of the bead' }));
    expect(finding).toMatchObject({ life: 'judged-otherwise', urgency: 'before-rain', judged: { urgency: 'watch', by: 'R. Rider' } });
  });

  it('give way to care that comes after them, and the later decision counts', () => {
    expect(at('2026-06-01', s3, decide('2026-05-04', 'declined', {}), reseal('2026-05-05', FIRST))[0]?.life).toBe('proof-due');
    expect(at('2026-06-01', s3, decide('2026-05-04', 'declined', {}), decide('2026-05-05', 'put-off', { until: '2027-01-01' }))[0]?.life).toBe('put-off');
  });
});

describe('proof', () => {
  const proof = (on: string, result: string, names: string): Said => ({ on, kind: 'proof-seen', at: vent, body: { result, by: 'hose' }, concerns: [names] });

  it('that it held proves it, whether it names the finding or the care', () => {
    for (const names of [FIRST, nth(2)])
      expect(at('2026-06-01', grade('2026-05-03', 'S4'), reseal('2026-05-04', FIRST), proof('2026-05-06', 'held', names))[0]).toMatchObject({ life: 'proved', settled_by: nth(3) });
  });

  it('that it did not hold reopens it, and care after that mends it again', () => {
    const said = [grade('2026-05-03', 'S4'), reseal('2026-05-04', FIRST), proof('2026-05-06', 'did-not-hold', FIRST)];
    expect(at('2026-06-01', ...said)[0]).toMatchObject({ life: 'reopened', settled_by: nth(3) });
    expect(at('2026-06-01', ...said, reseal('2026-05-08', FIRST))[0]).toMatchObject({ life: 'proof-due', settled_by: nth(4) });
  });

  it('ends the finding: a bad look after it raises another', () => {
    const findings = at('2026-09-20', grade('2026-05-03', 'S4'), reseal('2026-05-04', FIRST), proof('2026-05-20', 'held', FIRST), grade('2026-09-03', 'S4'));
    expect(findings.map((f) => [f.raised_by, f.life])).toEqual([
      [nth(4), 'open'],
      [nth(1), 'proved'],
    ]);
  });

  it('is not given by a cover, nor by washing a seal', () => {
    const cover: Said = { on: '2026-05-04', kind: 'covered', at: vent, body: { with_what: 'tape' }, concerns: [FIRST] };
    const wash: Said = { on: '2026-05-04', kind: 'cleaned', at: vent, body: { with_what: 'soap-and-water' }, concerns: [FIRST] };
    expect(at('2026-06-01', grade('2026-05-03', 'S4'), cover)[0]).toMatchObject({ life: 'open' });
    expect(at('2026-06-01', grade('2026-05-03', 'S4'), cover)[0]?.because.at(-1)?.text).toContain('a cover is not a repair');
    expect(at('2026-06-01', grade('2026-05-03', 'S4'), wash)[0]).toMatchObject({ life: 'open' });
  });
});

describe('several defects at one place', () => {
  const look = (on: string, ...defects: string[]): Said => ({
    on,
    kind: 'look',
    at: vent,
    body: defects.length === 0 ? { verdict: 'sound' } : { verdict: 'something-wrong', defects },
  });

  it('are findings of their own, and one that is not ticked again is not thereby gone', () => {
    const findings = at('2026-09-20', look('2026-05-03', 'vent-hatch.lid-cracked', 'vent-hatch.gasket-flat'), look('2026-06-03', 'vent-hatch.gasket-flat'));
    expect(findings.map((f) => [f.defect, f.life])).toEqual([
      ['vent-hatch.lid-cracked', 'open'],
      ['vent-hatch.gasket-flat', 'open'],
    ]);
    expect(at('2026-09-20', look('2026-05-03', 'vent-hatch.lid-cracked'), look('2026-06-03')).map((f) => f.life)).toEqual(['seen-sound']);
  });

  it('one that care named is proved by a later look that does not show it', () => {
    const named = `trade-defect:vent-hatch.lid-cracked/${vent}@outside/${nth(1)}`;
    const findings = at(
      '2026-09-20',
      look('2026-05-03', 'vent-hatch.lid-cracked', 'vent-hatch.gasket-flat'),
      { on: '2026-05-04', kind: 'replaced', at: vent, body: { what: 'lid' }, concerns: [named] },
      look('2026-06-03', 'vent-hatch.gasket-flat'),
    );
    expect(findings.map((f) => [f.defect, f.life])).toEqual([
      ['vent-hatch.gasket-flat', 'open'],
      ['vent-hatch.lid-cracked', 'proved'],
    ]);
  });

  it('are not closed by a sound answer to another question', () => {
    expect(at('2026-09-20', look('2026-05-03', 'vent-hatch.lid-cracked'), grade('2026-06-03', 'S0')).map((f) => f.life)).toEqual(['open']);
  });
});
