import type { Rig } from '../rig';
import type { Shape, Station } from '../terms';
import type { Preferences } from '../units';
import { dimension } from './dimension';
import { type Bounds, boundsOf, boundsOn, type Frame, ontoSheet, shifted } from './frame';
import { shortLength, US } from './length-words';
import { frameAlone } from './net';
import { drawPart, drawStation, shapePoints } from './parts';
import { arcD, flat, lineD, type Onto, type Point, roundedD } from './path';
import { penOn } from './pen';
import type { Drawing, Primitive } from './primitives';
import { faceWords } from './spoken';

export type StationOptions = { readonly preferences?: Preferences; readonly fit_px?: number; readonly height_px?: number; readonly type_px?: number };

const p = penOn(flat);

const bead = (d: string): Primitive => ({ form: 'path', d, ink: 'bead' });

type Boxed = Extract<Shape, { form: 'rect' | 'circle' }>;

/** The outline a part is drawn with: round, or a box with its corner radii from the lower left on, as `roundedD` writes them. */
type Outline = { readonly round: boolean; readonly radii: readonly number[] };

const outlineOf = (station: Station, s: Boxed): Outline => {
  const first = drawPart(station.part, station.shape, flat)[0];
  if (s.form === 'circle' || first?.form === 'circle') return { round: true, radii: [] };
  const numbers = first?.form === 'path' ? (first.d.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []).map(Number) : [];
  const corners = cornersOf(s);
  if (numbers.length !== 32) return { round: false, radii: [0, 0, 0, 0] };
  return { round: false, radii: corners.map(([x, y], i) => Math.hypot((numbers[i * 8] ?? x) - x, (numbers[i * 8 + 1] ?? y) - y)) };
};

const cornersOf = (s: Boxed): readonly Point[] => [
  [s.x_m, s.y_m],
  [s.x_m + s.w_m, s.y_m],
  [s.x_m + s.w_m, s.y_m + s.h_m],
  [s.x_m, s.y_m + s.h_m],
];

/** Along the top and a little way down each side from the upper corners; the bottom stays free. */
const overTop = (s: Boxed, down: number, { round, radii }: Outline, onto: Onto): readonly Primitive[] => {
  const [l, r, t] = [s.x_m, s.x_m + s.w_m, s.y_m + s.h_m];
  const run = Math.min(down, s.h_m);
  if (round) {
    const a = Math.asin(Math.max(-0.6, 1 - run / (s.h_m / 2)));
    return [bead(arcD(onto, s.x_m + s.w_m / 2, s.y_m + s.h_m / 2, s.w_m / 2, s.h_m / 2, a, Math.PI - a))];
  }
  return [
    bead(
      roundedD(
        onto,
        [
          [l, t - run],
          [l, t],
          [r, t],
          [r, t - run],
        ],
        [0, Math.min(run, radii[3] ?? 0), Math.min(run, radii[2] ?? 0), 0],
        false,
      ),
    ),
  ];
};

const allRound = (s: Boxed, { round, radii }: Outline, onto: Onto): readonly Primitive[] =>
  round ? [bead(arcD(onto, s.x_m + s.w_m / 2, s.y_m + s.h_m / 2, s.w_m / 2, s.h_m / 2, 0, 2 * Math.PI))] : [bead(roundedD(onto, cornersOf(s), radii))];

const upperEdge = (s: Boxed, onto: Onto): readonly Primitive[] => [
  bead(
    lineD(onto, [
      [s.x_m, s.y_m + s.h_m],
      [s.x_m + s.w_m, s.y_m + s.h_m],
    ]),
  ),
];

