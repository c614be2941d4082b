import type { Leak, Panel } from '../../plan';
import { type Field, fieldsOf, pointInside, type Rig } from '../../rig';
import type { EntryId, FacePoint, Station } from '../../terms';
import type { Preferences } from '../../units';
import { scaleBar } from '../dimension';
import { type Bounds, boundsOf, boundsOn } from '../frame';
import { US } from '../length-words';
import { drawPart, shapePoints } from '../parts';
import type { Point } from '../path';
import { penOn } from '../pen';
import type { Drawing, Primitive } from '../primitives';
import { inDrawingOrder, stationGroup } from '../rig-sheet';
import { boxesOf, isArea } from '../sheet';
import { faceWords, stationWords } from '../spoken';
import { linesOf, widthOf } from '../type-width';
import { type Bands, bandsOf, type DrawnContour, hatchOver, isInField, isUnknown, levelsOf, type MapLayer } from './bands';
import type { DrawnField, DrawnPart } from './drawn-field';
import { clipped, faceEdges, isOnView, type MapView, mapView, onView, sheetPen as p, runsWithin } from './map-view';
import { hasBeyond, type Sounding, soundingsBeyond, soundingsOn } from './soundings';
import { drawWays, followedSpot, type Way, waysOf } from './ways';

export type MapOptions = {
  readonly preferences?: Preferences;
  readonly fit_px?: number;
  readonly type_px?: number;
  /** How many times larger than fits: type keeps its size, so that figures stand clear. */
  readonly zoom?: number;
  readonly layer?: MapLayer;
  /** The leak whose ways in are laid over it. */
  readonly leak?: Leak;
  /** A spot to ring: the one whose trend is told. Taken from the leak when left out. */
  readonly ringed?: EntryId;
  /** Where to read next. */
  readonly next?: boolean;
};

/** Room above the face for ways that come in over its edge, below it for what is said of its parts and for the scale. [type sizes] */
const [ABOVE, BELOW] = [2.4, 7.2] as const;

const withinStretch = (view: MapView, part: DrawnPart): boolean => {
  const b = boundsOf(part.field.outline_m);
  return b.x1 > view.from + 0.01 && b.x0 < view.to - 0.01;
};

/** `Window 1`, without the face it is on. */
const ownName = (rig: Rig, station: Station): string => {
  const words = stationWords(rig, station);
  const rest = words.slice(words.indexOf(', ') + 2);
  return rest.charAt(0).toUpperCase() + rest.slice(1);
};

/** Frames within frames are seen from inside as well; slats, burners and sockets are not. */
const LOOKED_THROUGH: readonly string[] = ['window', 'door', 'skylight', 'hatch'];

const drawnFrom = ({ side, onto }: MapView, s: Station): readonly Primitive[] => {
  const drawn = drawPart(s.part, s.shape, onto, s.hinge ? { hinge: s.hinge } : {});
  if (side === 'outside') return drawn;
  return drawn.slice(0, LOOKED_THROUGH.some((l) => s.looks.includes(l)) ? 2 : 1);
};

/** What is cut through, as it is seen from this side, each with its spoken name; from outside the other parts as well. */
const partsOf = (view: MapView): readonly Primitive[] => {
  const { rig, side, onto, px } = view;
  return inDrawingOrder(rig.stations.filter((s) => isOnView(view, s) && !isArea(s) && !s.layer)).flatMap((s): readonly Primitive[] => {
    if (s.shape.form === 'lines') return side === 'inside' ? [] : drawPart(s.part, { form: 'lines', lines_m: runsWithin(view, s.shape.lines_m) }, onto, {});
    if (side === 'inside' && (!s.cut_through || s.within !== undefined)) return [];
    const group = stationGroup(rig, s, view.frame, px, undefined, () => undefined);
    return [s.cut_through ? { ...group, label: stationWords(rig, s), children: drawnFrom(view, s) } : { ...group, role: 'plain', children: drawnFrom(view, s) }];
  });
};

