import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankRig, type Construction, pointInside, type Rig } from '../../rig';
import type { FacePoint, Station } from '../../terms';
import { civilDay } from '../../units';
import { evaluate, worksheetById } from '../../worksheets';
import { moistureField } from './field';
import type { FieldPart, MoistureField } from './field-types';
import type { Comparable, DryReference, Panel, Scale } from './water-types';

/**
 * The map of a panel. Kriging itself is held elsewhere; here: one node worked again through its worksheet, to a tenth of a point;
 * what must hold of any map (mirrored walls, bays that do not speak for each other, wetter readings, openings and tubes left out);
 * and when there is none.
 */
const DAY = civilDay(20000);

const wall = (construction: Construction, stations: readonly Partial<Station>[] = [], spacing = 1.2): Rig => ({
  ...blankRig('r'),
  construction,
  stud_spacing_m: spacing,
  faces: [
    {
      id: 'curb',
      name: 'Curb side',
      outline_m: [
        [0, 0],
        [4.8, 0],
        [4.8, 2],
        [0, 2],
      ],
      x_axis: 'from the front',
      y_axis: 'above ground',
      inside_name: 'Curb wall',
    },
  ],
  stations: stations.map((s, i) => ({ id: `s${i}`, name: 'Window 2', face: 'curb', part: 'window', group: 'opening', cut_through: true, ...s }) as Station),
});

type Read = readonly [x: number, y: number, value: number, more?: Partial<Comparable>];

const panelOf = (readings: readonly Read[], scale: Scale = 'pin', reference?: DryReference): Panel => ({
  id: 'curb@inside/pin',
  face: 'curb',
  side: 'inside',
  scale,
  meter: '',
  words: 'Curb side, inside',
  ...(reference ? { reference } : {}),
  spots: readings.map(([x, y, value, more], i) => {
    const point_m: FacePoint = [x, y];
    const place = { at: 'point', face: 'curb', side: 'inside', point_m } as const;
    const reading: Comparable = {
      entry: `r${i}`,
      place,
      face: 'curb',
      side: 'inside',
      point_m,
      scale,
      meter: '',
      day: DAY,
      observed_at: '2024-10-04T10:00:00Z',
      as_read: value,
      value,
      plus_minus: 0.01,
      dry_reference: false,
      ...more,
    };
    return { id: `r${i}`, place, face: 'curb', side: 'inside', point_m, words: '', readings: [reading], state: 'not-known', yardsticks: {}, signs: [], because: [] };
  }),
});

const dry: DryReference = { median: 0.11, spread: 0.005, floor_used: true, readings: 3, day: DAY, entries: [] };

/** A damp corner low in one bay: the nearer to it, the wetter. */
const damp = (x: number, y: number): number => 0.11 + 0.14 * Math.exp(-(((x - 0.9) / 0.4) ** 2) - ((y - 0.4) / 0.6) ** 2);
const GRID: readonly Read[] = [0.15, 0.45, 0.75, 1.05].flatMap((x) => [0.3, 0.8, 1.3, 1.8].map((y): Read => [x, y, damp(x, y)]));

const first = (f: MoistureField): FieldPart => {
  const [part] = f.parts;
  if (!part) throw new Error('no part');
  return part;
};
type Node = { readonly at: FacePoint; readonly chance: number | undefined; readonly estimate: number | undefined; readonly error: number | undefined };
const nodes = ({ grid }: FieldPart): readonly Node[] => {
  if (!grid) throw new Error('no grid');
  return grid.chance.map((chance, k) => ({
    at: [grid.x0_m + (k % grid.columns) * grid.step_m, grid.y0_m + Math.floor(k / grid.columns) * grid.step_m],
    chance,
    estimate: grid.estimate[k],
    error: grid.standard_error[k],
  }));
};
const near = (part: FieldPart, [x, y]: FacePoint): Node => {
  const [node] = nodes(part).toSorted((a, b) => Math.hypot(a.at[0] - x, a.at[1] - y) - Math.hypot(b.at[0] - x, b.at[1] - y));
  if (!node) throw new Error('no node');
  return node;
};

