// The plan as a whole: what keeps the wheels from turning, what nobody has seen, marks, jobs and what they take, the next round.
// There is no published table; expected answers follow the written rules. Bead lengths and packages are those of their worksheets, which are checked there.
import { describe, expect, it } from 'vitest';
import { kinds } from '../entries';
import { fold } from '../logbook';
import { addMonths, isoDay } from '../units';
import { evaluate, worksheetById } from '../worksheets';
import { marks, planAfter, planOf } from './plan';
import { roundProgress } from './round-progress';
import { timelineOf } from './timeline';
import { day, linesOf, nth, type Said, stateOf, station, trialRig, typed } from './trial-logbook';

const vent = station('roof.vent', 'vent-hatch', { sealed_with: 'lap-self-levelling' });
const window = station('curb.window', 'window', { bead: 'top-and-upper-sides', bead_m: 1.1 });
const tyre = station('curb.tyre', 'tyre', { axle: 'axle' });
const step = station('curb.step', 'step', { cut_through: false, bead: 'none', bead_m: 0 });
const rig = trialRig([vent, window, tyre, step]);
const ON = '2026-05-10';
const plan = (said: readonly Said[], on = ON, of = rig) => planOf(of, stateOf(of, said), day(on));
const HITCHED = { chocks: 'away', cords: 'stowed', jacks: 'up', hitch: 'coupled-and-pinned', chains: 'attached', breakaway: 'attached', lamps: 'checked' };
const sound = (on: string): readonly Said[] => [
  { on, kind: 'look', at: 'roof.vent', body: { verdict: 'sound' } },
  { on, kind: 'look', at: 'curb.window', body: { verdict: 'sound' } },
  { on, kind: 'tyre-pressure', at: 'curb.tyre', body: { pressure: typed(65, 'gauge-pressure', 'psi'), tyre_temperature: typed(68, 'temperature', 'f'), rested: 'cold' } },
  { on, kind: 'tyre-sidewall', at: 'curb.tyre', body: { cracks: 'none' } },
  { on, kind: 'step-condition', at: 'curb.step', body: { verdict: 'sound' } },
  { on, kind: 'stowed', body: HITCHED },
];
const without = (said: readonly Said[], kind: string) => said.filter((s) => s.kind !== kind);

