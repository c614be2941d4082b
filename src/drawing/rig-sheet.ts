import type { Rig } from '../rig';
import type { FaceId, Station, StationId } from '../terms';
import type { Preferences } from '../units';
import { atScale } from './coarse';
import { around, type Bounds, boundsOf, boundsOn, type Frame, faceToSheet, ontoSheet, shifted } from './frame';
import { US } from './length-words';
import { frameFor, type Net, netOf, undersideOf } from './net';
import { drawStation, shapePoints } from './parts';
import { flat, type Onto } from './path';
import { penOn } from './pen';
import type { Drawing, GroupPrimitive, Primitive } from './primitives';
import { boxesOf, faceOf, isArea, type Sheet } from './sheet';
import { NO_MARKS, numberedGroups, obstaclesOn, quietMarks, type SheetMarks } from './sheet-marks';
import { boxesOfNames, netDimensions, netMargins, netNames, slideNameWidth, undersideNames } from './sheet-words';
import { axlesFromBelow, drawFace, undercarriage } from './shell';
import { type Known, stationLabel } from './spoken';
import { type SheetWater, type WaterLayer, waterLayer } from './water/sheet-water';

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
  /** Names of the faces. */
  readonly names?: boolean;
  /** `scale` leaves only the scale under the road wall: paper is narrow. */
  readonly dimensions?: boolean | 'scale';
  readonly selected?: StationId;
  /** What is wet, the ways in and the ways of the water. */
  readonly water?: SheetWater;
};

const p = penOn(flat);

/** Whole faces lie lowest, then what lies over others, seams, arches, large parts, small parts, tyres. */
const rank = (s: Station): number => (isArea(s) ? -1 : s.layer ? 0 : s.shape.form === 'lines' ? 1 : s.part === 'wheel-arch-trim' ? 2 : s.part === 'tyre' ? 4 : 3);

const size = (s: Station): number => {
  const b = boundsOf(shapePoints(s.shape));
  return (b.x1 - b.x0) * (b.y1 - b.y0);
};

export const inDrawingOrder = (stations: readonly Station[]): readonly Station[] => [...stations].sort((a, b) => rank(a) - rank(b) || size(b) - size(a));

/** Least side of what a pointer can hit. [px] */
const LEAST_HIT_PX = 24;

/** A name is rather read than an opening seen whole, but less than another mark. */
const NAME_WEIGHT = 20;

/** One station as a focusable group; a whole face is only its touch area. */
export const stationGroup = (rig: Rig, station: Station, frame: Frame, px: number, known: Known | undefined, ontoFace: (face: FaceId) => Onto | undefined): GroupPrimitive => {
  const b = around(boxesOf(station, frame));
  const least = LEAST_HIT_PX / px;
  const [gx, gy] = [Math.max(0, least - (b.x1 - b.x0)) / 2, Math.max(0, least - (b.y1 - b.y0)) / 2];
  return {
    form: 'group',
    id: station.id,
    label: stationLabel(rig, station, known),
    role: 'station',
    hit: [b.x0 - gx, b.y0 - gy, b.x1 - b.x0 + 2 * gx, b.y1 - b.y0 + 2 * gy],
    children: isArea(station) ? [] : drawStation(station, ontoFace),
  };
};

const selection = ({ rig, net }: Sheet, id: StationId | undefined): readonly Primitive[] => {
  const station = rig.stations.find((s) => s.id === id);
  const frame = station && frameFor(net, station.face);
  if (!station || !frame) return [];
  return boxesOf(station, frame).map((b) => p.box('selected', b.x0 - 0.06, b.y0 - 0.06, b.x1 - b.x0 + 0.12, b.y1 - b.y0 + 0.12, 0.1));
};

const moved = (net: Net, dx: number, dy: number): Net => {
  const move = (b: Bounds): Bounds => ({ x0: b.x0 + dx, y0: b.y0 + dy, x1: b.x1 + dx, y1: b.y1 + dy });
  return {
    frames: net.frames.map((f) => shifted(f, dx, dy)),
    blocks: net.blocks.map((b) => ({ ...b, frames: b.frames.map((f) => shifted(f, dx, dy)), middle: move(b.middle), bounds: move(b.bounds) })),
    bounds: move(net.bounds),
  };
};

/** How far to the right a face and what stands off it reach. */
const reachOf = (net: Net, rig: Rig, face: FaceId): number => {
  const frame = frameFor(net, face);
  if (!frame) return Number.NEGATIVE_INFINITY;
  return around([boundsOn(frame, faceOf(rig, face)?.outline_m ?? []), ...rig.stations.filter((s) => s.face === face && !s.retired).flatMap((s) => boxesOf(s, frame))]).x1;
};

