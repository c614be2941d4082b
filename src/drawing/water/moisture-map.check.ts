import { describe, expect, it } from 'vitest';
import type { Panel, Spot } from '../../plan';
import { fieldsOf } from '../../rig';
import type { FacePoint } from '../../terms';
import { civilDay } from '../../units';
import { inkStyle, type Theme } from '../ink';
import type { Primitive } from '../primitives';
import { rigSheet } from '../rig-sheet';
import { svgText } from '../svg-text';
import { KINDS, trialRig } from '../trial-rig';
import { BAND_INKS } from './bands';
import type { DrawnField } from './drawn-field';
import { leaveOneOutWords, moistureKey, moistureSheet, thresholdWords } from './map-key';
import { mapParts, moistureMap, moistureNotes } from './moisture-map';
import { wetTrendPlot } from './trend-plot';
import { trialField, trialLeak, trialPanel, WINDOW } from './trial-water';

/**
 * The map against what was put on it: no reading is lost or hidden, letters and crosses keep off the readings, tones keep their order
 * in grey, and a part without a map says why. Overlaps are of the boxes that the type-width table gives.
 */
const rig = trialRig('travel-trailer');
const panel = trialPanel();
const field = trialField(rig);
const leak = trialLeak(rig);

type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };
const overlap = (a: Box, b: Box): number => Math.max(0, Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0)) * Math.max(0, Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0));

const textsOf = (list: readonly Primitive[]): readonly string[] => list.flatMap((q) => (q.form === 'group' ? textsOf(q.children) : q.form === 'text' ? [q.text] : []));

