import { describe, expect, it } from 'vitest';
import { isOpen, type Life, type Plan } from '../plan';
import type { Rig } from '../rig';
import { dayOf } from '../units';
import type { GroupPrimitive, Primitive } from './primitives';
import { rigSheet } from './rig-sheet';
import { knownFrom, numberedMarks, type SheetMark, standing } from './sheet-mark';
import type { SheetMarks } from './sheet-marks';
import { stationLabel } from './spoken';
import { escapeText, svgText } from './svg-text';
import { KINDS, trialRig } from './trial-rig';

/** The sheet against what was put on it: no station and no mark is lost, marks do not cover each other, and what was not seen never looks sound. */
const groups = (list: readonly Primitive[]): readonly GroupPrimitive[] => list.filter((p): p is GroupPrimitive => p.form === 'group');

const URGENT = ['before-moving', 'before-rain', 'this-season', 'watch', 'not-seen', 'do-not-use'] as const;

/** Fourteen marks spread over the rig, the rest sound. */
const marksOn = (rig: Rig): SheetMarks => {
  const outside = rig.stations.filter((s) => !s.retired && s.group !== 'area');
  const step = Math.max(1, Math.floor(outside.length / 14));
  const picked = outside.filter((_, i) => i % step === 0).slice(0, 14);
  const numbered = picked.map(
    (s, i): SheetMark => ({
      id: s.id,
      mark: URGENT[i % 6] ?? 'watch',
      number: i + 1,
      professional: i % 4 === 1,
      place: { at: 'station', station: s.id, side: 'outside' },
      station: s.id,
      where: s.name,
      what: 'Seal open',
    }),
  );
  return { known: Object.fromEntries(rig.stations.map((s) => [s.id, { mark: 'sound' as const }])), numbered };
};

