// Each rule against the rules of the trade as the project wrote them down (no published table gives urgencies). Every row is one invented entry,
// or a few, and what must come of it. Figures at limits (80 % of set pressure, 0.5 mm, 2/32 in, 15/20/25/30 %) are tried on both sides.
import { describe, expect, it } from 'vitest';
import { kindById, readBody } from '../../entries';
import { layoutFrom } from '../../rig';
import { URGENCIES, type Urgency, type Who } from '../../terms';
import { evaluate, worksheetById } from '../../worksheets';
import { judge } from '../judge';
import { defect, remedy } from '../trade';
import { day, type Said, stateOf, station, trialRig, typed } from '../trial-logbook';
import { rules } from '.';
import { rulings } from './rulings';
import { waterRules } from './water-rules';

const ON = day('2026-05-10');
const mm = (n: number) => typed(n, 'small-length', 'mm');
const percent = (n: number) => typed(n, 'moisture-content', 'percent');

const stations = (looks: string) => [
  station('curb.here', looks, looks === 'tyre' ? { axle: 'axle', face: 'curb' } : { face: looks.startsWith('roof') || looks.includes('hatch') ? 'roof' : 'curb' }),
];
const all = (looks: string, said: readonly Said[], more: Parameters<typeof trialRig>[1] = {}, on = ON) => {
  const rig = trialRig(stations(looks), more);
  return judge(rig, stateOf(rig, said), on);
};
const one = (looks: string, kind: string, body: Said['body'], more: Parameters<typeof trialRig>[1] = {}) =>
  all(looks, [{ on: '2026-05-03', kind, at: 'curb.here', side: kind === 'inside-signs' ? 'inside' : 'outside', body: body ?? {} }], more);

type Row = readonly [what: string, looks: string, kind: string, body: Record<string, unknown>, urgency: Urgency | 'sound', who?: Who, title?: string];