describe('the map of a panel', () => {
  for (const fit_px of [880, 1240, 640])
    it(`shows every reading once, none over another, at ${fit_px} px`, () => {
      const made = mapParts(rig, panel, field, { leak, fit_px });
      if (!made) throw new Error('no map');
      // Those beyond the stretch stand in a row below it.
      const beyond = panel.spots.filter((s) => s.point_m[0] < made.view.from || s.point_m[0] > made.view.to);
      expect([...made.soundings.map((s) => s.spot.id), ...beyond.map((s) => s.id)].sort()).toEqual(panel.spots.map((s) => s.id).sort());
      const words = textsOf(made.primitives);
      for (const s of panel.spots) expect(words.some((w) => w.replace('(', '') === String(Math.floor((s.readings[0]?.as_read ?? 0) * 100 + 1e-6)))).toBe(true);
      for (const [i, a] of made.soundings.entries())
        for (const b of made.soundings.slice(i + 1)) expect(overlap(a.box, b.box), `${a.spot.id} over ${b.spot.id}`).toBeLessThan(1e-9);
      const rings = made.primitives.flatMap((q) =>
        q.form === 'group' && q.id.startsWith('way/') && q.hit ? [{ x0: q.hit[0], y0: q.hit[1], x1: q.hit[0] + q.hit[2], y1: q.hit[1] + q.hit[3] }] : [],
      );
      expect(rings.length).toBe(leak.candidates.length);
      for (const r of rings) for (const s of made.soundings) expect(overlap(r, s.box), s.spot.id).toBeLessThan(0.15 * (r.x1 - r.x0) * (r.y1 - r.y0));
    });

  it('in the hand writes nothing below the wall but its scale, and gives the rest as sentences', () => {
    const hung = { ...rig, construction: 'hung' as const };
    const thin = trialField(hung);
    const far = { ...panel.spots[0], id: 'far', point_m: [7.2, 1.4] as FacePoint } as Spot;
    const more = { ...panel, spots: [...panel.spots, far] };
    const options = { leak, fit_px: 358, type_px: 18, quiet: true };
    const made = mapParts(hung, more, thin, options);
    if (!made) throw new Error('no map');
    const beyond = more.spots.filter((s) => s.point_m[0] < made.view.from || s.point_m[0] > made.view.to);
    expect(beyond.length).toBeGreaterThan(0);
    expect([...made.soundings.map((s) => s.spot.id), ...beyond.map((s) => s.id)].sort()).toEqual(more.spots.map((s) => s.id).sort());
    expect(textsOf(moistureMap(hung, more, thin, options).primitives).some((w) => /Readings only|Farther/.test(w))).toBe(false);
    const notes = moistureNotes(hung, more, thin, options);
    expect(notes.join(' ')).toMatch(/Readings only: 1 to \d places in a part; a map needs 8\./);
    expect(notes.flatMap((n) => /^Farther to the (?:left|right): (.*)$/.exec(n)?.[1]?.split(', ') ?? [])).toHaveLength(beyond.length);
    const near = moistureMap(hung, more, thin, { ...options, zoom: 2 });
    expect(near.px).toBeCloseTo(2 * made.view.px, 9);
    expect(Math.max(...near.primitives.flatMap((q) => (q.form === 'text' ? [q.size * near.px] : [])))).toBeLessThan(1.2 * 18);
  });

  it('keeps what is drawn on its sheet', () => {
    const made = moistureSheet(rig, panel, field, { leak });
    const check = (list: readonly Primitive[]): void => {
      for (const q of list) {
        if (q.form === 'group') check(q.children);
        if (q.form === 'text') {
          expect(q.x, q.text).toBeGreaterThanOrEqual(0);
          expect(q.x, q.text).toBeLessThanOrEqual(made.width);
          expect(q.y, q.text).toBeLessThanOrEqual(made.height);
        }
      }
    };
    check(made.primitives);
  });

  it('tells a dry place far along the wall below the map, in place of shrinking it', () => {
    const far = { ...panel.spots[0], id: 'far', point_m: [7.2, 1.4] as FacePoint } as Spot;
    const near = mapParts(rig, panel, field, { leak });
    const made = mapParts(rig, { ...panel, spots: [...panel.spots, far] }, field, { leak });
    expect(made?.view.px).toBe(near?.view.px);
    expect(textsOf(made?.primitives ?? [])).toContain('Farther to the right:');
  });

  it('says why a part has no map, and how far a reading is missed where there is one', () => {
    const hung = { ...rig, construction: 'hung' as const };
    const thin = mapParts(hung, panel, trialField(hung), {});
    const made = mapParts(rig, panel, field, {});
    if (!made || !thin) throw new Error('no map');
    const said = [...textsOf(thin.primitives), ...thin.notes].join(' ');
    expect(thin.shown.some((q) => q.why !== undefined)).toBe(true);
    expect(said.replaceAll(/\s+/g, ' ')).toMatch(/Readings only: 1 to \d places in a part; a map needs 8\./);
    expect(leaveOneOutWords(made)).toEqual(['3.1 points, the mean alone 6.7']);
    expect(thresholdWords(panel, field)).toBe('Chance of being more than 4 points above the dry places');
    expect(thresholdWords(panel, { ...field, of: 'reading', threshold: 0.2 })).toBe('Chance of being above 20 %');
  });

  it('never draws what was not read like what is dry', () => {
    const hung = { ...rig, construction: 'hung' as const };
    const none: DrawnField = { ...field, parts: [], next_places: [] };
    const strokes = (spots: Panel['spots']): number => mapParts(hung, { ...panel, spots }, none, {})?.primitives.filter((q) => q.form === 'path' && q.ink === 'grid').length ?? 0;
    const bays = fieldsOf(hung, 'curb').fields.length;
    expect(bays).toBeGreaterThan(6);
    // A bay narrower than the hatch is wide may take none.
    expect(strokes([])).toBeGreaterThan(0.8 * bays);
    const read = strokes(panel.spots);
    expect(read).toBeLessThan(strokes([]));
    expect(read).toBeGreaterThan(0);
    // Within a mapped part, too: where no reading is near enough, the map says so.
    const far: DrawnField = {
      ...field,
      parts: field.parts.map((q) => (q.grid ? { ...q, grid: { ...q.grid, chance: q.grid.chance.map((c, i, all) => (i > all.length / 2 ? undefined : c)) } } : q)),
    };
    expect(mapParts(rig, panel, far, {})?.unread).toBe(true);
  });

  it('lays no tone over the window', () => {
    const made = mapParts(rig, panel, field, { leak });
    const hole = rig.stations.find((s) => s.id === WINDOW)?.shape;
    if (!made || hole?.form !== 'rect') throw new Error('no window');
    const corners = [made.view.onto(hole.x_m, hole.y_m), made.view.onto(hole.x_m + hole.w_m, hole.y_m + hole.h_m)];
    const [x0, x1] = [Math.min(...corners.map((c) => c[0])) + 1e-4, Math.max(...corners.map((c) => c[0])) - 1e-4];
    const [y0, y1] = [Math.min(...corners.map((c) => c[1])) + 1e-4, Math.max(...corners.map((c) => c[1])) - 1e-4];
    const tones = made.primitives.filter((q) => q.form === 'path' && (BAND_INKS.includes(q.ink) || q.ink.startsWith('contour')));
    expect(tones.length).toBeGreaterThan(6);
    for (const q of tones)
      for (const [, x, y] of q.form === 'path' ? q.d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g) : []) {
        const inside = Number(x) > x0 && Number(x) < x1 && Number(y) > y0 && Number(y) < y1;
        expect(inside, `${x} ${y}`).toBe(false);
      }
  });

  it('keeps the order of its tones in grey, in every theme', () => {
    const grey = (hex: string): number => [1, 3, 5].reduce((s, i, k) => s + ([0.2126, 0.7152, 0.0722][k] ?? 0) * (Number.parseInt(hex.slice(i, i + 2), 16) / 255) ** 2.2, 0);
    for (const theme of ['desk', 'field', 'night', 'paper'] as const satisfies readonly Theme[]) {
      const tones = BAND_INKS.map((ink) => grey(inkStyle(ink, theme).fill));
      for (let i = 1; i < tones.length; i += 1) {
        const [a, b] = [tones[i - 1] ?? 0, tones[i] ?? 0];
        expect(theme === 'night' ? b / a : a / b, `${theme} ${i}`).toBeGreaterThan(1.15);
      }
    }
  });

  it('writes SVG that stands alone, at every side of every kind of rig', () => {
    for (const kind of KINDS) {
      const one = trialRig(kind);
      for (const face of one.faces)
        for (const side of ['inside', 'outside'] as const) {
          const xs = face.outline_m.map((q) => q[0]);
          const ys = face.outline_m.map((q) => q[1]);
          const [cx, cy] = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
          const spots = panel.spots.slice(0, 6).map((s, i): Spot => {
            const point_m: FacePoint = [cx + 0.06 * (i % 3), cy + 0.05 * Math.floor(i / 3)];
            return { ...s, face: face.id, side, point_m };
          });
          const whole: DrawnField = {
            of: 'reading',
            threshold: 0.2,
            next_places: [],
            parts: [{ field: { id: 'whole', face: face.id, outline_m: face.outline_m, holes_m: [], masked_m: [] }, readings: 6, drawn: 'dots', why: 'Six readings only' }],
          };
          const here: Panel = { ...panel, face: face.id, side, spots };
          const text = svgText(moistureSheet(one, here, whole));
          expect(text, `${kind} ${face.id}`).not.toMatch(/NaN|Infinity|undefined|<script|<style|style=|href|url\(|class=/);
        }
    }
  });

  it('draws nothing, and says nothing, for a face that the rig does not have', () => {
    expect(moistureMap(rig, { ...panel, face: 'attic' }, field).primitives).toEqual([]);
    expect(moistureKey(rig, { ...panel, face: 'attic' }, field).primitives).toEqual([]);
  });
});