describe('ready to roll', () => {
  it('is not known with an empty logbook, and with a rig that has no stations', () => {
    expect(plan([]).ready.answer).toBe('not-known');
    expect(plan([], ON, trialRig([])).ready.answer).toBe('not-known');
  });

  it('is yes only when every question of the round before a trip has a young enough answer', () => {
    expect(plan(sound(ON)).ready).toEqual({ answer: 'yes', because: [] });
    for (const kind of ['look', 'tyre-pressure', 'tyre-sidewall', 'step-condition', 'stowed']) expect(plan(without(sound(ON), kind)).ready.answer, kind).toBe('not-known');
  });

  it('asks for pressure and stowing today, and lets the rest stand from the evening before', () => {
    const evening = sound('2026-05-09');
    expect(plan(evening).ready.because.map((b) => b.text)).toEqual([
      'curb tyre: tyre pressure last recorded on 9 May 2026.',
      'Hitch, chocks, cords and jacks last recorded on 9 May 2026.',
    ]);
    const today = sound(ON).filter((s) => s.kind === 'tyre-pressure' || s.kind === 'stowed');
    expect(plan([...evening, ...today]).ready.answer).toBe('yes');
    expect(plan([...sound('2026-05-08'), ...today]).ready.answer).toBe('not-known');
  });

  it('does not take a warm tyre for a cold one, nor one that nobody said was cold', () => {
    for (const rested of ['warm', 'not-known']) {
      const said = [
        ...sound(ON),
        {
          on: `${ON}T11:00:00Z`,
          kind: 'tyre-pressure',
          at: 'curb.tyre',
          body: { pressure: typed(66, 'gauge-pressure', 'psi'), tyre_temperature: typed(68, 'temperature', 'f'), rested },
        },
      ];
      expect(plan(said).ready.answer, rested).toBe('not-known');
    }
  });

  it('is no because of a finding before moving, and names it', () => {
    const ready = plan([...sound(ON), { on: `${ON}T11:00:00Z`, kind: 'step-condition', at: 'curb.step', body: { verdict: 'something-wrong', defects: ['step.loose'] } }]).ready;
    expect(ready.answer).toBe('no');
    expect(ready.because[0]).toMatchObject({ text: 'curb step: step bolts loose, floor edge moves.', station: 'curb.step', entries: [nth(7)] });
  });

  it('is no while something is not stowed or a door stands open', () => {
    expect(plan([...without(sound(ON), 'stowed'), { on: ON, kind: 'stowed', body: { ...HITCHED, chocks: 'in-place' } }]).ready).toMatchObject({
      answer: 'no',
      because: [{ text: 'Wheel chocks are still in place.' }],
    });
    expect(plan([...sound(ON), { on: ON, kind: 'opened-state', at: 'roof.vent', body: { state: 'open' } }]).ready).toMatchObject({
      answer: 'no',
      because: [{ text: 'roof vent stands open.' }],
    });
  });

  it('asks a towed rig for hitch, chains, breakaway cable and lamps, and a driven one not', () => {
    const hitched = (more: Readonly<Record<string, string>>, of = rig) =>
      plan([...without(sound(ON), 'stowed'), { on: ON, kind: 'stowed', body: { ...HITCHED, ...more } }], ON, of).ready;
    const told = (more: Readonly<Record<string, string>>, of = rig) => [hitched(more, of).answer, ...hitched(more, of).because.map((b) => b.text)];
    expect(told({})).toEqual(['yes']);
    expect(told({ chains: 'not-attached', breakaway: 'not-attached', lamps: 'fail' })).toEqual([
      'no',
      'The safety chains are not attached.',
      'The breakaway cable is not attached.',
      'A lamp does not work with the tow plug in.',
    ]);
    expect(told({ lamps: 'not-looked' })).toEqual(['not-known', 'Tow plug and lamps not looked at.']);
    const loose = { chocks: 'away', cords: 'stowed', jacks: 'up' };
    const answer = (hitch: string, of = rig) => plan([...without(sound(ON), 'stowed'), { on: ON, kind: 'stowed', body: { ...loose, hitch } }], ON, of).ready.answer;
    const driven = trialRig(rig.stations, { kind: 'class-c' });
    expect(['not-coupled', 'none', 'not-looked'].map((h) => answer(h))).toEqual(['no', 'no', 'not-known']);
    expect(['not-coupled', 'none', 'not-looked'].map((h) => answer(h, driven))).toEqual(['no', 'yes', 'yes']);
    expect(told({ chains: 'none' })[0]).toBe('no');
    expect(told({ chains: 'none' }, trialRig(rig.stations, { kind: 'fifth-wheel' }))).toEqual(['yes']);
  });

  it('reads what was recorded before the hitch was asked about as not looked at', () => {
    const old = linesOf([{ on: ON, kind: 'stowed', body: { chocks: 'away', cords: 'stowed', jacks: 'up' } }]).map((l) => ({ ...l, entry: { ...l.entry, version: 1 } }));
    const { ready } = planOf(rig, fold(kinds, rig, old), day(ON));
    expect(ready.because.map((b) => b.text)).toContain('Hitch, chains, breakaway cable and tow plug not looked at.');
  });

  it('gives every reason, what stands against it before what is not known, and tells what is alike in one line', () => {
    const tyres = ['curb.tyre', 'curb.tyre-2', 'road.tyre', 'road.tyre-2'].map((id) => station(id, 'tyre', { axle: 'axle' }));
    const four = trialRig([...tyres, step, vent]);
    const { ready } = plan([{ on: ON, kind: 'step-condition', at: 'curb.step', body: { verdict: 'something-wrong', defects: ['step.loose'] } }], ON, four);
    expect(ready.because.map((b) => [b.unknown === true, b.text])).toEqual([
      [false, 'curb step: step bolts loose, floor edge moves.'],
      [true, 'Tyre pressure not recorded: 4 tyres.'],
      [true, 'Tyre sidewall not recorded: 4 tyres.'],
      [true, 'Hitch, chocks, cords and jacks not recorded.'],
      [true, 'roof vent: condition not recorded.'],
    ]);
    expect(ready.because[1]?.stations).toEqual(tyres.map((t) => t.id));
    const days = plan(
      [3, 9].map((d, i) => ({ on: `2026-05-0${d}`, kind: 'tyre-sidewall', at: tyres[i]?.id ?? '', body: { cracks: 'none' } })),
      '2026-05-20',
      four,
    ).ready.because.map((b) => b.text);
    expect(days).toEqual(expect.arrayContaining(['Tyre sidewall last recorded on 9 May 2026 or before: 2 tyres.', 'Tyre sidewall not recorded: 2 tyres.']));
  });

  it('stays no when a finding is put off or declined, and when one for a professional is judged otherwise', () => {
    const cracked: Said = { on: ON, kind: 'tyre-sidewall', at: 'curb.tyre', body: { cracks: 'fine' } };
    const said = [...without(sound(ON), 'tyre-sidewall'), cracked];
    const id = `tyre-sidewall:cracks/curb.tyre@outside/${nth(said.length)}`;
    const decided = (kind: string, body: Record<string, unknown>) => plan([...said, { on: `${ON}T12:00:00Z`, kind, at: 'curb.tyre', body, concerns: [id] }]).ready.answer;
    expect(decided('put-off', { until: '2026-08-01' })).toBe('no');
    expect(decided('declined', {})).toBe('no');
    expect(decided('judged-otherwise', { urgency: 'no-fault', why: 'looks fine to me' })).toBe('no');
    expect(decided('professional-work', { what: 'looked at it', who: 'tyre trade' })).toBe('yes');
  });

  it('lets a person judge otherwise where no professional is asked for', () => {
    const said: readonly Said[] = [
      ...without(sound(ON), 'step-condition'),
      { on: ON, kind: 'step-condition', at: 'curb.step', body: { verdict: 'something-wrong', defects: ['step.wont-lock'] } },
    ];
    const id = `step:step.wont-lock/curb.step@outside/${nth(said.length)}`;
    expect(
      plan([...said, { on: `${ON}T12:00:00Z`, kind: 'judged-otherwise', at: 'curb.step', body: { urgency: 'watch', why: 'taken off and left at home' }, concerns: [id] }]).ready
        .answer,
    ).toBe('yes');
  });

  it('tells that a station could not be seen', () => {
    const said = [...sound('2026-05-01'), { on: ON, kind: 'could-not-see', at: 'curb.step', body: { reason: 'in-the-way' } }];
    expect(plan(said).ready.because.map((b) => b.text)).toContain('curb step could not be seen on 10 May 2026.');
  });

  it('asks something of some station for every kind that says it is asked before a trip', () => {
    expect(kinds.filter((k) => k.before_trip !== undefined).map((k) => k.id)).toEqual(
      expect.arrayContaining(['tyre-pressure', 'step-condition', 'latch-condition', 'awning-condition', 'slide-seal', 'lamp-condition', 'look']),
    );
  });
});

