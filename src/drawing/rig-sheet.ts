import type { Face, Rig } from '../rig';
import type { FaceId, Place, Side, Station, StationId } from '../terms';
import type { Preferences } from '../units';
import { dimension, scaleBar, widthOf } from './dimension';
import { around, type Bounds, boundsOf, boundsOn, type Frame, faceToSheet, ontoSheet, shifted } from './frame';
import { bothLengths, US } from './length-words';
import { drawMark } from './marks';
import { type Net, netOf, undersideOf } from './net';
import { drawStation, shapePoints } from './parts';
import { flat, type Point } from './path';
import { penOn } from './pen';
import { type Obstacle, type Placed, place } from './placing';
import type { Drawing, GroupPrimitive, Primitive } from './primitives';
import { markLabel, type SheetMark } from './sheet-mark';
import { drawFace, undercarriage } from './shell';
import { type Known, stationLabel } from './spoken';

export type SheetOptions = {
  readonly sheet?: 'net' | 'underside';
  readonly preferences?: Preferences;
  /** CSS px to one metre for which type and marks are sized: 72 at the desk, 28 on a phone, 50.4 on paper at 1:75. */
  readonly px?: number;
  readonly mark_px?: number;
  readonly type_px?: number;
  /** Heavier marks, for the field and for paper. */
  readonly heavy?: boolean;
  readonly show?: { readonly findings?: boolean; readonly sound?: boolean; readonly not_seen?: boolean };
  /** Numbers beside the marks; off where the sheet is too small for them. */
  readonly numbers?: boolean;
  readonly dimensions?: boolean;
  readonly selected?: StationId;
};

/** What is to be shown on a sheet: what is known of each station, and the numbered list. */
export type SheetMarks = { readonly known: Readonly<Record<StationId, Known>>; readonly numbered: readonly SheetMark[] };

export const NO_MARKS: SheetMarks = { known: {}, numbered: [] };

const p = penOn(flat);

/** Everything needed to draw on one sheet. */
type Sheet = {
  readonly rig: Rig;
  readonly net: Net;
  readonly px: number;
  readonly type: number;
  readonly s: number;
  readonly heavy: boolean;
  readonly numbers: boolean;
  readonly bounds: Bounds;
};

const faceOf = (rig: Rig, id: FaceId): Face | undefined => rig.faces.find((f) => f.id === id);

const stationsOn = (rig: Rig, net: Net): readonly Station[] => {
  const here = new Set(net.frames.map((f) => f.face));
  const shown = rig.stations.filter((s) => !s.retired && here.has(s.face));
  const size = (s: Station): number => {
    const b = boundsOf(shapePoints(s.shape));
    return (b.x1 - b.x0) * (b.y1 - b.y0);
  };
  const rank = (s: Station): number => (s.layer ? 0 : s.shape.form === 'lines' ? 1 : s.part === 'wheel-arch-trim' ? 2 : s.part === 'tyre' ? 4 : 3);
  return [...shown].sort((a, b) => rank(a) - rank(b) || size(b) - size(a));
};

export const frameFor = (net: Net, face: FaceId): Frame | undefined => net.frames.find((f) => f.face === face);

/** Boxes a station covers on the sheet; a seam covers a narrow strip for each straight run. */
export const boxesOf = (station: Station, frame: Frame): readonly Bounds[] => {
  if (station.shape.form !== 'lines') return [boundsOn(frame, shapePoints(station.shape))];
  const half = 0.03;
  return station.shape.lines_m.flatMap((run) =>
    run.slice(1).map((q, i) => {
      const b = boundsOf([faceToSheet(frame, run[i] ?? q), faceToSheet(frame, q)]);
      return { x0: b.x0 - half, y0: b.y0 - half, x1: b.x1 + half, y1: b.y1 + half };
    }),
  );
};

/** Middle of the longest straight run, or of the box. */
const middleOf = (station: Station, frame: Frame): Point => {
  const runs = station.shape.form === 'lines' ? station.shape.lines_m.flatMap((run) => run.slice(1).map((q, i) => [run[i] ?? q, q] as const)) : [];
  const longest = runs.reduce<readonly [Point, Point] | undefined>((best, r) => {
    const length = ([a, b]: readonly [Point, Point]): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
    return best === undefined || length(r) > length(best) ? r : best;
  }, undefined);
  if (longest) return faceToSheet(frame, [(longest[0][0] + longest[1][0]) / 2, (longest[0][1] + longest[1][1]) / 2]);
  const b = boundsOn(frame, shapePoints(station.shape));
  return [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2];
};

type Anchor = { readonly at: Point; readonly part: Bounds; readonly within: Bounds };

