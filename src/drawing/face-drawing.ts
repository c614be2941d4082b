import type { Rig } from '../rig';
import type { FaceId, FacePoint, Side, Station, StationId } from '../terms';
import type { Preferences } from '../units';
import { atScale } from './coarse';
import { dimension, scaleBar } from './dimension';
import { around, type Bounds, boundsOf, boundsOn, type Frame, faceToSheet, ontoSheet, shifted } from './frame';
import { bothLengths, US } from './length-words';
import { frameAlone, hitchAhead, type Net } from './net';
import { drawPart } from './parts';
import { flat, type Onto, type Point } from './path';
import { penOn } from './pen';
import type { Drawing, Primitive } from './primitives';
import { inDrawingOrder, stationGroup } from './rig-sheet';
import { boxesOf, faceOf, isArea, type Sheet } from './sheet';
import type { SheetMark } from './sheet-mark';
import { NO_MARKS, numberedGroups, obstaclesOn, quietMarks, type SheetMarks } from './sheet-marks';
import { drawFace, undercarriage } from './shell';
import { faceWords } from './spoken';
import { widthOf } from './type-width';

export type FaceOptions = {
  readonly preferences?: Preferences;
  /** CSS px to one metre; fits the width when left out. */
  readonly px?: number;
  /** Width to fit, when `px` is left out. [px] */
  readonly fit_px?: number;
  readonly mark_px?: number;
  readonly type_px?: number;
  readonly heavy?: boolean;
  readonly show?: { readonly findings?: boolean; readonly sound?: boolean; readonly not_seen?: boolean };
  readonly numbers?: boolean;
  readonly dimensions?: boolean;
  readonly selected?: StationId;
  /** Readings or notes laid on the face: a small ring at the point, its words beside it. */
  readonly soundings?: readonly { readonly point_m: FacePoint; readonly words: string }[];
};

const p = penOn(flat);

/** Seen from within, only what is cut through shows; everything else is drawn as where it is, in thin grey. */
const fromInside = (station: Station, ontoFace: (face: FaceId) => Onto | undefined): readonly Primitive[] => {
  const onto = ontoFace(station.face);
  if (!onto || isArea(station)) return [];
  const drawn = drawPart(station.part, station.shape, onto, station.hinge ? { hinge: station.hinge } : {});
  return station.cut_through ? drawn.slice(0, 2) : [];
};

const isWall = (face: FaceId): boolean => face === 'road' || face === 'curb';
const standsUp = (face: FaceId): boolean => !['roof', 'under', 'tongue'].includes(face) && !/-(top|under)$/.test(face);

/** On the inside of a face: what was found there, and openings that are cut right through. */
const isWithin = (rig: Rig, face: FaceId, { place }: SheetMark): boolean => {
  const station = 'station' in place ? rig.stations.find((s) => s.id === place.station) : undefined;
  if (station) return station.face === face && (station.cut_through || ('side' in place && place.side === 'inside'));
  return (place.at === 'point' || place.at === 'outline') && place.face === face && place.side === 'inside';
};

/** The frame moved so that the face, and what stands off it, begins at the margins. */
const layOut = (rig: Rig, face: FaceId, side: Side, options: FaceOptions): { readonly sheet: Sheet; readonly drawn: Bounds; readonly wide: Bounds } => {
  const outline = faceOf(rig, face)?.outline_m ?? [];
  const raw = frameAlone(rig, face, side);
  const here = rig.stations.filter((s) => !s.retired && s.face === face);
  const ground: readonly FacePoint[] = standsUp(face) && side === 'outside' ? outline.map(([x]) => [x, 0]) : [];
  const ahead: readonly FacePoint[] = isWall(face) && side === 'outside' ? [[-hitchAhead(rig) - 0.3, 0]] : [];
  const drawn = around([boundsOn(raw, [...outline, ...ground, ...ahead]), ...here.flatMap((s) => boxesOf(s, raw))]);
  const dims = options.dimensions ?? true;
  const b = boundsOf(outline);
  const guess = options.px ?? (options.fit_px ?? 900) / (drawn.x1 - drawn.x0 + 1.6);
  const type = (options.type_px ?? 12) / guess;
  const label = Math.max(...[b.y1 - b.y0, b.y0].map((v) => widthOf(bothLengths(v, options.preferences ?? US), type * 0.92)));
  const wide: Bounds = {
    x0: drawn.x0 - (dims ? label + type * 2 : type * 0.8),
    y0: drawn.y0 - type * (dims ? 2.6 : 0.8),
    x1: drawn.x1 + type,
    y1: drawn.y1 + type * (dims ? 4.4 : 0.8),
  };
  const px = options.px ?? (options.fit_px ?? 900) / (wide.x1 - wide.x0);
  const frame = shifted(raw, -wide.x0, -wide.y0);
  const net: Net = { frames: [frame], blocks: [], bounds: boundsOn(frame, outline) };
  const sheet: Sheet = {
    rig,
    net,
    px,
    type,
    s: (options.mark_px ?? 20) / px,
    heavy: options.heavy ?? false,
    numbers: options.numbers ?? true,
    bounds: { x0: 0, y0: 0, x1: wide.x1 - wide.x0, y1: wide.y1 - wide.y0 },
  };
  return { sheet, drawn: { x0: drawn.x0 - wide.x0, y0: drawn.y0 - wide.y0, x1: drawn.x1 - wide.x0, y1: drawn.y1 - wide.y0 }, wide };
};

