import type { Candidate, Leak, Likelihood } from '../../plan';
import type { Rig, WaterPath } from '../../rig';
import type { EntryId, FaceId, FacePoint, Station } from '../../terms';
import type { Bounds } from '../frame';
import { flat, type Point, roundedD } from '../path';
import { penOn } from '../pen';
import { type Obstacle, place } from '../placing';
import type { GroupPrimitive, Ink, Primitive } from '../primitives';
import { stationWords } from '../spoken';

/** One way in, with the letter that stands for it on the drawing and in the list. */
export type Way = {
  readonly letter: string;
  readonly station: Station;
  readonly word: Likelihood;
  /** The shortest way from there to the spot that is looked at. */
  readonly path: WaterPath | undefined;
  readonly label: string;
};

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
/** The letter of a candidate by its place in the list. */
export const letterOf = (index: number): string => LETTERS[index] ?? '';

/** Unlikely ways in beyond this many would hide the rest. */
const MOST = 4;

/** The spot that a leak is followed at: the one with most readings, and of those the wettest. */
export const followedSpot = (leak: Leak): Leak['spots'][number] | undefined =>
  [...leak.spots].sort((a, b) => b.readings.length - a.readings.length || (b.yardsticks.reference?.excess ?? 0) - (a.yardsticks.reference?.excess ?? 0))[0];

/** Where the ways are drawn to: the followed spot, or that of the metered ones with a way to it which lies nearest. */
const targetOf = (leak: Leak): EntryId | undefined => {
  const followed = followedSpot(leak);
  if (!followed) return undefined;
  const reached = new Set(leak.candidates.flatMap((c) => c.paths.map((q) => q.spot)));
  const away = (s: Leak['spots'][number]): number => Math.hypot(s.point_m[0] - followed.point_m[0], s.point_m[1] - followed.point_m[1]);
  return leak.spots.filter((s) => reached.has(s.id) && s.face === followed.face && s.readings.length > 0).sort((a, b) => away(a) - away(b))[0]?.id;
};

const pathOf = (candidate: Candidate, spot: EntryId | undefined): WaterPath | undefined =>
  candidate.paths.find((q) => q.spot === spot) ?? [...candidate.paths].sort((a, b) => a.effort_m - b.effort_m)[0];

/**
 * The candidates that are drawn: all that are likely or possible, and enough of the others to see what they were weighed against.
 *
 * @param behind  set behind each letter, where several leaks stand on one sheet
 */
export const waysOf = (rig: Rig, leak: Leak, behind = ''): readonly Way[] => {
  const spot = targetOf(leak);
  return leak.candidates.flatMap((c, i): readonly Way[] => {
    const station = rig.stations.find((s) => s.id === c.station);
    if (!station || (i >= MOST && c.word === 'unlikely') || letterOf(i) === '') return [];
    const letter = `${letterOf(i)}${behind}`;
    return [{ letter, station, word: c.word, path: pathOf(c, spot), label: `${letter}, ${c.word}: ${stationWords(rig, station)}` }];
  });
};

const WAY_INK: Readonly<Record<Likelihood, Ink>> = { likely: 'way-likely', possible: 'way-possible', unlikely: 'way-unlikely' };

/** The pieces of a path that lie on faces of this sheet, each end to end. */
const runsOf = (path: WaterPath, at: (face: FaceId, point: FacePoint) => Point | undefined): readonly (readonly Point[])[] => {
  const runs: Point[][] = [];
  let broken = true;
  for (const leg of path.legs)
    for (const point of leg.points_m) {
      const q = at(leg.face, point);
      if (!q) {
        broken = true;
        continue;
      }
      const run = broken ? undefined : runs.at(-1);
      const last = run?.at(-1);
      if (!run) runs.push([q]);
      else if (!last || Math.hypot(last[0] - q[0], last[1] - q[1]) > 1e-4) run.push(q);
      broken = false;
    }
  return runs.filter((r) => r.length > 0);
};

/** A line shortened at its end, so that what it points at stays free. */
const shortened = (run: readonly Point[], by: number): readonly Point[] => {
  const out = [...run];
  let left = by;
  while (out.length > 1 && left > 0) {
    const [a, b] = [out.at(-2) ?? [0, 0], out.at(-1) ?? [0, 0]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length > left) {
      out[out.length - 1] = [b[0] - ((b[0] - a[0]) * left) / length, b[1] - ((b[1] - a[1]) * left) / length];
      return out;
    }
    out.pop();
    left -= length;
  }
  return run.slice(0, 2);
};