/** What lies below the floor is told at the skirt of the nearer wall, because it has a sheet of its own. */
const belowWall = ({ rig, net }: Sheet, x: number, y: number): Anchor | undefined => {
  const wall = y > rig.overall.width_m / 2 ? 'curb' : 'road';
  const frame = frameFor(net, wall);
  const face = faceOf(rig, wall);
  if (!frame || !face) return undefined;
  const skirt = Math.min(...face.outline_m.map((q) => q[1]));
  const at = faceToSheet(frame, [x, skirt * 0.45]);
  const box = boundsOf([faceToSheet(frame, [x - 0.6, 0]), faceToSheet(frame, [x + 0.6, skirt])]);
  return { at, part: boundsOf([at]), within: box };
};

const anchorAt = (sheet: Sheet, face: FaceId, point: Point): Anchor | undefined => {
  const frame = frameFor(sheet.net, face);
  const f = faceOf(sheet.rig, face);
  if (frame && f) {
    const at = faceToSheet(frame, point);
    return { at, part: boundsOf([at]), within: boundsOn(frame, f.outline_m) };
  }
  return face === 'under' || face === 'tongue' ? belowWall(sheet, point[0], point[1]) : undefined;
};

const anchorOf = (sheet: Sheet, where: Place): Anchor | undefined => {
  if (where.at === 'rig') return undefined;
  if (where.at === 'point') return anchorAt(sheet, where.face, where.point_m);
  if (where.at === 'outline') {
    const b = boundsOf(where.outline_m);
    return anchorAt(sheet, where.face, [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2]);
  }
  const station = sheet.rig.stations.find((s) => s.id === where.station);
  const frame = station && frameFor(sheet.net, station.face);
  const face = station && faceOf(sheet.rig, station.face);
  if (!station) return undefined;
  if (!frame || !face) {
    const b = boundsOf(shapePoints(station.shape));
    return anchorAt(sheet, station.face, [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2]);
  }
  const at = where.at === 'stretch' ? alongRun(station, frame, (where.from_m + where.to_m) / 2) : middleOf(station, frame);
  const part = station.shape.form === 'lines' ? boundsOf([at]) : boundsOn(frame, shapePoints(station.shape));
  return { at, part, within: boundsOn(frame, station.off_wall ? [...face.outline_m, ...shapePoints(station.shape)] : face.outline_m) };
};

/** A point so many metres along a seam from its start. */
const alongRun = (station: Station, frame: Frame, along_m: number): Point => {
  if (station.shape.form !== 'lines') return middleOf(station, frame);
  let left = along_m;
  for (const run of station.shape.lines_m)
    for (let i = 1; i < run.length; i += 1) {
      const [a, b] = [run[i - 1] ?? [0, 0], run[i] ?? [0, 0]];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (left <= length && length > 0) return faceToSheet(frame, [a[0] + ((b[0] - a[0]) * left) / length, a[1] + ((b[1] - a[1]) * left) / length]);
      left -= length;
    }
  return middleOf(station, frame);
};

const stationGroup = (sheet: Sheet, station: Station, frame: Frame, known: Known | undefined): GroupPrimitive => {
  const b = around(boxesOf(station, frame));
  const least = 24 / sheet.px;
  const [gx, gy] = [Math.max(0, least - (b.x1 - b.x0)) / 2, Math.max(0, least - (b.y1 - b.y0)) / 2];
  return {
    form: 'group',
    id: station.id,
    label: stationLabel(sheet.rig, station, known),
    role: 'station',
    hit: [b.x0 - gx, b.y0 - gy, b.x1 - b.x0 + 2 * gx, b.y1 - b.y0 + 2 * gy],
    children: drawStation(station, ontoSheet(frame)),
  };
};

/** A tick, or a small dotted circle without a number: smaller than a finding, never hiding a part. */
const quietMarks = (sheet: Sheet, marks: SheetMarks, obstacles: Obstacle[], show: { readonly sound: boolean; readonly not_seen: boolean }): readonly Primitive[] => {
  const numbered = new Set(marks.numbered.flatMap((m) => (m.station === undefined ? [] : [m.station])));
  const s = sheet.s * 0.62;
  const out: Primitive[] = [];
  for (const station of sheet.rig.stations) {
    const known = marks.known[station.id];
    const frame = frameFor(sheet.net, station.face);
    if (!known || !frame || station.retired || numbered.has(station.id)) continue;
    const wanted = known.mark === 'sound' ? show.sound : known.mark === 'not-seen' ? show.not_seen : false;
    const anchor = wanted ? anchorOf(sheet, { at: 'station', station: station.id, side: 'outside' }) : undefined;
    if (!anchor) continue;
    const put = place({ ...anchor, of: station.id, s, plate: 0, flag: false }, obstacles, sheet.bounds);
    obstacles.push({ box: put.box, weight: 14 });
    out.push(...drawMark(known.mark, put.centre[0], put.centre[1], s, { heavy: sheet.heavy }));
  }
  return out;
};

