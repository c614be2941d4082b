import { describe, expect, it } from 'vitest';
import { sealGrade, tyreDateCode, tyrePressure } from '../../../../src/entries';
import type { Preferences } from '../../../../src/units';
import { agree, answer, isOneTap, nextKind, restored, startVisit, toKeep, wasKept } from './visit';

/**
 * One stop of a round, against the rules of the round: an answer is one entry; what is added later at the same stop
 * replaces it in one step; a doubtful figure is not kept before the person has said yes; a draft comes back only to its
 * own stop. No outside source.
 */
const us: Preferences = { system: 'us', units: {} };
const at = { station: 'roof-vent-2', side: 'outside', round: 'round-1', began: 1000 } as const;
const by = { rig: 'rig-1', by: 'Dana', now: '2026-09-19T10:12:00-04:00', ms: 9000 };

const graded = (option: string) => answer(startVisit(at, [sealGrade]), sealGrade, { do: 'choose', field: 'grade', option }, us);

describe('keeping', () => {
  it('one answer is one entry, with its place, its round and the time spent', () => {
    const [one, ...more] = toKeep(graded('S4'), [sealGrade], by);
    expect(more).toEqual([]);
    expect(one?.drafts).toMatchObject([
      {
        rig: 'rig-1',
        kind: 'seal-grade',
        version: sealGrade.version,
        body: { grade: 'S4' },
        by: 'Dana',
        round: 'round-1',
        spent_s: 8,
        place: { at: 'station', station: 'roof-vent-2', side: 'outside' },
      },
    ]);
  });
  it('what is kept is not written twice; a note added later takes the first back and writes one anew', () => {
    const first = toKeep(graded('S4'), [sealGrade], by)[0];
    const kept = wasKept(graded('S4'), 'seal-grade', 'entry-1', first?.holds ?? '');
    expect(toKeep(kept, [sealGrade], by)).toEqual([]);
    const again = toKeep({ ...kept, note: 'wet below' }, [sealGrade], by)[0];
    expect(again?.drafts).toMatchObject([
      { kind: 'withdrawal', concerns: ['entry-1'] },
      { kind: 'seal-grade', note: 'wet below' },
    ]);
  });
  it('a date code from next year is not written, however the stop is left', () => {
    const coded = (code: string) => answer(startVisit({ ...at, station: 'wheel-1' }, [tyreDateCode]), tyreDateCode, { do: 'text', field: 'code', text: code }, us);
    expect(toKeep(coded('5227'), [tyreDateCode], by)).toEqual([]);
    expect(toKeep(coded('3526'), [tyreDateCode], by)).toHaveLength(1);
  });
  it('a doubtful figure waits for a yes', () => {
    const typed = [...'450'].reduce((v, key) => answer(v, tyrePressure, { do: 'key', field: 'pressure', key }, us), startVisit({ ...at, station: 'wheel-1' }, [tyrePressure]));
    expect(toKeep(typed, [tyrePressure], by)).toEqual([]);
    expect(toKeep(agree(typed, tyrePressure), [tyrePressure], by)).toHaveLength(1);
  });
});

describe('walking on', () => {
  it('only the sound answer alone is a one-tap visit', () => {
    expect(isOneTap(graded('S0'), sealGrade)).toBe(true);
    expect(isOneTap(graded('S1'), sealGrade)).toBe(false);
  });
  it('the keys write to the first number, and the next kind without an answer comes next', () => {
    const start = startVisit(at, [tyrePressure, sealGrade]);
    expect(start.live).toBe('pressure');
    expect(nextKind(start, [tyrePressure, sealGrade])?.id).toBe('seal-grade');
    expect(nextKind({ ...graded('S0'), active: 'seal-grade' }, [sealGrade])).toBeUndefined();
  });
  it('a draft comes back only to its own stop', () => {
    const draft = JSON.parse(JSON.stringify(graded('S4'))) as unknown;
    expect(restored(draft, at)?.forms).toEqual({ 'seal-grade': { grade: 'S4' } });
    expect(restored(draft, { ...at, side: 'inside' })).toBeUndefined();
    expect(restored(undefined, at)).toBeUndefined();
  });
});
