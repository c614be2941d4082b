import type { Leak, Panel } from '../../plan';
import { fieldsOf, type Rig } from '../../rig';
import type { EntryId, FacePoint } from '../../terms';
import type { Preferences } from '../../units';
import { scaleBar } from '../dimension';
import { type Bounds, boundsOf } from '../frame';
import { US } from '../length-words';
import type { Point } from '../path';
import type { Drawing, Primitive } from '../primitives';
import { boxesOf } from '../sheet';
import { faceWords } from '../spoken';
import { widthOf } from '../type-width';
import { type Bands, bandsOf, hatchOver, isInField, isUnknown, levelsOf, type MapLayer } from './bands';
import type { DrawnField, DrawnPart } from './drawn-field';
import { clipped, faceEdges, isOnView, type MapView, mapView, onView, sheetPen as p } from './map-view';
import { bayNumbers, contourWords, whyOnly } from './map-words';
import { beyondWords, hasBeyond, type Sounding, soundingsBeyond, soundingsOn } from './soundings';
import { behind, members, namesOn, partsOf, unreadFields } from './wall-parts';
import { drawWays, followedSpot, type Way, waysOf } from './ways';
import { meet } from './words-placed';

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
  /** Nothing is written below the face but its scale: for a narrow screen, which tells it beside the map. */
  readonly quiet?: boolean;
  /** Width of the key. [px] */
  readonly key_px?: number;
};

/** Room above the face for ways that come in over its edge, below it for what is said of its parts and for the scale. [type sizes] */
const [ABOVE, BELOW] = [2.4, 7.2] as const;
/** Where the scale stands: below what is said of the parts, or close under the face. [type sizes] */
const [SPOKEN, QUIET] = [4.9, 1.6] as const;

const withinStretch = (view: MapView, part: DrawnPart): boolean => {
  const b = boundsOf(part.field.outline_m);
  return b.x1 > view.from + 0.01 && b.x0 < view.to - 0.01;
};

/** A ring with the letter of a way in; larger where type is as large as a hand needs it. [px] */
const [RING_PX, HAND_RING_PX] = [19, 27] as const;

/** Half the width of a cross. [px] */
const ARM_PX = 5;

const armsAt = (view: MapView, point: FacePoint): Bounds => {
  const [[x, y], k] = [onView(view, point), ARM_PX / view.px];
  return { x0: x - k, x1: x + k, y0: y - k, y1: y + k };
};