/** The net on a sheet cut to what is drawn on it. */
const layOut = (rig: Rig, options: SheetOptions): Sheet => {
  const px = options.px ?? 72;
  const type = (options.type_px ?? 12) / px;
  const below = options.sheet === 'underside';
  const raw = below ? undersideOf(rig) : netOf(rig, { middle: slideNameWidth(type) });
  const names = options.names ?? true;
  const grounds = raw.frames.filter((f) => f.face === 'road' || f.face === 'curb').map((f) => faceToSheet(f, [0, 0])[1]);
  const off = rig.stations.flatMap((s) => {
    const frame = frameFor(raw, s.face);
    return frame && !s.retired ? boxesOf(s, frame) : [];
  });
  const drawn = around([raw.bounds, ...off]);
  const margin =
    names && !below
      ? netMargins(rig, type, options.dimensions ?? true, options.preferences ?? US)
      : { left: type * 0.6, right: type * 0.6, above: type * (names ? 2.1 : 0.6), below: type * (names ? 2.1 : 0.6) };
  const walls = raw.frames.some((f) => f.face === 'road');
  const x0 = Math.min(drawn.x0 - type * 0.6, walls ? -margin.left : drawn.x0 - margin.left);
  const y0 = Math.min(drawn.y0, ...grounds) - margin.above;
  const [x1, y1] = [Math.max(drawn.x1 + type * 0.6, reachOf(raw, rig, 'rear') + margin.right), Math.max(drawn.y1, ...grounds) + margin.below];
  return {
    rig,
    net: moved(raw, -x0, -y0),
    px,
    type,
    s: (options.mark_px ?? 20) / px,
    heavy: options.heavy ?? false,
    numbers: options.numbers ?? true,
    bounds: { x0: 0, y0: 0, x1: x1 - x0, y1: y1 - y0 },
  };
};

/**
 * The whole rig on one sheet: the unfolded net, or the underside with the hitch.
 *
 * @param marks    what is known of each station and the numbered list; `NO_MARKS` for a bare drawing
 * @param options  for which scale type and marks are sized, and what is shown
 * @returns        a drawing in metres; stations and marks are groups with spoken labels
 */
export const rigSheet = (rig: Rig, marks: SheetMarks = NO_MARKS, options: SheetOptions = {}): Drawing => {
  const sheet = layOut(rig, options);
  const { net, px } = sheet;
  const below = options.sheet === 'underside';
  const names = options.names ?? true;
  const show = { findings: true, sound: true, not_seen: true, ...options.show };
  const words = names ? (below ? undersideNames(sheet) : netNames(sheet)) : [];
  const water: WaterLayer = options.water ? waterLayer(sheet, options.water) : { under: [], over: [], boxes: [] };
  const obstacles = [...obstaclesOn(sheet), ...[...boxesOfNames(words), ...water.boxes].map((box) => ({ box, weight: NAME_WEIGHT }))];
  const numbered = numberedGroups(
    sheet,
    marks.numbered.filter((m) => (m.mark === 'not-seen' ? show.not_seen : show.findings)),
    obstacles,
  );
  const quiet = quietMarks(sheet, marks, obstacles, show);
  const under = frameFor(net, 'under');
  const ontoFace = (face: FaceId): Onto | undefined => {
    const frame = frameFor(net, face);
    return frame && ontoSheet(frame);
  };
  const here = inDrawingOrder(rig.stations.filter((s) => !s.retired && frameFor(net, s.face)));
  return {
    width: sheet.bounds.x1,
    height: sheet.bounds.y1,
    title: below ? `${rig.name}: underside and hitch, seen from below, nose to the left` : `${rig.name} unfolded: roof in the middle, nose to the left`,
    px,
    primitives: atScale(
      [
        ...net.frames.filter((f) => f.face === 'road' || f.face === 'curb').flatMap((f) => undercarriage(rig, f)),
        ...net.frames.flatMap((f) => {
          const face = faceOf(rig, f.face);
          return face && f.face !== 'tongue' ? [drawFace(face, f)] : [];
        }),
        ...(below && under ? axlesFromBelow(rig, under) : []),
        ...water.under,
        ...here.flatMap((s) => {
          const frame = frameFor(net, s.face);
          return frame ? [stationGroup(rig, s, frame, px, marks.known[s.id], ontoFace)] : [];
        }),
        ...words,
        ...(names && !below && (options.dimensions ?? true) !== false ? netDimensions(sheet, options.preferences ?? US, options.dimensions === 'scale') : []),
        ...selection(sheet, options.selected),
        ...water.over,
        ...quiet,
        ...numbered,
      ],
      px,
    ),
  };
};
