import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FacePoint, Station } from '../../terms';
import { areaOf, pointInside } from '../outline';
import { blankRig, type Construction, type Rig, type RigKindId } from '../rig';
import { box } from '../shapes';
import { layoutFrom } from '../starting-layout';
import { fieldsOf } from '.';

/**
 * No published plan of a rig's frame was found: what is held here is geometry, over every face of all starting layouts.
 * Fields lie inside their face, do not overlap, and with what is cut out of it fill it, to 0.1 %; and what a carpenter would
 * say of one wall drawn by hand.
 */
const KINDS: readonly RigKindId[] = ['travel-trailer', 'fifth-wheel', 'class-a', 'class-b', 'class-c', 'truck-camper', 'folding-camper', 'teardrop'];

const rigOf = (kind: RigKindId, construction: Construction): Rig => {
  const layout = layoutFrom({ name: 'x', kind, skin: 'fibreglass', construction, roof: 'epdm' });
  if (!layout.ok) throw new Error(layout.refusals[0]?.sentence);
  return { ...blankRig('r'), ...layout.value, kind, construction, skin: 'fibreglass' };
};

const strictlyInside = (p: FacePoint, outline: readonly FacePoint[]): boolean => pointInside(p, outline, 0);

describe.each(KINDS)('%s', (kind) => {
  it.each(['hung', 'bonded', 'moulded', 'unknown'] as const)('%s: fields lie in their face, do not overlap, and fill it but for what is cut out', (construction) => {
    const rig = rigOf(kind, construction);
    for (const face of rig.faces) {
      const { fields } = fieldsOf(rig, face.id);
      if (face.id === 'tongue') expect(fields).toEqual([]);
      if (face.id === 'tongue') continue;
      expect(fields.length, face.id).toBeGreaterThan(0);
      for (const f of fields) {
        for (const p of f.outline_m) expect(pointInside(p, face.outline_m), `${f.id} ${p}`).toBe(true);
        for (const hole of f.holes_m) for (const p of hole) expect(pointInside(p, f.outline_m), `${f.id} hole ${p}`).toBe(true);
      }
      // By points on a fine lattice, off every edge by an odd amount: in one field or in none, and in none only where something is cut out.
      const b = box({ form: 'poly', points_m: face.outline_m });
      const step = 0.0507;
      let seen = 0;
      for (let x = b.x0 + 0.0123; x < b.x1; x += step)
        for (let y = b.y0 + 0.0117; y < b.y1; y += step) {
          const p = [x, y] as const;
          if (!strictlyInside(p, face.outline_m)) continue;
          seen += 1;
          const home = fields.filter((f) => strictlyInside(p, f.outline_m));
          expect(home.length, `${face.id} ${p}`).toBeLessThanOrEqual(1);
          const free = home.filter((f) => !f.holes_m.some((h) => strictlyInside(p, h))).length === 1;
          const cut = rig.stations.some(
            (s) =>
              s.face === face.id &&
              (s.cut_through || /wheel-arch|fender/.test(s.part)) &&
              !s.layer &&
              s.shape.form !== 'lines' &&
              (s.shape.form === 'poly' ? strictlyInside(p, s.shape.points_m) : x > box(s.shape).x0 && x < box(s.shape).x1 && y > box(s.shape).y0 && y < box(s.shape).y1),
          );
          // The corners of a round part's box are free.
          if (!cut) expect(free, `${face.id} ${p} is in no field`).toBe(true);
        }
      expect(seen).toBeGreaterThan(20);
      const covered = fields.reduce((sum, f) => sum + areaOf(f.outline_m), 0);
      if (construction === 'bonded' && !/roof|top/.test(face.id)) expect(covered).toBeCloseTo(areaOf(face.outline_m), 9);
      expect(covered).toBeLessThanOrEqual(areaOf(face.outline_m) * 1.001);
    }
  });
});

const wall = (stations: readonly Partial<Station>[]): Rig => ({
  ...blankRig('r'),
  construction: 'hung',
  faces: [
    {
      id: 'curb',
      name: 'Curb side',
      outline_m: [
        [0, 0],
        [4, 0],
        [4, 2],
        [0, 2],
      ],
      x_axis: 'from the front',
      y_axis: 'above ground',
      inside_name: 'Curb wall',
    },
  ],
  stations: stations.map((s, i) => ({ id: `s${i}`, face: 'curb', part: 'window', cut_through: true, ...s }) as Station),
});
const at = (rig: Rig, x: number, y: number): string | undefined => fieldsOf(rig, 'curb').fields.find((f) => strictlyInside([x, y], f.outline_m))?.id;
const window = { shape: { form: 'rect', x_m: 1.5, y_m: 0.8, w_m: 0.7, h_m: 0.6 } } as const;