const ROWS: readonly Row[] = [
  ['S0', 'vent-hatch', 'seal-grade', { grade: 'S0' }, 'sound'],
  ['S1', 'vent-hatch', 'seal-grade', { grade: 'S1' }, 'watch', 'yourself'],
  ['S2', 'vent-hatch', 'seal-grade', { grade: 'S2' }, 'this-season', 'yourself'],
  ['S3', 'vent-hatch', 'seal-grade', { grade: 'S3' }, 'before-rain', 'yourself'],
  ['S4', 'vent-hatch', 'seal-grade', { grade: 'S4' }, 'before-rain', 'yourself'],
  ['S5', 'vent-hatch', 'seal-grade', { grade: 'S5' }, 'before-rain', 'professional'],
  ['S3 with a loose edge on a roof edge, where the wind can lift it', 'roof-edge', 'seal-grade', { grade: 'S3', defects: ['edge-lifts'] }, 'before-moving', 'yourself'],
  ['S4 with a loose edge on a cap seam', 'cap-seam', 'seal-grade', { grade: 'S4', defects: ['edge-lifts'] }, 'before-moving', 'yourself'],
  ['S4 with a loose edge on a side window, out of the wind', 'window', 'seal-grade', { grade: 'S4', defects: ['edge-lifts'] }, 'before-rain', 'yourself'],
  ['S2 that is cracked right through', 'window', 'seal-grade', { grade: 'S2', defects: ['cracked-through'] }, 'before-rain', 'yourself', 'Seal open'],
  ['S2 that does not stick', 'window', 'seal-grade', { grade: 'S2', defects: ['not-adhering'] }, 'before-rain', 'yourself', 'Seal does not stick'],
  ['S2 with a gap of 0.5 mm', 'window', 'seal-grade', { grade: 'S2', gap_width: mm(0.5) }, 'this-season'],
  ['S2 with a gap of 0.6 mm', 'window', 'seal-grade', { grade: 'S2', gap_width: mm(0.6) }, 'before-rain'],
  ['S3 with a piece missing', 'window', 'seal-grade', { grade: 'S3', defects: ['piece-missing'] }, 'before-rain', 'professional', 'Seal failed'],
  ['a row of the table', 'window', 'look', { verdict: 'something-wrong', defects: ['window.weep-blocked'] }, 'this-season', 'yourself'],
  ['something wrong that nobody named', 'window', 'look', { verdict: 'something-wrong' }, 'this-season'],
  ['a sound look', 'window', 'look', { verdict: 'sound' }, 'sound'],
  ['a sidewall crack of the shallowest kind', 'tyre', 'tyre-sidewall', { cracks: 'fine' }, 'before-moving', 'professional'],
  ['a sidewall crack of the deepest kind', 'tyre', 'tyre-sidewall', { cracks: 'deepest' }, 'before-moving', 'professional'],
  ['a bulge', 'tyre', 'tyre-sidewall', { cracks: 'none', damage: ['bulge'] }, 'before-moving', 'professional'],
  ['cord showing', 'tyre', 'tyre-sidewall', { cracks: 'none', damage: ['cord-showing'] }, 'before-moving', 'professional'],
  ['a sound sidewall', 'tyre', 'tyre-sidewall', { cracks: 'none' }, 'sound'],
  ['a date code of three digits', 'tyre', 'tyre-date-code', { code: '317' }, 'before-moving', 'professional', 'Tyre from before 2000: out of service'],
  ['a tyre of four years', 'tyre', 'tyre-date-code', { code: '2022' }, 'sound'],
  ['a tyre of five years', 'tyre', 'tyre-date-code', { code: '1021' }, 'this-season', 'professional', 'Tyre five years old or older'],
  ['a tyre of six years', 'tyre', 'tyre-date-code', { code: '1020' }, 'this-season', 'professional', 'Tyre six years old or older'],
  ['a tyre of ten years', 'tyre', 'tyre-date-code', { code: '1016' }, 'before-moving', 'professional', 'Tyre ten years old or older'],
  ['tread of 3/32 in', 'tyre', 'tyre-tread', { depth: typed(3, 'small-length', '32in') }, 'sound'],
  ['tread of 2/32 in', 'tyre', 'tyre-tread', { depth: typed(2, 'small-length', '32in') }, 'before-moving', 'professional'],
  ['uneven wear', 'tyre', 'tyre-tread', { depth: typed(6, 'small-length', '32in'), wear: 'one-edge' }, 'this-season', 'professional'],
  ['a step that gives', 'step', 'step-condition', { verdict: 'something-wrong', defects: ['step.loose'] }, 'do-not-use'],
  ['a step that does not lock', 'step', 'step-condition', { verdict: 'something-wrong', defects: ['step.wont-lock'] }, 'do-not-use'],
  ['chipped paint on a step', 'step', 'step-condition', { verdict: 'something-wrong', defects: ['step.paint-chipped'] }, 'this-season', 'yourself', 'Step paint chipped'],
  ['a step that gives, ticked in the list of defects', 'step', 'look', { verdict: 'something-wrong', defects: ['step.loose'] }, 'do-not-use'],
  ['gas smell, ticked in the list of defects', 'lp-compartment', 'look', { verdict: 'something-wrong', defects: ['lp-compartment.leak'] }, 'do-not-use', 'professional'],
  ['gas smell, noticed', 'window', 'out-of-the-ordinary', { what: 'smells of gas', danger: ['gas-smell'] }, 'do-not-use', 'professional'],
  ['a live wire, wet', 'window', 'out-of-the-ordinary', { what: 'tingles', danger: ['wet-wire'] }, 'do-not-use', 'professional'],
  ['anything else out of the ordinary', 'window', 'out-of-the-ordinary', { what: 'pulls to the right' }, 'watch'],
  [
    'a bubble on a bonded wall',
    'wall-laminated',
    'skin-condition',
    { verdict: 'something-wrong', signs: ['bubble'], warmth: 'cool' },
    'before-rain',
    'professional',
    'Skin has let go of the wall',
  ],
  ['skin that moves on a bonded wall', 'wall-laminated', 'skin-condition', { verdict: 'something-wrong', signs: ['moves-under-hand'] }, 'before-rain', 'professional'],
  ['a bubble in the heat', 'wall-laminated', 'skin-condition', { verdict: 'something-wrong', signs: ['bubble'], warmth: 'hot' }, 'watch'],
  [
    'skin that moves in the heat',
    'wall-laminated',
    'skin-condition',
    { verdict: 'something-wrong', signs: ['bubble', 'moves-under-hand'], warmth: 'hot' },
    'before-rain',
    'professional',
  ],
  ['skin that moves on hung aluminium', 'wall-corrugated', 'skin-condition', { verdict: 'something-wrong', signs: ['moves-under-hand', 'ripple'] }, 'sound'],
  [
    'soft backing behind hung aluminium',
    'wall-corrugated',
    'skin-condition',
    { verdict: 'something-wrong', signs: ['moves-under-hand', 'soft'] },
    'before-rain',
    'professional',
    'Soft wall',
  ],
  ['a stain on hung aluminium', 'wall-corrugated', 'skin-condition', { verdict: 'something-wrong', signs: ['stain'] }, 'before-rain', 'yourself', 'Stain on the wall'],
  [
    'a soft roof near the front or rear seam',
    'roof-epdm',
    'roof-soft-spot',
    { deck: 'gives', near: 'front-or-rear-seam' },
    'before-rain',
    'professional',
    'Soft roof near the front or rear seam',
  ],
  ['a soft roof elsewhere', 'roof-epdm', 'roof-soft-spot', { deck: 'soft', near: 'elsewhere' }, 'before-rain', 'professional'],
  ['a firm roof', 'roof-epdm', 'roof-soft-spot', { deck: 'firm' }, 'sound'],
  ['14.9 % by pin meter', 'window', 'wood-moisture-pin', { reading: percent(14.9), material: 'softwood' }, 'sound'],
  ['15 % by pin meter', 'window', 'wood-moisture-pin', { reading: percent(15), material: 'softwood' }, 'watch'],
  ['20 % by pin meter', 'window', 'wood-moisture-pin', { reading: percent(20), material: 'softwood' }, 'before-rain', 'yourself'],
  ['25 % by pin meter', 'window', 'wood-moisture-pin', { reading: percent(25), material: 'softwood' }, 'before-rain', 'professional', 'Wood wet'],
  ['30 % by pin meter', 'window', 'wood-moisture-pin', { reading: percent(30), material: 'softwood' }, 'before-rain', 'professional', 'Wood wet through'],
  [
    '19.4 % in wood of 10 °C, which is 20.4 %',
    'window',
    'wood-moisture-pin',
    { reading: percent(19.4), material: 'softwood', wood_temperature: typed(10, 'temperature', 'c') },
    'before-rain',
    'yourself',
  ],
  [
    '20.5 % in wood of 30 °C, which is 19.5 %',
    'window',
    'wood-moisture-pin',
    { reading: percent(20.5), material: 'softwood', wood_temperature: typed(30, 'temperature', 'c') },
    'watch',
  ],
  ['30 % in foam, where per cent means nothing', 'window', 'wood-moisture-pin', { reading: percent(30), material: 'foam' }, 'sound'],
  ['30 % by pinless meter, never banded', 'window', 'wood-moisture-pinless', { reading: percent(30), material: 'softwood' }, 'sound'],
  ['90 of 100 on a relative scale, never banded', 'window', 'moisture-relative', { reading: typed(90, 'relative-scale', 'points') }, 'sound'],
  ['a stain inside', 'window', 'inside-signs', { verdict: 'something-wrong', signs: ['stain'] }, 'before-rain', 'yourself'],
  ['a soft floor inside', 'window', 'inside-signs', { verdict: 'something-wrong', signs: ['soft-floor'] }, 'before-rain', 'professional'],
  ['a musty smell inside', 'window', 'inside-signs', { verdict: 'something-wrong', signs: ['smell'] }, 'this-season'],
  ['a brittle cover', 'plastic-cover', 'sun-damage', { signs: ['brittle'] }, 'this-season'],
  ['a faded decal', 'decal', 'sun-damage', { signs: ['fading'] }, 'watch'],
  ['a torn hatch', 'vent-hatch', 'accident-damage', { damage: ['torn'] }, 'before-rain', 'yourself'],
  ['a broken coupler', 'coupler', 'accident-damage', { damage: ['broken'] }, 'before-moving', 'professional'],
  ['a torn slide seal', 'slide-seals', 'slide-seal', { verdict: 'something-wrong', defects: ['slide-seals.torn'] }, 'before-rain'],
  ['a latch that does not secure', 'entry-door', 'latch-condition', { verdict: 'something-wrong', defects: ['lock-latch.no-hold'] }, 'before-moving'],
  ['a lamp that does not light', 'lamp', 'lamp-condition', { verdict: 'something-wrong', defects: ['lamp.out'] }, 'before-moving'],
  ['an awning whose travel lock fails', 'awning-arm', 'awning-condition', { verdict: 'something-wrong', defects: ['awning-arm.travel-lock'] }, 'before-moving', 'professional'],
  ['a cracked weld underneath', 'frame', 'underside-condition', { verdict: 'something-wrong', defects: ['frame.weld-crack'] }, 'before-moving', 'professional'],
];

