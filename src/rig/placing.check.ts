import { describe, expect, it } from 'vitest';
import { applyLayout } from './describe';
import { moveStation } from './edit';
import { placedAs } from './placing';
import { blankRig, type Rig, type RigKindId } from './rig';
import { box, movedBy, rect } from './shapes';
import { layoutFrom } from './starting-layout';

/**
 * Placing against the starting layouts, which work out lengths, height and reach in one go from all pieces of a station:
 * a station placed where it stands already is the layout's own, to the millimetre, on every layout.
 */
const KINDS: readonly RigKindId[] = ['travel-trailer', 'fifth-wheel', 'class-a', 'class-b', 'class-c', 'truck-camper', 'folding-camper', 'teardrop'];

const rigOf = (kind: RigKindId): Rig => {
  const made = layoutFrom({ kind, name: 'ours', skin: 'fibreglass', construction: 'bonded', roof: 'tpo' });
  if (!made.ok) throw new Error(JSON.stringify(made.refusals));
  return applyLayout(blankRig('r'), made.value);
};

describe('placing', () => {
  it.each(KINDS)('%s: where a station stands already nothing changes', (kind) => {
    const rig = rigOf(kind);
    for (const s of rig.stations) expect(placedAs(rig, s, s.shape)).toEqual(s);
  });

  it('a description and the drawing move a door alike, its lock and hinges with it', () => {
    const rig = rigOf('travel-trailer');
    const door = rig.stations.find((s) => s.part === 'entry-door-26x72');
    if (!door) throw new Error('the layout has no entry door');
    const b = box(door.shape);
    const moved = moveStation(rig, door.id, [b.x0 - 0.1, b.y0]);
    if (!moved.ok) throw new Error(JSON.stringify(moved.refusals));
    expect(placedAs(rig, door, moved.value.shape)).toEqual(moved.value);
    expect(door.parts.length).toBeGreaterThan(1);
    for (const [i, p] of door.parts.entries()) expect(moved.value.parts[i]?.shape).toEqual(movedBy(p.shape, -0.1, 0));
  });

  it('a larger window has the longer bead along its top; its run down the sides stays', () => {
    const rig = rigOf('travel-trailer');
    const window = rig.stations.find((s) => s.id === 'curb.window-36x22');
    if (!window) throw new Error('the layout has no such window');
    const b = box(window.shape);
    const wider = placedAs(rig, window, rect(b.x0, b.y0, b.x1 - b.x0 + 0.2, b.y1 - b.y0));
    expect(wider.bead_m - window.bead_m).toBeCloseTo(0.2, 3);
    expect(wider.outline_m - window.outline_m).toBeCloseTo(0.4, 3);
  });
});