/** A way in that lies on the other side of this wall shows as a dashed line. */
const behind = (view: MapView, ways: readonly Way[]): readonly Primitive[] =>
  view.side === 'outside'
    ? []
    : ways.flatMap(({ station }) =>
        station.face === view.face.id && station.shape.form === 'lines' ? runsWithin(view, station.shape.lines_m).map((r) => penOn(view.onto).bent('fold', r, 0.1)) : [],
      );

type Words = { readonly primitives: readonly Primitive[]; readonly boxes: readonly Bounds[] };

/** Names of openings, where they have room for them. */
const namesOn = (view: MapView, fields: readonly Field[], taken: readonly Bounds[]): Words => {
  const size = view.type * 0.92;
  const primitives: Primitive[] = [];
  const boxes: Bounds[] = [];
  const arches = fields.flatMap((f) => f.holes_m.flatMap((h) => stationIn(view, h) ?? []));
  for (const s of view.rig.stations) {
    if (!isOnView(view, s) || !(s.cut_through || arches.includes(s)) || s.shape.form === 'lines' || isArea(s) || s.within !== undefined) continue;
    const b = boundsOn(view.frame, shapePoints(s.shape));
    const words = ownName(view.rig, s);
    const room = b.x1 - b.x0 - size * 0.6;
    const lines = wrapped(words, size, room);
    const height = lines.length * size * 1.15;
    if (lines.length > 3 || height > b.y1 - b.y0 - size * 0.4 || lines.some((l) => widthOf(l, size) > room)) continue;
    const [cx, cy] = [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2];
    const wide = Math.max(...lines.map((l) => widthOf(l, size)));
    const box = { x0: cx - wide / 2, x1: cx + wide / 2, y0: cy - height / 2, y1: cy + height / 2 };
    if (taken.some((t) => meet(t, box))) continue;
    boxes.push(box);
    primitives.push(p.box('plate', box.x0 - size * 0.25, box.y0 - size * 0.1, wide + size * 0.5, height + size * 0.2, size * 0.2));
    lines.forEach((l, i) => {
      primitives.push(p.text('text-small', cx, cy - height / 2 + size * (0.9 + i * 1.15), l, size, 'middle'));
    });
  }
  return { primitives, boxes };
};

const meet = (a: Bounds, b: Bounds): boolean => a.x1 > b.x0 && a.x0 < b.x1 && a.y1 > b.y0 && a.y0 < b.y1;

/** Words broken into lines of a column. */
export const wrapped = (text: string, size: number, column: number, heavy = false): readonly string[] => {
  const out: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = out.at(-1);
    if (last !== undefined && linesOf(`${last} ${word}`, size, column, heavy) === 1 && widthOf(`${last} ${word}`, size, heavy) <= column) out[out.length - 1] = `${last} ${word}`;
    else out.push(word);
  }
  return out;
};

/** Outlines this near to each other are of one thing. [m] */
const SAME_M = 0.04;

/** The station that a hole in the wall belongs to. */
const stationIn = (view: MapView, hole: readonly FacePoint[]): Station | undefined => {
  const h = boundsOf(hole);
  return view.rig.stations.find((s) => {
    if (!isOnView(view, s) || s.shape.form === 'lines' || isArea(s)) return false;
    const b = boundsOf(shapePoints(s.shape));
    return [b.x0 - h.x0, b.x1 - h.x1, b.y0 - h.y0, b.y1 - h.y1].every((d) => Math.abs(d) < SAME_M);
  });
};

/** Frame members between the bays, and strips that a pinless meter cannot read through. */
const members = (view: MapView, fields: readonly Field[], pinless: boolean): readonly Primitive[] => {
  const pen = penOn(view.onto);
  const lines = fields.flatMap((field): readonly Primitive[] => {
    const outline = clipped(field.outline_m, view.from, view.to);
    return outline.length < 3 ? [] : [pen.poly('bay', outline)];
  });
  const masks = pinless
    ? fields.flatMap((f) => f.masked_m.flatMap((m) => (clipped(m, view.from, view.to).length < 3 ? [] : [pen.poly('bay', clipped(m, view.from, view.to))])))
    : [];
  // Wheel arches and the like are no openings, but nothing is read there either.
  const holes = fields.flatMap((f) =>
    f.holes_m.flatMap((h) => (clipped(h, view.from, view.to).length < 3 || stationIn(view, h)?.cut_through ? [] : [pen.poly('bay', clipped(h, view.from, view.to), 0.03)])),
  );
  return [...(fields.length < 2 ? [] : lines), ...holes, ...masks];
};