const bothEdges = (s: Boxed, onto: Onto): readonly Primitive[] => {
  const wide = s.w_m >= s.h_m;
  const [l, r, b, t] = [s.x_m, s.x_m + s.w_m, s.y_m, s.y_m + s.h_m];
  const edges: readonly (readonly Point[])[] = wide
    ? [
        [
          [l, b],
          [r, b],
        ],
        [
          [l, t],
          [r, t],
        ],
      ]
    : [
        [
          [l, b],
          [l, t],
        ],
        [
          [r, b],
          [r, t],
        ],
      ];
  return edges.map((e) => bead(lineD(onto, e)));
};

const heads = (s: Boxed, onto: Onto): readonly Primitive[] => {
  const q = penOn(onto);
  const points: readonly Point[] = [0.12, 0.88].flatMap((y) => [0.12, 0.88].map((x): Point => [s.x_m + s.w_m * x, s.y_m + s.h_m * y]));
  const r = Math.min(s.w_m, s.h_m) * 0.07;
  return points.map(([x, y]) => q.disc('point-one', x, y, r));
};

/** How far the bead runs down each side, from its length by practice: w + 2 s. [m] */
export const runDown = (station: Station): number => {
  const { shape } = station;
  return shape.form === 'rect' || shape.form === 'circle' ? Math.max(0, (station.bead_m - shape.w_m) / 2) : 0;
};

/** The bead as practice lays it, heavy, on the station's own outline. Nothing where a gasket seals. */
const beadOf = (station: Station, onto: Onto): readonly Primitive[] => {
  const { shape } = station;
  if (shape.form === 'lines') {
    if (station.bead === 'none' || station.bead === 'none-gasket' || station.bead === 'fastener-heads') return [];
    return shape.lines_m.map((run) => bead(roundedD(onto, run, 0.02, false)));
  }
  if (shape.form === 'poly') return station.bead === 'all-round' ? [bead(roundedD(onto, shape.points_m, 0.04))] : [];
  const outline = outlineOf(station, shape);
  const rules = {
    'all-round': () => allRound(shape, outline, onto),
    'top-and-upper-sides': () => overTop(shape, runDown(station), outline, onto),
    'upper-long-edge': () => upperEdge(shape, onto),
    'both-long-edges': () => bothEdges(shape, onto),
    'fastener-heads': () => heads(shape, onto),
    'none-gasket': () => [],
    none: () => [],
  };
  return rules[station.bead]();
};

const BEAD_WORDS: Readonly<Record<Station['bead'], readonly string[]>> = {
  'all-round': ['bead all round'],
  'top-and-upper-sides': ['bottom left open so that it drains'],
  'upper-long-edge': ['bead along the upper edge only'],
  'both-long-edges': ['bead along both edges'],
  'fastener-heads': ['only the fastener heads are sealed'],
  'none-gasket': ['a gasket seals here: add no bead'],
  none: [],
};

const onWall = (face: string): boolean => !['roof', 'under', 'tongue'].includes(face) && !/-(top|under)$/.test(face);

/** Two arrows where water leaves. */
const drains = (b: Bounds, type: number): readonly Primitive[] =>
  [0.2, 0.8].flatMap((t) => {
    const x = b.x0 + (b.x1 - b.x0) * t;
    const [from, to] = [b.y1 + type * 0.5, b.y1 + type * 1.3];
    return [p.line('leader', [x, from], [x, to]), p.line('leader', [x - type * 0.3, to - type * 0.35], [x, to], [x + type * 0.3, to - type * 0.35])];
  });

/** Which way the nose is, for a station seen alone: beside the width, out of the way of everything else. */
const noseArrow = (frame: Frame, b: Bounds, type: number): readonly Primitive[] => {
  const left = frame.along[0] > 0;
  const y = b.y0 - type * 1.9;
  const [from, to] = left ? [b.x0 - type * 2, b.x0 - type * 4] : [b.x1 + type * 2, b.x1 + type * 4];
  const back = left ? 0.4 : -0.4;
  return [
    p.line('leader', [from, y], [to, y]),
    p.line('leader', [to + type * back, y - type * 0.35], [to, y], [to + type * back, y + type * 0.35]),
    p.text('text-small', (from + to) / 2, y - type * 0.6, 'nose', type, 'middle'),
  ];
};

