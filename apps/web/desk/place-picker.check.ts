import { describe, expect, it } from 'vitest';
import { blankRig } from '../../../src/rig';
import { dayOf } from '../../../src/units';
import { fittingUnit } from './fitting-unit';
import { type PlaceAnswer, readPlace } from './place-picker';
import { observedAt, whenRefusal, whenWords } from './when-picker';

// What a person types about where and when, as the forms of the desk read it. Expected values follow from exact unit factors (1 in = 25.4 mm).
const rig = blankRig('01900000-0000-7000-8000-000000000001');
const answer = (part: Partial<PlaceAnswer>): PlaceAnswer => ({ at: 'point', station: '', face: 'road', side: 'outside', unit: 'm', points: '', from: '', to: '', ...part });

describe('where', () => {
  it('reads two figures a line, with a semicolon and either decimal sign', () => {
    expect(readPlace(answer({ points: '1.20; 0,45' }), rig)).toEqual({ place: { at: 'point', face: 'road', side: 'outside', point_m: [1.2, 0.45] } });
    expect(readPlace(answer({ at: 'outline', unit: 'in', points: '10; 10\n20; 10\n20; 20' }), rig)).toMatchObject({
      place: {
        outline_m: [
          [0.254, 0.254],
          [0.508, 0.254],
          [0.508, 0.508],
        ],
      },
    });
  });

  it('refuses what is no place, and says what would be one', () => {
    for (const wrong of [
      answer({ points: '1.2' }),
      answer({ points: 'left; right' }),
      answer({ at: 'outline', points: '1; 1\n2; 2' }),
      answer({ at: 'station', station: 'nowhere' }),
    ])
      expect(readPlace(wrong, rig)).toHaveProperty('refusal');
  });
});

describe('when', () => {
  const today = dayOf(2026, 10, 4);

  it('writes a day and a span as the logbook holds them', () => {
    expect(observedAt({ form: 'day', day: '2022-03-01' })).toBe('2022-03-01/2022-03-01');
    expect(observedAt({ form: 'span', from: '2022-03-01', to: '2022-05-31' })).toBe('2022-03-01/2022-05-31');
    expect(whenWords('2022-03-01/2022-05-31')).toBe('between 1 Mar 2022 and 31 May 2022');
  });

  it('refuses days that do not exist, that have not come, and spans that run backwards', () => {
    expect(whenRefusal({ form: 'day', day: '2026-02-30' }, today)).toBeDefined();
    expect(whenRefusal({ form: 'day', day: '2026-10-05' }, today)).toBeDefined();
    expect(whenRefusal({ form: 'span', from: '2022-05-31', to: '2022-03-01' }, today)).toBeDefined();
    expect(whenRefusal({ form: 'span', from: '2022-03-01', to: '2022-05-31' }, today)).toBeUndefined();
  });
});

describe('the unit a figure is shown in', () => {
  const us = { system: 'us', units: {} } as const;

  it('is the person’s own where it can be read, and a smaller one of the same system where it would be mostly zeros', () => {
    expect(fittingUnit('area', 1.2, us)).toBe('ft2');
    expect(fittingUnit('area', 45e-6, us)).toBe('in2');
    expect(fittingUnit('temperature', 273.15, us)).toBe('f');
    expect(fittingUnit('length', 2.4, { system: 'metric', units: {} })).toBe('m');
  });
});