const plateOf = (sheet: Sheet, number: number): number => (sheet.numbers ? widthOf(String(number), sheet.type * 1.18, true) + sheet.type * 0.4 : 0);

const leaderOf = (put: Placed, anchor: Anchor, s: number): readonly Primitive[] => {
  if (!put.leader) return [];
  const [dx, dy] = [anchor.at[0] - put.centre[0], anchor.at[1] - put.centre[1]];
  const length = Math.hypot(dx, dy);
  const start: Point = [put.centre[0] + (dx / length) * s * 0.5, put.centre[1] + (dy / length) * s * 0.5];
  return [p.line('leader', start, anchor.at), p.disc('mark', anchor.at[0], anchor.at[1], s * 0.07)];
};

/** The numbered marks, each one focusable and spoken. */
const numberedGroups = (sheet: Sheet, marks: readonly SheetMark[], obstacles: Obstacle[]): readonly Primitive[] => {
  const { s, type, heavy, numbers } = sheet;
  return marks.flatMap((m): readonly Primitive[] => {
    const anchor = anchorOf(sheet, m.place);
    if (!anchor) return [];
    const plate = plateOf(sheet, m.number);
    const put = place({ ...anchor, ...(m.station === undefined ? {} : { of: m.station }), s, plate, flag: m.professional }, obstacles, sheet.bounds);
    obstacles.push({ box: put.box, weight: 40 });
    const [cx, cy] = put.centre;
    const b = put.box;
    const size = type * 1.18;
    const edge = m.professional && !put.numberLeft ? 0.82 : 0.62;
    const number = numbers
      ? [p.text('text-number', put.numberLeft ? cx - s * 0.62 : cx + s * edge, cy + size * 0.36, String(m.number), size, put.numberLeft ? 'end' : 'start')]
      : [];
    const children = [
      ...leaderOf(put, anchor, s),
      p.box('plate', b.x0, cy - s * 0.58, b.x1 - b.x0 + (edge - 0.62) * s, s * 1.16, s * 0.3),
      ...drawMark(m.mark, cx, cy, s, { heavy, professional: m.professional }),
      ...number,
    ];
    return [{ form: 'group', id: `mark/${m.id}`, label: markLabel(m), role: 'finding', hit: [b.x0, b.y0, b.x1 - b.x0, b.y1 - b.y0], children }];
  });
};

const selection = ({ rig, net }: Sheet, id: StationId | undefined): readonly Primitive[] => {
  const station = id === undefined ? undefined : rig.stations.find((s) => s.id === id);
  const frame = station && frameFor(net, station.face);
  if (!station || !frame) return [];
  return boxesOf(station, frame).map((b) => p.box('selected', b.x0 - 0.06, b.y0 - 0.06, b.x1 - b.x0 + 0.12, b.y1 - b.y0 + 0.12, 0.1));
};