describe('a map of one bay', () => {
  const map = moistureField(wall('hung'), panelOf(GRID, 'pin', dry));

  it('shows the chance of lying above the dry places, high in the wet corner and low away from it', () => {
    expect(map.of).toBe('excess');
    expect(map.threshold).toBe(0.02);
    expect(map.parts).toHaveLength(1);
    const part = first(map);
    expect(part.drawn).toBe('map');
    expect(part.readings).toBe(16);
    expect(part.leave_one_out?.error).toBeLessThan(part.leave_one_out?.of_the_mean ?? 0);
    expect(near(part, [0.9, 0.4]).chance).toBeGreaterThan(0.95);
    expect(near(part, [0.15, 1.8]).chance).toBeLessThan(0.2);
    expect(map.next_places).toEqual([]);
    for (const sentence of map.assumes) expect(sentence).toMatch(/^[A-Z].*[.]$/);
    expect(map.because.entries).toHaveLength(16);
    for (const n of nodes(part)) {
      expect(n.chance === undefined).toBe(n.estimate === undefined);
      if (n.chance !== undefined) expect(n.chance >= 0 && n.chance <= 1 && (n.error ?? 0) >= 0.0099).toBe(true);
    }
  });

  it('is what the worksheets say of it: one node, and the check of the whole part', () => {
    const part = first(map);
    const { id, inputs } = map.because.worksheet ?? { id: '', inputs: {} };
    const check = evaluate(worksheetById(id) as never, inputs);
    if (!check.ok) throw new Error(JSON.stringify(check.refusals));
    expect(Math.abs(Number(check.value.result.error_percent) - (part.leave_one_out?.error ?? 0) * 100)).toBeLessThan(0.051);
    const node = near(part, [0.6, 0.55]);
    const one = evaluate(worksheetById('kriging-estimate') as never, { ...inputs, at_x_m: node.at[0], at_y_m: node.at[1] });
    if (!one.ok) throw new Error(JSON.stringify(one.refusals));
    expect(Math.abs(Number(one.value.result.estimate_percent) - (node.estimate ?? 0) * 100)).toBeLessThan(0.051);
    expect(Math.abs(Number(one.value.result.standard_error_percent) - (node.error ?? 0) * 100)).toBeLessThan(0.051);
  });

  it('does not change for readings in another bay, and wetter readings make no place less likely wet', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.08, max: 0.3, noNaN: true }), fc.double({ min: 0, max: 0.05, noNaN: true }), (value, by) => {
        const more = moistureField(wall('hung'), panelOf([...GRID, [2.9, 0.5, value]], 'pin', dry));
        expect(more.parts[0]).toEqual(first(map));
        const wetter = first(
          moistureField(
            wall('hung'),
            panelOf(
              GRID.map(([x, y, v]) => [x, y, v + by] as const),
              'pin',
              dry,
            ),
          ),
        );
        const before = nodes(first(map));
        for (const [k, n] of nodes(wetter).entries()) if (n.chance !== undefined) expect(n.chance).toBeGreaterThanOrEqual((before[k]?.chance ?? 0) - 1e-9);
      }),
      { numRuns: 10 },
    );
  });

  it('says nothing far from every reading, nor in an opening', () => {
    const low = GRID.filter(([, y]) => y < 1).concat([
      [0.3, 0.55, 0.12],
      [0.6, 0.55, 0.15],
    ]);
    const inlet = { shape: { form: 'rect', x_m: 0.5, y_m: 0.5, w_m: 0.2, h_m: 0.2 } } as const;
    const part = first(moistureField(wall('hung', [inlet]), panelOf(low, 'pin', dry)));
    expect(part.drawn).toBe('map');
    expect(near(part, [0.6, 0.62]).estimate).toBeUndefined();
    expect(near(part, [0.6, 0.9]).estimate).toBeDefined();
    expect(nodes(part).every((n) => n.at[1] < 0.8 + 0.75 * 1.2192 + 0.03)).toBe(true);
  });

  it('without a dry place takes 20 % for a pin meter, what was chosen where somebody chose, and for others the middle of the readings', () => {
    expect(moistureField(wall('hung'), panelOf(GRID)).threshold).toBe(0.2);
    expect(moistureField(wall('hung'), panelOf(GRID), { threshold: 0.16 }).threshold).toBe(0.16);
    const pinless = moistureField(wall('hung'), panelOf(GRID, 'pinless'));
    expect(pinless.of).toBe('reading');
    expect(pinless.assumes[0]).toContain('no threshold of its own');
  });

  it('by inverse distance gives an estimate within what was read, and no chance', () => {
    const part = first(moistureField(wall('hung'), panelOf(GRID), { method: 'inverse-distance' }));
    const values = GRID.map(([, , v]) => v);
    expect(part.drawn).toBe('map');
    for (const n of nodes(part)) {
      expect(n.chance).toBeUndefined();
      if (n.estimate !== undefined) expect(n.estimate >= Math.min(...values) && n.estimate <= Math.max(...values)).toBe(true);
    }
  });
});

