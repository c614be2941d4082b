import { describe, expect, it } from 'vitest';
import { sealGrade, tyrePressure } from '../../../../src/entries';
import type { Preferences } from '../../../../src/units';
import { type Answers, type Change, changed, formOf, ready, saysSound } from './form';

/**
 * The form behind every station card, against what the kinds themselves declare: no outside source; what is checked is
 * that a person's touches give exactly the body the kind asks for, that typed characters and their unit are never
 * rewritten, and that what is refused or doubted is said before anything is kept.
 */
const us: Preferences = { system: 'us', units: {} };
const given = (kind: Parameters<typeof changed>[0], ...changes: readonly Change[]): Answers => changes.reduce<Answers>((a, c) => changed(kind, a, c, us), {});
const type = (field: string, text: string): readonly Change[] => [...text].map((key) => ({ do: 'key', field, key }));

describe('a graded seal', () => {
  it('is complete with one touch, and sound only at the sound answer', () => {
    const s0 = given(sealGrade, { do: 'choose', field: 'grade', option: 'S0' });
    expect(ready(sealGrade, s0)).toMatchObject({ state: 'complete', body: { grade: 'S0' }, doubts: [] });
    expect(saysSound(sealGrade, s0)).toBe(true);
    expect(saysSound(sealGrade, given(sealGrade, { do: 'choose', field: 'grade', option: 'S4' }))).toBe(false);
  });
  it('takes the defects back when the grade no longer asks for them', () => {
    const open = given(sealGrade, { do: 'choose', field: 'grade', option: 'S4' }, { do: 'toggle', field: 'defects', option: 'edge-lifts' });
    expect(ready(sealGrade, open)).toMatchObject({ body: { grade: 'S4', defects: ['edge-lifts'] } });
    expect(changed(sealGrade, open, { do: 'choose', field: 'grade', option: 'S0' }, us)).toEqual({ grade: 'S0' });
  });
  it('an option tapped twice is as if it had not been tapped', () => {
    const twice = given(
      sealGrade,
      { do: 'choose', field: 'grade', option: 'S3' },
      { do: 'toggle', field: 'defects', option: 'edge-lifts' },
      { do: 'toggle', field: 'defects', option: 'edge-lifts' },
    );
    expect(twice).toEqual({ grade: 'S3' });
  });
});

describe('a number', () => {
  it('keeps the typed characters and the unit, and is empty again when erased', () => {
    const typed = given(tyrePressure, ...type('pressure', '62.5'));
    expect(ready(tyrePressure, typed)).toMatchObject({ state: 'complete', body: { pressure: { typed: '62.5', unit: 'psi' } } });
    expect(given(tyrePressure, ...type('pressure', '6'), { do: 'key', field: 'pressure', key: 'erase' })).toEqual({});
  });
  it('a changed unit does not change what was typed', () => {
    const kpa = changed(tyrePressure, given(tyrePressure, ...type('pressure', '450')), { do: 'unit', field: 'pressure', unit: 'kpa' }, us);
    expect(kpa['pressure']).toEqual({ text: '450', unit: 'kpa' });
    expect(ready(tyrePressure, kpa)).toMatchObject({ state: 'complete', doubts: [] });
  });
  it('asks about a kPa figure typed as psi, and refuses what no gauge shows', () => {
    const slip = ready(tyrePressure, given(tyrePressure, ...type('pressure', '450')));
    expect(slip).toMatchObject({ state: 'complete', doubts: [{ code: 'other-unit-likely', instead: [{ unit: 'kpa' }] }] });
    expect(ready(tyrePressure, given(tyrePressure, ...type('pressure', '99999')))).toMatchObject({ state: 'refused' });
  });
  it('a temperature alone is not yet an answer', () => {
    expect(ready(tyrePressure, given(tyrePressure, ...type('tyre_temperature', '68')))).toMatchObject({ state: 'unfinished', missing: ['Pressure'] });
  });
});

it('a kept body comes back as the form that made it', () => {
  const form = given(tyrePressure, ...type('pressure', '61'), ...type('tyre_temperature', '59'), { do: 'choose', field: 'rested', option: 'cold' });
  const made = ready(tyrePressure, form);
  expect(made.state === 'complete' && formOf(tyrePressure, made.body)).toEqual(form);
});