const dimensionsOf = (sheet: Sheet, frame: Frame, face: FaceId, drawn: Bounds, preferences: Preferences): readonly Primitive[] => {
  const outline = faceOf(sheet.rig, face)?.outline_m ?? [];
  const b = boundsOn(frame, outline);
  const { px, type } = sheet;
  const size = { size_px: type * px * 0.92 };
  const x = drawn.x0 - type * 0.8;
  const low = standsUp(face) ? faceToSheet(frame, [0, 0])[1] : b.y1;
  const raised = low - b.y1;
  return [
    ...dimension([b.x0, b.y0 - type * 1.2], [b.x1, b.y0 - type * 1.2], bothLengths(b.x1 - b.x0, preferences), px, size),
    ...dimension([x, b.y0], [x, b.y1], bothLengths(b.y1 - b.y0, preferences), px, { ...size, beside: true }),
    ...(raised > 0.05 && raised < 3 && frame.side === 'outside' ? dimension([x, b.y1], [x, low], bothLengths(raised, preferences), px, { ...size, beside: true }) : []),
    ...scaleBar(b.x0, drawn.y1 + type * 1.4, b.x1 - b.x0, preferences, px, type * 0.92),
  ];
};

const soundingsOn = (frame: Frame, list: FaceOptions['soundings'], type: number): readonly Primitive[] =>
  (list ?? []).flatMap(({ point_m, words }) => {
    const [x, y]: Point = faceToSheet(frame, point_m);
    return [p.disc('point-open', x, y, type * 0.28), p.text('text', x + type * 0.5, y + type * 0.34, words, type)];
  });

/** How the axes of the face lie on its drawing: what a touch on the drawing means. The same options give the frame of the same drawing. */
export const faceFrame = (rig: Rig, face: FaceId, side: Side, options: FaceOptions = {}): Frame =>
  layOut(rig, face, side, options).sheet.net.frames[0] ?? frameAlone(rig, face, side);

/**
 * One face drawn alone, upright, as a person before it sees it; the inside is its mirror image.
 *
 * @param side    `inside` shows only what is cut through; it shares the coordinates of the outside
 * @returns       a drawing in metres, with scale and dimensions unless they are turned off
 */
export const faceDrawing = (rig: Rig, face: FaceId, side: Side = 'outside', marks: SheetMarks = NO_MARKS, options: FaceOptions = {}): Drawing => {
  const { sheet, drawn } = layOut(rig, face, side, options);
  const { px, type, net } = sheet;
  const frame = net.frames[0];
  const shape = faceOf(rig, face);
  const preferences = options.preferences ?? US;
  if (!frame || !shape) return { width: 1, height: 1, title: faceWords(rig, face, side), px, primitives: [] };
  const outside = side === 'outside';
  const ontoFace = (id: FaceId): Onto | undefined => (id === face ? ontoSheet(frame) : undefined);
  const here = inDrawingOrder(rig.stations.filter((s) => !s.retired && s.face === face && (outside || s.cut_through || isArea(s))));
  const show = { findings: true, sound: true, not_seen: true, ...options.show };
  const obstacles = [...obstaclesOn(sheet)];
  const mine = marks.numbered.filter(
    (m) =>
      (m.mark === 'not-seen' ? show.not_seen : show.findings) &&
      (outside ? !('side' in m.place) || m.place.side === 'outside' || m.place.at === 'station' : isWithin(rig, face, m)),
  );
  const numbered = numberedGroups(sheet, mine, obstacles);
  const quiet = outside ? quietMarks(sheet, marks, obstacles, show) : [];
  const selected = here.find((s) => s.id === options.selected);
  return {
    width: sheet.bounds.x1,
    height: sheet.bounds.y1,
    title: `${rig.name}: ${faceWords(rig, face, side)}`,
    px,
    primitives: atScale(
      [
        ...(outside && isWall(face) ? undercarriage(rig, frame) : []),
        drawFace(shape, frame),
        ...here.map((s) => {
          const group = stationGroup(rig, s, frame, px, marks.known[s.id], ontoFace);
          return outside ? group : { ...group, children: fromInside(s, ontoFace) };
        }),
        ...(selected ? boxesOf(selected, frame).map((b) => p.box('selected', b.x0 - 0.05, b.y0 - 0.05, b.x1 - b.x0 + 0.1, b.y1 - b.y0 + 0.1, 0.08)) : []),
        ...((options.dimensions ?? true) ? dimensionsOf(sheet, frame, face, drawn, preferences) : []),
        ...soundingsOn(frame, options.soundings, type),
        ...quiet,
        ...numbered,
      ],
      px,
    ),
  };
};