describe('dots only', () => {
  it('below eight places, with three places to read next: in the field, clear of openings, not read yet', () => {
    const window = { shape: { form: 'rect', x_m: 0.4, y_m: 0.9, w_m: 0.25, h_m: 0.25 } } as const;
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(fc.integer({ min: 2, max: 22 }), fc.integer({ min: 2, max: 38 })), { minLength: 1, maxLength: 7, selector: (p) => p.join() }),
        (points) => {
          const readings = points.map(([i, j]): Read => [i / 20, j / 20, 0.1 + 0.005 * ((i * 7 + j) % 20)]).filter(([x, y]) => !(x > 0.39 && x < 0.66 && y > 0.89 && y < 1.16));
          fc.pre(readings.length > 0);
          const map = moistureField(wall('hung', [window]), panelOf(readings));
          const part = first(map);
          expect(part.drawn).toBe('dots');
          expect(part.grid).toBeUndefined();
          expect(part.why).toContain('a map needs 8');
          expect(map.next_places).toHaveLength(3);
          for (const { point_m, words } of map.next_places) {
            expect(pointInside(point_m, part.field.outline_m, -0)).toBe(true);
            expect(part.field.holes_m.some((h) => pointInside(point_m, h, 0.04))).toBe(false);
            expect(readings.every(([x, y]) => Math.hypot(x - point_m[0], y - point_m[1]) > 0.1)).toBe(true);
            expect(words).toMatch(/\d+ in \(\d+\.\d\d m\)/);
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  it('where all readings are the same, where a map guesses no better than the mean, and where nothing was read', () => {
    const same = first(moistureField(wall('hung'), panelOf(GRID.map(([x, y]) => [x, y, 0.14] as const))));
    expect(same.why).toBe('All readings here are the same: there is nothing to map.');
    const checkered = GRID.map(([x, y], i): Read => [x, y, (i + Math.floor(i / 4)) % 2 === 0 ? 0.1 : 0.22]);
    const noise = first(moistureField(wall('hung'), panelOf(checkered)));
    expect(noise.drawn).toBe('dots');
    expect(noise.why).toContain('no better by a map');
    expect(noise.leave_one_out?.error).toBeGreaterThanOrEqual(noise.leave_one_out?.of_the_mean ?? 0);
    const nothing = moistureField(wall('hung'), panelOf([]));
    expect([nothing.parts, nothing.next_places]).toEqual([[], []]);
  });

  it('leaves out, and says so: readings off the face, in an opening, old ones, ones without a number', () => {
    const { stations } = wall('hung', [{ shape: { form: 'rect', x_m: 2, y_m: 0.8, w_m: 0.7, h_m: 0.6 } }]);
    const map = moistureField(
      { ...wall('hung'), stations },
      panelOf([
        [0.5, 0.5, 0.12],
        [2.3, 1, 0.12],
        [9, 9, 0.12],
        [0.6, 0.9, 0.12, { day: civilDay(DAY - 31) }],
        [0.7, 0.9, 0.12, { value: undefined, no_number: 'frozen' }],
      ]),
    );
    expect(map.parts.map((p) => p.readings)).toEqual([1]);
    expect(map.assumes).toContain('2 readings are left out: they lie in an opening, or off every part of this face.');
    expect(map.assumes).toContain('One place is left out: not read within 30 days of the newest reading.');
  });

  it('counts a place read twice as one, its mean', () => {
    const twice = [...GRID.slice(0, 7), ...GRID.slice(0, 7).map(([x, y, v]): Read => [x, y, v + 0.01])];
    expect(first(moistureField(wall('hung'), panelOf(twice))).readings).toBe(7);
  });
});

describe('a bonded sheet', () => {
  const window = { shape: { form: 'rect', x_m: 2, y_m: 0.6, w_m: 0.8, h_m: 1 } } as const;
  const spread: readonly Read[] = [1.2, 1.5, 1.8, 3, 3.3, 3.6].flatMap((x) =>
    [0.3, 0.9, 1.5].map((y): Read => [x, y, 0.11 + 0.1 * Math.exp(-(((x - 3.1) / 0.4) ** 2) - ((y - 0.8) / 0.5) ** 2)]),
  );

  it('runs past its tubes; a pinless meter is masked there, a pin meter is not', () => {
    const at: FacePoint = [3.6, 1.2];
    const pin = first(moistureField(wall('bonded', [window]), panelOf(spread)));
    expect(near(pin, at).estimate).toBeDefined();
    const pinless = moistureField(wall('bonded', [window]), panelOf(spread, 'pinless'));
    expect(near(first(pinless), at).estimate).toBeUndefined();
    expect(pinless.assumes.some((a) => a.includes('over a frame tube'))).toBe(true);
    expect(first(pinless).readings).toBeLessThan(spread.length);
  });

  it('carries nothing across a window, and something past it where the sheet goes on', () => {
    const wet = spread.map(([x, y, v]): Read => [x, y, x > 2.8 && y > 0.8 && y < 1 ? v + 0.1 : v]);
    const [a, b] = [spread, wet].map((readings) => moistureField(wall('bonded', [window]), panelOf(readings)));
    if (!a || !b) throw new Error('two maps');
    // The likeness takes its spread from all readings; beside that only places that see the wetter readings may change.
    const left = (m: MoistureField): number => near(first(m), [1.9, 0.9]).estimate ?? Number.NaN;
    expect(Math.abs(left(a) - left(b))).toBeLessThan(0.002);
    const right = (m: MoistureField): number => near(first(m), [2.9, 0.9]).estimate ?? Number.NaN;
    expect(right(b) - right(a)).toBeGreaterThan(0.03);
  });

  it('mirrors as the wall mirrors', () => {
    const mirror = (x: number): number => 4.8 - x;
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.08, max: 0.28, noNaN: true }), { minLength: 18, maxLength: 18 }), (values) => {
        const readings = spread.map(([x, y], i): Read => [x, y, 0.5 * (values[i] ?? 0.1) + 0.5 * damp(x - 2, y)]);
        const here = first(moistureField(wall('moulded'), panelOf(readings)));
        const there = first(moistureField(wall('moulded'), panelOf(readings.map(([x, y, v]): Read => [mirror(x), y, v]))));
        expect(there.drawn).toBe(here.drawn);
        if (!here.grid || !there.grid) return;
        const { columns, rows } = here.grid;
        expect([there.grid.columns, there.grid.rows]).toEqual([columns, rows]);
        for (let j = 0; j < rows; j++)
          for (let i = 0; i < columns; i++) {
            const [p, q] = [here.grid.chance[j * columns + i], there.grid.chance[j * columns + columns - 1 - i]];
            // A node at the very end of the reach may fall either way.
            if (p !== undefined && q !== undefined) expect(Math.abs(p - q)).toBeLessThan(1e-6);
          }
      }),
      { numRuns: 8 },
    );
  });
});