describe('what a look comes to', () => {
  it.each(ROWS.map((row) => [...row] as const))('%s', (_what, looks, kind, body, urgency, who, title) => {
    // A wet wall is two questions, which are tried together below: here how wet it is.
    const findings = one(looks, kind, body).filter((f) => f.rule !== 'water-coming-in');
    if (urgency === 'sound') return expect(findings).toEqual([]);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ urgency, ...(who ? { who } : {}), ...(title ? { title } : {}) });
  });

  it('is tried with bodies that the kinds themselves accept', () => {
    for (const [what, , id, body] of ROWS) {
      const kind = kindById(id);
      expect(kind && readBody(kind, body).ok, what).toBe(true);
    }
  });
});

describe('a wet wall', () => {
  const rulesFor = (n: number): readonly string[] => one('window', 'wood-moisture-pin', { reading: percent(n), material: 'softwood' }).map((f) => f.rule);

  it('is two questions from 20 % on, where it comes in and how wet it is, both before rain; below it is only watched', () => {
    expect(rulesFor(19.9)).toEqual(['wet-wall']);
    expect(rulesFor(20)).toEqual(['water-coming-in', 'wet-wall']);
    expect(one('window', 'wood-moisture-pin', { reading: percent(20), material: 'softwood' }).map((f) => f.urgency)).toEqual(['before-rain', 'before-rain']);
  });
});

