import { describe, expect, it } from 'vitest';
import { blankRig, type Rig, startingLayout } from '../../../../src/rig';
import type { Preferences } from '../../../../src/units';
import { notThere, placeWords, readPoint, STEPS, snapped, stepM, stepWords, tapesOf, typedOf } from './wall-measure';

/**
 * Measuring on a wall: no outside source but the inch of exactly 25.4 mm. What is checked is that a place goes to the tape and
 * back without moving, that a plain figure off a tape is inches, and that what is no wall is told and not moved.
 */
const US: Preferences = { system: 'us', units: {} };
const METRIC: Preferences = { system: 'metric', units: {} };

const made = startingLayout({ kind: 'travel-trailer', name: 'Heron', skin: 'fibreglass', construction: 'bonded', roof: 'epdm', slides_road: 1 });
if (!made.ok) throw new Error('no layout');
const rig: Rig = { ...blankRig('r'), ...made.value.layout, name: 'Heron' };
const face = (id: string) => {
  const found = rig.faces.find((f) => f.id === id);
  if (!found) throw new Error(id);
  return found;
};
const curb = face('curb');
const inside = tapesOf(rig, curb, 'inside');

describe('a place on a wall', () => {
  it('is measured up from the floor within the rig, and above ground outside', () => {
    expect(inside).toEqual([
      { label: 'From the front', from_m: 0 },
      { label: 'Up from the floor', from_m: rig.levels.floor_m },
    ]);
    expect(tapesOf(rig, curb, 'outside')[1]).toEqual({ label: 'Above ground', from_m: 0 });
    expect(tapesOf(rig, face('roof'), 'inside').map((t) => t.label)).toEqual(['From the front', 'From the road side']);
    const slide = rig.slides[0];
    expect(slide && tapesOf(rig, face(`${slide.id}-outer`), 'inside')[1].from_m).toBe(slide?.y_m);
  });

  it('snaps to round lengths on the tape, in steps of 12, 6 and 3 in or 30, 15 and 7.5 cm', () => {
    expect(STEPS.map((s) => stepM(s, US) / 0.0254)).toEqual([12, 6, 3].map((n) => expect.closeTo(n, 9)));
    expect(STEPS.map((s) => stepWords(s, US))).toEqual(['12 in', '6 in', '3 in']);
    expect(STEPS.map((s) => stepWords(s, METRIC))).toEqual(['30 cm', '15 cm', '7.5 cm']);
    const point = snapped([1.27, rig.levels.floor_m + 0.95], stepM('coarse', US), inside);
    expect(placeWords(point, inside, US)).toBe('4 ft 0 in from the front, 3 ft 0 in up from the floor');
  });

  it('goes to the typed fields and back within a millimetre', () => {
    for (const preferences of [US, METRIC])
      for (const x of [0.15, 1.2192, 3.3])
        for (const up of [0.0762, 0.9144, 1.5]) {
          const at = snapped([x, rig.levels.floor_m + up], stepM('fine', preferences), inside);
          const back = readPoint(typedOf(at, inside, preferences), inside, preferences);
          // Feet and inches are shown to the inch; three inches are whole.
          expect(back).toEqual({ ok: true, point_m: [expect.closeTo(at[0], 3), expect.closeTo(at[1], 3)] });
        }
  });

  it('reads a plain figure as inches and written feet as feet, and says what is no length', () => {
    expect(readPoint(['48', '3 ft'], inside, US)).toEqual({ ok: true, point_m: [1.219, expect.closeTo(rig.levels.floor_m + 0.914, 3)] });
    expect(readPoint(['1.2', '0,9'], inside, METRIC)).toEqual({ ok: true, point_m: [1.2, expect.closeTo(rig.levels.floor_m + 0.9, 3)] });
    const wrong = readPoint(['left a bit', '3'], inside, US);
    expect(wrong.ok ? '' : wrong.sentence).toMatch(/^From the front: .*not a number/);
  });

  it('is refused off the wall and in an opening, and taken beside it', () => {
    const window = rig.stations.find((s) => s.face === 'curb' && s.looks === 'window' && s.shape.form === 'rect');
    if (window?.shape.form !== 'rect') throw new Error('no window');
    const { x_m, y_m, w_m, h_m } = window.shape;
    expect(notThere(rig, curb, [x_m + w_m / 2, y_m + h_m / 2])).toMatch(/^That is in window/);
    expect(notThere(rig, curb, [x_m + w_m / 2, y_m - 0.05])).toBeUndefined();
    expect(notThere(rig, curb, [-0.4, 1])).toMatch(/off this wall/);
    const slide = rig.slides[0];
    expect(slide && notThere(rig, face(slide.face), [slide.x_m + slide.w_m / 2, slide.y_m + slide.h_m / 2])).toMatch(/opening of slide-out 1/);
  });
});
