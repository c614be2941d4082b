import { describe, expect, it } from 'vitest';
import type { Station } from '../terms';
import { applyLayout, applyStation } from './describe';
import { blankRig, type Rig, type RigKindId } from './rig';
import { type SlideConflict, type Stand, slideConflicts } from './slide-conflicts';
import { layoutFrom } from './starting-layout';
import { awningPitchLimit, sideLeafLimit, topLeafLimit } from './swing';

/**
 * Angles against worked figures to 0.1°, reached elsewhere by stepping the angle until the first clash, and stepped again
 * here; doors in the way against the list of the reference layouts, made with a leaf turning through 180°. No published
 * geometry was found. Our margins are larger than none, so more may be named than in that list, never less.
 */
const rigOf = (kind: RigKindId): Rig => {
  const layout = layoutFrom({ kind, name: 'ours', skin: 'fibreglass', construction: 'bonded', roof: 'tpo' });
  if (!layout.ok) throw new Error(JSON.stringify(layout.refusals));
  return applyLayout(blankRig('r'), layout.value);
};

const unknown = (): Stand => 'not-known';
const ids = (found: readonly SlideConflict[]): readonly string[] => found.map((c) => c.station);
const slideOn = (rig: Rig, face: string, along: number): string => rig.slides.find((s) => s.face === face && s.x_m <= along && s.x_m + s.w_m >= along)?.id ?? '';

/** First angle at which a leaf's free edge passes the limit, in steps of a hundredth of a degree. */
const stepped = (clash: (t: number) => boolean): number => {
  for (let t = 0; t <= 180; t += 0.01) if (clash((t * Math.PI) / 180)) return t;
  return 180;
};

describe('how far a leaf may open', () => {
  it('a side-hinged door 0.61 m wide, 0.40 m from the slide: 131.0°', () => {
    expect(sideLeafLimit(0.61, 0.4)).toBeCloseTo(131.0, 1);
    expect(stepped((t) => t > Math.PI / 2 && 0.61 * Math.abs(Math.cos(t)) > 0.4)).toBeCloseTo(sideLeafLimit(0.61, 0.4), 1);
    expect(sideLeafLimit(0.61, 0.61)).toBe(180);
    expect(sideLeafLimit(0.61, -0.01)).toBe(0);
  });
  it('a top-hinged hatch 0.60 m high, 0.10 m below the floor of the box, 0.03 m margin: 96.7°', () => {
    expect(topLeafLimit(0.6, 0.1 - 0.03)).toBeCloseTo(96.7, 1);
    expect(stepped((t) => -0.6 * Math.cos(t) > 0.07)).toBeCloseTo(topLeafLimit(0.6, 0.07), 1);
    expect([90, 96, 98, 180].map((t) => t > topLeafLimit(0.6, 0.07))).toEqual([false, false, true, true]);
  });
  it('a door 0.66 m wide under an awning rail at 2.65 m, its top at 2.20 m, 0.10 m of sag: 24.4°', () => {
    expect(awningPitchLimit({ rail_m: 2.65, sag_m: 0.1 }, 2.2, 0.66)).toBeCloseTo(24.4, 1);
  });
  it('a slide 0.90 m out under a rail at 2.95 m, its topper at 2.67 m, 0.05 m of sag: 11.3°', () => {
    const most = awningPitchLimit({ rail_m: 2.95, sag_m: 0.05 }, 2.55 + 0.12, 0.9);
    expect(most).toBeCloseTo(11.3, 1);
    expect([11, 12, 0].map((p) => p > most)).toEqual([false, true, false]);
  });
});