describe('every rule', () => {
  it('gives what its own example says', () => {
    for (const rule of rules) {
      const { kind, body, looks, gives } = rule.example;
      const found = one(looks ?? 'window', kind, body).filter((x) => x.rule === rule.id);
      expect(found[0]?.urgency ?? 'sound', rule.id).toBe(gives);
      const declared = kindById(kind);
      expect(declared && readBody(declared, body).ok, rule.id).toBe(true);
    }
  });

  it('reads kinds that exist, names its sources, and has its id once', () => {
    expect(new Set([...rules, ...waterRules].map((r) => r.id)).size).toBe(rules.length + waterRules.length);
    for (const rule of rules)
      for (const kind of [...(rule.alsoReads ?? []), ...(rule.endedBy ?? []), ...(rule.provedBy ?? [])]) expect(kindById(kind), `${rule.id}: ${kind}`).toBeDefined();
    for (const rule of [...rules, ...waterRules]) {
      for (const kind of rule.reads) expect(kindById(kind), `${rule.id}: ${kind}`).toBeDefined();
      expect(rule.sources.length, rule.id).toBeGreaterThan(0);
      expect(rule.says, rule.id).toMatch(/\.$/);
    }
  });

  it('names defects and remedies that exist', () => {
    for (const [what, looks, kind, body] of ROWS)
      for (const finding of one(looks, kind, body)) {
        if (finding.defect !== undefined) expect(defect(finding.defect), what).toBeDefined();
        for (const id of finding.remedies) expect(remedy(id), `${what}: ${id}`).toBeDefined();
      }
    for (const r of rulings) expect(defect(r.defect), r.defect).toBeDefined();
  });

  it('together reach every urgency', () => {
    expect(new Set(ROWS.flatMap((r) => (r[4] === 'sound' ? [] : [r[4]])))).toEqual(new Set(URGENCIES));
  });

  it('names a worksheet that accepts its inputs and says the same', () => {
    let tried = 0;
    for (const [what, looks, kind, body] of ROWS)
      for (const because of one(looks, kind, body).flatMap((x) => x.because)) {
        if (!because.worksheet) continue;
        const sheet = worksheetById(because.worksheet.id);
        expect(sheet && evaluate(sheet, because.worksheet.inputs).ok, what).toBe(true);
        tried += 1;
      }
    expect(tried).toBeGreaterThanOrEqual(6);
  });
});

