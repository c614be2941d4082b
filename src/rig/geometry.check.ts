import { describe, expect, it } from 'vitest';
import { BEAD_PRACTICES, beadLength as beadOf, RUN_DOWN } from '../science';
import { metres } from '../units';
import { applyLayout } from './describe';
import { asSeen, faceOf, heightAboveGround, runsLeftward } from './faces';
import { neighbour } from './neighbour';
import { areaOf, pointInside, shapeInside } from './outline';
import { blankRig, type Rig } from './rig';
import { box, centre, outlineLength, rect } from './shapes';
import { layoutFrom } from './starting-layout';
import { beadLength } from './station-facts';
import { alongSeam, openingsAboveAndUpslope } from './upslope';

/** Plane geometry against figures worked by hand; where the water comes in against the order that trade practice looks in. */
const layout = layoutFrom({ kind: 'travel-trailer', name: 'ours', skin: 'fibreglass', construction: 'bonded', roof: 'tpo' });
const rig: Rig = layout.ok ? applyLayout(blankRig('r'), layout.value) : blankRig('r');

describe('shapes', () => {
  it('outline, box and middle', () => {
    expect(outlineLength(rect(1, 2, 0.9, 0.6))).toBeCloseTo(3, 9);
    expect(outlineLength({ form: 'circle', x_m: 0, y_m: 0, w_m: 1, h_m: 1 })).toBeCloseTo(Math.PI, 9);
    expect(
      outlineLength({
        form: 'poly',
        points_m: [
          [0, 0],
          [3, 0],
          [3, 4],
        ],
      }),
    ).toBeCloseTo(12, 9);
    expect(
      outlineLength({
        form: 'lines',
        lines_m: [
          [
            [0, 0],
            [3, 4],
          ],
          [
            [0, 0],
            [1, 0],
          ],
        ],
      }),
    ).toBeCloseTo(6, 9);
    expect(centre(rect(1, 2, 2, 4))).toEqual([2, 4]);
    expect(box(rect(1, 2, 2, 4))).toEqual({ x0: 1, y0: 2, x1: 3, y1: 6 });
  });
  it('a notch in a face keeps things out', () => {
    const notched = [
      [0, 0],
      [1, 0],
      [1, 1],
      [2, 1],
      [2, 0],
      [3, 0],
      [3, 2],
      [0, 2],
    ] as const;
    expect(areaOf(notched)).toBeCloseTo(5, 9);
    expect(shapeInside(rect(0.2, 1.2, 2.5, 0.5), notched)).toBe(true);
    expect(shapeInside(rect(0.2, 0.5, 2.5, 1), notched)).toBe(false);
    expect(pointInside([1.5, 0.5], notched)).toBe(false);
  });
  it('bead by practice: top and a little way down each side of a wall opening, all round a roof opening, none on a gasket', () => {
    const window = rect(0, 0, 0.952, 0.597);
    expect(beadLength(window, 'top-and-upper-sides')).toBeCloseTo(0.952 + 0.3, 9);
    expect(beadLength(window, 'top-and-upper-sides', metres(0.25))).toBeCloseTo(0.952 + 0.5, 9);
    expect(beadLength(rect(0, 0, 0.1, 0.035), 'top-and-upper-sides')).toBeCloseTo(0.17, 9);
    expect(beadLength(window, 'all-round')).toBeCloseTo(3.098, 9);
    expect(beadLength(window, 'none-gasket')).toBe(0);
  });
  it('bead of a shape is that of the worksheet, by every practice; a seam drawn as lines is its own long edge', () => {
    const window = rect(0, 0, 0.952, 0.597);
    for (const { rule } of BEAD_PRACTICES)
      expect(beadLength(window, rule), rule).toBe(beadOf(rule, { width: metres(0.952), height: metres(0.597), around: metres(outlineLength(window)) }, RUN_DOWN));
    const bent = {
      form: 'lines',
      lines_m: [
        [
          [0, 0],
          [3, 4],
          [3, 6],
        ],
      ],
    } as const;
    expect(beadLength(bent, 'upper-long-edge')).toBeCloseTo(7, 9);
    expect(beadLength(bent, 'both-long-edges')).toBeCloseTo(14, 9);
    expect(beadLength(bent, 'all-round')).toBeCloseTo(7, 9);
  });
  it('a point along a seam that openings break', () => {
    const lines = [
      [
        [0, 1],
        [2, 1],
      ],
      [
        [3, 1],
        [5, 1],
      ],
    ] as const;
    expect(alongSeam(lines, 1)).toEqual([1, 1]);
    expect(alongSeam(lines, 3)).toEqual([4, 1]);
    expect(alongSeam(lines, 99)).toEqual([5, 1]);
  });
});