/** Names of the faces, where no seam and no opening is. */
const names = (sheet: Sheet): readonly Primitive[] => {
  const { rig, net, type } = sheet;
  const out: Primitive[] = [];
  const b = (face: FaceId): Bounds | undefined => {
    const frame = frameFor(net, face);
    const f = faceOf(rig, face);
    return frame && f ? boundsOn(frame, f.outline_m) : undefined;
  };
  const [roof, front, rear, step] = [b('roof'), b('front'), b('rear'), b('step')];
  const ground = (face: FaceId): number | undefined => {
    const frame = frameFor(net, face);
    return frame ? faceToSheet(frame, [0, 0])[1] : undefined;
  };
  const [curb, road] = [ground('curb'), ground('road')];
  const left = Math.min(...net.frames.filter((f) => f.face === 'road').map((f) => boundsOn(f, faceOf(rig, 'road')?.outline_m ?? []).x0)) - rig.overall.hitch_ahead_m;
  if (curb !== undefined) out.push(p.text('text-bold', left, curb - type * 0.85, 'Curb side', type));
  if (road !== undefined) out.push(p.text('text-bold', left, road + type * 1.75, 'Road side', type));
  if (roof) out.push(p.text('text-bold', roof.x0 + type * 1.6, roof.y0 + type * 2, 'Roof', type));
  if (front) out.push(p.text('text-bold', front.x0 - type * 0.6, (front.y0 + front.y1) / 2, 'Front', type, 'middle', -90));
  if (step) out.push(p.text('text-bold', step.x0 - type * 0.6, (step.y0 + step.y1) / 2, faceOf(rig, 'step')?.name ?? 'Step', type, 'middle', -90));
  if (rear) out.push(p.text('text-bold', rear.x1 + type * 1.6, (rear.y0 + rear.y1) / 2, 'Rear', type, 'middle', -90));
  for (const { middle, slide } of net.blocks) {
    const x = (middle.x0 + middle.x1) / 2;
    const y = (middle.y0 + middle.y1) / 2;
    const words = ['outer face is', 'on the wall'];
    const wide = middle.x1 - middle.x0 > widthOf('outer face is', type) + type * 0.5;
    out.push(
      p.strokes('fold', [
        [
          [middle.x0, middle.y0],
          [middle.x1, middle.y0],
        ],
        [
          [middle.x0, middle.y1],
          [middle.x1, middle.y1],
        ],
      ]),
    );
    const title = rig.slides.length > 1 ? `Slide-out ${slide.id.replace(/\D+/g, '')}` : 'Slide-out';
    out.push(p.text('text-bold', x, y - type * (wide ? 0.9 : -0.3), title, type, 'middle'));
    if (wide) words.forEach((w, i) => out.push(p.text('text-small', x, y + type * (0.3 + i * 1.2), w, type * 0.92, 'middle')));
  }
  return out;
};

const dimensions = (sheet: Sheet, preferences: Preferences): readonly Primitive[] => {
  const { rig, net, px, type } = sheet;
  const [frame, face] = [frameFor(net, 'road'), faceOf(rig, 'road')];
  const roof = frameFor(net, 'roof');
  if (!frame || !face || !roof) return [];
  const b = boundsOf(face.outline_m);
  const tongue = Math.max(rig.overall.hitch_ahead_m, ...rig.axles.filter((a) => a.host_vehicle).map((a) => 0.95 - a.x_m));
  const at = (x: number, y: number): Point => faceToSheet(frame, [x, y]);
  const x = b.x0 - tongue - 0.45;
  const rear = faceOf(rig, 'rear');
  const rearFrame = frameFor(net, 'rear');
  const size = { size_px: type * px * 0.92 };
  const width =
    rear && rearFrame
      ? (() => {
          const r = boundsOn(rearFrame, rear.outline_m);
          return dimension([r.x1 + type * 3, r.y0], [r.x1 + type * 3, r.y1], bothLengths(rig.overall.width_m, preferences), px, size);
        })()
      : [];
  const y = at(0, 0)[1];
  return [
    ...dimension(at(x, b.y1), at(x, b.y0), bothLengths(b.y1 - b.y0, preferences), px, size),
    ...dimension(at(x, b.y0), at(x, 0), bothLengths(b.y0, preferences), px, { ...size, beside: true }),
    ...width,
    ...scaleBar(at(b.x0, 0)[0], y + type * 1.1, rig.overall.body_length_m, preferences, px),
    ...(rig.overall_certainty === 'typical' ? [p.text('text-small', at(b.x1, 0)[0], y + type * 4.1, 'Typical sizes: measure yours', type * 0.92, 'end')] : []),
  ];
};

/** Tyres from below, between the wheels the axle: only on the underside sheet. */
const axlesFromBelow = (rig: Rig, frame: Frame): readonly Primitive[] => {
  const f = penOn(ontoSheet(frame));
  const width = Math.max(...(faceOf(rig, 'under')?.outline_m.map((q) => q[1]) ?? [0]));
  return rig.axles
    .filter((a) => !a.host_vehicle)
    .flatMap((a) => {
      const [d, w] = [a.tyre_diameter_m, a.tyre_width_m];
      const rows = a.dual ? [0, 1] : [0];
      const tyres = rows.flatMap((r) => [-a.outer_edge_m + r * (w + 0.06), width + a.outer_edge_m - w - r * (w + 0.06)]);
      return [f.box('fitting', a.x_m - 0.04, w, 0.08, width - 2 * w), ...tyres.map((y) => f.box('tyre', a.x_m - d / 2, y, d, w, 0.06))];
    });
};

/**
 * The whole rig on one sheet: the unfolded net, or the underside with the hitch.
 *
 * @param marks    what is known of each station and the numbered list; `NO_MARKS` for a bare drawing
 * @returns        a drawing in metres; stations and marks are groups with spoken labels
 */