/** Parts of the wall in which nobody read: every bay without a reading, told by the wall itself and not by the map. */
const unreadFields = (fields: readonly Field[], spots: Panel['spots']): readonly Field[] =>
  fields.filter((f) => !spots.some((s) => s.readings.length > 0 && pointInside(s.point_m, f.outline_m, 0.01)));

type Told = { readonly x0: number; readonly x1: number; readonly y1: number; readonly why: string };

const dotted = (view: MapView, parts: readonly DrawnPart[]): readonly Told[] =>
  parts
    .filter((q) => q.drawn === 'dots' && q.readings > 0)
    .map((q) => {
      const b = boundsOn(view.frame, clipped(q.field.outline_m, view.from, view.to));
      return { x0: b.x0, x1: b.x1, y1: b.y1, why: q.why ?? 'no map' };
    })
    .sort((a, b) => a.x0 - b.x0);

/** `3 places; a map needs 8.`: what is counted, and what is said of it. */
const COUNTED = /^(\d+) \w+(; .*)$/;

/** Reasons that differ by a count alone are one reason. */
const reasons = (told: readonly Told[]): readonly { readonly whys: readonly string[]; readonly words: string }[] => {
  const groups = new Map<string, string[]>();
  for (const { why } of told) {
    const key = COUNTED.exec(why)?.[2] ?? why;
    const known = groups.get(key) ?? [];
    if (!known.includes(why)) groups.set(key, [...known, why]);
  }
  return [...groups].map(([key, whys]) => {
    const counts = whys.map((w) => Number(COUNTED.exec(w)?.[1])).sort((a, b) => a - b);
    return { whys, words: `Readings only: ${whys.length > 1 ? `${counts[0]} to ${counts.at(-1)} places in a part${key}` : whys[0]}` };
  });
};

/** Parts that have room for their reason below them, side by side. */
const MOST_BRACKETS = 3;

/**
 * Why some parts show readings only: a line under each with its words below; where they stand too close for that, a note, and a
 * letter in each part where there are several reasons.
 */
const whyOnly = (view: MapView, parts: readonly DrawnPart[]): { readonly primitives: readonly Primitive[]; readonly notes: readonly string[] } => {
  const told = dotted(view, parts);
  const size = view.type * 0.92;
  const y = view.area.y1 + view.type * 0.7;
  const set = told.map((t) => ({ ...t, left: t.x0 + 3 / view.px, right: t.x1 - 3 / view.px, lines: wrapped(`Readings only: ${t.why}`, size, t.x1 - t.x0 - 6 / view.px) }));
  const roomy =
    set.length <= MOST_BRACKETS &&
    set.every((t, i) => t.x0 >= (set[i - 1]?.x1 ?? Number.NEGATIVE_INFINITY) - 0.01 && t.lines.length <= 3 && t.lines.every((l) => widthOf(l, size) <= t.right - t.left));
  if (roomy)
    return {
      notes: [],
      primitives: set.flatMap(({ left, right, lines }): readonly Primitive[] => [
        p.strokes('dimension', [
          [
            [left, y - 4 / view.px],
            [left, y],
            [right, y],
            [right, y - 4 / view.px],
          ],
        ]),
        ...lines.map((l, i) => p.text('text-small', (left + right) / 2, y + size * (1.15 + i * 1.15), l, size, 'middle')),
      ]),
    };
  const all = reasons(told);
  const letter = (i: number): string => String.fromCharCode(97 + i);
  if (all.length === 1) return { primitives: [], notes: all.map((r) => r.words) };
  return {
    notes: all.map((r, i) => `${letter(i)}  ${r.words}`),
    primitives: told.map((t) => p.text('text-small', t.x0 + 4 / view.px, t.y1 - 4 / view.px, letter(all.findIndex((r) => r.whys.includes(t.why))), size)),
  };
};

