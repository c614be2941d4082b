import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beadLength as beadOfStation } from '../src/rig';
import { BEAD_PRACTICES } from '../src/science';
import type { BeadRule, Shape } from '../src/terms';
import { work, worksheetById } from '../src/worksheets';

/**
 * Nothing is worked out in two places: what the rig writes into its stations is what the worksheet behind the figure gives.
 * No published source; the two must be equal to the micrometre for every rule, rectangles and circles.
 */
const worksheet = worksheetById('bead-length');

const byWorksheet = (rule: string, outline: string, width_m: number, height_m: number): number => {
  const worked = worksheet && work(worksheet, { rule, outline, width_m, height_m });
  if (!worked?.ok) throw new Error(JSON.stringify(worked));
  return Number(worked.value.outcome.result.length_m);
};

const size = fc.double({ min: 0.05, max: 12, noNaN: true });
const rule = fc.constantFrom(...BEAD_PRACTICES.map((p) => p.rule)) as fc.Arbitrary<BeadRule>;

describe('bead length of a station', () => {
  it('is the worksheet’s for rectangles', () => {
    fc.assert(
      fc.property(rule, size, size, (r, w, h) => {
        const shape: Shape = { form: 'rect', x_m: 1, y_m: 2, w_m: w, h_m: h };
        expect(beadOfStation(shape, r)).toBeCloseTo(byWorksheet(r, 'rect', w, h), 6);
      }),
    );
  });

  it('is the worksheet’s for circles', () => {
    fc.assert(
      fc.property(rule, size, (r, d) => {
        const shape: Shape = { form: 'circle', x_m: 1, y_m: 2, w_m: d, h_m: d };
        expect(beadOfStation(shape, r)).toBeCloseTo(byWorksheet(r, 'circle', d, 0), 6);
      }),
    );
  });
});