describe('rules win over the table', () => {
  it.each(rulings.map((r) => [r.defect, r] as const))('%s', (id, ruling) => {
    const row = defect(id);
    const found = one(id.split('.')[0] ?? '', 'look', { verdict: 'something-wrong', defects: [id] });
    expect(found[0]).toMatchObject({ urgency: ruling.urgency, who: ruling.who === 'professional' ? 'professional' : row?.who });
  });

  it('and never make a row less urgent', () => {
    for (const r of rulings) expect(URGENCIES.indexOf(r.urgency), r.defect).toBeLessThanOrEqual(URGENCIES.indexOf(defect(r.defect)?.urgency ?? 'watch'));
  });
});

describe('how a seal is renewed', () => {
  const vent = (sealed_with: string, body: Record<string, unknown>) => {
    const rig = trialRig([station('roof.here', 'vent-hatch', { sealed_with })]);
    return judge(rig, stateOf(rig, [{ on: '2026-05-03', kind: 'seal-grade', at: 'roof.here', body }]), ON)[0];
  };
  const text = (x: ReturnType<typeof vent>): string => x?.because.map((b) => b.text).join(' ') ?? '';

  it('is stripped where it does not stick, whatever it is', () => {
    const found = vent('lap-self-levelling', { grade: 'S4', defects: ['not-adhering'] });
    expect(found?.remedies).toEqual(['reseal-roof-strip']);
    expect(text(found)).toContain('does not stick is removed before resealing');
  });

  it('is stripped, or tried with a test patch, over silicone and over what nobody knows', () => {
    for (const family of ['silicone', 'unknown']) {
      const found = vent(family, { grade: 'S4' });
      expect(found?.remedies[0], family).toBe('reseal-roof-strip');
      expect(text(found), family).toContain('test patch');
    }
  });

  it('may be laid over a known sealant that still sticks, after what is loose is off', () => {
    const found = vent('lap-self-levelling', { grade: 'S4' });
    expect(found?.remedies[0]).toBe('reseal-roof-over');
    expect(text(found)).toMatch(/Take off all that is loose.*goes with what stays \(lap self levelling\)/);
  });
});

