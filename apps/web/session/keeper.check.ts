import { describe, expect, it } from 'vitest';
import { memoryPhotos, memoryStore } from '../../../src/adapters/memory-store';
import { troubleOf } from '../../../src/adapters/trouble';
import { asksAt, soundBody } from '../../../src/entries';
import { lineOf, readLine, uuidV7 } from '../../../src/logbook';
import { moistureField } from '../../../src/plan';
import type { Answers } from '../../../src/rig';
import type { Draft } from '../../../src/terms';
import { keeper } from './keeper';
import { lazyFiles } from './lazy-files';
import type { Overview, Session } from './session';

/**
 * The session as the worker runs it, on a store in memory: a rig is drawn, walked and planned, taken back, judged before
 * it is kept, copied to another device and brought back. No outside source; what is checked is that every room is joined
 * to the next as the contract in session.ts says.
 */
const session = (): Session => {
  let tick = 0;
  let chance = 1;
  const now = (): string => {
    tick += 1;
    return `2026-09-19T10:${String(Math.floor(tick / 60) % 60).padStart(2, '0')}:${String(tick % 60).padStart(2, '0')}-04:00`;
  };
  const random = (bytes: number): Uint8Array => {
    chance = (chance * 48271) % 2147483647;
    return Uint8Array.from({ length: bytes }, (_, i) => (chance >> (i % 4)) & 255);
  };
  const held = new Map<string, unknown>();
  const copied = new Map<string, number>();
  const store = memoryStore({ stamp: { now, random }, device: uuidV7(chance, random(10)) });
  return keeper({
    store,
    photoStore: memoryPhotos(),
    drafts: { get: async (name) => held.get(name), put: async (name, value) => void (value === undefined ? held.delete(name) : held.set(name, value)) },
    copies: {
      mark: async (rig) => void copied.set(rig, (await store.lines(rig)).length),
      of: async (rig) => {
        const at = copied.get(rig);
        const only_here = (await store.lines(rig)).length - (at ?? 0);
        return at === undefined ? { only_here } : { only_here, at: '2026-09-19' };
      },
    },
    files: lazyFiles,
    photos: { keep: async () => Promise.reject(new Error('no camera here')) },
    now,
    newId: () => uuidV7(tick, random(10)),
    watch: () => undefined,
    trouble: () => undefined,
    storage: async () => ({ persisted: undefined, used_bytes: 0, room_bytes: 0 }),
  });
};

const ANSWERS: Answers = { kind: 'travel-trailer', name: 'Heron', skin: 'fibreglass', construction: 'bonded', roof: 'epdm', year: 2014 };
const BY = 'Dana';

const drawn = async (): Promise<{ readonly s: Session; readonly rig: string }> => {
  const s = session();
  return { s, rig: await s.newRig(ANSWERS, BY) };
};

const observed = (rig: string, station: string, kind: string, body: unknown, round?: string): Draft => {
  const version = { 'seal-grade': 2, 'tyre-pressure': 2 }[kind] ?? 1;
  return {
    rig,
    kind,
    version,
    observed_at: '2026-09-19T11:00:00-04:00',
    by: BY,
    place: { at: 'station', station, side: 'outside' },
    body,
    ...(round === undefined ? {} : { round }),
  };
};

const aSeal = ({ rig }: Overview): string => rig.stations.find((st) => asksAt(st, 'outside').asks[0]?.id === 'seal-grade' && st.face === 'roof')?.id ?? '';

