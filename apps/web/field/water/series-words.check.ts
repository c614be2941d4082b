import { describe, expect, it } from 'vitest';
import { type Kept, REPEAT_EVERY } from './series';
import { countWords, doingOf, nextToRead } from './series-words';

/** What a series says and asks for next. No outside source; the order is ours: the same places first, then the second reading, then where it tells most. */
const words = ([x]: readonly [number, number]): string => `${x} m`;
const place = (x: number) => ({ point_m: [x, 1] as const, words: 'there' });
const kept = (n: number): readonly Kept[] => Array.from({ length: n }, (_, i) => ({ entry: `e${i}`, point_m: [i, 1] as const, text: '11', dry: i === 0 }));
const nothing = { placing: false, where: undefined, wrong: undefined, figure: '', refused: undefined, doubted: false, dry: false, next: undefined };

describe('the next place', () => {
  it('is one of the same places before all, then the one read twice, then where it would tell most', () => {
    expect(nextToRead(kept(REPEAT_EVERY), [place(7)], [place(8)], words)?.to.point_m).toEqual([7, 1]);
    const twice = nextToRead(kept(REPEAT_EVERY), [], [place(8)], words);
    expect(twice).toMatchObject({ to: { point_m: [0, 1], dry: true }, why: 'one place in ten a second time, 0 m' });
    expect(nextToRead(kept(2), [], [place(8)], words)?.to.point_m).toEqual([8, 1]);
    expect(nextToRead(kept(2), [], [], words)).toBeUndefined();
  });
  it('is counted in words', () => {
    const say = (part: Partial<Parameters<typeof countWords>[0]>) => countWords({ kept: kept(2), of: 0, left: 0, dryMissing: 0, wanted: 0, ...part });
    expect(say({ dryMissing: 3 })).toBe('3 more dry places to compare with.');
    expect(say({ dryMissing: 1, of: 9, left: 6 })).toBe('3 of 9 read again. 1 more dry place to compare with.');
    expect(say({ of: 9, left: 0 })).toBe('All 9 places read again.');
    expect(say({ kept: kept(REPEAT_EVERY) })).toBe('Read one place a second time.');
    expect(say({ wanted: 3 })).toBe('A ring: read there next.');
  });
});

describe('the large button', () => {
  it('keeps nothing without a place on the wall and a figure that can be one', () => {
    expect(doingOf(nothing).does).toBe('wait');
    expect(doingOf({ ...nothing, where: 'here', wrong: 'That is in a window.', figure: '11 %' }).does).toBe('wait');
    expect(doingOf({ ...nothing, where: 'here' })).toMatchObject({ does: 'wait', words: 'Type the reading' });
    expect(doingOf({ ...nothing, where: 'here', figure: '300 %', refused: 'too high' })).toMatchObject({ does: 'wait', second: 'too high' });
    expect(doingOf({ ...nothing, where: 'here', figure: '72 %', doubted: true })).toMatchObject({ does: 'agree', words: 'Yes, 72 % is right' });
    expect(doingOf({ ...nothing, where: 'here', figure: '11 %' })).toEqual({ does: 'keep', words: 'Keep 11 %', second: 'here' });
    expect(doingOf({ ...nothing, where: 'here', figure: '11 %', dry: true }).second).toMatch(/^dry place to compare with/);
  });
  it('goes to the next place where there is one, but not while a place is chosen by steps', () => {
    const next = { to: place(7), why: 'the same place again' };
    expect(doingOf({ ...nothing, next })).toMatchObject({ does: 'go', second: next.why });
    expect(doingOf({ ...nothing, next, placing: true }).does).toBe('wait');
    expect(doingOf({ ...nothing, placing: true, where: 'here' }).does).toBe('read-here');
  });
});