describe('faces', () => {
  it('heights above ground', () => {
    expect(heightAboveGround(rig, 'curb', 1.5)).toBe(1.5);
    expect(heightAboveGround(rig, 'roof', 1.2)).toBe(2.93);
    expect(heightAboveGround(rig, 'under', 1.2)).toBe(0.56);
    expect(heightAboveGround(rig, 's1-top', 0.5)).toBeCloseTo(2.52, 9);
    expect(heightAboveGround(rig, 's1-rear', 1.9)).toBe(1.9);
  });
  it('seen from outside, the road side has the front at the left and the curb side at the right; the inside is the mirror image', () => {
    expect(runsLeftward(rig, 'road', 'outside')).toBe(false);
    expect(runsLeftward(rig, 'curb', 'outside')).toBe(true);
    expect(runsLeftward(rig, 'curb', 'inside')).toBe(false);
    expect(runsLeftward(rig, 'rear', 'outside')).toBe(false);
    expect(runsLeftward(rig, 'front', 'outside')).toBe(true);
    // Facing aft, the road side is at the right hand, so a slide on the road side comes out to the right there; facing forward, to the left.
    expect(runsLeftward(rig, 's1-outer', 'outside')).toBe(false);
    expect(runsLeftward(rig, 's1-front', 'outside')).toBe(false);
    expect(runsLeftward(rig, 's1-rear', 'outside')).toBe(true);
    const curb = faceOf(rig, 'curb');
    if (!curb) throw new Error('no curb face');
    expect(asSeen(curb, [1, 2], true)).toEqual([7, 2]);
    expect(asSeen(curb, asSeen(curb, [1.23, 2], true), true)[0]).toBeCloseTo(1.23, 9);
  });
  it('arrow keys go the way the eye goes', () => {
    expect(neighbour(rig, 'road.water-heater-6gal', 'right')).toBe('road.furnace-vent');
    expect(neighbour(rig, 'road.furnace-vent', 'left')).toBe('road.water-heater-6gal');
    expect(neighbour(rig, 'road.water-heater-6gal', 'up')).toBe('road.outside-shower');
    const curb = neighbour(rig, 'curb.window-36x22', 'left');
    const to = rig.stations.find((s) => s.id === curb);
    expect(to && centre(to.shape)[0]).toBeGreaterThan(4.5);
  });
});

describe('where the water may come in', () => {
  it('below a window: the window first, then other openings, then seams; nothing below, nothing far away', () => {
    const found = openingsAboveAndUpslope(rig, { at: 'point', face: 'curb', side: 'inside', point_m: [4.6, 0.8] }, 8).map((s) => s.station);
    expect(found[0]).toBe('curb.window-36x22');
    const rank = (id: string): number => (/window|water-heater/.test(id) ? 0 : rig.stations.find((s) => s.id === id)?.cut_through ? 1 : 2);
    expect(found.map(rank)).toEqual(found.map(rank).toSorted());
    expect(found).not.toContain('curb.quick-connect-gas');
  });
  it('under the ceiling edge: the roof above and its edge rail', () => {
    const found = openingsAboveAndUpslope(rig, { at: 'point', face: 'curb', side: 'inside', point_m: [5.6, 2.6] }, 20).map((s) => s.station);
    expect(found).toContain('roof.fridge-roof-vent');
    expect(found).toContain('curb.roof-edge-rail');
  });
  it('a soft floor by the road wall: what stands in that wall', () => {
    const found = openingsAboveAndUpslope(rig, { at: 'point', face: 'under', side: 'inside', point_m: [6.4, 0.2] }, 5).map((s) => s.station);
    expect(found[0]).toBe('road.water-heater-6gal');
  });
  it('never the place itself, nothing retired, and never more than asked for', () => {
    const at = { at: 'station', station: 'curb.window-36x22', side: 'outside' } as const;
    const found = openingsAboveAndUpslope(rig, at, 3);
    expect(found.length).toBeLessThanOrEqual(3);
    expect(found.some((s) => s.station === 'curb.window-36x22')).toBe(false);
    expect(openingsAboveAndUpslope(rig, { at: 'rig' }, 3)).toEqual([]);
  });
});
