import { describe, expect, it } from 'vitest';
import { kinds } from '../entries';
import type { Field } from '../terms';
import { civilDay } from '../units';
import { gradePlot } from './grade-plot';
import { choicePicture, compass, dateCodePicture, ladderPicture } from './pictures';
import type { Primitive } from './primitives';
import { timePlot } from './time-plot';
import { linesOf, widthOf } from './type-width';

/** Pictures against what they stand for: every pictured answer has one, no two steps share an outline, and lengths are to scale. */
const outline = (list: readonly Primitive[]): string => JSON.stringify(list.map((p) => (p.form === 'group' ? '' : { ...p, ink: '' })));

describe('pictures of answers', () => {
  const pictured = kinds.flatMap((k) => Object.values(k.fields as Readonly<Record<string, Field>>).filter((f) => f.type === 'choice' && f.pictures !== undefined));

  it('exist for every step of every pictured field', () => {
    expect(pictured.length).toBeGreaterThan(1);
    for (const f of pictured) if (f.type === 'choice') for (const o of f.options) expect(choicePicture(f.pictures ?? '', o.id), `${f.pictures} ${o.id}`).toBeDefined();
  });

  it('differ in outline, not only in tone', () => {
    for (const f of pictured)
      if (f.type === 'choice') {
        const seen = new Set(f.options.map((o) => outline(choicePicture(f.pictures ?? '', o.id)?.primitives ?? [])));
        expect(seen.size).toBe(f.options.length);
      }
  });
});

describe('the other pictures', () => {
  it('read out a date code figure by figure, and show dots before it is typed', () => {
    const words = (code?: string): string =>
      dateCodePicture(code === undefined ? {} : { code })
        .primitives.map((p) => (p.form === 'text' ? p.text : ''))
        .join('');
    expect(words('2319')).toContain('2319');
    expect(words()).toContain('····');
  });

  it('draw a ladder to scale: foot, edge and reach', () => {
    const d = ladderPicture({ edge_m: 2.8, foot_m: 0.7, above_m: 0.9 });
    const wall = d.primitives.find((p) => p.form === 'path' && p.ink === 'face');
    const [, , x0, top, x1, ground] = wall?.form === 'path' ? (wall.d.match(/-?[\d.]+/g) ?? []).map(Number) : [];
    expect(x0).toBe(x1);
    expect((ground ?? 0) - (top ?? 0)).toBeCloseTo(2.8, 4);
    const foot = d.primitives.find((p) => p.form === 'path' && p.ink === 'dimension');
    const [a, , b] = foot?.form === 'path' ? (foot.d.match(/-?[\d.]+/g) ?? []).map(Number) : [];
    expect((b ?? 0) - (a ?? 0)).toBeCloseTo(0.7, 4);
  });
});

describe('the compass', () => {
  it('puts north where it is when the nose lies to the left of the page', () => {
    // Nose north: north is left. Nose east: the rig's left hand is north, and on the page that is below. By geometry.
    const north = (heading: number): readonly [number, number] => {
      const n = compass(heading).primitives.find((p) => p.form === 'text' && p.text === 'N');
      return n?.form === 'text' ? [Math.sign(Math.round(n.x - 64)) + 0, Math.sign(Math.round(n.y - 4 - 64)) + 0] : [0, 0];
    };
    expect(north(0)).toEqual([-1, 0]);
    expect(north(Math.PI / 2)).toEqual([0, 1]);
    expect(north(Math.PI)).toEqual([1, 0]);
    expect(north((3 * Math.PI) / 2)).toEqual([0, -1]);
  });
});

describe('plots', () => {
  const looks = [
    { day: civilDay(19_000), grade: 1 },
    { day: civilDay(19_200), grade: 'not-seen' as const },
    { day: civilDay(19_400), grade: 3 },
  ];

  it('draw a look that saw nothing neither as a grade nor as a fall', () => {
    const points = (list: typeof looks): number => gradePlot({ title: '', looks: list, care: [] }).primitives.filter((p) => p.form === 'circle').length;
    expect(points(looks)).toBe(2);
    expect(points([...looks, { day: civilDay(19_500), grade: 'not-seen' }])).toBe(2);
  });

  it('put a square where work was done', () => {
    const squares = gradePlot({ title: '', looks, care: [{ day: civilDay(19_300), words: 'resealed' }] }).primitives.filter((p) => p.form === 'path' && p.ink === 'point');
    expect(squares).toHaveLength(1);
  });

  it('say so when there is nothing to plot, and stay finite with one point', () => {
    expect(JSON.stringify(timePlot({ title: '', series: [], show: String }))).toContain('No readings yet');
    const one = timePlot({ title: '', series: [{ words: 'a', points: [{ day: civilDay(19_000), value: 65 }], one: true }], show: String });
    expect(JSON.stringify(one)).not.toMatch(/NaN|null/);
  });
});

describe('widths of type', () => {
  it('grow with the text and break lines between words only', () => {
    expect(widthOf('seam', 10)).toBeLessThan(widthOf('seam, open', 10));
    expect(widthOf('mm', 10)).toBeGreaterThan(widthOf('ii', 10) * 3);
    expect(linesOf('one two three', 10, 1000)).toBe(1);
    expect(linesOf('one two three', 10, widthOf('three', 10) + 1)).toBe(3);
  });
});
