import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { metres } from '../../units';
import { ladder, RAILS_ABOVE } from '.';

/** The quoted figures stand in cases/ladder.jsonl. Here: the triangle must close, and the foot must stand a quarter out. */
describe('ladder', () => {
  it('is a right triangle whose foot stands out a quarter of its working length, at about 75.5°', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 6, noNaN: true }), (height) => {
        const l = ladder(metres(height), RAILS_ABOVE);
        if (!l.ok) throw new Error('refused');
        const { working_length, foot_distance, least_length, angle } = l.value;
        expect(Math.hypot(height, foot_distance)).toBeCloseTo(working_length, 12);
        expect(foot_distance / working_length).toBeCloseTo(0.25, 12);
        expect((angle * 180) / Math.PI).toBeCloseTo(75.5, 1);
        expect((least_length - working_length) * Math.sin(angle)).toBeCloseTo(RAILS_ABOVE, 12);
      }),
    );
  });
  it.each([0, 0.4, 6.1, -1, Number.NaN])('refuses an edge at %s m', (h) => expect(ladder(metres(h), RAILS_ABOVE).ok).toBe(false));
});
