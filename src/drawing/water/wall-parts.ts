import type { Panel } from '../../plan';
import { type Field, pointInside, type Rig } from '../../rig';
import type { FacePoint, Station } from '../../terms';
import { type Bounds, boundsOf, boundsOn } from '../frame';
import { drawPart, shapePoints } from '../parts';
import { penOn } from '../pen';
import type { Primitive } from '../primitives';
import { inDrawingOrder, stationGroup } from '../rig-sheet';
import { isArea } from '../sheet';
import { stationWords } from '../spoken';
import { widthOf } from '../type-width';
import { clipped, isOnView, type MapView, sheetPen as p, runsWithin } from './map-view';
import type { Way } from './ways';
import { meet, wrapped } from './words-placed';

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

/** It goes on beyond the stretch. */
const isCut = (view: MapView, s: Station): boolean => {
  const b = boundsOf(shapePoints(s.shape));
  return b.x0 < view.from - 1e-6 || b.x1 > view.to + 1e-6;
};

/** Of a part that goes on beyond the stretch only its edges within are drawn. */
const edgesOf = (view: MapView, s: Station): readonly Primitive[] => {
  const { x0, y0, x1, y1 } = boundsOf(shapePoints(s.shape));
  const corners: readonly FacePoint[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
    [x0, y0],
  ];
  return runsWithin(view, [corners]).map((run) => penOn(view.onto).bent('picture-thin', run, 0.05));
};

/** What is cut through, as it is seen from this side, each with its spoken name; from outside the other parts as well. */
export const partsOf = (view: MapView): readonly Primitive[] => {
  const { rig, side, onto, px } = view;
  return inDrawingOrder(rig.stations.filter((s) => isOnView(view, s) && !isArea(s) && !s.layer && !s.off_wall)).flatMap((s): readonly Primitive[] => {
    if (s.shape.form === 'lines') return side === 'inside' ? [] : drawPart(s.part, { form: 'lines', lines_m: runsWithin(view, s.shape.lines_m) }, onto, {});
    if (side === 'inside' && (!s.cut_through || s.within !== undefined)) return [];
    const group = stationGroup(rig, s, view.frame, px, undefined, () => undefined);
    if (isCut(view, s)) return [{ ...group, role: 'plain', children: edgesOf(view, s) }];
    return [s.cut_through ? { ...group, label: stationWords(rig, s), children: drawnFrom(view, s) } : { ...group, role: 'plain', children: drawnFrom(view, s) }];
  });
};

/** A way in that lies on the other side of this wall shows as a dashed line. */
export const behind = (view: MapView, ways: readonly Way[]): readonly Primitive[] =>
  view.side === 'outside'
    ? []
    : ways.flatMap(({ station }) =>
        station.face === view.face.id && station.shape.form === 'lines' ? runsWithin(view, station.shape.lines_m).map((r) => penOn(view.onto).bent('fold', r, 0.1)) : [],
      );

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
export const members = (view: MapView, fields: readonly Field[], pinless: boolean): readonly Primitive[] => {
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
export const unreadFields = (fields: readonly Field[], spots: Panel['spots']): readonly Field[] =>
  fields.filter((f) => !spots.some((s) => s.readings.length > 0 && pointInside(s.point_m, f.outline_m, 0.01)));

type Words = { readonly primitives: readonly Primitive[]; readonly boxes: readonly Bounds[] };

/** Names of openings, where they have room for them. */
export const namesOn = (view: MapView, fields: readonly Field[], taken: readonly Bounds[]): Words => {
  const size = view.type * 0.92;
  const primitives: Primitive[] = [];
  const boxes: Bounds[] = [];
  const arches = fields.flatMap((f) => f.holes_m.flatMap((h) => stationIn(view, h) ?? []));
  for (const s of view.rig.stations) {
    if (!isOnView(view, s) || !(s.cut_through || arches.includes(s)) || s.shape.form === 'lines' || isArea(s) || s.within !== undefined) continue;
    const whole = boundsOf(shapePoints(s.shape));
    const b = boundsOn(view.frame, [
      [Math.max(whole.x0, view.from), whole.y0],
      [Math.min(whole.x1, view.to), whole.y1],
    ]);
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
