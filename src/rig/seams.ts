import type { FacePoint } from '../terms';
import type { BaseLayout, Piece } from './base-layout';
import type { Answers } from './rig';
import { type Box, box, toMillimetre } from './shapes';
import type { Unnamed } from './slide-outs';
import type { Stretch } from './stretch';

/** Room left between a seam's end and the opening that breaks it; as in the typical layouts. [m] */
const MARGIN_M = 0.02;
/** Shorter remains are not drawn; ours. [m] */
const SHORTEST_M = 0.05;
/** Seams that run round an opening of their own, and so touch it. */
export const ROUND_ITS_OWN = /^(windshield-gasket|slide-wiper-seal|slide-bulb-seal)$/;

type Segment = readonly [FacePoint, FacePoint];

/** The part of a segment that lies in the box, as shares 0…1 of its length; undefined when none does. */
const shareIn = ([[ax, ay], [bx, by]]: Segment, b: Box): readonly [number, number] | undefined => {
  let [t0, t1] = [0, 1];
  for (const [a, d, lo, hi] of [
    [ax, bx - ax, b.x0, b.x1],
    [ay, by - ay, b.y0, b.y1],
  ] as const) {
    if (d === 0) {
      if (a < lo || a > hi) return undefined;
      continue;
    }
    const [p, q] = [(lo - a) / d, (hi - a) / d];
    t0 = Math.max(t0, Math.min(p, q));
    t1 = Math.min(t1, Math.max(p, q));
  }
  return t0 < t1 ? [t0, t1] : undefined;
};

const along = ([[ax, ay], [bx, by]]: Segment, t: number): FacePoint => [toMillimetre(ax + t * (bx - ax)), toMillimetre(ay + t * (by - ay))];

/** What is left of a line where nothing stands on it. */
const cut = (line: readonly FacePoint[], boxes: readonly Box[]): readonly (readonly FacePoint[])[] => {
  const pieces: FacePoint[][] = [];
  let open: FacePoint[] = [];
  const close = (): void => {
    if (open.length > 1) pieces.push(open);
    open = [];
  };
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    if (!a || !b) continue;
    const segment: Segment = [a, b];
    const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const gone = boxes.flatMap((x) => {
      const s = shareIn(segment, x);
      return s ? [[s[0] - MARGIN_M / size, s[1] + MARGIN_M / size] as const] : [];
    });
    let t = 0;
    for (const [from, to] of gone.toSorted((x, y) => x[0] - y[0])) {
      if (from > t) {
        if (open.length === 0) open.push(along(segment, t));
        open.push(along(segment, from));
      }
      if (to > t) close();
      t = Math.max(t, to);
    }
    if (t < 1) {
      if (open.length === 0) open.push(along(segment, t));
      open.push(b);
    } else close();
  }
  close();
  return pieces.filter((p) => p.slice(1).reduce((sum, q, i) => sum + Math.hypot(q[0] - (p[i]?.[0] ?? 0), q[1] - (p[i]?.[1] ?? 0)), 0) >= SHORTEST_M);
};

const TOUCH_M = 0.001;

/** Breaks every seam where an opening or fitting stands on it. A seam of which nothing is left is dropped. */
export const seamsCut = (pieces: readonly Piece[]): readonly Piece[] =>
  pieces.flatMap((piece) => {
    if (piece.shape.form !== 'lines' || ROUND_ITS_OWN.test(piece.part)) return [piece];
    const boxes = pieces
      .filter((p) => p.face === piece.face && p.shape.form !== 'lines' && p.within === undefined && !p.layer && !p.off_wall)
      .map((p) => box(p.shape))
      .map((b) => ({ x0: b.x0 - TOUCH_M, y0: b.y0 - TOUCH_M, x1: b.x1 + TOUCH_M, y1: b.y1 + TOUCH_M }));
    const lines = piece.shape.lines_m.flatMap((l) => cut(l, boxes));
    return lines.length === 0 ? [] : [{ ...piece, shape: { form: 'lines', lines_m: lines } }];
  });

/** A rail runs from awning arm to awning arm; without two arms there is no awning to hold. */
const LEAST_AWNING_M = 1.8;
/** How far the rail runs past an arm, as in the typical layouts. [m] */
const ARM_INSET_M = 0.05;
const IS_AWNING = /^awning-(arm|rail|upper-bracket|lower-bracket)$/;

