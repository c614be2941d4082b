import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOn, type Frame, faceToSheet, sheetToFace } from './frame';
import { FOLD_GAP_M, frameAlone, frameFor, netOf, undersideOf } from './net';
import { KINDS, trialRig } from './trial-rig';

/**
 * The net against geometry alone: a frame is a turn or a mirroring with a shift, so a point comes back to within a nanometre,
 * and the edges of the roof lie beside the tops of the walls they meet, over their whole length.
 */
const determinant = ({ along, across }: Frame): number => along[0] * across[1] - along[1] * across[0];

describe.each(KINDS)('the net of a %s', (kind) => {
  const rig = trialRig(kind);
  const net = netOf(rig);
  const outline = (id: string) => rig.faces.find((f) => f.id === id)?.outline_m ?? [];
  const on = (id: string) => {
    const frame = frameFor(net, id);
    if (!frame) throw new Error(`no frame for ${id}`);
    return boundsOn(frame, outline(id));
  };

  it('brings every point back, and keeps every metre a metre', () => {
    const point = fc.tuple(fc.double({ min: -2, max: 14, noNaN: true }), fc.double({ min: -1, max: 4.2, noNaN: true }));
    const frames = [...net.frames, ...undersideOf(rig).frames, ...rig.faces.flatMap((f) => [frameAlone(rig, f.id, 'outside'), frameAlone(rig, f.id, 'inside')])];
    for (const frame of frames)
      fc.assert(
        fc.property(point, point, (a, b) => {
          const [x, y] = sheetToFace(frame, faceToSheet(frame, a));
          expect(Math.hypot(x - a[0], y - a[1])).toBeLessThan(1e-9);
          const [p, q] = [faceToSheet(frame, a), faceToSheet(frame, b)];
          expect(Math.abs(Math.hypot(p[0] - q[0], p[1] - q[1]) - Math.hypot(a[0] - b[0], a[1] - b[1]))).toBeLessThan(1e-9);
        }),
        { numRuns: 20 },
      );
  });

  it('lays every roof edge beside the wall it meets', () => {
    const roof = on('roof');
    expect(on('road').y0 - roof.y1).toBeCloseTo(FOLD_GAP_M, 9);
    expect(roof.y0 - on('curb').y1).toBeCloseTo(FOLD_GAP_M, 9);
    expect(roof.x0 - on('front').x1).toBeCloseTo(FOLD_GAP_M, 9);
    expect(on('rear').x0 - roof.x1).toBeCloseTo(FOLD_GAP_M, 9);
  });

  it('keeps front and rear beside the roof: road side down on both', () => {
    for (const id of ['front', 'rear']) {
      const frame = frameFor(net, id);
      if (!frame) throw new Error(id);
      const [road, curb] = [faceToSheet(frame, [0, 1]), faceToSheet(frame, [1, 1])];
      expect(road[1]).toBeGreaterThan(curb[1]);
    }
  });

  it('turns no face over: what is seen is the outside of each', () => {
    // Walls are read with x rearward and y up; from outside, x runs right on the road wall and left on the curb wall.
    const handed: Readonly<Record<string, number>> = { roof: -1, road: -1, curb: 1, front: 1, rear: -1 };
    for (const [id, sign] of Object.entries(handed)) expect(determinant(frameFor(net, id) ?? frameAlone(rig, id, 'outside'))).toBe(sign);
    for (const frame of net.frames) expect([frame.face, determinant(frame)]).toEqual([frame.face, determinant(frameAlone(rig, frame.face, 'outside'))]);
  });

  it('stands every wall upright when it is drawn alone, inside and outside', () => {
    for (const f of rig.faces.filter((x) => !['roof', 'under', 'tongue'].includes(x.id) && !/-(top|under)$/.test(x.id)))
      for (const side of ['outside', 'inside'] as const) expect(frameAlone(rig, f.id, side).across).toEqual([0, -1]);
  });

  it('draws the inside as the mirror image of the outside', () => {
    for (const f of rig.faces) {
      const [out, within] = [frameAlone(rig, f.id, 'outside'), frameAlone(rig, f.id, 'inside')];
      expect(determinant(within)).toBe(-determinant(out));
    }
  });

  it('lets no two faces lie over each other, but for the outer wall of a slide-out on the wall it leaves', () => {
    const placed = net.frames.filter((f) => !f.face.endsWith('-outer')).map((f) => ({ id: f.face, b: boundsOn(f, outline(f.face)) }));
    for (const a of placed)
      for (const c of placed)
        if (a.id < c.id) {
          const over = Math.min(a.b.x1, c.b.x1) - Math.max(a.b.x0, c.b.x0) > 1e-6 && Math.min(a.b.y1, c.b.y1) - Math.max(a.b.y0, c.b.y0) > 1e-6;
          expect(over, `${a.id} over ${c.id}`).toBe(false);
        }
    for (const s of rig.slides) {
      const [outer, wall] = [frameFor(net, `${s.id}-outer`), frameFor(net, s.face)];
      if (outer && wall) expect(boundsOn(outer, outline(`${s.id}-outer`))).toEqual(boundsOn(wall, outline(`${s.id}-outer`)));
    }
  });

  it('shows every face on one of the two sheets', () => {
    const shown = new Set([...net.frames, ...undersideOf(rig).frames].map((f) => f.face));
    expect(rig.faces.map((f) => f.id).filter((id) => !shown.has(id))).toEqual([]);
  });
});