/** Mapped parts from left to right: where there are several, each is told apart by its number. */
export const mappedParts = (view: MapView, parts: readonly DrawnPart[]): readonly DrawnPart[] =>
  parts.filter((q) => q.drawn === 'map').sort((a, b) => boundsOn(view.frame, a.field.outline_m).x0 - boundsOn(view.frame, b.field.outline_m).x0);

const bayNumbers = (view: MapView, parts: readonly DrawnPart[]): readonly Primitive[] => {
  const mapped = mappedParts(view, parts);
  if (mapped.length < 2) return [];
  const size = view.type * 0.92;
  return mapped.map((q, i) => {
    const b = boundsOn(view.frame, clipped(q.field.outline_m, view.from, view.to));
    return p.text('text-small', (b.x0 + b.x1) / 2, view.area.y1 + view.type * 0.7 + size * 1.15, `bay ${i + 1}`, size, 'middle');
  });
};

/** A figure on its contour, where the contour is long enough and nothing else stands there. */
const contourWords = (view: MapView, contours: readonly DrawnContour[], taken: Bounds[]): readonly Primitive[] => {
  const size = view.type * 0.84;
  const done = new Map<string, number>();
  return [...contours]
    .sort((a, b) => lengthOf(b.points) - lengthOf(a.points))
    .flatMap(({ level, points }): readonly Primitive[] => {
      const w = widthOf(level.words, size, level.heavy);
      if (lengthOf(points) < Math.max(w * 3.2, 0.25) || (done.get(level.words) ?? 0) >= 1) return [];
      for (const share of [0.5, 0.36, 0.64, 0.24, 0.76, 0.12, 0.88]) {
        const [x, y] = alongLine(points, share);
        const box = { x0: x - w / 2 - 1 / view.px, x1: x + w / 2 + 1 / view.px, y0: y - size * 0.5, y1: y + size * 0.5 };
        if (taken.some((t) => meet(t, box)) || contours.some((c) => c.level !== level && runsThrough(c.points, box))) continue;
        taken.push(box);
        done.set(level.words, (done.get(level.words) ?? 0) + 1);
        return [p.text(level.heavy ? 'sounding-wet' : 'sounding', x, y + size * 0.36, level.words, size, 'middle')];
      }
      return [];
    });
};

/** Whether a line passes through a box: its points and points between them are near enough together to tell. */
const runsThrough = (points: readonly Point[], box: Bounds): boolean => {
  const step = (box.y1 - box.y0) / 2;
  return points.some((a, i) => {
    const b = points[i + 1] ?? a;
    const count = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / step));
    return Array.from({ length: count }, (_, k) => k / count).some((t) => {
      const [x, y] = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
      return x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1;
    });
  });
};

const lengthOf = (points: readonly Point[]): number => points.slice(1).reduce((s, b, i) => s + Math.hypot(b[0] - (points[i]?.[0] ?? 0), b[1] - (points[i]?.[1] ?? 0)), 0);

const alongLine = (points: readonly Point[], share: number): Point => {
  let left = lengthOf(points) * share;
  for (const [i, b] of points.slice(1).entries()) {
    const a = points[i] ?? b;
    const l = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= l && l > 0) return [a[0] + ((b[0] - a[0]) * left) / l, a[1] + ((b[1] - a[1]) * left) / l];
    left -= l;
  }
  return points[0] ?? [0, 0];
};