export const awningFitted = (pieces: readonly Piece[], outlines: ReadonlyMap<string, readonly FacePoint[]>): readonly Piece[] => {
  const arms = pieces.filter((p) => p.part === 'awning-arm');
  if (arms.length === 0) return pieces;
  const boxes = arms.map((p) => box(p.shape));
  const rail = pieces.find((p) => p.part === 'awning-rail');
  const y = rail?.shape.form === 'lines' ? (rail.shape.lines_m[0]?.[0]?.[1] ?? 0) : 0;
  const [left, right] = spanAt(outlines.get(arms[0]?.face ?? '') ?? [], y);
  const x0 = Math.max(Math.min(...boxes.map((a) => a.x0)) - ARM_INSET_M, left);
  const x1 = Math.min(Math.max(...boxes.map((a) => a.x1)) + ARM_INSET_M, right);
  if (arms.length < 2 || x1 - x0 < LEAST_AWNING_M) return pieces.filter((p) => !IS_AWNING.test(p.part));
  return pieces.map((p) => {
    if (p !== rail) return p;
    const run: readonly FacePoint[] = [
      [toMillimetre(x0), y],
      [toMillimetre(x1), y],
    ];
    return { ...p, shape: { form: 'lines', lines_m: [run] } };
  });
};

const line = (face: string, part: string, ...points: readonly FacePoint[]): Unnamed => ({
  part,
  face,
  shape: { form: 'lines', lines_m: [points.map(([x, y]): FacePoint => [toMillimetre(x), toMillimetre(y)])] },
});

const spanAt = (outline: readonly FacePoint[], y: number): readonly [number, number] => {
  const xs = outline.flatMap(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length] ?? [ax, ay];
    return ay > y !== by > y ? [ax + ((y - ay) * (bx - ax)) / (by - ay)] : [];
  });
  return [Math.min(...xs), Math.max(...xs)];
};

/** Belt trim above the floor, where a layout has none; ours. [m] */
const BELT_ABOVE_FLOOR_M = 0.75;

/** Seams that come with the skin and the roof covering the person named. */
export const seamsOfCovering = (
  answers: Answers,
  pieces: readonly Piece[],
  outlines: ReadonlyMap<string, readonly FacePoint[]>,
  base: BaseLayout,
  s: Stretch,
): readonly Unnamed[] => {
  const extra: Unnamed[] = [];
  const has = (part: string): boolean => pieces.some((p) => p.part === part);
  const side = outlines.get('road') ?? [];
  if (answers.skin === 'corrugated-aluminium') {
    const y = base.levels.floor + BELT_ABOVE_FLOOR_M;
    const [x0, x1] = spanAt(side, y);
    const at = s.x((base.fixed_ahead_of + base.overall.body) / 2);
    const [bottom, top] = spanAt(
      side.map(([x, y]): FacePoint => [y, x]),
      at,
    );
    for (const face of ['road', 'curb']) {
      if (!has('belt-line-trim') && y > bottom) extra.push(line(face, 'belt-line-trim', [Math.max(x0, base.fixed_ahead_of) + 0.02, y], [x1 - 0.02, y]));
      if (!has('skin-seam-vertical')) extra.push(line(face, 'skin-seam-vertical', [at, bottom + 0.02], [at, top - 0.02]));
    }
  }
  if ((answers.roof === 'aluminium' || answers.roof === 'painted-steel') && !has('roof-transverse-seam')) {
    const roof = outlines.get('roof') ?? [];
    const [x0, x1] = [Math.min(...roof.map((p) => p[0])), Math.max(...roof.map((p) => p[0]))];
    const [y0, y1] = [Math.min(...roof.map((p) => p[1])), Math.max(...roof.map((p) => p[1]))];
    for (const share of [1 / 3, 2 / 3]) extra.push(line('roof', 'roof-transverse-seam', [x0 + share * (x1 - x0), y0 + 0.02], [x0 + share * (x1 - x0), y1 - 0.02]));
  }
  return extra;
};

/** A one-piece fibreglass roof ends in a bar only where it meets a moulded cap. */
export const endsNotThere = (answers: Answers, pieces: readonly Piece[]): ReadonlySet<string> => {
  if (answers.roof !== 'fibreglass') return new Set();
  const capped = (end: string): boolean => pieces.some((p) => p.part === `${end}-cap-seam`);
  return new Set(['front', 'rear'].filter((end) => !capped(end)).map((end) => `roof-${end}-termination`));
};
