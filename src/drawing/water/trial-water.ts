import type { Because, Candidate, Comparable, Leak, LooseSkin, Panel, Spot, SpotState } from '../../plan';
import { type Field, fieldsOf, pointInside, type Rig, type WaterPath } from '../../rig';
import type { FacePoint } from '../../terms';
import { type CivilDay, civilDay } from '../../units';
import type { DrawnField, DrawnPart } from './drawn-field';
import type { WetThroughTime } from './trend-plot';

/** An invented wall for the checks of the drawings: one window that leaks, read closely below it and thinly beside. */
const because: Because = { text: 'invented', entries: [], source: { text: 'invented' } } as unknown as Because;

export const WINDOW = 'curb.window-36x22';
const DAY = civilDay(20_365);

/** Wet below the window's forward corner, spreading as it goes down. */
const wetness = ([x, y]: FacePoint): number => {
  const spread = 0.1 + 0.16 * (1.75 - y);
  return y > 1.78 ? 0 : 0.2 * Math.exp(-(((x - 4.32) / spread) ** 2)) * (0.75 + 0.25 * Math.min(1, (1.78 - y) / 0.4));
};

const POINTS: readonly FacePoint[] = [
  [3.86, 2.45],
  [3.8, 2.1],
  [3.93, 1.7],
  [3.8, 1.35],
  [3.92, 1.02],
  [3.82, 0.85],
  [4.14, 2.45],
  [4.3, 2.25],
  [4.85, 2.25],
  [4.09, 1.45],
  [4.3, 1.42],
  [4.52, 1.44],
  [4.76, 1.42],
  [4.13, 1.27],
  [4.34, 1.26],
  [4.54, 1.2],
  [4.75, 1.23],
  [4.15, 1.1],
  [4.36, 1.11],
  [4.56, 1.06],
  [4.12, 0.95],
  [4.31, 0.95],
  [4.53, 0.94],
  [4.73, 0.95],
  [5.2, 2.4],
  [5.15, 1.3],
  [5.2, 1.12],
];

const reading = (point: FacePoint, i: number): Comparable => {
  const value = Math.round((0.112 + 0.006 * Math.sin(i * 2.1) + wetness(point)) * 1000) / 1000;
  return {
    entry: `r${i}`,
    place: { at: 'point', face: 'curb', side: 'inside', point_m: point },
    face: 'curb',
    side: 'inside',
    point_m: point,
    scale: 'pin',
    meter: 'pin 1',
    day: DAY,
    observed_at: '2025-10-04T10:00:00-04:00',
    as_read: value,
    value,
    plus_minus: 0.01,
    dry_reference: i === 0 || i === 24 || i === 6,
    ...(i === 5 ? { no_number: 'surface-wet' as const } : {}),
  };
};

const stateOf = (value: number): SpotState => (value > 0.17 ? 'wet' : value > 0.14 ? 'damp' : 'dry');

export const trialPanel = (): Panel => ({
  id: 'curb/inside/pin/pin 1',
  face: 'curb',
  side: 'inside',
  scale: 'pin',
  meter: 'pin 1',
  words: 'Curb side, inside',
  spots: POINTS.map((point, i): Spot => {
    const r = reading(point, i);
    return {
      id: r.entry,
      place: r.place,
      face: 'curb',
      side: 'inside',
      point_m: point,
      words: 'a spot',
      readings: [r],
      state: stateOf(r.value ?? 0),
      yardsticks: {},
      signs: [],
      because: [],
    };
  }),
});

const STEP = 0.04;
/** Farther than this from every reading nothing is said. [m] */
const REACH = 0.55;

const inAny = (q: FacePoint, outlines: readonly (readonly FacePoint[])[]): boolean => outlines.some((o) => pointInside(q, o, 0));

const nearest = (q: FacePoint): number => Math.min(...POINTS.map((r) => Math.hypot(r[0] - q[0], r[1] - q[1])));

