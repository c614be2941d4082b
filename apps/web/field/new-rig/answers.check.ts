import { describe, expect, it } from 'vitest';
import { type RigKindId, startingLayout } from '../../../../src/rig';
import { answersOf, NOTHING_GIVEN, questionsFor, sizeOf, stepped, withKind } from './answers';

/** From the questions on the phone to a drawn rig: every kind must be drawn with nothing but its kind said. No outside source. */
const KINDS: readonly RigKindId[] = ['travel-trailer', 'fifth-wheel', 'class-a', 'class-b', 'class-c', 'truck-camper', 'folding-camper', 'teardrop'];

describe('a new rig', () => {
  it.each(KINDS)('%s: every question may be left with “I do not know”', (kind) => {
    const made = startingLayout(answersOf(withKind(NOTHING_GIVEN, kind), 'My rig'));
    expect(made.ok && made.value.layout.stations.length).toBeGreaterThan(10);
  });
  it('asks no axles of a truck camper and no slide-outs of a teardrop', () => {
    expect(questionsFor(withKind(NOTHING_GIVEN, 'truck-camper'))).not.toContain('axles');
    expect(questionsFor(withKind(NOTHING_GIVEN, 'teardrop'))).not.toContain('slides_road');
    expect(questionsFor(NOTHING_GIVEN)[0]).toBe('kind');
  });
  it('steps land on whole steps and never leave what can be drawn', () => {
    const given = withKind(NOTHING_GIVEN, 'travel-trailer');
    const longer = stepped(given, 'length_m', 1, true);
    expect(longer).toBeGreaterThan(sizeOf(given, 'length_m'));
    expect(Math.abs(longer * 10 - Math.round(longer * 10))).toBeLessThan(1e-9);
    let at = given;
    for (let i = 0; i < 200; i++) at = { ...at, sizes: { length_m: stepped(at, 'length_m', 1, false) } };
    expect(startingLayout(answersOf(at, 'Longest')).ok).toBe(true);
  });
  it('another kind lets go of sizes and counts that belonged to the first', () => {
    expect(withKind({ ...NOTHING_GIVEN, kind: 'class-a', axles: 3, sizes: { length_m: 13 } }, 'teardrop')).toMatchObject({ kind: 'teardrop', sizes: {} });
  });
});