describe('close before moving the slide', () => {
  it.each([
    ['fifth-wheel', 'road', 7.5, ['road.baggage-door-10x30']],
    ['class-a', 'road', 4, ['road.baggage-door-16x36', 'road.baggage-door-16x36.2', 'road.baggage-door-16x36.3', 'road.baggage-door-16x36.4']],
    ['class-a', 'curb', 8.5, ['curb.baggage-door-12x36', 'curb.battery-compartment-door']],
    ['class-c', 'road', 4, ['road.baggage-door-10x30', 'road.baggage-door-10x30.2']],
  ] as const)('%s, slide on the %s side: every door of the reference list', (kind, face, along, expected) => {
    const rig = rigOf(kind);
    const found = ids(slideConflicts(rig, slideOn(rig, face, along), 'out', unknown));
    for (const id of expected) expect(found).toContain(id);
  });

  it('nothing is named when all is known to be shut', () => {
    for (const kind of ['travel-trailer', 'fifth-wheel', 'class-a', 'class-c'] as const) {
      const rig = rigOf(kind);
      for (const slide of rig.slides) for (const moving of ['out', 'in'] as const) expect(slideConflicts(rig, slide.id, moving, () => 'shut')).toEqual([]);
    }
  });

  it('a hatch is judged by its angle, and what is not known counts as open and says so', () => {
    const rig = rigOf('class-a');
    const slide = slideOn(rig, 'road', 4);
    const at = (stand: Stand): readonly SlideConflict[] => slideConflicts(rig, slide, 'out', (s) => (s.id === 'road.baggage-door-16x36' ? stand : 'shut'));
    const most = at('open')[0]?.most_deg ?? 0;
    expect(most).toBeGreaterThan(90);
    expect(at(most - 1)).toEqual([]);
    expect(ids(at(most + 1))).toEqual(['road.baggage-door-16x36']);
    expect(at('not-known')[0]?.reason).toContain('not known');
    expect(at('open')[0]?.reason).not.toContain('not known');
  });

  it('an end-wall window counts on the way in, not on the way out; a window on the outer wall never', () => {
    const rig = rigOf('travel-trailer');
    const open = (s: Station): Stand => (s.face.startsWith('s1-') ? 'open' : 'shut');
    expect(ids(slideConflicts(rig, 's1', 'in', open))).toEqual(['s1-rear.window-12x21']);
    expect(slideConflicts(rig, 's1', 'out', open)).toEqual([]);
  });

  it('a cord that hangs under a slide is asked about, a plug in its path is crushed', () => {
    const rig = rigOf('travel-trailer');
    const inlet = rig.stations.find((s) => s.id === 'road.power-inlet-30a');
    if (!inlet) throw new Error('no inlet');
    const at = (y_m: number): Rig => applyStation(rig, { ...inlet, shape: { form: 'rect', x_m: 2.5, y_m, w_m: 0.115, h_m: 0.115 } });
    const plugged = (s: Station): Stand => (s.id === inlet.id ? 'open' : 'shut');
    expect(slideConflicts(at(0.45), 's1', 'out', plugged)[0]?.class).toBe('ask');
    expect(slideConflicts(at(0.62), 's1', 'out', plugged)[0]?.class).toBe('crush');
    expect(slideConflicts(at(0.62), 's1', 'out', () => 'shut')).toEqual([]);
  });

  it('an awning over a slide is measured by its pitch', () => {
    const layout = layoutFrom({ kind: 'travel-trailer', name: 'ours', skin: 'fibreglass', construction: 'bonded', roof: 'tpo', length_m: 10.5, slides_road: 0, slides_curb: 1 });
    if (!layout.ok) throw new Error('no layout');
    const rig = applyLayout(blankRig('r'), layout.value);
    const slide = rig.slides[0];
    const rail = rig.stations.find((s) => s.part === 'awning-rail');
    if (!slide || !rail) throw new Error('no slide or rail');
    const over: Station = {
      ...rail,
      shape: {
        form: 'lines',
        lines_m: [
          [
            [slide.x_m, 3.2],
            [slide.x_m + slide.w_m, 3.2],
          ],
        ],
      },
    };
    const at = (pitch: Stand): readonly SlideConflict[] => slideConflicts(applyStation(rig, over), slide.id, 'out', (s) => (s.id === rail.id ? pitch : 'shut'));
    expect(at('shut')).toEqual([]);
    expect(at('open')).toHaveLength(1);
    const most = at('open')[0]?.most_deg ?? 0;
    expect(at(most - 1)).toEqual([]);
    expect(at(most + 1)).toHaveLength(1);
  });

  it('what was crushed before is named first', () => {
    const rig = rigOf('class-a');
    const slide = slideOn(rig, 'road', 4);
    const usual = ids(slideConflicts(rig, slide, 'out', unknown));
    const last = usual.at(-1) ?? '';
    const found = slideConflicts(rig, slide, 'out', unknown, [last]);
    expect(found[0]).toMatchObject({ station: last, crushed_before: true });
    expect(ids(found).toSorted()).toEqual([...usual].toSorted());
  });
});
