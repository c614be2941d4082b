import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FacePoint, Shape } from '../../terms';
import { applyLayout } from '../describe';
import { heightAboveGround } from '../faces';
import { pointInside } from '../outline';
import { blankRig, type Rig, type RigKindId } from '../rig';
import { box, pointsOf, rect } from '../shapes';
import { layoutFrom } from '../starting-layout';
import { EDGE_RISE_M, EFFORT, effortDriving, effortParked, LEVEL_RISE, type Move, WIND_LIFT_M } from './effort';
import type { Tilt, WaterPath, WaterSpot } from './types';
import { waterPaths } from './water-paths';
import { gaps, waterSources } from './ways-in';

/**
 * Ways of water against what nobody disputes: it runs down and not up, with the slope of the roof, aft while driving, and
 * a rig mirrored has mirrored ways. How many metres of effort each way costs is our own judgement and is not checked here
 * beyond its order; whether a way is the one the water took no calculation can say.
 */
const KINDS: readonly RigKindId[] = ['travel-trailer', 'fifth-wheel', 'class-a', 'class-b', 'class-c', 'truck-camper', 'folding-camper', 'teardrop'];
const rigOf = (kind: RigKindId): Rig => {
  const layout = layoutFrom({ kind, name: 'ours', skin: 'fibreglass', construction: 'bonded', roof: 'tpo' });
  if (!layout.ok) throw new Error(`no layout for ${kind}`);
  return applyLayout(blankRig('r'), layout.value);
};
const rigs = new Map(KINDS.map((kind) => [kind, rigOf(kind)]));
const rig = rigs.get('travel-trailer') as Rig;
const LEVEL: Tilt = { nose_up_rad: 0, curb_up_rad: 0 };
const spot = (face: string, x: number, y: number, side: 'inside' | 'outside' = 'inside'): WaterSpot => ({ id: `${face} ${x} ${y}`, face, side, point_m: [x, y] });
const find = (paths: readonly WaterPath[], source: string): WaterPath | undefined => paths.find((p) => p.source === source);
const easiest = (paths: readonly WaterPath[]): string | undefined => paths.toSorted((a, b) => a.effort_m - b.effort_m)[0]?.source;

const tilts = fc.record({ nose_up_rad: fc.double({ min: -0.05, max: 0.05, noNaN: true }), curb_up_rad: fc.double({ min: -0.05, max: 0.05, noNaN: true }) });
const anywhere = fc.constantFrom(...KINDS).chain((kind) => {
  const on = rigs.get(kind) as Rig;
  return fc.constantFrom(...on.faces.filter((f) => f.id !== 'tongue')).chain((face) => {
    const b = box({ form: 'poly', points_m: face.outline_m });
    return fc
      .record({
        x: fc.double({ min: b.x0, max: b.x1, noNaN: true }),
        y: fc.double({ min: b.y0, max: b.y1, noNaN: true }),
        side: fc.constantFrom('inside' as const, 'outside' as const),
      })
      .filter(({ x, y }) => pointInside([x, y], face.outline_m, 0))
      .map(({ x, y, side }) => ({ kind, spot: spot(face.id, x, y, side) }));
  });
});

/** Whether a point lies on the outline of a shape; a circle is walked as twelve chords. */
const onOutline = (shape: Shape, [x, y]: FacePoint): boolean => {
  const closed = shape.form === 'lines' ? shape.lines_m : [[...pointsOf(shape), pointsOf(shape)[0] as FacePoint]];
  const b = box(shape);
  if (shape.form === 'circle') return Math.abs(Math.hypot((x - (b.x0 + b.x1) / 2) / (b.x1 - b.x0), (y - (b.y0 + b.y1) / 2) / (b.y1 - b.y0)) - 0.5) < 0.02;
  return closed.some((line) =>
    line.slice(1).some((q, i) => {
      const p = line[i] as FacePoint;
      const size = Math.hypot(q[0] - p[0], q[1] - p[1]);
      const along = ((x - p[0]) * (q[0] - p[0]) + (y - p[1]) * (q[1] - p[1])) / size;
      return along >= -1e-6 && along <= size + 1e-6 && Math.abs((x - p[0]) * (q[1] - p[1]) - (y - p[1]) * (q[0] - p[0])) / size < 1e-6;
    }),
  );
};

