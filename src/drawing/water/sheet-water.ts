import type { Leak } from '../../plan';
import type { FaceId, FacePoint } from '../../terms';
import { type Bounds, boundsOn, faceToSheet, ontoSheet } from '../frame';
import { frameFor } from '../net';
import { lineD, type Point } from '../path';
import { penOn } from '../pen';
import type { Primitive } from '../primitives';
import type { Sheet } from '../sheet';
import { isInField } from './bands';
import { regionAbove } from './contours';
import type { DrawnField } from './drawn-field';
import { meshOf } from './mesh';
import { drawWays, waysOf } from './ways';

/** What is known of water, for the sheet of the whole rig. */
export type SheetWater = {
  readonly leaks: readonly Leak[];
  /** Maps that have been worked out; where there is none, the wet places are ringed together. */
  readonly fields?: readonly { readonly face: FaceId; readonly field: DrawnField }[];
};

/** Half a hand's width round a place that is wet. [m] */
const ROUND_M = 0.14;
const CORNERS = 12;

/** Diameter of a ring. [px] */
const RING_PX = 17;

/** The smallest outline without hollows round some points (Andrew's monotone chain). */
const hullOf = (points: readonly FacePoint[]): readonly FacePoint[] => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly FacePoint[]): readonly FacePoint[] => {
    const out: FacePoint[] = [];
    for (const q of list) {
      for (;;) {
        const [a, b] = [out.at(-2), out.at(-1)];
        if (!a || !b || (b[0] - a[0]) * (q[1] - a[1]) - (b[1] - a[1]) * (q[0] - a[0]) > 0) break;
        out.pop();
      }
      out.push(q);
    }
    return out.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
};

const isWet = (state: Leak['spots'][number]['state']): boolean => state === 'wet' || state === 'damp';

/** Wet places of a leak on each face: metered wet, or showing a sign. */
const placesByFace = (leak: Leak): ReadonlyMap<FaceId, readonly FacePoint[]> => {
  const by = new Map<FaceId, FacePoint[]>();
  for (const s of leak.spots) if (isWet(s.state) || s.signs.length > 0) by.set(s.face, [...(by.get(s.face) ?? []), s.point_m]);
  return by;
};

const around = (points: readonly FacePoint[]): readonly FacePoint[] =>
  hullOf(
    points.flatMap(([x, y]) =>
      Array.from({ length: CORNERS }, (_, i): FacePoint => [x + ROUND_M * Math.cos((i * 2 * Math.PI) / CORNERS), y + ROUND_M * Math.sin((i * 2 * Math.PI) / CORNERS)]),
    ),
  );

/** What is wet, as a tone with its outline: above even chance where a map holds all of it, else the wet places ringed together. */
const wetOn = (sheet: Sheet, { leaks, fields: all = [] }: SheetWater): readonly Primitive[] => {
  const fields = all.filter((f) => leaks.flatMap((l) => placesByFace(l).get(f.face) ?? []).every((q) => f.field.parts.some((part) => part.drawn === 'map' && isInField(part, q))));
  const mapped = fields.flatMap(({ face, field }): readonly Primitive[] => {
    const frame = frameFor(sheet.net, face);
    if (!frame) return [];
    const rings = field.parts.flatMap((q) =>
      q.drawn === 'map' && q.grid ? regionAbove(meshOf({ ...q.grid, values: q.grid.chance }, q.field.outline_m, q.field.holes_m), 0.5) : [],
    );
    const d = rings.map((r) => lineD(ontoSheet(frame), r, true)).join('');
    return d === ''
      ? []
      : [
          { form: 'path', d, ink: 'wet-2' },
          { form: 'path', d, ink: 'wet-outline' },
        ];
  });
  const known = new Set(fields.filter(({ field }) => field.parts.some((q) => q.drawn === 'map')).map((f) => f.face));
  const ringed = leaks.flatMap((leak) =>
    [...placesByFace(leak)].flatMap(([face, points]): readonly Primitive[] => {
      const frame = frameFor(sheet.net, face);
      if (!frame || known.has(face)) return [];
      const pen = penOn(ontoSheet(frame));
      return [pen.poly('wet-2', around(points), 0.05), pen.poly('wet-outline', around(points), 0.05)];
    }),
  );
  return [...mapped, ...ringed];
};

export type WaterLayer = { readonly under: readonly Primitive[]; readonly over: readonly Primitive[]; readonly boxes: readonly Bounds[] };

/** Wet places under the parts, ways in and their letters over them. Several leaks on one sheet are told apart by a figure behind the letter. */
export const waterLayer = (sheet: Sheet, water: SheetWater): WaterLayer => {
  const at = (face: FaceId, point: FacePoint): Point | undefined => {
    const frame = frameFor(sheet.net, face);
    return frame && faceToSheet(frame, point);
  };
  const ways = water.leaks.flatMap((leak, i) => waysOf(sheet.rig, leak, water.leaks.length > 1 ? String(i + 1) : ''));
  const drawn = drawWays(ways, { at, px: sheet.px, ring: RING_PX / sheet.px, bounds: sheet.bounds, within: sheet.bounds }, []);
  const wet = water.leaks.flatMap((leak) =>
    [...placesByFace(leak)].flatMap(([face, points]) => {
      const frame = frameFor(sheet.net, face);
      return frame ? [boundsOn(frame, around(points))] : [];
    }),
  );
  return {
    under: wetOn(sheet, water),
    over: [...drawn.lines, ...drawn.rings],
    boxes: [...wet, ...drawn.rings.flatMap((r) => (r.hit ? [{ x0: r.hit[0], y0: r.hit[1], x1: r.hit[0] + r.hit[2], y1: r.hit[1] + r.hit[3] }] : []))],
  };
};