const gridOf = (field: Field): DrawnPart['grid'] => {
  const [xs, ys] = [POINTS.map((q) => q[0]), POINTS.map((q) => q[1])];
  const [x0, x1] = [Math.min(...xs) - REACH, Math.max(...xs) + REACH];
  const [y0, y1] = [Math.min(...ys) - REACH, Math.max(...ys) + REACH];
  const [columns, rows] = [Math.ceil((x1 - x0) / STEP) + 1, Math.ceil((y1 - y0) / STEP) + 1];
  const nodes = Array.from({ length: columns * rows }, (_, k): FacePoint | undefined => {
    const q: FacePoint = [x0 + (k % columns) * STEP, y0 + Math.floor(k / columns) * STEP];
    return pointInside(q, field.outline_m, 0) && !inAny(q, field.holes_m) && nearest(q) < REACH ? q : undefined;
  });
  return {
    x0_m: x0,
    y0_m: y0,
    step_m: STEP,
    columns,
    rows,
    chance: nodes.map((q) => q && 1 / (1 + Math.exp(-(wetness(q) - 0.07) * 40))),
    standard_error: nodes.map((q) => q && 0.008 + 0.05 * Math.sqrt(nearest(q))),
  };
};

const LEAST = 8;

const part = (field: Field): DrawnPart => {
  const readings = POINTS.filter((q) => pointInside(q, field.outline_m, 0)).length;
  const grid = gridOf(field);
  return readings >= LEAST && grid
    ? { field, readings, drawn: 'map', leave_one_out: { error: 0.031, of_the_mean: 0.067 }, grid }
    : { field, readings, drawn: 'dots', why: `${readings} ${readings === 1 ? 'place' : 'places'}; a map needs ${LEAST}.` };
};

export const trialField = (rig: Rig): DrawnField => ({
  of: 'excess',
  threshold: 0.04,
  parts: fieldsOf(rig, 'curb')
    .fields.map(part)
    .filter((q) => q.readings > 0),
  next_places: [
    { point_m: [4.93, 1.0], words: 'below the window, to the rear' },
    { point_m: [5.1, 1.7], words: 'beside the window, to the rear' },
    { point_m: [3.8, 1.55], words: 'beside the window, forward' },
  ],
});

const path = (source: string, face: string, from: FacePoint, legs: readonly (readonly [string, WaterPath['legs'][number]['how'], readonly FacePoint[]])[]): WaterPath => ({
  source,
  from: { face, point_m: from },
  spot: 'r10',
  when: 'parked',
  legs: legs.map(([f, how, points_m]) => ({ face: f, how, points_m, length_m: 1 })),
  length_m: 2,
  effort_m: 2,
});

const candidate = (station: string, probability: number, word: Candidate['word'], ...paths: readonly WaterPath[]): Candidate => ({
  station,
  probability,
  prior: 0.1,
  word,
  because: [because],
  paths,
  tests: [],
});