/** Crosses where a further reading would tell most, with their order. */
const nextPlaces = (view: MapView, field: DrawnField, taken: Bounds[]): readonly Primitive[] => {
  const [k, size] = [ARM_PX / view.px, view.type * 0.92];
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
    taken.push(armsAt(view, point_m), boxAt(at));
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

/** What a person came to look at. */
const STANDS_OUT: readonly Panel['spots'][number]['state'][] = ['wet', 'damp', 'condensation'];

const pointsToSee = (panel: Panel, field: DrawnField, ways: readonly Way[], leak: Leak | undefined, face: string): readonly FacePoint[] => {
  const read = panel.spots.filter((s) => s.readings.at(-1)?.off_panel !== true);
  const mine = new Set(leak?.spots.map((s) => s.id));
  const looked = read.filter((s) => (leak ? mine.has(s.id) : STANDS_OUT.includes(s.state)));
  const entries = ways.flatMap((w) => (w.path && w.word !== 'unlikely' ? w.path.legs.flatMap((l) => (l.face === face ? l.points_m : [])) : []));
  return together([...read.map((s) => s.point_m), ...field.next_places.map((n) => n.point_m)], [...looked.map((s) => s.point_m), ...entries]);
};

export const mapParts = (rig: Rig, panel: Panel, field: DrawnField, options: MapOptions = {}): MapParts | undefined => {
  const face = rig.faces.find((f) => f.id === panel.face);
  if (!face) return undefined;
  const { leak, layer = 'chance', preferences = US, fit_px = 880, type_px = 12, zoom = 1, quiet = false } = options;
  const ways = leak ? waysOf(rig, leak) : [];
  const room_px = quiet ? type_px / zoom : type_px;
  const view = mapView(rig, face, panel.side, pointsToSee(panel, field, ways, leak, face.id), { fit_px, type_px, zoom, above_px: ABOVE * room_px, below_px: BELOW * room_px });
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
  const next = options.next ?? true;
  const arms = next ? field.next_places.map(({ point_m }) => armsAt(view, point_m)) : [];
  const soundings = soundingsOn(view, panel.spots, arms);
  const taken: Bounds[] = soundings.map((s) => s.box);
  const target = soundings.find((s) => s.spot.id === ringed);
  const ring = target ? [p.disc('selected', (target.box.x0 + target.box.x1) / 2, (target.box.y0 + target.box.y1) / 2, type * 1.15)] : [];
  const sheet: Bounds = { x0: 0, y0: 0, x1: view.width, y1: view.height };
  const drawn = drawWays(
    ways,
    {
      at: (id, point) => (id === face.id && point[0] >= view.from - 1e-6 && point[0] <= view.to + 1e-6 ? onView(view, point) : undefined),
      px,
      ring: (quiet ? HAND_RING_PX : RING_PX) / px,
      bounds: sheet,
      within: sheet,
    },
    taken,
  );
  taken.push(...drawn.rings.flatMap((r) => (r.hit ? [{ x0: r.hit[0], y0: r.hit[1], x1: r.hit[0] + r.hit[2], y1: r.hit[1] + r.hit[3] }] : [])));
  const crosses = next ? nextPlaces(view, field, taken) : [];
  const names = namesOn(view, fields, taken);
  taken.push(...names.boxes);
  const openings = rig.stations.filter((s) => isOnView(view, s) && s.cut_through && s.shape.form !== 'lines').flatMap((s) => boxesOf(s, view.frame));
  const labels = contourWords(
    view,
    bands.flatMap((b) => b.contours),
    [...taken, ...openings],
  );
  const { primitives: said, notes } = whyOnly(view, shown, quiet);
  const size = type * 0.92;
  const numbers = bayNumbers(view, shown);
  const spoken = (said.length > 0 && !quiet) || numbers.length > 0;
  const foot = area.y1 + type * (spoken ? SPOKEN : QUIET);
  const beyond = !quiet && hasBeyond(view, panel.spots);
  return {
    view,
    shown,
    ways: ways.filter((w) => drawn.rings.some((r) => r.id === `way/${w.station.id}`)),
    soundings,
    notes: [...notes, ...(quiet ? beyondWords(view, panel.spots) : [])],
    unread: hatched.length > 0,
    ringed: ring.length > 0,
    crosses: crosses.length > 0,
    height: view.height - (spoken ? 0 : (SPOKEN - QUIET) * type) + (quiet ? 0 : notes.length + (beyond ? 1.4 : 0)) * size * 1.2,
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
      ...numbers,
      ...drawn.lines,
      ...labels,
      ...soundings.flatMap((s) => s.primitives),
      ...ring,
      ...crosses,
      ...drawn.rings,
      ...scaleBar(area.x0, foot, Math.min(area.x1 - area.x0, preferences.system === 'us' ? 4 * 0.3048 : quiet ? 2 : 1), preferences, px, size),
      ...(beyond ? soundingsBeyond(view, panel.spots, area.x0, foot + size * 3.4) : []),
      ...(quiet ? [] : notes).map((n, i) => p.text('text-small', area.x0, foot + size * (3.2 + i * 1.2 + (beyond ? 1.7 : 0)), n, size)),
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

/** What a quiet map leaves to be told beside it: why some parts show readings only, and what was read farther along the wall. */
export const moistureNotes = (rig: Rig, panel: Panel, field: DrawnField, options: MapOptions = {}): readonly string[] =>
  mapParts(rig, panel, field, { ...options, quiet: true })?.notes ?? [];