const alongNose = (face: string): boolean => ['road', 'curb', 'roof', 'under'].includes(face) || /-(outer|top)$/.test(face);

/**
 * One station drawn large, with the bead by practice laid on it, its dimensions and the words that go with it.
 * The width, and how far the bead runs down, are the station's own; the corner radius is typical.
 */
export const stationDrawing = (rig: Rig, station: Station, options: StationOptions = {}): Drawing => {
  const preferences = options.preferences ?? US;
  const raw = frameAlone(rig, station.face, 'outside');
  const own = boundsOn(raw, shapePoints(station.shape));
  const parts = station.parts.filter((q) => (q.face ?? station.face) === station.face).map((q) => boundsOn(raw, shapePoints(q.shape)));
  const near = parts.filter((q) => q.x0 > own.x0 - 0.4 && q.x1 < own.x1 + 0.4);
  const size = boundsOf([
    ...[own, ...near].flatMap((q): readonly Point[] => [
      [q.x0, q.y0],
      [q.x1, q.y1],
    ]),
  ]);
  const [fit, high] = [options.fit_px ?? 440, options.height_px ?? 330];
  const type_px = options.type_px ?? 12;
  const [left_px, right_px, top_px, bottom_px] = [type_px * 6, type_px * 6, type_px * 3.6, type_px * 3.4];
  const px = Math.min((fit - left_px - right_px) / Math.max(0.02, size.x1 - size.x0), (high - top_px - bottom_px) / Math.max(0.02, size.y1 - size.y0));
  const type = type_px / px;
  const width = size.x1 - size.x0 + (left_px + right_px) / px;
  const frame = shifted(raw, left_px / px - size.x0, top_px / px - size.y0);
  const onto = ontoSheet(frame);
  const b = boundsOn(frame, shapePoints(station.shape));
  const down = runDown(station);
  const topped = station.bead === 'top-and-upper-sides' && down > 0 && station.shape.form !== 'lines';
  const d = { size_px: type_px };
  const above = b.y0 - type * 1.9;
  const dims = [
    ...(b.x1 - b.x0 > 0.005 ? dimension([b.x0, above], [b.x1, above], shortLength(b.x1 - b.x0, preferences), px, d) : []),
    ...(topped
      ? [
          ...dimension([b.x0 - type * 1.4, b.y0], [b.x0 - type * 1.4, b.y0 + down], shortLength(down, preferences), px, { ...d, beside: true }),
          ...dimension([b.x1 + type * 1.4, b.y0], [b.x1 + type * 1.4, b.y1], shortLength(b.y1 - b.y0, preferences), px, d),
        ]
      : b.y1 - b.y0 > 0.005
        ? dimension([b.x1 + type * 1.4, b.y0], [b.x1 + type * 1.4, b.y1], shortLength(b.y1 - b.y0, preferences), px, d)
        : []),
  ];
  const words = BEAD_WORDS[station.bead];
  const drained = onWall(station.face) && station.bead === 'top-and-upper-sides';
  return {
    width,
    height: size.y1 - size.y0 + (top_px + bottom_px) / px,
    title: `${faceWords(rig, station.face)}, ${station.name}: ${words.join(', ')}`,
    px,
    primitives: [
      ...drawStation(station, (face) => (face === station.face ? onto : undefined), true),
      ...beadOf(station, onto),
      ...dims,
      ...(drained ? drains(b, type) : []),
      ...words.map((w, i) => p.text('text-small', (b.x0 + b.x1) / 2, b.y1 + type * ((drained ? 2.5 : 1.6) + i * 1.3), w, type, 'middle')),
      ...(alongNose(station.face) && station.shape.form !== 'lines' ? noseArrow(frame, b, type) : []),
    ],
  };
};