/** Crosses where a further reading would tell most, with their order. */
const nextPlaces = (view: MapView, field: DrawnField, taken: Bounds[]): readonly Primitive[] => {
  const [k, size] = [5 / view.px, view.type * 0.92];
  return field.next_places.flatMap(({ point_m }, i): readonly Primitive[] => {
    if (point_m[0] < view.from || point_m[0] > view.to) return [];
    const [x, y] = onView(view, point_m);
    const w = widthOf(String(i + 1), size, true);
    const sides: readonly Point[] = [
      [x + k * 1.5, y + size * 0.36],
      [x - k * 1.5 - w, y + size * 0.36],
      [x - w / 2, y - k * 1.5],
      [x - w / 2, y + k * 1.5 + size * 0.75],
    ];
    const boxAt = ([tx, ty]: Point): Bounds => ({ x0: tx, x1: tx + w, y0: ty - size * 0.75, y1: ty });
    const at = sides.find((s) => !taken.some((t) => meet(t, boxAt(s)))) ?? sides[0] ?? [x, y];
    taken.push({ x0: x - k, x1: x + k, y0: y - k, y1: y + k }, boxAt(at));
    return [
      p.strokes('selected', [
        [
          [x - k, y],
          [x + k, y],
        ],
        [
          [x, y - k],
          [x, y + k],
        ],
      ]),
      p.text('sounding-next', at[0], at[1], String(i + 1), size),
    ];
  });
};

/** Everything on one map, before it is put together: also what its key must explain. */
export type MapParts = {
  readonly view: MapView;
  readonly shown: readonly DrawnPart[];
  readonly ways: readonly Way[];
  readonly soundings: readonly Sounding[];
  readonly notes: readonly string[];
  readonly unread: boolean;
  readonly ringed: boolean;
  readonly crosses: boolean;
  readonly height: number;
  readonly primitives: readonly Primitive[];
};

/** Readings nearer to each other than this along the wall belong to one stretch. [m] */
const TOGETHER_M = 0.9;

/** What lies together with what is looked at, along the face: dry places far away are told beside the map, not by shrinking it. */
const together = (all: readonly FacePoint[], focus: readonly FacePoint[]): readonly FacePoint[] => {
  if (focus.length === 0) return all;
  let [from, to] = [Math.min(...focus.map((q) => q[0])), Math.max(...focus.map((q) => q[0]))];
  for (const [x] of [...all].sort((a, b) => a[0] - b[0])) if (x > to && x - to <= TOGETHER_M) to = x;
  for (const [x] of [...all].sort((a, b) => b[0] - a[0])) if (x < from && from - x <= TOGETHER_M) from = x;
  return all.filter(([x]) => x >= from && x <= to);
};

const pointsToSee = (panel: Panel, field: DrawnField, ways: readonly Way[], leak: Leak | undefined, face: string): readonly FacePoint[] => {
  const read = panel.spots.filter((s) => s.readings.at(-1)?.off_panel !== true);
  const mine = new Set(leak?.spots.map((s) => s.id));
  const looked = read.filter((s) => (leak ? mine.has(s.id) : s.state === 'wet' || s.state === 'damp'));
  const entries = ways.flatMap((w) => (w.path && w.word !== 'unlikely' ? w.path.legs.flatMap((l) => (l.face === face ? l.points_m : [])) : []));
  return together([...read.map((s) => s.point_m), ...field.next_places.map((n) => n.point_m)], [...looked.map((s) => s.point_m), ...entries]);
};

