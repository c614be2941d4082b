import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, neighbourOf, panned, type Reachable, zoomed } from './drawing-space';

// Geometry of the drawing on the screen, by its own laws: no table says how a view moves, so properties do.
const whole: Box = { x: 0, y: 0, w: 12, h: 8 };
const factor = fc.double({ min: 0.05, max: 20, noNaN: true });
const share = fc.double({ min: -3, max: 3, noNaN: true });
const at = (id: string, x: number, y: number): Reachable => ({ id, label: id, box: { x: x - 0.1, y: y - 0.1, w: 0.2, h: 0.2 } });

describe('the part of a sheet that is looked at', () => {
  it('never leaves the sheet, whatever is done to it', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(factor, share, share), { maxLength: 20 }), (steps) => {
        let view = whole;
        for (const [f, dx, dy] of steps) {
          view = panned(zoomed(view, whole, f), whole, dx, dy);
          expect(view.x).toBeGreaterThanOrEqual(-1e-9);
          expect(view.y).toBeGreaterThanOrEqual(-1e-9);
          expect(view.x + view.w).toBeLessThanOrEqual(whole.w + 1e-9);
          expect(view.y + view.h).toBeLessThanOrEqual(whole.h + 1e-9);
          expect(view.w / view.h).toBeCloseTo(whole.w / whole.h, 9);
        }
      }),
    );
  });

  it('zooms about the point under the pointer: that point stays where it is', () => {
    const point = [5, 3] as const;
    const near = zoomed(whole, whole, 3, point);
    expect((point[0] - near.x) / near.w).toBeCloseTo(point[0] / whole.w, 9);
    expect((point[1] - near.y) / near.h).toBeCloseTo(point[1] / whole.h, 9);
  });
});

describe('arrow keys go to the neighbour', () => {
  const all = [at('middle', 5, 4), at('right', 7, 4.2), at('far right', 10, 4), at('below', 5.1, 6), at('left', 2, 4)];

  it('takes the nearest in that direction, and prefers what lies straight ahead', () => {
    expect(neighbourOf(all, 'middle', 'ArrowRight')).toBe('right');
    expect(neighbourOf(all, 'middle', 'ArrowLeft')).toBe('left');
    expect(neighbourOf(all, 'middle', 'ArrowDown')).toBe('below');
  });

  it('says nothing at the edge, and never stays where it is', () => {
    expect(neighbourOf(all, 'far right', 'ArrowRight')).toBeUndefined();
    for (const r of all) for (const d of ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'] as const) expect(neighbourOf(all, r.id, d)).not.toBe(r.id);
  });
});