describe('what nobody has seen', () => {
  const begun: Said = {
    on: '2026-05-03',
    kind: 'round-begun',
    body: {
      form: 'full',
      steps: [
        { station: 'roof.vent', side: 'outside' },
        { station: 'curb.step', side: 'outside' },
      ],
    },
  };
  const ended: Said = { on: '2026-05-03T18:00:00Z', kind: 'round-ended', round: nth(1), body: { end: 'stopped' } };
  const looked: Said = { on: '2026-05-03T12:00:00Z', kind: 'look', at: 'roof.vent', round: nth(1), body: { verdict: 'sound' } };

  it('is every opening that a full round passed by, with the round that passed it, and every stop that it did not reach', () => {
    const { not_seen, counts } = plan([begun, looked, ended]);
    expect(not_seen.map((n) => [n.station, n.round])).toEqual([
      ['curb.window', nth(1)],
      ['curb.step', nth(1)],
    ]);
    expect(not_seen[0]?.because.text).toBe('curb window was not seen on the full round of 3 May 2026 by R. Rider.');
    expect(not_seen[0]?.because.entries).toContain(nth(1));
    expect(counts).toMatchObject({ sound: 1, 'not-seen': 3 });
  });

  it('ends with a look after the round', () => {
    expect(plan([begun, looked, ended, { on: '2026-05-04', kind: 'look', at: 'curb.window', body: { verdict: 'sound' } }]).not_seen.map((n) => n.station)).toEqual(['curb.step']);
  });

  it('includes what could not be seen, with the reason, and is never drawn as sound', () => {
    const said: readonly Said[] = [
      { on: '2026-04-03', kind: 'look', at: 'roof.vent', body: { verdict: 'sound' } },
      { on: '2026-05-03', kind: 'could-not-see', at: 'roof.vent', body: { reason: 'out-of-reach' } },
    ];
    expect(plan(said).not_seen[0]).toMatchObject({ station: 'roof.vent', because: { text: 'roof vent could not be seen on 3 May 2026: out of reach.', entries: [nth(2)] } });
    expect(marks(rig, stateOf(rig, said), day(ON))['roof.vent']).toBe('not-seen');
  });

  it('hides no finding: a station that is open and then could not be seen keeps its mark', () => {
    const said: readonly Said[] = [
      { on: '2026-04-03', kind: 'seal-grade', at: 'roof.vent', body: { grade: 'S4' } },
      { on: '2026-05-03', kind: 'could-not-see', at: 'roof.vent', body: { reason: 'out-of-reach' } },
    ];
    expect(marks(rig, stateOf(rig, said), day(ON))['roof.vent']).toBe('before-rain');
  });

  it('is not ended by a moisture reading from inside, nor by a reading that is never judged', () => {
    const said: readonly Said[] = [
      { on: '2026-05-03', kind: 'moisture-relative', at: 'roof.vent', body: { reading: typed(10, 'relative-scale', 'points') } },
      { on: '2026-05-03', kind: 'inside-signs', at: 'roof.vent', side: 'inside', body: { verdict: 'sound' } },
    ];
    expect(marks(rig, stateOf(rig, said), day(ON))['roof.vent']).toBe('not-seen');
  });
});