export const mapParts = (rig: Rig, panel: Panel, field: DrawnField, options: MapOptions = {}): MapParts | undefined => {
  const face = rig.faces.find((f) => f.id === panel.face);
  if (!face) return undefined;
  const { leak, layer = 'chance', preferences = US, fit_px = 880, type_px = 12, zoom = 1 } = options;
  const ways = leak ? waysOf(rig, leak) : [];
  const view = mapView(rig, face, panel.side, pointsToSee(panel, field, ways, leak, face.id), { fit_px, type_px, zoom, above_px: ABOVE * type_px, below_px: BELOW * type_px });
  const { px, type, area } = view;
  const shown = field.parts.filter((q) => withinStretch(view, q));
  const levels = levelsOf(shown, layer);
  const bands: readonly Bands[] = shown.map((q) => bandsOf(view, q, levels, layer, panel.scale !== 'pinless'));
  const walls = fieldsOf(rig, face.id).fields.filter((f) => clipped(f.outline_m, view.from, view.to).length >= 3);
  const fields = walls.length > 0 ? walls : shown.map((q) => q.field);
  const hatched = [
    ...shown.flatMap((q) => (q.drawn === 'map' ? hatchOver(view, q.field.outline_m, q.field.holes_m, (at) => isInField(q, at) && isUnknown(q, at)) : [])),
    ...unreadFields(fields, panel.spots).flatMap((f) => hatchOver(view, f.outline_m, f.holes_m)),
  ];
  const ringed = options.ringed ?? (leak && followedSpot(leak)?.id);
  const soundings = soundingsOn(view, panel.spots, []);
  const taken: Bounds[] = soundings.map((s) => s.box);
  const target = soundings.find((s) => s.spot.id === ringed);
  const ring = target ? [p.disc('selected', (target.box.x0 + target.box.x1) / 2, (target.box.y0 + target.box.y1) / 2, type * 1.15)] : [];
  const sheet: Bounds = { x0: 0, y0: 0, x1: view.width, y1: view.height };
  const drawn = drawWays(
    ways,
    {
      at: (id, point) => (id === face.id && point[0] >= view.from - 1e-6 && point[0] <= view.to + 1e-6 ? onView(view, point) : undefined),
      px,
      ring: 19 / px,
      bounds: sheet,
      within: sheet,
    },
    taken,
  );
  taken.push(...drawn.rings.flatMap((r) => (r.hit ? [{ x0: r.hit[0], y0: r.hit[1], x1: r.hit[0] + r.hit[2], y1: r.hit[1] + r.hit[3] }] : [])));
  const crosses = (options.next ?? true) ? nextPlaces(view, field, taken) : [];
  const names = namesOn(view, fields, taken);
  taken.push(...names.boxes);
  const openings = rig.stations.filter((s) => isOnView(view, s) && s.cut_through && s.shape.form !== 'lines').flatMap((s) => boxesOf(s, view.frame));
  const labels = contourWords(
    view,
    bands.flatMap((b) => b.contours),
    [...taken, ...openings],
  );
  const { primitives: said, notes } = whyOnly(view, shown);
  const size = type * 0.92;
  const foot = area.y1 + type * 4.9;
  const beyond = hasBeyond(view, panel.spots);
  return {
    view,
    shown,
    ways: ways.filter((w) => drawn.rings.some((r) => r.id === `way/${w.station.id}`)),
    soundings,
    notes,
    unread: hatched.length > 0,
    ringed: ring.length > 0,
    crosses: crosses.length > 0,
    height: view.height + (notes.length + (beyond ? 1.4 : 0)) * size * 1.2,
    primitives: [
      ...bands.flatMap((b) => b.tones),
      ...hatched,
      ...bands.flatMap((b) => b.lines),
      ...members(view, fields, panel.scale === 'pinless'),
      ...behind(view, ways),
      ...partsOf(view),
      ...faceEdges(view),
      ...names.primitives,
      ...said,
      ...bayNumbers(view, shown),
      ...drawn.lines,
      ...labels,
      ...soundings.flatMap((s) => s.primitives),
      ...ring,
      ...crosses,
      ...drawn.rings,
      ...scaleBar(area.x0, foot, Math.min(area.x1 - area.x0, preferences.system === 'us' ? 4 * 0.3048 : 1), preferences, px, size),
      ...(beyond ? soundingsBeyond(view, panel.spots, area.x0, foot + size * 3.4) : []),
      ...notes.map((n, i) => p.text('text-small', area.x0, foot + size * (3.2 + i * 1.2 + (beyond ? 1.7 : 0)), n, size)),
    ],
  };
};

/**
 * The map of one panel: the wall as it is seen from the side it was metered on, the chance of being above the threshold in four
 * tones with the half as a heavy line, every reading on top, the ways in and where to read next.
 *
 * @returns  a drawing in metres of the stretch that was metered; an empty one where the rig has no such face
 */
export const moistureMap = (rig: Rig, panel: Panel, field: DrawnField, options: MapOptions = {}): Drawing => {
  const made = mapParts(rig, panel, field, options);
  const title = `${rig.name}: ${panel.words}, ${faceWords(rig, panel.face, panel.side)}`;
  if (!made) return { width: 1, height: 1, title, px: 1, primitives: [] };
  return { width: made.view.width, height: made.height, title, px: made.view.px, primitives: made.primitives };
};