describe('escalations', () => {
  it('raise a defect where the same station shows what the table names', () => {
    const said: Said[] = [{ on: '2026-05-03', kind: 'look', at: 'curb.here', body: { verdict: 'something-wrong', defects: ['window.rubber-shrunk', 'window.weep-blocked'] } }];
    const found = all('window', said).find((x) => x.defect === 'window.rubber-shrunk');
    expect(found?.urgency).toBe('before-rain');
    expect(all('window', [{ ...(said[0] as Said), body: { verdict: 'something-wrong', defects: ['window.rubber-shrunk'] } }])[0]?.urgency).toBe('this-season');
  });

  it('leave words for people where the logbook cannot decide', () => {
    expect(one('window', 'look', { verdict: 'something-wrong', defects: ['window.glass-loose'] })[0]?.worse_if).toBe(defect('window.glass-loose')?.worse_if);
  });
});

describe('where the water comes from', () => {
  const layout = layoutFrom({ kind: 'travel-trailer', name: 'T', skin: 'fibreglass', construction: 'bonded', roof: 'epdm' });
  if (!layout.ok) throw new Error('the starting layout must be drawn');
  const rig = trialRig(layout.value.stations, layout.value);
  const windows = rig.stations.filter((s) => s.looks === 'window' && s.shape.form === 'rect');

  it('names the window above a bubble first, and says so', () => {
    expect(windows.length).toBeGreaterThan(0);
    for (const w of windows) {
      if (w.shape.form !== 'rect') continue;
      const below = { at: 'point' as const, face: w.face, side: 'outside' as const, point_m: [w.shape.x_m + w.shape.w_m / 2, w.shape.y_m - 0.15] as const };
      const [found] = judge(
        rig,
        stateOf(rig, [{ on: '2026-05-03', kind: 'skin-condition', at: below, body: { verdict: 'something-wrong', signs: ['bubble'], warmth: 'cool' } }]),
        ON,
      );
      expect(found?.suspects?.[0], w.id).toBe(w.id);
      expect(found?.because.map((b) => b.text).join(' '), w.id).toContain(`First suspects, above and up-slope: ${w.name}`);
    }
  });
});

describe('signs that are listed anew', () => {
  it('are gone when a later list no longer has them', () => {
    const sun = (on: string, ...signs: string[]): Said => ({ on, kind: 'sun-damage', at: 'curb.here', body: { signs } });
    expect(all('plastic-cover', [sun('2026-04-03', 'fading', 'brittle'), sun('2026-05-03', 'brittle')]).map((x) => [x.title, x.life])).toEqual([
      ['Plastic cover brittle, chalky', 'open'],
      ['Surface faded', 'seen-sound'],
    ]);
  });
});

describe('signs of water behind a window', () => {
  it('suspect the window itself first', () => {
    expect(one('window', 'inside-signs', { verdict: 'something-wrong', signs: ['stain'] })[0]?.suspects?.[0]).toBe('curb.here');
  });
});

describe('a bubble in the heat', () => {
  it('does not make a delamination found in the cool less urgent', () => {
    const wall = (on: string, warmth: string): Said => ({ on, kind: 'skin-condition', at: 'curb.here', body: { verdict: 'something-wrong', signs: ['bubble'], warmth } });
    expect(all('wall-laminated', [wall('2026-04-03', 'cool'), wall('2026-05-03', 'hot')])[0]).toMatchObject({ urgency: 'before-rain', who: 'professional' });
  });

  it('drawn anew at the next round is the same bubble when the outlines overlap, another when they do not', () => {
    const drawn = (on: string, x: number): Said => ({
      on,
      kind: 'skin-condition',
      at: {
        at: 'outline',
        face: 'curb',
        side: 'outside',
        outline_m: [
          [x, 1],
          [x + 0.4, 1],
          [x + 0.4, 1.4],
          [x, 1.4],
        ],
      },
      body: { verdict: 'something-wrong', signs: ['bubble'], warmth: 'cool' },
    });
    expect(all('window', [drawn('2026-04-03', 2), drawn('2026-05-03', 2.1)])).toHaveLength(1);
    expect(all('window', [drawn('2026-04-03', 2), drawn('2026-05-03', 4)])).toHaveLength(2);
  });
});