/** Bends of a path. [px] */
const BEND_PX = 14;
/** An arrow's length, and what it keeps from the reading it points at. [px] */
const [ARROW_PX, CLEAR_PX] = [9, 13] as const;

const p = penOn(flat);

const arrow = (run: readonly Point[], size: number): readonly Primitive[] => {
  const [a, b] = [run.at(-2), run.at(-1)];
  const length = a && b ? Math.hypot(b[0] - a[0], b[1] - a[1]) : 0;
  if (!a || !b || length === 0) return [];
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const tip: Point = [b[0] + ux * size * 0.5, b[1] + uy * size * 0.5];
  const back: Point = [tip[0] - ux * size, tip[1] - uy * size];
  return [p.poly('point-one', [tip, [back[0] - uy * size * 0.45, back[1] + ux * size * 0.45], [back[0] + uy * size * 0.45, back[1] - ux * size * 0.45]])];
};

export type WaysOn = {
  /** Where a point of a face lies on this sheet; undefined where it is not on it. */
  readonly at: (face: FaceId, point: FacePoint) => Point | undefined;
  readonly px: number;
  /** Diameter of a ring. [sheet units] */
  readonly ring: number;
  readonly bounds: Bounds;
  readonly within: Bounds;
};

export type DrawnWays = { readonly lines: readonly Primitive[]; readonly rings: readonly GroupPrimitive[] };

/** Ways drawn from the least likely up, so that the likely one lies on top; rings with their letters last, clear of what is there. */
export const drawWays = (ways: readonly Way[], { at, px, ring, bounds, within }: WaysOn, taken: readonly Bounds[]): DrawnWays => {
  const obstacles: Obstacle[] = taken.map((box) => ({ box, weight: 6 }));
  const lines: Primitive[] = [];
  const rings: GroupPrimitive[] = [];
  const ranked = ways.map((way) => {
    const runs = way.path ? runsOf(way.path, at) : [];
    return { way, runs, own: way.path ? at(way.path.from.face, way.path.from.point_m) : undefined };
  });
  for (const { way, runs } of [...ranked].reverse()) {
    const last = runs.length - 1;
    const drawn = runs.map((r, i) => (i === last ? shortened(r, (CLEAR_PX + ARROW_PX * 0.5) / px) : r)).filter((r) => r.length > 1);
    for (const ink of ['way-casing', WAY_INK[way.word]] as const) lines.push(...drawn.map((r): Primitive => ({ form: 'path', d: roundedD(flat, r, BEND_PX / px, false), ink })));
    const end = drawn.at(-1);
    if (end) lines.push(...arrow(end, ARROW_PX / px));
  }
  for (const { way, runs, own } of ranked) {
    const first = runs[0]?.[0];
    const start = own ?? first;
    if (!start) continue;
    // A way that begins on another face comes in over the edge: its ring stands just outside.
    const next = runs[0]?.[1];
    const away = own || !next ? 0 : Math.hypot(next[0] - start[0], next[1] - start[1]);
    const stand: Point = own || !next || away === 0 ? start : [start[0] - ((next[0] - start[0]) / away) * ring * 0.9, start[1] - ((next[1] - start[1]) / away) * ring * 0.9];
    const part = { x0: stand[0], y0: stand[1], x1: stand[0], y1: stand[1] };
    const put = place({ at: stand, part, s: ring, plate: 0, flag: false, within }, obstacles, bounds);
    obstacles.push({ box: put.box, weight: 40 });
    const [cx, cy] = put.centre;
    const size = ring * (way.letter.length > 1 ? 0.54 : 0.66);
    const off = Math.hypot(cx - start[0], cy - start[1]);
    rings.push({
      form: 'group',
      id: `way/${way.station.id}`,
      label: way.label,
      role: 'finding',
      hit: [cx - ring * 0.6, cy - ring * 0.6, ring * 1.2, ring * 1.2],
      children: [
        ...(off > ring * 0.5 ? [p.line('way-casing', start, [cx, cy]), p.line(own ? 'leader' : WAY_INK[way.word], start, [cx, cy])] : []),
        ...(off > ring * 0.5 && own ? [p.disc('point-one', start[0], start[1], ring * 0.11)] : []),
        p.disc('ring', cx, cy, ring / 2),
        p.text('text-one', cx, cy + size * 0.36, way.letter, size, 'middle'),
      ],
    });
  }
  return { lines, rings };
};
