import type { FacePoint } from '../../terms';
import { tidy } from './clip';
import type { CutOut } from './cut-outs';

/** Between two uprights, as high as the wall or an opening lets it be. */
type Slab = { readonly x0: number; readonly x1: number; readonly low0: number; readonly low1: number; readonly high0: number; readonly high1: number };

/** Below this two members, or two edges, are one. [m] */
const ONE_M = 0.001;
/** A member of the regular spacing gives way where a framed opening's own stands this near; ours. [m] */
const GIVES_WAY_M = 0.1;

/** Where the regular members stand along the first axis: counted from its beginning, none at the ends. [m] */
export const regularMembers = (outline: readonly FacePoint[], framed: readonly CutOut[], spacing_m: number): readonly number[] => {
  const xs = outline.map((p) => p[0]);
  const [from, to] = [Math.min(...xs), Math.max(...xs)];
  const own = [from, to, ...framed.flatMap((c) => [c.box.x0, c.box.x1])];
  const all = Array.from({ length: Math.ceil((to - from) / spacing_m) }, (_, i) => from + i * spacing_m);
  return all.filter((x) => !own.some((o) => Math.abs(o - x) < GIVES_WAY_M));
};

const at = (a: FacePoint, b: FacePoint, x: number): number => a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);

/** What is free of a strip in which nothing begins or ends: within the outline, above and below what is cut out. */
const slabsOf = (outline: readonly FacePoint[], framed: readonly CutOut[], x0: number, x1: number): readonly Slab[] => {
  const middle = (x0 + x1) / 2;
  const crossing = outline
    .map((p, i) => [p, outline[(i + 1) % outline.length] ?? p] as const)
    .filter(([p, q]) => p[0] > middle !== q[0] > middle)
    .toSorted((e, f) => at(...e, middle) - at(...f, middle));
  const blocked = framed.filter((c) => c.box.x0 < middle && c.box.x1 > middle).toSorted((a, b) => a.box.y0 - b.box.y0);
  const slabs: Slab[] = [];
  for (let i = 0; i + 1 < crossing.length; i += 2) {
    const [bottom, top] = [crossing[i], crossing[i + 1]];
    if (!bottom || !top) continue;
    const ceiling = { a: at(...top, x0), b: at(...top, x1) };
    let floor = { a: at(...bottom, x0), b: at(...bottom, x1) };
    for (const { box } of [...blocked, { box: { y0: Number.POSITIVE_INFINITY, y1: Number.POSITIVE_INFINITY } }]) {
      const slab = { x0, x1, low0: floor.a, low1: floor.b, high0: Math.min(ceiling.a, box.y0), high1: Math.min(ceiling.b, box.y0) };
      if ((slab.high0 + slab.high1 - slab.low0 - slab.low1) / 2 > ONE_M) slabs.push(slab);
      floor = { a: Math.max(floor.a, box.y1), b: Math.max(floor.b, box.y1) };
    }
  }
  return slabs;
};

/** A framed opening's own member runs on above and below it, until another framed opening stops it or the wall ends. */
const ownMember = (x: number, y: number, framed: readonly CutOut[]): boolean =>
  framed.some(({ box: b }) => {
    if (Math.abs(b.x0 - x) > ONE_M && Math.abs(b.x1 - x) > ONE_M) return false;
    const between = y < b.y0 ? [y, b.y0] : y > b.y1 ? [b.y1, y] : undefined;
    if (between === undefined) return true;
    const [from = 0, to = 0] = between;
    return !framed.some(({ box: o }) => o.x0 < x - ONE_M && o.x1 > x + ONE_M && o.y0 < to && o.y1 > from);
  });

const around = (chain: readonly Slab[]): readonly FacePoint[] =>
  tidy([
    ...chain.flatMap((s): readonly FacePoint[] => [
      [s.x0, s.low0],
      [s.x1, s.low1],
    ]),
    ...chain.toReversed().flatMap((s): readonly FacePoint[] => [
      [s.x1, s.high1],
      [s.x0, s.high0],
    ]),
  ]);

/**
 * Bays of a framed face, as a carpenter leaves them: between members of the regular spacing and those beside framed openings;
 * above and below an opening are bays of their own, closed by its header and its sill.
 *
 * @param regular  where members of the regular spacing stand, along the first axis. [m]
 * @returns        outlines that do not overlap and that fill the face but for the framed openings
 * @assumes        members run along the second axis: upright in a wall, across in a roof and a floor
 */
export const bays = (outline: readonly FacePoint[], framed: readonly CutOut[], regular: readonly number[]): readonly (readonly FacePoint[])[] => {
  const xs = outline.map((p) => p[0]);
  const [from, to] = [Math.min(...xs), Math.max(...xs)];
  const breaks = [...xs, ...regular, ...framed.flatMap((c) => [c.box.x0, c.box.x1])]
    .map((x) => Math.max(from, Math.min(to, x)))
    .toSorted((a, b) => a - b)
    .filter((x, i, all) => i === 0 || x - (all[i - 1] ?? x) > ONE_M / 100);
  const chains: Slab[][] = [];
  let open: Slab[][] = [];
  for (const [i, x0] of breaks.entries()) {
    const x1 = breaks[i + 1];
    if (x1 === undefined) break;
    const slabs = slabsOf(outline, framed, x0, x1);
    const member = regular.some((x) => Math.abs(x - x0) < ONE_M / 100);
    const meets = (chain: readonly Slab[], slab: Slab): boolean => {
      const last = chain.at(-1);
      if (!last || member || last.x1 !== x0) return false;
      const [low, high] = [Math.max(last.low1, slab.low0), Math.min(last.high1, slab.high0)];
      return high - low > ONE_M && !ownMember(x0, (low + high) / 2, framed);
    };
    open = slabs.map((slab) => {
      const before = open.filter((c) => meets(c, slab));
      const [only] = before;
      // Where one bay would fork into two, or two run into one, the careful choice is to part them.
      if (only && before.length === 1 && slabs.filter((s) => meets(only, s)).length === 1) {
        only.push(slab);
        return only;
      }
      const begun = [slab];
      chains.push(begun);
      return begun;
    });
  }
  return chains.map(around).filter((o) => o.length >= 3);
};