describe('the session', () => {
  it('draws a rig, and says of the record only what is kept', async () => {
    const { s, rig } = await drawn();
    const [line] = await s.rigs();
    const view = await s.overview(rig);
    expect(line).toMatchObject({ id: rig, name: 'Heron', demo: false, open: 0 });
    expect(view.rig.stations.length).toBeGreaterThan(60);
    expect(view.record).toEqual({ state: 'not-copied', count: 2, words: 'All kept, not copied yet' });
    expect(view.plan.ready.answer).toBe('not-known');
  });

  it('judges an answer before it is kept, writes nothing by that, and says the same once it is kept', async () => {
    const { s, rig } = await drawn();
    const seal = aSeal(await s.overview(rig));
    const draft = observed(rig, seal, 'seal-grade', { grade: 'S4', defects: ['edge-lifts'] });
    const before = await s.judge(rig, [draft]);
    expect(before.findings[0]).toMatchObject({ station: seal });
    expect((await s.overview(rig)).entries).toBe(2);
    await s.keep([draft]);
    const after = await s.overview(rig);
    expect(after.plan.findings.map((f) => [f.rule, f.urgency])).toEqual(before.findings.map((f) => [f.rule, f.urgency]));
    expect(after.marks[seal]).toBe(before.findings[0]?.urgency);
  });

  it('walks a whole round of sound answers and ends it; undo opens the last stop again', async () => {
    const { s, rig } = await drawn();
    const { rig: drawing } = await s.overview(rig);
    const stops = await s.stops(rig, 'full');
    const [begun] = await s.keep([
      {
        rig,
        kind: 'round-begun',
        version: 1,
        observed_at: '2026-09-19T10:00:00-04:00',
        by: BY,
        place: { at: 'rig' },
        body: { form: 'full', steps: stops.map(({ station, side }) => ({ station, side })) },
      },
    ]);
    let last = '';
    for (const stop of stops) {
      const station = drawing.stations.find((st) => st.id === stop.station);
      if (!station) continue;
      for (const kind of asksAt(station, stop.side).asks) {
        const body = soundBody(kind);
        const place = { at: 'station', station: stop.station, side: stop.side } as const;
        const common = { rig, observed_at: '2026-09-19T10:30:00-04:00', by: BY, place, round: begun?.id ?? '', spent_s: 20 };
        const [entry] = await s.keep([
          body ? { ...common, kind: kind.id, version: kind.version, body } : { ...common, kind: 'could-not-see', version: 1, body: { reason: 'dark-or-dirty' } },
        ]);
        last = entry?.id ?? '';
      }
    }
    const round = (await s.overview(rig)).round;
    expect(round?.steps.filter((st) => st.answered === 'no')).toEqual([]);
    await s.undo(rig, last, BY);
    const open = (await s.overview(rig)).round;
    expect(open?.steps.filter((st) => st.answered === 'no')).toHaveLength(1);
    expect(open?.steps[open.at]?.answered).toBe('no');
  });

  it('a round before a trip on which nothing is wrong makes the rig ready to roll', async () => {
    const { s, rig } = await drawn();
    const { rig: drawing } = await s.overview(rig);
    const typed = (text: string, unit: string, si: number) => ({ typed: text, unit, si });
    await s.keep(
      drawing.axles.map((a) => ({
        rig,
        kind: 'set-pressure',
        version: 1,
        observed_at: '2026-09-19T09:00:00-04:00',
        by: BY,
        place: { at: 'rig' },
        body: { axle: a.id, pressure: typed('450', 'kpa', 450_000) },
      })),
    );
    const stops = await s.stops(rig, 'pre-trip');
    for (const stop of stops) {
      const station = drawing.stations.find((st) => st.id === stop.station);
      for (const kind of station ? asksAt(station, stop.side, 'pre-trip').asks : []) {
        const pressure = kind.id === 'tyre-pressure' ? { pressure: typed('450', 'kpa', 450_000), tyre_temperature: typed('20', 'c', 293.15), rested: 'cold' } : undefined;
        const body = pressure ?? soundBody(kind);
        expect(body, kind.id).toBeDefined();
        await s.keep([
          { rig, kind: kind.id, version: kind.version, observed_at: '2026-09-19T10:30:00-04:00', by: BY, place: { at: 'station', station: stop.station, side: stop.side }, body },
        ]);
      }
    }
    expect((await s.overview(rig)).plan.ready.because.map((b) => b.text)).toEqual(['Hitch, chocks, cords and jacks not recorded.']);
    await s.keep([
      {
        rig,
        kind: 'stowed',
        version: 2,
        observed_at: '2026-09-19T10:40:00-04:00',
        by: BY,
        place: { at: 'rig' },
        body: { chocks: 'away', cords: 'stowed', jacks: 'up', hitch: 'coupled-and-pinned', chains: 'attached', breakaway: 'attached', lamps: 'checked' },
      },
    ]);
    const { ready } = (await s.overview(rig)).plan;
    expect(ready.because.map((b) => b.text)).toEqual([]);
    expect(ready.answer).toBe('yes');
  });

  it('a copy carries everything to another device, and a second time brings nothing new', async () => {
    const { s, rig } = await drawn();
    await s.keep([observed(rig, aSeal(await s.overview(rig)), 'seal-grade', { grade: 'S3' })]);
    const plan = await s.exportPlan(rig, (await s.overview(rig)).plan.on);
    const archive = await s.exportArchive(rig);
    expect((await s.overview(rig)).record.state).toBe('kept');
    const other = session();
    expect(await other.importFile(archive.name, archive.bytes)).toMatchObject({ taken: 3, known: 0, refused: [] });
    expect(await other.importFile(archive.name, archive.bytes)).toMatchObject({ taken: 0, known: 3 });
    expect((await other.exportPlan(rig, (await other.overview(rig)).plan.on)).text).toBe(plan.text);
  });

  it('a file that was cut is taken in as far as it goes, and the person is told', async () => {
    const { s, rig } = await drawn();
    const { text } = await s.exportLogbook(rig);
    const cut = await session().importFile('cut.jsonl', new TextEncoder().encode(text.slice(0, text.length / 2)));
    expect(cut.words).not.toBe('');
    expect(cut.taken + cut.refused.length).toBeGreaterThan(0);
    const whole = await session().importFile('whole.jsonl', new TextEncoder().encode(text));
    expect(whole).toMatchObject({ taken: 2, refused: [], words: '2 entries were taken in.' });
  });

  it('the sample comes with one call and goes with one', async () => {
    const s = session();
    const rig = await s.loadDemo();
    expect(await s.rigs()).toMatchObject([{ id: rig, demo: true }]);
    expect((await s.overview(rig)).entries).toBeGreaterThan(100);
    await s.forget(rig);
    expect(await s.rigs()).toEqual([]);
  });

  it('refuses what could not be read again, says so in words, and writes nothing', async () => {
    const { s, rig } = await drawn();
    const seal = aSeal(await s.overview(rig));
    const good = observed(rig, seal, 'seal-grade', { grade: 'S3' });
    const told = async (drafts: readonly Draft[]): Promise<unknown> => troubleOf(await s.keep(drafts).catch((e: unknown) => e));
    const refused = { code: 'refused', safe: expect.stringContaining('still on the screen') };
    expect(await told([good, observed(rig, seal, 'seal-grade', { grade: 'S9' })])).toMatchObject(refused);
    expect(await told([{ ...good, place: { at: 'rig' } }])).toMatchObject(refused);
    const withdrawal: Draft = { rig, kind: 'withdrawal', version: 1, observed_at: good.observed_at, by: BY, place: good.place, body: {} };
    expect(await told([withdrawal])).toMatchObject(refused);
    const [entry] = await s.keep([good]);
    const correction = (grade: string): Draft => ({ ...withdrawal, kind: 'correction', concerns: [entry?.id ?? ''], body: { changed: { body: { grade } } } });
    expect(await told([correction('S9')])).toMatchObject({ ...refused, happened: expect.stringContaining('could not be read any more') });
    expect((await s.overview(rig)).entries).toBe(3);
    await s.keep([correction('S4')]);
    expect((await s.overview(rig)).disputes).toEqual([]);
  });

  it('tells of an entry from the future and of a line that was changed after it was written', async () => {
    const { s, rig } = await drawn();
    const { text } = await s.exportLogbook(rig);
    const first = readLine(text.split('\n')[0] ?? '');
    if (!first.ok) throw new Error('the first line cannot be read');
    const ahead = { ...first.value.entry, id: '01920000-0000-7000-8000-000000000001', device: 'other', recorded_at: '2027-02-01T10:00:00-05:00', observed_at: '2026-09-18' };
    const changed = { ...first.value.entry, by: 'Somebody else' };
    await s.importFile('from another.jsonl', new TextEncoder().encode([ahead, changed].map((e) => `${lineOf(e).text}\n`).join('')));
    const { clockDoubts, disputes } = await s.overview(rig);
    expect(clockDoubts.map((d) => d.entry)).toEqual([ahead.id]);
    expect(disputes.map((d) => d.code)).toEqual(['same-id']);
    const right = { rig, kind: 'correction', version: 1, observed_at: '2026-09-19T12:00:00-04:00', by: BY, place: ahead.place, concerns: [ahead.id] };
    await s.keep([{ ...right, body: { changed: { observed_at: '2026-09-17' } } }]);
    expect((await s.overview(rig)).clockDoubts.map((d) => d.entry)).not.toContain(ahead.id);
  });

  it('puts the digest of the logbook itself on paper, as its copy closes with it', async () => {
    const { s, rig } = await drawn();
    await s.keep([observed(rig, aSeal(await s.overview(rig)), 'seal-grade', { grade: 'S4', defects: ['edge-lifts'] })]);
    const { text } = await s.exportLogbook(rig);
    const { trailer } = JSON.parse(text.trimEnd().split('\n').at(-1) ?? '') as { readonly trailer: { readonly digest: string } };
    for (const what of ['condition-record', 'plan', 'walk-sheet'] as const) {
      const html = await s.paper(rig, { what, paper: 'A4', preferences: { system: 'us', units: {} } });
      expect(html.replaceAll('<br>', '').replaceAll(' ', '')).toContain(trailer.digest);
    }
  });

  it('maps a panel when it is asked, as the plan’s room would; anew after a reading, and none where nothing was metered', async () => {
    const { s, rig } = await drawn();
    const reading = (x: number, y: number, percent: number): Draft => ({
      rig,
      kind: 'wood-moisture-pin',
      version: 1,
      observed_at: '2026-09-19T11:00:00-04:00',
      by: BY,
      place: { at: 'point', face: 'rear', side: 'inside', point_m: [x, y] },
      body: { reading: { typed: String(percent), unit: 'percent', si: percent / 100 }, ...(percent < 12 ? { dry_reference: true } : {}) },
    });
    const rows = [11, 11, 14, 11, 16, 24, 11, 18, 29];
    await s.keep(rows.map((percent, i) => reading(0.5 + (i % 3) * 0.4, 1 + Math.floor(i / 3) * 0.3, percent)));
    const { plan, rig: drawnRig } = await s.overview(rig);
    const panel = plan.water.panels[0];
    if (!panel) throw new Error('no panel');
    const map = await s.moistureField(rig, panel.id);
    expect(map).toEqual(moistureField(drawnRig, panel));
    expect(map?.parts.length).toBeGreaterThan(0);
    expect((await s.moistureField(rig, panel.id, { threshold: 0.1 }))?.threshold).toBe(0.1);
    expect(await s.moistureField(rig, panel.id)).toBe(map);
    await s.keep([reading(1.7, 1, 12)]);
    const later = (await s.overview(rig)).plan.water.panels[0];
    expect(later?.spots).toHaveLength(rows.length + 1);
    expect(await s.moistureField(rig, panel.id)).toEqual(later && moistureField(drawnRig, later));
    expect(await s.moistureField(rig, 'curb@inside/pin')).toBeUndefined();
  });
});