describe('a framed wall as a carpenter leaves it', () => {
  it('has a stud every 16 in, counted from the front, and every recorded spacing where one is recorded', () => {
    const ends = (rig: Rig): readonly number[] => [...new Set(fieldsOf(rig, 'curb').fields.map((f) => Math.round(box({ form: 'poly', points_m: f.outline_m }).x0 * 1e4) / 1e4))];
    expect(ends(wall([])).slice(0, 4)).toEqual([0, 0.4064, 0.8128, 1.2192]);
    const known = { ...wall([]), stud_spacing_m: 0.6096 };
    expect(ends(known).slice(0, 3)).toEqual([0, 0.6096, 1.2192]);
    expect(fieldsOf(known, 'curb').assumes.join(' ')).toContain('24 in (61 cm)');
    expect(fieldsOf(known, 'curb').assumes.join(' ')).toContain('as recorded');
    expect(fieldsOf(wall([]), 'curb').assumes.join(' ')).toContain('typical, measure yours');
  });

  it('has studs at both sides of a window, full height, and bays of their own above and below it', () => {
    const rig = wall([window]);
    const [above, below, left, right] = [at(rig, 1.55, 1.7), at(rig, 1.55, 0.3), at(rig, 1.45, 1.7), at(rig, 2.25, 1.7)];
    expect(new Set([above, below, left, right]).size).toBe(4);
    expect(at(rig, 1.55, 1)).toBeUndefined();
    // The stud at 1.6256 m stands within 8 in of the window’s own; it runs above the header and below the sill.
    expect(at(rig, 1.7, 1.7)).not.toBe(above);
    expect(at(rig, 1.45, 0.3)).toBe(left);
  });

  it('stops the studs of a small opening at the window above it, and lets them on where there is none', () => {
    const rig = wall([window, { shape: { form: 'rect', x_m: 1.7, y_m: 0.2, w_m: 0.3, h_m: 0.3 } }]);
    expect(at(rig, 1.69, 0.65)).not.toBe(at(rig, 1.71, 0.65));
    // Above the window only its own studs and the regular ones stand: 1.6256 m and 2.032 m.
    expect(at(rig, 1.69, 1.7)).toBe(at(rig, 1.71, 1.7));
    expect(at(rig, 1.99, 1.7)).toBe(at(rig, 2.01, 1.7));
  });

  it('lets an inlet smaller than a foot in between two studs: a hole, no new bay', () => {
    const rig = wall([{ shape: { form: 'rect', x_m: 1.3, y_m: 0.5, w_m: 0.12, h_m: 0.12 } }]);
    const { fields } = fieldsOf(rig, 'curb');
    expect(fields).toHaveLength(10);
    expect(fields.filter((f) => f.holes_m.length > 0)).toHaveLength(1);
    expect(at(rig, 1.25, 0.55)).toBe(at(rig, 1.45, 0.55));
  });

  it('fills the wall but for its windows, wherever they are', () => {
    const windows = fc.array(
      fc.record({ c: fc.nat({ max: 2 }), r: fc.nat({ max: 1 }), w: fc.double({ min: 0.3, max: 0.95, noNaN: true }), h: fc.double({ min: 0.3, max: 0.8, noNaN: true }) }),
      { maxLength: 5 },
    );
    fc.assert(
      fc.property(windows, (list) => {
        const apart = list.filter((a, i) => !list.slice(0, i).some((b) => a.c === b.c && a.r === b.r));
        const rig = wall(apart.map(({ c, r, w, h }) => ({ shape: { form: 'rect', x_m: 0.13 + c * 1.2, y_m: 0.1 + r * 0.9, w_m: w, h_m: h } }) as const));
        const free = fieldsOf(rig, 'curb').fields.reduce((sum, f) => sum + areaOf(f.outline_m), 0);
        expect(free).toBeCloseTo(8 - apart.reduce((sum, { w, h }) => sum + w * h, 0), 6);
      }),
    );
  });
});

describe('construction', () => {
  it('unknown is taken as hung, and says so; a bonded wall is one sheet with its tubes masked, under a roof in bays', () => {
    const rig = wall([window]);
    const unknown = fieldsOf({ ...rig, construction: 'unknown' }, 'curb');
    expect(unknown.fields).toEqual(fieldsOf(rig, 'curb').fields);
    expect(unknown.assumes[0]).toContain('not recorded');
    const bonded = fieldsOf({ ...rig, construction: 'bonded' }, 'curb');
    expect(bonded.fields).toHaveLength(1);
    const [sheet] = bonded.fields;
    const masked = (x: number, y: number): boolean => sheet?.masked_m.some((m) => strictlyInside([x, y], m)) ?? false;
    for (const [x, y] of [
      [0.4064, 1],
      [0.03, 1],
      [3.97, 1],
      [2, 1.97],
      [1.47, 1],
      [1.8, 1.43],
    ] as const)
      expect(masked(x, y), `${x}, ${y}`).toBe(true);
    expect(masked(0.6, 1)).toBe(false);
    expect(sheet?.holes_m).toHaveLength(1);
    const trailer = rigOf('travel-trailer', 'bonded');
    expect(fieldsOf(trailer, 'roof').fields.length).toBeGreaterThan(5);
    expect(fieldsOf(trailer, 'under').fields).toHaveLength(1);
    expect(fieldsOf({ ...trailer, skin: 'moulded-fibreglass' }, 'roof').fields).toHaveLength(1);
    expect(fieldsOf(trailer, 'no-such-face')).toEqual({ face: 'no-such-face', fields: [], assumes: [] });
  });
});