describe.each(KINDS)('the sheet of a %s', (kind) => {
  const rig = trialRig(kind);
  const marks = marksOn(rig);
  const net = rigSheet(rig, marks);
  const below = rigSheet(rig, marks, { sheet: 'underside' });

  it('shows every station on one of its two sheets, each once on it, with a label', () => {
    const ids = (d: typeof net): readonly string[] =>
      groups(d.primitives)
        .filter((g) => g.role === 'station')
        .map((g) => g.id);
    for (const d of [net, below]) expect(new Set(ids(d)).size).toBe(ids(d).length);
    const shown = new Set([...ids(net), ...ids(below)]);
    expect(rig.stations.map((s) => s.id).filter((id) => !shown.has(id))).toEqual([]);
    for (const g of groups(net.primitives)) expect(g.label.length).toBeGreaterThan(4);
  });

  it('shows every numbered mark once, inside the sheet, none over another', () => {
    const found = groups(net.primitives).filter((g) => g.role === 'finding');
    expect(found.map((g) => g.id)).toEqual(marks.numbered.map((m) => `mark/${m.id}`));
    for (const g of found) {
      const [x, y, w, h] = g.hit ?? [0, 0, 0, 0];
      expect(x, g.label).toBeGreaterThanOrEqual(-0.01);
      expect(y, g.label).toBeGreaterThanOrEqual(-0.01);
      expect(x + w, g.label).toBeLessThanOrEqual(net.width + 0.01);
      expect(y + h, g.label).toBeLessThanOrEqual(net.height + 0.01);
    }
    for (const a of found)
      for (const b of found)
        if (a.id < b.id && a.hit && b.hit) {
          const [w, h] = [
            Math.min(a.hit[0] + a.hit[2], b.hit[0] + b.hit[2]) - Math.max(a.hit[0], b.hit[0]),
            Math.min(a.hit[1] + a.hit[3], b.hit[1] + b.hit[3]) - Math.max(a.hit[1], b.hit[1]),
          ];
          const covered = w > 0 && h > 0 ? (w * h) / Math.min(a.hit[2] * a.hit[3], b.hit[2] * b.hit[3]) : 0;
          expect(covered, `${a.label} over ${b.label}`).toBeLessThan(0.1);
        }
  });

  it('writes SVG that stands alone: finite figures of at most three decimals, no script, no style sheet, nothing fetched', () => {
    const text = svgText(net);
    expect(text).not.toMatch(/NaN|Infinity|undefined|<script|<style|style=|href|url\(|class=/);
    for (const d of text.match(/ d="[^"]*"/g) ?? []) expect(d).not.toMatch(/\.\d{4}/);
    expect((text.match(/<g /g) ?? []).length).toBe((text.match(/<\/g>/g) ?? []).length);
    expect(text.startsWith('<svg xmlns="http://www.w3.org/2000/svg"')).toBe(true);
  });
});

describe('what is said and shown', () => {
  const rig = trialRig('travel-trailer');
  const window = rig.stations.find((s) => s.id === 'curb.window-12x21');
  if (!window) throw new Error('the trial rig has lost its window');

  it('speaks a station as the walk meets it', () => {
    expect(stationLabel(rig, window, { mark: 'before-rain', words: 'Seal open', last_seen: dayOf(2026, 5, 3) })).toBe('Curb side, window 2, seal open, last seen 3 May 2026');
    expect(stationLabel(rig, window, { mark: 'not-seen' })).toBe('Curb side, window 2, not seen');
    expect(stationLabel(rig, window)).toBe('Curb side, window 2, nothing recorded');
  });

  it('never draws a station that nobody saw like a sound one, nor an unknown one like either', () => {
    const of = (mark: 'sound' | 'not-seen' | undefined): string =>
      JSON.stringify(rigSheet(rig, { known: mark === undefined ? {} : { [window.id]: { mark } }, numbered: [] }).primitives.filter((p) => p.form !== 'group'));
    expect(new Set([of('sound'), of('not-seen'), of(undefined)]).size).toBe(3);
  });

  it('leaves a retired station off the sheet', () => {
    const less = { ...rig, stations: rig.stations.map((s) => (s.id === window.id ? { ...s, retired: true } : s)) };
    expect(groups(rigSheet(less).primitives).some((g) => g.id === window.id)).toBe(false);
  });

  it('escapes what people typed', () => {
    const named = { ...rig, name: '<img src=x onerror=alert(1)> & "co"' };
    expect(svgText(rigSheet(named))).not.toContain('<img');
    expect(escapeText('a\u0000b<')).toBe('ab&lt;');
  });
});

describe('the numbers', () => {
  const rig = trialRig('travel-trailer');
  const finding = (id: string, station: string, urgency: 'watch' | 'before-rain', more: object = {}) => ({
    id,
    rule: 'r',
    place: { at: 'station', station, side: 'outside' } as const,
    station,
    raised_by: 'e',
    since: dayOf(2026, 5, 3),
    last_seen: dayOf(2026, 5, 3),
    title: 'Seal open',
    urgency,
    who: 'yourself' as const,
    because: [],
    life: 'open' as const,
    remedies: [],
    cautions: [],
    ...more,
  });
  const plan = {
    findings: [finding('b', 'curb.window-12x21', 'watch'), finding('a', 'roof.skylight', 'before-rain'), finding('c', 'roof.ac-unit', 'before-rain', { life: 'proved' })],
    not_seen: [{ id: 'n', station: 'roof.antenna-base', since: dayOf(2026, 5, 3), because: { text: 'out of reach', entries: [], source: { status: 'practice', text: '' } } }],
  } as unknown as Plan;

  it('run from the most urgent to what was not seen, without what is proved', () => {
    expect(numberedMarks(rig, plan).map((m) => [m.number, m.mark, m.station])).toEqual([
      [1, 'before-rain', 'roof.skylight'],
      [2, 'watch', 'curb.window-12x21'],
      [3, 'not-seen', 'roof.antenna-base'],
    ]);
  });

  it('show what was mended as watched, and say so', () => {
    const mended = {
      findings: [finding('a', 'roof.skylight', 'before-rain', { life: 'proof-due' }), finding('b', 'roof.ac-unit', 'before-rain')],
      not_seen: [],
    } as unknown as Plan;
    expect(numberedMarks(rig, mended).map((m) => [m.mark, m.what])).toEqual([
      ['before-rain', 'Seal open'],
      ['watch', 'Seal open: mended, to be proved'],
    ]);
  });

  it('leave out every life that is history only, by the plan’s own word for it', () => {
    const standsStill: Readonly<Record<Life, boolean>> = {
      open: true,
      'proof-due': true,
      reopened: true,
      'put-off': true,
      declined: true,
      'judged-otherwise': true,
      'handed-over': true,
      proved: false,
      'seen-sound': false,
    };
    const lives = Object.keys(standsStill) as Life[];
    const all = { findings: lives.map((life) => finding(life, 'roof.skylight', 'watch', { life })), not_seen: [] } as unknown as Plan;
    const listed = lives.filter((life) => standsStill[life]);
    expect(standing(all).map((f) => f.id)).toEqual(listed);
    expect(all.findings.filter(isOpen).map((f) => f.id)).toEqual(listed);
    expect(numberedMarks(rig, all).map((m) => m.id)).toEqual(listed);
    expect(knownFrom({ ...all, findings: all.findings.filter((f) => f.life === 'seen-sound') }, { 'roof.skylight': 'sound' })['roof.skylight']?.mark).toBe('sound');
  });

  it('follow a person who judged otherwise', () => {
    const judged = {
      ...plan,
      findings: [finding('b', 'curb.window-12x21', 'watch', { judged: { urgency: 'before-rain', by: 'x' } }), finding('a', 'roof.skylight', 'watch')],
    } as unknown as Plan;
    expect(numberedMarks(rig, judged).map((m) => m.station)[0]).toBe('curb.window-12x21');
  });

  it('give each station its most urgent finding', () => {
    expect(knownFrom(plan, { 'roof.skylight': 'before-rain', 'rear.window-36x22': 'sound' })).toMatchObject({
      'roof.skylight': { mark: 'before-rain', words: 'Seal open' },
      'rear.window-36x22': { mark: 'sound' },
      'roof.antenna-base': { mark: 'not-seen' },
    });
  });
});