export const trialLeak = (rig: Rig): Leak => {
  const spots = trialPanel().spots.filter((s) => s.state === 'wet');
  const edge = rig.stations.find((s) => s.face === 'curb' && s.part.startsWith('roof-edge'))?.id ?? 'curb.roof-edge-rail';
  return {
    id: 'r14',
    place: { at: 'point', face: 'curb', side: 'inside', point_m: [4.34, 1.26] },
    spots,
    dry: [],
    since: DAY,
    other_causes: [],
    candidates: [
      candidate(
        WINDOW,
        0.71,
        'likely',
        path(
          WINDOW,
          'curb',
          [4.1, 2.117],
          [
            ['curb', 'in', [[4.1, 2.117]]],
            [
              'curb',
              'down',
              [
                [4.1, 2.117],
                [4.1, 1.5],
              ],
            ],
            [
              'curb',
              'aside',
              [
                [4.1, 1.5],
                [4.3, 1.42],
              ],
            ],
          ],
        ),
      ),
      candidate(
        edge,
        0.22,
        'possible',
        path(
          edge,
          'curb',
          [4.42, 2.86],
          [
            [
              'curb',
              'down',
              [
                [4.42, 2.86],
                [4.42, 2.2],
              ],
            ],
            [
              'curb',
              'aside',
              [
                [4.42, 2.2],
                [4.07, 2.17],
              ],
            ],
            [
              'curb',
              'down',
              [
                [4.07, 2.17],
                [4.07, 1.5],
                [4.3, 1.42],
              ],
            ],
          ],
        ),
      ),
      candidate(
        'roof.skylight',
        0.05,
        'unlikely',
        path(
          'roof.skylight',
          'roof',
          [3.9, 1.6],
          [
            [
              'roof',
              'down',
              [
                [3.9, 1.6],
                [3.9, 2.44],
              ],
            ],
            [
              'curb',
              'over-edge',
              [
                [3.9, 2.86],
                [3.9, 2.3],
              ],
            ],
            [
              'curb',
              'down',
              [
                [3.9, 2.3],
                [3.9, 1.5],
                [4.3, 1.42],
              ],
            ],
          ],
        ),
      ),
    ],
    unknown_source: 0.06,
    clues: [],
    sentence: 'Water most likely comes in at window 1, upper forward corner',
    repairs: [],
    stop: { state: 'open', because: [] },
    dryness: { state: 'wet', because: [] },
    due: [],
  };
};

const day = (n: number): CivilDay => civilDay(20_200 + n);
const through = (list: readonly (readonly [day: number, excess: number])[]) => list.map(([n, excess]) => ({ day: day(n), excess }));

/** Five readings while it leaked, three since it was mended. */
export const trialTrend: WetThroughTime = {
  title: 'Ringed spot, points above that day’s dry reference',
  earlier: through([
    [0, 0.004],
    [35, 0.012],
    [70, 0.056],
    [98, 0.12],
    [126, 0.184],
  ]),
  points: through([
    [133, 0.18],
    [143, 0.171],
    [153, 0.162],
  ]),
  slope_per_d: -0.0009,
  interval_per_d: [-0.0012, -0.0004],
  word: 'Drying?',
  need: 'Need 1 more reading',
  why: 'Three in falling order are chance 1 time in 6; a fourth below +16.2, 1 in 24.',
  rains: [5, 20, 36, 51, 64, 72, 87, 96, 100, 112, 121, 126].map((n, i) => ({ day: day(n), amount_m: 0.003 * (i % 7) })),
  repairs: [{ day: day(129), words: 'resealed' }],
  covers: [{ from: day(133), to: day(160), words: 'under cover' }],
  to: day(160),
};

const square = (x: number, y: number, w: number, h: number): readonly FacePoint[] => [
  [x, y],
  [x + w * 0.9, y - 0.03],
  [x + w, y + h],
  [x + 0.05, y + h * 1.05],
];

/** A bubble that was drawn twice and tapped once. */
export const trialSkin: LooseSkin = {
  id: 's1',
  place: { at: 'outline', face: 'curb', side: 'outside', outline_m: square(5.2, 1.6, 0.5, 0.5) },
  face: 'curb',
  side: 'outside',
  words: 'Curb side',
  entries: ['s1', 's2'],
  signs: ['bubble'],
  outlines: [
    { entry: 's1', day: day(0), outline_m: square(5.25, 1.62, 0.34, 0.36), area_m2: 0.12, longest_m: 0.5, worked: { worksheet: 'outline-area', inputs: {} } },
    { entry: 's2', day: day(300), outline_m: square(5.2, 1.6, 0.5, 0.5), area_m2: 0.25, longest_m: 0.7, worked: { worksheet: 'outline-area', inputs: {} } },
  ],
  loads: [],
  taps: { solid: 8, dull: 2, hollow: 5, hollow_share: 1 / 3, hull_m: square(5.27, 1.66, 0.36, 0.34), entries: [] },
  core: { state: 'not-metered', readings: 0, because },
  source: { state: 'none-found' },
  because: [because],
  advice: 'meter-first',
  sentence: 'Meter it from both sides first.',
  steps: [],
};