export const rigSheet = (rig: Rig, marks: SheetMarks = NO_MARKS, options: SheetOptions = {}): Drawing => {
  const px = options.px ?? 72;
  const type = (options.type_px ?? 12) / px;
  const s = (options.mark_px ?? 20) / px;
  const below = options.sheet === 'underside';
  const raw = below ? undersideOf(rig) : netOf(rig);
  const preferences = options.preferences ?? US;
  const dims = options.dimensions ?? true;
  const walls = raw.frames.filter((f) => f.face === 'road' || f.face === 'curb');
  const grounds = walls.map((f) => faceToSheet(f, [0, 0])[1]);
  const hosts = rig.axles.filter((a) => a.host_vehicle).map((a) => 0.95 - a.x_m);
  const ahead = Math.max(rig.overall.hitch_ahead_m, 0, ...hosts);
  const wide: Bounds = {
    x0: Math.min(raw.bounds.x0 - type * 1.8, below ? raw.bounds.x0 - type : -ahead - (dims ? 0.45 + type * 5.5 : 0.35)),
    y0: Math.min(raw.bounds.y0 - type * 0.5, ...grounds) - type * 2.2,
    x1: raw.bounds.x1 + type * (dims && !below ? 4.4 : 2.2),
    y1: Math.max(raw.bounds.y1 + type * 0.5, ...grounds) + type * (below ? 2.2 : dims ? 5 : 2.8),
  };
  const [dx, dy] = [-wide.x0, -wide.y0];
  const move = (b: Bounds): Bounds => ({ x0: b.x0 + dx, y0: b.y0 + dy, x1: b.x1 + dx, y1: b.y1 + dy });
  const net: Net = {
    frames: raw.frames.map((f) => shifted(f, dx, dy)),
    blocks: raw.blocks.map((b) => ({ ...b, frames: b.frames.map((f) => shifted(f, dx, dy)), middle: move(b.middle), bounds: move(b.bounds) })),
    bounds: move(raw.bounds),
  };
  const sheet: Sheet = {
    rig,
    net,
    px,
    type,
    s,
    heavy: options.heavy ?? false,
    numbers: options.numbers ?? true,
    bounds: { x0: 0, y0: 0, x1: wide.x1 - wide.x0, y1: wide.y1 - wide.y0 },
  };
  const stations = stationsOn(rig, net);
  const obstacles: Obstacle[] = stations.flatMap((st) => {
    const frame = frameFor(net, st.face);
    return frame && !st.layer ? boxesOf(st, frame).map((box) => ({ box, of: st.id, weight: st.shape.form === 'lines' ? 1.2 : 1.6 })) : [];
  });
  const show = { findings: true, sound: true, not_seen: true, ...options.show };
  const shown = marks.numbered.filter((m) => (m.mark === 'not-seen' ? show.not_seen : show.findings));
  const on: SheetMarks = { known: marks.known, numbered: marks.numbered };
  const findings = numberedGroups(sheet, shown, obstacles);
  const quiet = quietMarks(sheet, on, obstacles, show);
  const under = frameFor(net, 'under');
  return {
    width: sheet.bounds.x1,
    height: sheet.bounds.y1,
    title: below ? `${rig.name}: underside and hitch, seen from below, nose to the left` : `${rig.name} unfolded: roof in the middle, nose to the left`,
    px,
    primitives: [
      ...net.frames.filter((f) => f.face === 'road' || f.face === 'curb').flatMap((f) => undercarriage(rig, f)),
      ...net.frames.flatMap((f) => {
        const face = faceOf(rig, f.face);
        return face && f.face !== 'tongue' ? [drawFace(face, f)] : [];
      }),
      ...(below && under ? axlesFromBelow(rig, under) : []),
      ...stations.flatMap((st) => {
        const frame = frameFor(net, st.face);
        return frame ? [stationGroup(sheet, st, frame, marks.known[st.id])] : [];
      }),
      ...(below ? belowNames(sheet) : names(sheet)),
      ...(dims && !below ? dimensions(sheet, preferences) : []),
      ...selection(sheet, options.selected),
      ...quiet,
      ...findings,
    ],
  };
};

const belowNames = ({ rig, net, type }: Sheet): readonly Primitive[] => {
  const frame = frameFor(net, 'under');
  const face = faceOf(rig, 'under');
  if (!frame || !face) return [];
  const b = boundsOn(frame, face.outline_m);
  return [
    p.text('text-bold', b.x0, b.y0 - type * 0.7, 'Road side', type),
    p.text('text-bold', b.x0, b.y1 + type * 1.5, 'Curb side', type),
    p.text('text-small', b.x1, b.y1 + type * 1.5, 'Seen from below, nose to the left', type, 'end'),
  ];
};

export type { Placed, Side };
