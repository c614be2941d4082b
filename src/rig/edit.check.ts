import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Station } from '../terms';
import type { Result } from '../units';
import { applyFacts, applyLayout, applyRename, applyRetire, applySize, applyStation, applyStationFacts } from './describe';
import { drawingFaults } from './drawing-faults';
import { addStation, confirmSize, moveStation, renameStation, resizeStation, retireStation } from './edit';
import { parts } from './parts';
import { blankRig, type Rig } from './rig';
import { box } from './shapes';
import { layoutFrom } from './starting-layout';

/** Editing against the look for faults of a drawing: whatever is accepted leaves a sound drawing, whatever is refused says why. */
const layout = layoutFrom({ kind: 'travel-trailer', name: 'ours', skin: 'fibreglass', construction: 'bonded', roof: 'tpo' });
const rig: Rig = layout.ok ? applyLayout({ ...blankRig('r'), skin: 'fibreglass', roof: 'tpo' }, layout.value) : blankRig('r');

const value = (r: Result<Station>): Station => {
  if (!r.ok) throw new Error(JSON.stringify(r.refusals));
  return r.value;
};
const sentence = (r: Result<unknown>): string => (r.ok ? '' : (r.refusals[0]?.sentence ?? ''));

describe('moving', () => {
  it('a window moves along its wall, and its number and its record stay with its id', () => {
    const moved = value(moveStation(rig, 'curb.window-12x21', [7.0, 1.7]));
    expect(box(moved.shape).x0).toBe(7);
    expect(moved.id).toBe('curb.window-12x21');
    expect(moved.bead_m).toBe(rig.stations.find((s) => s.id === moved.id)?.bead_m);
  });
  it('not over the edge, and not onto another', () => {
    expect(sentence(moveStation(rig, 'curb.window-12x21', [7.9, 1.7]))).toContain('over the edge');
    expect(sentence(moveStation(rig, 'curb.window-12x21', [4.2, 1.7]))).toContain('over Window 1, curb side');
    expect(sentence(moveStation(rig, 'nothing', [1, 1]))).toContain('no such station');
  });
  it('a door takes its lock and hinges along', () => {
    const door = rig.stations.find((s) => s.part === 'entry-door-26x72');
    const moved = value(moveStation(rig, door?.id ?? '', [2.9, 0.68]));
    const lock = moved.parts.find((p) => p.part === 'door-lock');
    expect(box(lock?.shape ?? moved.shape).x0).toBeCloseTo(3.42, 3);
  });
  it('whatever is accepted is sound', () => {
    const movable = rig.stations.filter((s) => s.shape.form !== 'lines' && s.group !== 'area' && s.group !== 'wheel').map((s) => s.id);
    fc.assert(
      fc.property(fc.constantFrom(...movable), fc.double({ min: -2, max: 10, noNaN: true }), fc.double({ min: -1, max: 4, noNaN: true }), (id, x, y) => {
        const moved = moveStation(rig, id, [x, y]);
        if (!moved.ok) {
          expect(moved.refusals[0]?.sentence.length).toBeGreaterThan(20);
          return;
        }
        const faults = drawingFaults(applyStation(rig, moved.value)).filter((f) => /overlaps|leaves its face/.test(f));
        expect(faults).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });
});

describe('adding', () => {
  it('a part of typical size, measured and named after those that are there', () => {
    const added = value(addStation(rig, 'window-10x22', 'curb', [2.65, 1.1]));
    expect(added).toMatchObject({
      id: 'curb.window-10x22',
      name: 'Window 3, curb side',
      size: 'typical',
      sealed_with: 'unknown',
      sealed_to: 'fibreglass',
      last_sealed: 'unknown',
      cut_through: true,
    });
    expect(added.bead_m).toBeCloseTo(0.292 + 2 * 0.15, 3);
    expect(added.outline_m).toBeCloseTo(2 * (0.292 + 0.597), 3);
    const again = value(addStation(applyStation(rig, added), 'roof-vent-14', 'roof', [6.5, 2]));
    expect(again.name).toBe('Roof vent 2');
    expect(again.bead_m).toBeCloseTo(4 * 0.43, 3);
  });
  it('not where something stands, not where it does not belong, not what does not exist', () => {
    expect(sentence(addStation(rig, 'window-36x22', 'curb', [4.5, 1.8]))).toContain('over Window 1');
    expect(sentence(addStation(rig, 'roof-vent-14', 'curb', [2, 2]))).toContain('does not belong');
    expect(addStation(rig, 'porthole', 'curb', [2, 2]).ok).toBe(false);
    expect(addStation(rig, 'roof-vent-14', 'attic', [2, 2]).ok).toBe(false);
  });
  it('never gives an id twice, retired ones included', () => {
    const first = value(addStation(rig, 'window-10x22', 'curb', [2.65, 1.1]));
    const second = value(addStation(applyRetire(applyStation(rig, first), first.id), 'window-10x22', 'curb', [2.65, 1.1]));
    expect(second.id).toBe('curb.window-10x22.2');
  });
  it('every part of the table can be put on some face of some rig or is refused in words', () => {
    for (const part of parts)
      for (const face of rig.faces) expect(addStation(rig, part.id, face.id, [2, 1]).ok || sentence(addStation(rig, part.id, face.id, [2, 1]))).toBeTruthy();
  });
});

describe('resizing, renaming, retiring, confirming', () => {
  it('a measured size is confirmed and its bead follows', () => {
    const resized = value(resizeStation(rig, 'curb.window-36x22', 0.9, 0.55));
    expect(resized.size).toBe('confirmed');
    expect(resized.bead_m).toBeCloseTo(0.9 + 0.3, 3);
    expect(resizeStation(rig, 'curb.window-36x22', 36, 22).ok).toBe(false);
    expect(resizeStation(rig, 'curb.window-36x22', -1, Number.NaN).ok).toBe(false);
    expect(sentence(resizeStation(rig, 'curb.roof-edge-rail', 1, 1))).toContain('follows the body');
  });
  it('two stations never share a name', () => {
    expect(value(renameStation(rig, 'curb.window-36x22', '  Galley   window ')).name).toBe('Galley window');
    expect(sentence(renameStation(rig, 'curb.window-36x22', 'Window 2, curb side'))).toContain('already called');
    expect(renameStation(rig, 'curb.window-36x22', '   ').ok).toBe(false);
  });
  it('retired stations stay in the rig', () => {
    expect(value(retireStation(rig, 'roof.skylight')).retired).toBe(true);
    expect(applyRetire(rig, 'roof.skylight').stations).toHaveLength(rig.stations.length);
  });
  it('a size is confirmed only when a rig can have it', () => {
    expect(confirmSize('width_m', 2.44).ok).toBe(true);
    expect(confirmSize('width_m', 96).ok).toBe(false);
    expect(confirmSize('length_m', 0).ok).toBe(false);
  });
});

describe('descriptions change a rig and nothing else does', () => {
  it('a layout keeps what a person added, and the rig handed in is never altered', () => {
    const added = value(addStation(rig, 'window-10x22', 'curb', [2.65, 1.1]));
    const before = JSON.stringify(rig);
    const again = layout.ok ? applyLayout(applyStation(rig, added), layout.value) : rig;
    expect(again.stations.some((s) => s.id === added.id)).toBe(true);
    const without = layoutFrom({ kind: 'travel-trailer', name: 'ours', skin: 'fibreglass', construction: 'bonded', roof: 'tpo', slides_road: 0 });
    expect(without.ok && applyLayout(rig, without.value).stations.some((s) => s.slide !== undefined)).toBe(false);
    expect(JSON.stringify(rig)).toBe(before);
  });
  it('facts and sizes', () => {
    const named = applyFacts(rig, { name: 'Heron', set_pressure_pa: { A1: 448_000 } });
    expect(applyFacts(named, { set_pressure_pa: { A2: 450_000 } }).set_pressure_pa).toEqual({ A1: 448_000, A2: 450_000 });
    const sized = applySize(applySize(applySize(rig, 'length_m', 9), 'width_m', 2.4), 'height_m', 3.2);
    expect(sized.overall_certainty).toBe('confirmed');
    expect(applySize(rig, 'length_m', 9).overall_certainty).toBe('typical');
    expect(applyRename(rig, 'roof.skylight', 'Shower skylight').stations.find((s) => s.id === 'roof.skylight')?.name).toBe('Shower skylight');
    expect(applyStationFacts(rig, 'roof.skylight', { sealed_with: 'polyurethane' }).stations.find((s) => s.id === 'roof.skylight')?.sealed_with).toBe('polyurethane');
  });
});