describe('jobs and what they take', () => {
  const s4: Said = { on: '2026-05-03', kind: 'seal-grade', at: 'roof.vent', body: { grade: 'S4' } };

  it('settle several findings of one station by one remedy', () => {
    const { jobs } = plan([s4, { on: '2026-05-03', kind: 'look', at: 'roof.vent', body: { verdict: 'something-wrong', defects: ['opening-roof.screws-bare'] } }]);
    expect(jobs.map((j) => [j.remedy, j.findings.length])).toEqual([['reseal-roof-strip', 2]]);
  });

  it('stand in order of urgency, a professional first', () => {
    const { jobs } = plan([
      s4,
      { on: '2026-05-03', kind: 'seal-grade', at: 'curb.window', body: { grade: 'S5' } },
      { on: '2026-05-03', kind: 'step-condition', at: 'curb.step', body: { verdict: 'something-wrong', defects: ['step.loose', 'step.stiff'] } },
    ]);
    expect(jobs.map((j) => [j.station, j.urgency, j.who])).toEqual([
      ['curb.step', 'do-not-use', 'yourself'],
      ['curb.window', 'before-rain', 'professional'],
      ['roof.vent', 'before-rain', 'yourself'],
    ]);
  });

  it('take the bead of the station by practice, packages by the worksheet, and are added up once for one visit', () => {
    const two = trialRig([vent, station('roof.vent-2', 'vent-hatch', { sealed_with: 'lap-self-levelling', bead_m: 0.4 })]);
    const { jobs, shopping } = plan([s4, { ...s4, at: 'roof.vent-2' }], ON, two);
    expect(jobs.map((j) => j.bead_m)).toEqual([2.8, 0.4]);
    const each = jobs.map((j) => j.materials.find((m) => m.material === 'lap-self-levelling'));
    const together = shopping.find((m) => m.material === 'lap-self-levelling');
    for (const m of [...each, together]) {
      const sheet = worksheetById(m?.worked?.worksheet ?? '');
      const found = sheet && evaluate(sheet, m?.worked?.inputs);
      expect(found?.ok && found.value.result['packages_count']).toBe(m?.packages);
    }
    expect(each.map((m) => m?.packages)).toEqual([2, 1]);
    expect(together?.packages).toBe(2);
    expect(together?.worked?.inputs['length_m']).toBe(3.2);
  });

  it('take the length of the stretch where only a stretch is bad', () => {
    const seam = trialRig([station('roof.edge', 'roof-edge', { group: 'seam', bead_m: 6 })]);
    const { jobs } = plan(
      [{ on: '2026-05-03', kind: 'seal-grade', at: { at: 'stretch', station: 'roof.edge', side: 'outside', from_m: 1, to_m: 2.5 }, body: { grade: 'S4' } }],
      ON,
      seam,
    );
    expect(jobs[0]?.bead_m).toBe(1.5);
  });

  it('buy nothing for a professional, who brings it', () => {
    expect(plan([{ on: '2026-05-03', kind: 'seal-grade', at: 'curb.window', body: { grade: 'S5' } }]).shopping).toEqual([]);
  });

  it('say that nothing with petroleum touches a rubber roof, and do not say it on a wall or a metal roof', () => {
    const words = (p: ReturnType<typeof plan>): string => JSON.stringify([p.jobs.map((j) => j.steps), p.shopping]);
    expect(words(plan([s4]))).toContain('No petroleum-based cleaner, oil or conditioner on a rubber roof.');
    expect(words(plan([s4], ON, trialRig([vent], { roof: 'unknown' })))).toContain('No petroleum-based');
    expect(words(plan([s4], ON, trialRig([vent], { roof: 'aluminium' })))).not.toContain('No petroleum-based');
    expect(words(plan([{ on: '2026-05-03', kind: 'seal-grade', at: 'curb.window', body: { grade: 'S4' } }]))).not.toContain('No petroleum-based');
  });

  it('never buy silicone or anything that the table refuses for the roof', () => {
    for (const roof of ['epdm', 'tpo', 'pvc', 'fibreglass', 'aluminium', 'unknown'] as const) {
      const bought = plan([s4], ON, trialRig([station('roof.vent', 'vent-hatch', { sealed_with: 'silicone' })], { roof })).shopping.map((m) => m.material);
      expect(bought, roof).not.toContain('silicone');
      if (roof === 'epdm') expect(bought).toContain('lap-self-levelling');
    }
  });

  it('keep a mended finding on the list until its proof, under watch until its day and then this season', () => {
    const said: readonly Said[] = [s4, { on: '2026-05-04', kind: 'resealed', at: 'roof.vent', body: { removed: 'all', product_family: 'lap-self-levelling' }, concerns: [nth(1)] }];
    expect(plan(said, '2026-05-10').jobs.map((j) => [j.urgency, j.title])).toEqual([['watch', 'Look again: seal open']]);
    expect(plan(said, '2026-05-11').jobs[0]?.urgency).toBe('this-season');
    expect(plan(said, '2026-05-11').counts).toMatchObject({ watch: 1, 'before-rain': 0 });
  });
});