describe('water on the sheet of the whole rig', () => {
  it('rings the wet places and letters the ways in', () => {
    const bare = rigSheet(rig);
    const made = rigSheet(rig, undefined, { water: { leaks: [leak] } });
    const ways = made.primitives.flatMap((q) => (q.form === 'group' && q.id.startsWith('way/') ? [q.label] : []));
    expect(ways.map((l) => l.slice(0, 3))).toEqual(['A, ', 'B, ', 'C, ']);
    expect(made.primitives.filter((q) => q.form === 'path' && q.ink === 'wet-outline').length).toBe(1);
    expect(made.primitives.length).toBeGreaterThan(bare.primitives.length);
    const two = rigSheet(rig, undefined, { water: { leaks: [leak, leak], fields: [{ face: 'curb', field }] } });
    expect(two.primitives.flatMap((q) => (q.form === 'group' && q.id.startsWith('way/') ? textsOf(q.children) : []))).toEqual(['A1', 'B1', 'C1', 'A2', 'B2', 'C2']);
  });
});

describe('a wet place through time', () => {
  const day = civilDay(20_300);
  const base = { title: 'Points above the dry reference', word: 'Drying?', why: 'Too few readings.' };

  it('is drawn from none, one, equal or falling readings, with figures that can be read', () => {
    for (const excesses of [[], [0.1], [0.1, 0.1, 0.1], [0.18, 0.12, 0.05], [-0.01, 0.002]])
      for (const width of [880, 360]) {
        const points = excesses.map((excess, i) => ({ day: civilDay(day + i * 10), excess }));
        const text = svgText(
          wetTrendPlot({ ...base, points, slope_per_d: -0.001, interval_per_d: [-0.002, 0], need: 'Need 2 more readings', width, repairs: [{ day, words: 'resealed' }] }),
        );
        expect(text).not.toMatch(/NaN|Infinity|undefined/);
        if (excesses.length > 0) expect(text).toContain('Need 2 more readings');
      }
  });

  it('keeps what was read before a repair apart from what came after', () => {
    const drawn = wetTrendPlot({
      ...base,
      earlier: [{ day, excess: 0.1 }],
      points: [{ day: civilDay(day + 9), excess: 0.08 }],
      repairs: [{ day: civilDay(day + 3), words: 'resealed' }],
    });
    const circles = drawn.primitives.filter((q) => q.form === 'circle').map((q) => q.ink);
    expect(circles).toEqual(['point-open', 'point']);
  });
});