/** On a window's pane a spot counts as wet when the frame is, anywhere along it: at the sill and behind as well. */
const onPane = (on: Rig, { face, point_m }: WaterSpot): boolean =>
  gaps(on).some((g) => g.face === face && pointInside(point_m, pointsOf(rect(g.x0, g.y0, g.x1 - g.x0, g.y1 - g.y0)), 0));

describe('effort of one move', () => {
  const move = (length_m: number, drop_m: number, more: Partial<Move> = {}): Move => ({
    length_m,
    drop_m,
    aft_m: 0,
    drop_across_m: drop_m,
    steepest: 1,
    wall: true,
    fore_and_aft: true,
    channel: false,
    ...more,
  });
  it('down before aside, a channel before both, up not at all beyond what wind lifts', () => {
    expect(effortParked(move(1, 1))).toBeCloseTo(EFFORT.down, 12);
    expect(effortParked(move(1, 0))).toBeCloseTo(EFFORT.aside, 12);
    expect(effortParked(move(1, 0, { channel: true }))).toBeLessThan(effortParked(move(1, 1)));
    expect(effortParked(move(0.1, -0.04))).toBe(Number.POSITIVE_INFINITY);
    expect(effortParked(move(0.1, -0.04), WIND_LIFT_M)).toBeGreaterThan(0);
    expect(effortParked(move(0.1, -0.06), WIND_LIFT_M)).toBe(Number.POSITIVE_INFINITY);
    expect(effortDriving(move(1, 0, { aft_m: -1 }))).toBe(Number.POSITIVE_INFINITY);
    expect(effortDriving(move(1, 0, { aft_m: 1 }))).toBeLessThan(effortParked(move(1, 0)));
  });
  it('is never negative and depends on the ends alone: two moves one after the other cost what the one between their ends costs', () => {
    const part = fc.record({ down: fc.double({ min: 0, max: 1, noNaN: true }), aside: fc.double({ min: 0, max: 1, noNaN: true }) });
    fc.assert(
      fc.property(part, part, (a, b) => {
        const cost = (down: number, aside: number): number => effortParked(move(Math.hypot(down, aside), down));
        expect(cost(a.down, a.aside)).toBeGreaterThanOrEqual(0);
        expect(cost(a.down, a.aside) + cost(b.down, b.aside)).toBeCloseTo(cost(a.down + b.down, a.aside + b.aside), 6);
      }),
    );
  });
});