describe('the next round', () => {
  const round = (on: string): readonly Said[] => [
    { on, kind: 'round-begun', body: { form: 'full', steps: [] } },
    { on, kind: 'round-ended', round: nth(1), body: { end: 'finished' } },
  ];

  it('is now, when there has been none', () => {
    expect(plan([]).next_round?.on).toBe(day(ON));
  });

  it('is three months after the last in the open, six under a roof, and earlier when the warranty asks for it', () => {
    const next = (said: readonly Said[], of = rig) => isoDay(plan(said, ON, of).next_round?.on ?? day(ON));
    expect(next(round('2026-03-31'))).toBe('2026-06-30');
    expect(next([...round('2026-03-31'), { on: '2026-04-01', kind: 'stay', body: { place_name: 'barn', cover: 'roofed' } }])).toBe('2026-09-30');
    expect(next([...round('2026-03-31'), { on: '2026-04-01/2026-04-20', kind: 'stay', body: { place_name: 'barn', cover: 'roofed' } }])).toBe('2026-06-30');
    expect(next(round('2026-03-31'), trialRig(rig.stations, { warranty_months: 2 }))).toBe(isoDay(addMonths(day('2026-03-31'), 2)));
    expect(next(round('2026-03-31'), trialRig(rig.stations, { warranty_months: 12 }))).toBe('2026-06-30');
  });
});

describe('care that is due', () => {
  it('counts from the last time it was recorded at each station, and has no day when it never was', () => {
    const due = (said: readonly Said[]) => plan(said).service_due.find((s) => s.item === 'step-care');
    expect(due([])).toMatchObject({ stations: ['curb.step'] });
    expect(due([])?.due).toBeUndefined();
    expect(due([{ on: '2026-03-01', kind: 'lubricated', at: 'curb.step', body: { with_what: 'silicone-spray' } }])).toMatchObject({
      due: day('2026-04-01'),
      because: { entries: [nth(1)] },
    });
    expect(due([{ on: '2026-05-01', kind: 'lubricated', at: 'curb.step', body: { with_what: 'silicone-spray' } }])).toBeUndefined();
  });
});

