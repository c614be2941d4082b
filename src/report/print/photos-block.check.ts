import { describe, expect, it } from 'vitest';
import { kinds } from '../../entries';
import { fold, lineOf } from '../../logbook';
import { planAfter } from '../../plan';
import { blankRig, layoutFrom, type Rig } from '../../rig';
import type { Entry } from '../../terms';
import { dayOf } from '../../units';
import { conditionRecord } from './condition-record';
import { photosOf, photosToPrint } from './photos-block';

/** Photographs on paper against a small logbook: the latest look's first, two at a finding and no more, each whole and with its day; one without a picture is told of. */
const layout = layoutFrom({ kind: 'travel-trailer', name: 'Plover', skin: 'fibreglass', construction: 'bonded', roof: 'tpo' });
if (!layout.ok) throw new Error(layout.refusals[0]?.sentence);
const rig: Rig = { ...blankRig('trial'), name: 'Plover', kind: 'travel-trailer', ...layout.value };
const window = rig.stations.find((s) => s.part.startsWith('window-'));
if (!window) throw new Error('the layout has no window');

const hash = (n: number): string => String(n).repeat(64);
const photo = (n: number) => ({ hash: hash(n), media_type: 'image/jpeg', size_bytes: 9 });

const look = (n: number, day: string, grade: string, photos: readonly number[]): Entry => ({
  id: `01920000-0000-7000-8000-00000000000${n}`,
  rig: 'trial',
  kind: 'seal-grade',
  version: 2,
  observed_at: day,
  recorded_at: `${day}T10:00:00Z`,
  by: 'Ash',
  device: 'one',
  counter: n,
  previous: n === 1 ? null : hash(9),
  heads: [],
  place: { at: 'station', station: window.id, side: 'outside' },
  body: { grade },
  photos: photos.map(photo),
});

const on = dayOf(2026, 10, 4);
const read = (...entries: readonly Entry[]) => {
  const state = fold(kinds, rig, entries.map(lineOf));
  return { state, ...planAfter(undefined, rig, state, on) };
};

describe('photographs of a finding', () => {
  const { state, plan, marks } = read(look(1, '2026-09-01', 'S4', [1, 2]), look(2, '2026-10-01', 'S4', [3]));
  const open = plan.findings.find((f) => f.station === window.id);
  if (!open) throw new Error('an open seal is no finding');
  const record = (pictures: Readonly<Record<string, string>>): string =>
    conditionRecord(rig, state, plan, { paper: 'A4', on, preferences: { system: 'us', units: {} }, marks, photos: pictures });

  it('are two at most, of the latest look it rests on first', () => {
    const two = photosOf(state, open);
    expect(two.length).toBeLessThanOrEqual(2);
    expect(two[0]).toEqual({ hash: hash(3), words: '1 Oct 2026, Ash' });
    expect(photosToPrint(state, plan)).toEqual(two.map((p) => p.hash));
  });

  it('stand on paper with their day, and without one it is said where they are', () => {
    const html = record({ [hash(3)]: 'data:image/jpeg;base64,AAAA' });
    expect(html).toContain('alt="Photograph, 1 Oct 2026, Ash" src="data:image/jpeg;base64,AAAA"');
    expect(record({})).toContain('in the logbook.</small>');
  });

  it('of what is only watched are left out', () => {
    const watched = read(look(1, '2026-09-01', 'S1', [1]));
    expect(photosToPrint(watched.state, watched.plan)).toEqual([]);
  });
});