describe('every way', () => {
  it('starts on the outline of its source, ends at the spot, hangs together, and costs something', () => {
    fc.assert(
      fc.property(anywhere, tilts, fc.constantFrom('parked' as const, 'driving' as const), (at, tilt, when) => {
        const on = rigs.get(at.kind) as Rig;
        for (const path of waterPaths(on, [at.spot], tilt, when)) {
          const source = on.stations.find((s) => s.id === path.source);
          if (!source) throw new Error(path.source);
          const own = [{ face: source.face, shape: source.shape }, ...source.parts.map((p) => ({ face: p.face ?? source.face, shape: p.shape }))];
          expect(
            own.some((o) => o.face === path.from.face && onOutline(o.shape, path.from.point_m)),
            `${path.source} ${path.from.point_m}`,
          ).toBe(true);
          expect(path.legs[0]?.how).toBe('in');
          const last = path.legs.at(-1);
          expect(last?.face).toBe(at.spot.face);
          const end = last?.points_m.at(-1) as FacePoint;
          expect(Math.hypot(end[0] - at.spot.point_m[0], end[1] - at.spot.point_m[1])).toBeLessThan(1e-6);
          for (const [i, leg] of path.legs.entries()) {
            const before = path.legs[i - 1];
            if (!before || before.face !== leg.face || leg.how === 'over-edge') continue;
            const [a, b] = [before.points_m.at(-1) as FacePoint, leg.points_m[0] as FacePoint];
            expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(1e-6);
          }
          expect(path.effort_m).toBeGreaterThanOrEqual(0);
          expect(Number.isFinite(path.effort_m)).toBe(true);
          // Nothing is easier than a channel all the way.
          expect(path.effort_m).toBeGreaterThanOrEqual(EFFORT.channel * path.length_m - 1e-6);
          expect(path.length_m).toBeCloseTo(
            path.legs.reduce((sum, l) => sum + l.length_m, 0),
            9,
          );
        }
      }),
      { numRuns: 60 },
    );
  });
  it('parked on the level, it ends no higher than it began, but for what wind lifts, what counts as level and what the drawing rounds off', () => {
    fc.assert(
      fc.property(anywhere, (at) => {
        const on = rigs.get(at.kind) as Rig;
        // The underside has steps that no plain height knows of.
        if (at.spot.face === 'under' || onPane(on, at.spot)) return;
        for (const path of waterPaths(on, [at.spot], LEVEL, 'parked')) {
          // A roof's own height is its crown, which no plain height knows of: walls only.
          if (path.from.face === 'roof' || at.spot.face === 'roof') continue;
          const rise = heightAboveGround(on, at.spot.face, at.spot.point_m[1]) - heightAboveGround(on, path.from.face, path.from.point_m[1]);
          expect(rise, `${path.source} ${at.spot.id}`).toBeLessThanOrEqual(WIND_LIFT_M + EDGE_RISE_M + LEVEL_RISE * path.length_m + 1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });
  it('while driving, nothing on a side wall, roof or slide-out comes from farther aft', () => {
    const long = /^(road|curb|roof|s\d+-outer|s\d+-top)$/;
    fc.assert(
      fc.property(anywhere, (at) => {
        const on = rigs.get(at.kind) as Rig;
        if (!long.test(at.spot.face) || onPane(on, at.spot)) return;
        for (const path of waterPaths(on, [at.spot], LEVEL, 'driving'))
          if (long.test(path.from.face)) expect(path.from.point_m[0], `${path.source} ${at.spot.id}`).toBeLessThanOrEqual(at.spot.point_m[0] + 1e-6);
      }),
      { numRuns: 60 },
    );
  });
  it('farther below on the same plain wall is farther for every source', () => {
    const on = { ...rig, stations: [bare('road.a', 2, 2.2), bare('road.b', 5, 1.9)], slides: [], faces: rig.faces.filter((f) => f.slide === undefined) };
    fc.assert(
      fc.property(fc.double({ min: 1, max: 7, noNaN: true }), fc.double({ min: 0.75, max: 1.7, noNaN: true }), fc.double({ min: 0.01, max: 0.6, noNaN: true }), (x, y, more) => {
        const lower = Math.max(0.72, y - more);
        const [high, low] = [spot('road', x, y), spot('road', x, lower)];
        const paths = waterPaths(on, [high, low], LEVEL, 'parked');
        for (const s of on.stations) {
          const [a, b] = [high, low].map((p) => paths.find((q) => q.source === s.id && q.spot === p.id));
          expect(a && b && b.effort_m - a.effort_m, `${s.id} ${x} ${y}`).toBeGreaterThanOrEqual(-1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** A small hole of no frame. */
const bare = (id: string, x: number, y: number): Rig['stations'][number] => {
  const like = rig.stations.find((s) => s.id === 'road.city-water-inlet');
  if (!like) throw new Error('no inlet');
  return { ...like, id, name: id, shape: rect(x, y, 0.1, 0.1), parts: [] };
};

describe('where the water may come in', () => {
  it('right below a window: from the window, along its frame and down; and not from what lies lower', () => {
    const on = { ...rig, stations: rig.stations.filter((s) => s.id !== 'curb.belt-line-trim') };
    const paths = waterPaths(on, [spot('curb', 4.6, 1.4)], LEVEL, 'parked');
    expect(easiest(paths)).toBe('curb.window-36x22');
    expect(find(paths, 'curb.window-36x22')?.legs.map((l) => l.how)).toEqual(['in', 'along-channel', 'down']);
    expect(find(paths, 'curb.quick-connect-gas')).toBeUndefined();
  });
  it('every source is an opening or seam of the shell, whole and not of another part', () => {
    for (const on of rigs.values())
      for (const s of waterSources(on)) {
        expect(s.cut_through || s.group === 'seam', s.id).toBe(true);
        expect(s.within).toBeUndefined();
        expect(s.part).not.toMatch(/^(tyre|entry-step|a-frame|ladder|rear-bumper)/);
      }
  });
  it('every source on a wall reaches the wall right below it', () => {
    for (const on of rigs.values())
      for (const s of waterSources(on)) {
        if (s.shape.form !== 'rect' || !/^(road|curb|rear)$/.test(s.face) || s.group === 'seam') continue;
        const b = box(s.shape);
        const below = spot(s.face, (b.x0 + b.x1) / 2, b.y0 - 0.03);
        const face = on.faces.find((f) => f.id === s.face);
        if (!face || !pointInside(below.point_m, face.outline_m, 0)) continue;
        const way = find(waterPaths(on, [below], LEVEL, 'parked'), s.id);
        expect(way?.effort_m, s.id).toBeLessThan(1.2);
      }
  });
  it('a roof sheds to both sides from its crown: a vent wets the ceiling on its own side only', () => {
    const [road, curb] = [spot('roof', 6.5, 0.1), spot('roof', 6.5, 2.3)];
    const paths = waterPaths(rig, [road, curb], LEVEL, 'parked');
    expect(paths.some((p) => p.source === 'roof.skylight' && p.spot === road.id)).toBe(true);
    expect(paths.some((p) => p.source === 'roof.skylight' && p.spot === curb.id)).toBe(false);
  });
  it('nose down sends roof water forward, nose up aft', () => {
    const [ahead, behind] = [spot('roof', 5.2, 0.32), spot('roof', 7.6, 0.32)];
    const reached = (tilt: Tilt): readonly string[] =>
      waterPaths(rig, [ahead, behind], tilt, 'parked')
        .filter((p) => p.source === 'roof.skylight')
        .map((p) => p.spot);
    expect(reached({ nose_up_rad: -0.03, curb_up_rad: 0 })).toEqual([ahead.id]);
    expect(reached({ nose_up_rad: 0.03, curb_up_rad: 0 })).toEqual([behind.id]);
  });
  it('leaning to the road side, the curb half of the roof drains there too', () => {
    const at = spot('roof', 3.0, 0.3);
    const fromCurb = (curb_up_rad: number): boolean => waterPaths(rig, [at], { nose_up_rad: 0, curb_up_rad }, 'parked').some((p) => p.source === 'roof.plumbing-vent-cap.2');
    expect(fromCurb(0)).toBe(false);
    expect(fromCurb(0.09)).toBe(true);
  });
  it('a slide-out lets water in at its seals: at its own end walls and on the floor below', () => {
    const paths = waterPaths(rig, [spot('s1-rear', 0.05, 1.2), spot('under', 2.5, 0.1)], LEVEL, 'parked');
    expect(paths.filter((p) => p.source === 'road.slide-wiper-seal').map((p) => p.spot)).toEqual(['s1-rear 0.05 1.2', 'under 2.5 0.1']);
  });
  it('while driving, a spot far aft may come from the front; parked on the level, not along a plain wall', () => {
    const on = { ...rig, stations: rig.stations.filter((s) => s.id === 'curb.window-egress-30x22') };
    const at = spot('curb', 5, 1.6);
    const [driving, parked] = [waterPaths(on, [at], LEVEL, 'driving')[0], waterPaths(on, [at], LEVEL, 'parked')[0]];
    expect(driving?.legs.some((l) => l.how === 'driven-aft')).toBe(true);
    expect(driving?.effort_m).toBeLessThan((parked?.effort_m ?? 0) / 2);
    expect(waterPaths(on, [spot('curb', 0.5, 1.6)], LEVEL, 'driving')).toEqual([]);
  });
  it('while driving as well, a crowned roof sheds to both sides', () => {
    const at = spot('roof', 6.8, 0.8);
    const from = waterPaths(rig, [at], LEVEL, 'driving').filter((p) => p.from.face === 'roof');
    expect(from.length).toBeGreaterThan(2);
    for (const p of from) expect(p.from.point_m[1], p.source).toBeLessThan(2.44 / 2 + 0.25);
    expect(find(from, 'roof.fridge-roof-vent')).toBeUndefined();
  });
  it('a place that is not on the rig, or a tilt that is no number, has no ways', () => {
    expect(waterPaths(rig, [spot('nowhere', 1, 1), spot('road', 99, 1), spot('road', Number.NaN, 1)], LEVEL, 'parked')).toEqual([]);
    expect(waterPaths(rig, [spot('curb', 4.6, 1.0)], { nose_up_rad: Number.NaN, curb_up_rad: 0 }, 'parked').every((p) => Number.isFinite(p.effort_m))).toBe(true);
  });
  it('the tongue is no face of the shell, a rig without faces has no ways, a retired opening lets nothing in', () => {
    expect(waterPaths(rig, [spot('tongue', -0.5, 1)], LEVEL, 'parked')).toEqual([]);
    expect(waterPaths(blankRig('r'), [spot('road', 1, 1)], LEVEL, 'parked')).toEqual([]);
    const on = { ...rig, stations: rig.stations.map((s) => (s.id === 'curb.window-36x22' ? { ...s, retired: true } : s)) };
    expect(find(waterPaths(on, [spot('curb', 4.6, 1.5)], LEVEL, 'parked'), 'curb.window-36x22')).toBeUndefined();
  });
});

/** Road becomes curb, left becomes right: what a mirror would show. */
const mirrored = (from: Rig): Rig => {
  const width = Math.max(...(from.faces.find((f) => f.id === 'under')?.outline_m ?? []).map((p) => p[1]));
  const face = (id: string): string => (id === 'road' ? 'curb' : id === 'curb' ? 'road' : id);
  const point = (id: string, [x, y]: FacePoint): FacePoint => (/^(front|rear|step)$/.test(id) ? [width - x, y] : /^(roof|under|tongue)$/.test(id) ? [x, width - y] : [x, y]);
  const shape = (id: string, s: Shape): Shape => {
    if (s.form === 'lines') return { form: 'lines', lines_m: s.lines_m.map((l) => l.map((p) => point(id, p))) };
    if (s.form === 'poly') return { form: 'poly', points_m: s.points_m.map((p) => point(id, p)) };
    const [a, b] = [point(id, [s.x_m, s.y_m]), point(id, [s.x_m + s.w_m, s.y_m + s.h_m])];
    return { ...s, x_m: Math.min(a[0], b[0]), y_m: Math.min(a[1], b[1]) };
  };
  return {
    ...from,
    faces: from.faces.map((f) => ({ ...f, id: face(f.id), outline_m: f.outline_m.map((p) => point(f.id, p)) })),
    slides: from.slides.map((s) => ({ ...s, face: face(s.face) })),
    stations: from.stations.map((s) => ({
      ...s,
      face: face(s.face),
      shape: shape(s.face, s.shape),
      parts: s.parts.map((p) => ({ ...p, shape: shape(p.face ?? s.face, p.shape), ...(p.face === undefined ? {} : { face: face(p.face) }) })),
    })),
  };
};

describe('a rig in the mirror', () => {
  for (const kind of KINDS)
    it(`${kind}: the same sources, the same effort`, () => {
      const on = rigs.get(kind) as Rig;
      const glass = mirrored(on);
      const width = Math.max(...(on.faces.find((f) => f.id === 'under')?.outline_m ?? []).map((p) => p[1]));
      const here = [spot('road', 2.1, 1.1), spot('curb', 2.9, 0.9), spot('rear', 0.4, 1.0), spot('roof', 2.2, 0.3), spot('under', 2.5, 0.3)];
      const there = here.map((s): WaterSpot => {
        const [x, y] = s.point_m;
        const face = s.face === 'road' ? 'curb' : s.face === 'curb' ? 'road' : s.face;
        return { ...s, face, point_m: s.face === 'rear' ? [width - x, y] : s.face === 'roof' || s.face === 'under' ? [x, width - y] : [x, y] };
      });
      for (const when of ['parked', 'driving'] as const) {
        const told = (paths: readonly WaterPath[]): ReadonlyMap<string, number> => new Map(paths.map((p) => [`${p.source} to ${p.spot}`, p.effort_m]));
        const a = told(waterPaths(on, here, { nose_up_rad: 0.01, curb_up_rad: 0.02 }, when));
        const b = told(waterPaths(glass, there, { nose_up_rad: 0.01, curb_up_rad: -0.02 }, when));
        expect(a.size).toBeGreaterThan(0);
        expect([...b.keys()].toSorted()).toEqual([...a.keys()].toSorted());
        for (const [way, effort] of a) expect(b.get(way), `${when} ${way}`).toBeCloseTo(effort, 2);
      }
    });
});