describe('a round under way', () => {
  const steps = ['roof.vent', 'curb.window', 'curb.tyre', 'curb.step'].map((id) => ({ station: id, side: 'outside' as const }));
  const begun: Said = { on: '2026-05-03', kind: 'round-begun', body: { form: 'full', steps } };
  const answer = (at: string, kind: string, body: Record<string, unknown>): Said => ({ on: '2026-05-03T11:00:00Z', kind, at, round: nth(1), body });
  const progress = (...said: Said[]) => {
    const state = stateOf(rig, [begun, ...said]);
    return roundProgress(planAfter(undefined, rig, state, day(ON)).judged, state, nth(1));
  };

  it('tells what each stop was answered with, and where to go on', () => {
    const found = progress(
      answer('roof.vent', 'seal-grade', { grade: 'S0' }),
      answer('curb.window', 'seal-grade', { grade: 'S4' }),
      answer('curb.tyre', 'tyre-pressure', { pressure: typed(65, 'gauge-pressure', 'psi') }),
      answer('curb.step', 'could-not-see', { reason: 'in-the-way' }),
    );
    expect(found?.steps.map((s) => s.answered)).toEqual(['sound', 'finding', 'no', 'not-seen']);
    expect(found).toMatchObject({ at: 2, answered: 3, sound: 1, findings: 1, not_seen: 1, ended: false });
  });

  it('counts only answers given on this round', () => {
    expect(progress({ ...answer('roof.vent', 'seal-grade', { grade: 'S0' }), round: nth(9) })?.steps[0]?.answered).toBe('no');
  });

  it('has no pace before three stops, then the time of the middle one for each that is left', () => {
    const spent = (said: Said, spent_s: number): Said => ({ ...said, spent_s });
    const vented = spent(answer('roof.vent', 'seal-grade', { grade: 'S0' }), 30);
    const windowed = spent(answer('curb.window', 'seal-grade', { grade: 'S0' }), 50);
    const stepped = spent(answer('curb.step', 'step-condition', { verdict: 'sound' }), 40);
    expect(progress(vented, windowed)?.left_s).toBeUndefined();
    expect(progress(vented, windowed, stepped)).toMatchObject({ pace_s: 40, left_s: 40 });
  });
});

describe('walking back through the logbook', () => {
  it('shows rounds, care and findings with how many stood open', () => {
    const said: readonly Said[] = [
      { on: '2026-05-03', kind: 'seal-grade', at: 'roof.vent', body: { grade: 'S4' } },
      { on: '2026-05-04', kind: 'resealed', at: 'roof.vent', body: { removed: 'all', product_family: 'hybrid' }, concerns: [nth(1)] },
      { on: '2026-05-20', kind: 'seal-grade', at: 'roof.vent', body: { grade: 'S0' } },
      { on: '2026-06-01', kind: 'seal-grade', at: 'curb.window', body: { grade: 'S3' } },
    ];
    const state = stateOf(rig, said);
    const { judged } = planAfter(undefined, rig, state, day('2026-07-01'));
    expect(timelineOf(judged, state).map((m) => [isoDay(m.day), m.what, m.open])).toEqual([
      ['2026-05-03', 'findings', 1],
      ['2026-05-04', 'care', 1],
      ['2026-06-01', 'findings', 1],
    ]);
  });

  it('counts an age from the day it was reached, not from the day the code was read; one that went before it was old never', () => {
    const wheels = trialRig([station('curb.tyre', 'tyre', { axle: 'axle', face: 'curb' })]);
    const said: readonly Said[] = [{ on: '2024-03-01', kind: 'tyre-date-code', at: 'curb.tyre', body: { code: '1020' } }];
    const state = stateOf(wheels, said);
    const { judged, plan } = planAfter(undefined, wheels, state, day('2026-07-01'));
    // Week 10 of 2020 begins on 8 March as the worksheet for the code counts weeks; five years later it is five years old.
    expect(timelineOf(judged, state).map((m) => [isoDay(m.day), m.what, m.open])).toEqual([['2025-03-08', 'findings', 1]]);
    expect(plan.findings.map((f) => isoDay(f.since))).toEqual(['2025-03-08']);
    const fitted = stateOf(wheels, [...said, { on: '2024-09-01', kind: 'tyre-fitted', at: 'curb.tyre', body: { date_code: '2024' } }]);
    expect(planAfter(undefined, wheels, fitted, day('2026-07-01')).plan.findings).toEqual([]);
  });
});
