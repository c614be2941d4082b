import { describe, expect, it } from 'vitest';
import { answersOf, begun, type Kept, kindOf, leftOf, REPEAT_EVERY, repeatDue, restored, type Series, type Told, wasKept, wasUndone } from './series';

/**
 * A series of readings between touches: no outside source but the practice of reading one place twice in every ten (common
 * practice, no published source). What is checked is that nothing of one reading goes over to the next, that one step back
 * gives the place back, and that a draft of another day is not taken up.
 */
const DAY = '2026-09-19';
const TOLD: Told = { day: DAY, scale: 'pin', meter: 'grey', material: 'softwood', wood_temperature: { text: '59', unit: 'f' } };
const typed = (series: Series, x: number, text: string, more: Partial<Series> = {}): Series => ({ ...series, point_m: [x, 1], reading: { text, unit: 'percent' }, ...more });
const row = (n: number): readonly Kept[] => Array.from({ length: n }, (_, i) => ({ entry: `e${i}`, point_m: [i, 1] as const, text: '11', dry: false }));

describe('a series of readings', () => {
  it('asks of each meter only what its kind asks', () => {
    const series = typed(begun(DAY), 1, '11', { dry: true });
    expect(answersOf(TOLD, series)).toEqual({
      reading: { text: '11', unit: 'percent' },
      wood_temperature: { text: '59', unit: 'f' },
      material: 'softwood',
      surface: 'dry',
      dry_reference: true,
      meter: 'grey',
    });
    for (const scale of ['pin', 'pinless', 'relative'] as const)
      for (const key of Object.keys(answersOf({ ...TOLD, scale }, series))) expect(Object.keys(kindOf(scale).fields)).toContain(key);
    expect(answersOf({ ...TOLD, scale: 'relative' }, series)).not.toHaveProperty('wood_temperature');
    expect(answersOf({ ...TOLD, meter: '', material: undefined }, begun(DAY))).toEqual({ wood_temperature: { text: '59', unit: 'f' }, surface: 'dry' });
  });

  it('carries nothing of one place to the next, but a row of dry places until there are enough', () => {
    const first = wasKept(typed(begun(DAY), 1, '11', { dry: true, surface: 'wet' }), 'a', false);
    expect(first).toMatchObject({ point_m: undefined, reading: undefined, surface: 'dry', dry: true });
    const second = wasKept(typed(first, 2, '12'), 'b', true);
    expect(second.dry).toBe(false);
    expect(second.kept.map((k) => [k.entry, k.text, k.dry])).toEqual([
      ['a', '11', true],
      ['b', '12', true],
    ]);
  });

  it('gives the place back in one step, as it was told', () => {
    const two = wasKept(typed(wasKept(typed(begun(DAY), 1, '11', { dry: true }), 'a', false), 2, '23', { dry: false }), 'b', false);
    const one = wasUndone(two);
    expect(one).toMatchObject({ point_m: [2, 1], dry: false, reading: undefined });
    expect(wasUndone(one)).toMatchObject({ point_m: [1, 1], dry: true, kept: [] });
    expect(wasUndone(begun(DAY))).toEqual(begun(DAY));
  });

  it('crosses a place off the list when it was read there and nowhere else, and puts it back with one step back', () => {
    const again = [
      { point_m: [1, 1] as const, words: 'first' },
      { point_m: [2, 1] as const, words: 'second' },
    ];
    const beside = wasKept(typed(begun(DAY), 2.1, '20'), 'a', false);
    expect(leftOf(again, beside.kept)).toEqual(again);
    const there = wasKept(typed(beside, 2, '20'), 'b', false);
    expect(leftOf(again, there.kept).map((a) => a.words)).toEqual(['first']);
    expect(leftOf(again, wasUndone(there).kept)).toEqual(again);
  });

  it('reminds of one place in ten, and is content once it was read again', () => {
    expect(repeatDue(row(REPEAT_EVERY - 1))).toBeUndefined();
    expect(repeatDue(row(REPEAT_EVERY))?.entry).toBe('e0');
    const repeated: readonly Kept[] = [...row(REPEAT_EVERY), { entry: 'again', point_m: [0, 1], text: '11.5', dry: false }];
    expect(repeatDue(repeated)).toBeUndefined();
    const onward = [...repeated, ...row(REPEAT_EVERY).map((k) => ({ ...k, entry: `${k.entry}'`, point_m: [k.point_m[0] + 20, 1] as const }))];
    expect(repeatDue(onward)?.entry).toBe("e0'");
  });

  it('takes up a draft of today, and begins anew on another day or from what is no draft', () => {
    const series = typed(begun(DAY), 1, '11');
    expect(restored(JSON.parse(JSON.stringify(series)), DAY)).toEqual(series);
    for (const saved of [{ ...series, day: '2026-09-18' }, undefined, null, 5, 'x', {}, { day: DAY }]) expect(restored(saved, DAY)).toBeUndefined();
  });
});
