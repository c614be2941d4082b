import { describe, expect, it } from 'vitest';
import { parts } from '../../rig';
import type { Shape } from '../../terms';
import { flat } from '../path';
import type { Primitive } from '../primitives';
import { KINDS, trialRig } from '../trial-rig';
import { drawingOf, drawPart, partDrawings } from './index';

/**
 * Every part a rig may carry has a drawing of its own, told apart by its outline; seams, openings and fittings are told
 * apart by line alone. Against the parts table and the eight layouts; nothing here is compared with our own pictures.
 */
const box: Shape = { form: 'rect', x_m: 0, y_m: 0, w_m: 0.62, h_m: 0.41 };
const line: Shape = {
  form: 'lines',
  lines_m: [
    [
      [0, 0],
      [2, 0],
      [2, 1],
    ],
  ],
};

const shapeOf = (part: { readonly group: string; readonly w_m: number; readonly h_m: number; readonly id: string }): Shape =>
  part.group === 'seam' && part.id !== 'slide-flange' ? line : { form: 'rect', x_m: 0, y_m: 0, w_m: part.w_m || 0.3, h_m: part.h_m || 0.3 };

const flatten = (list: readonly Primitive[]): readonly Primitive[] => list.flatMap((p) => (p.form === 'group' ? flatten(p.children) : [p]));
const inksOf = (list: readonly Primitive[]): readonly string[] => flatten(list).map((p) => ('ink' in p ? p.ink : ''));

describe('drawings of parts', () => {
  it('exist for every part of the table', () => {
    expect(parts.length).toBeGreaterThan(160);
    expect(parts.filter((p) => drawingOf(p.id) === undefined).map((p) => p.id)).toEqual([]);
  });

  it('exist for every part and small fitting of the eight layouts', () => {
    const used = new Set(KINDS.flatMap((k) => trialRig(k).stations.flatMap((s) => [s.part, ...s.parts.map((p) => p.part)])));
    expect([...used].filter((id) => drawingOf(id) === undefined)).toEqual([]);
  });

  it('differ from family to family when drawn in the same box', () => {
    const seen = new Map<string, string>();
    const boxed = partDrawings.filter((d) => d.parts.every((n) => !parts.some((p) => p.id === n && (p.group === 'seam' || p.group === 'area'))));
    expect(boxed.length).toBeGreaterThan(100);
    for (const d of boxed) {
      const name = (d.parts[0] ?? '').replace('*', '0');
      const drawn = JSON.stringify(drawPart(name, box, flat, { hinge: 'front' }));
      expect(seen.get(drawn), `${name} looks like ${seen.get(drawn)}`).toBeUndefined();
      seen.set(drawn, name);
    }
  });

  it('are finite at every size of the table', () => {
    for (const part of parts) {
      const text = JSON.stringify(drawPart(part.id, shapeOf(part), flat, { fine: true }));
      expect(text, part.id).not.toMatch(/NaN|Infinity|null/);
    }
  });

  it('tell openings, fittings and seams apart by line', () => {
    const rubberOrTrim = ['seam', 'trim', 'gasket', 'slide', 'detail'];
    for (const part of parts.filter((p) => p.group === 'opening' && p.id !== 'ac-opening-gasket' && p.id !== 'reflector' && p.id !== 'id-lamp-bar'))
      expect(inksOf(drawPart(part.id, shapeOf(part), flat))[0], part.id).toBe('opening');
    for (const part of parts.filter((p) => p.group === 'seam' && !/^(roof-|slide-top)/.test(p.face)))
      expect(rubberOrTrim, part.id).toContain(inksOf(drawPart(part.id, shapeOf(part), flat))[0]);
    for (const part of parts.filter(
      (p) =>
        p.group === 'fitting' &&
        !['tyre', 'wheel-arch-trim', 'decal', 'tub-seam', 'wing-underside', 'floor-penetration', 'underbelly-cover', 'jack-bracket', 'heater-flue-under'].includes(p.id),
    ))
      expect(['opening', 'seam', 'gasket', 'trim'], part.id).not.toContain(inksOf(drawPart(part.id, shapeOf(part), flat))[0]);
  });
});
