import type { FacePoint, Shape } from '../terms';
import { accept, type Result, refuse } from '../units';
import type { BaseLayout, Piece } from './base-layout';
import { shapeInside } from './outline';
import type { Answers, Slide } from './rig';
import { box, overlaps, rect } from './shapes';
import { kindLimits, type Sizes } from './sizes';
import type { Stretch } from './stretch';

/** How far the flange covers the wall round the opening, as in the typical layouts. [m] */
export const FLANGE_M = 0.05;
/** Topper rail above the opening, as in the typical layouts. [m] */
const RAIL_ABOVE_M = 0.12;
const NARROWEST_M = 1.1;
/** Widths that are tried for a slide-out that the typical layout does not have, the widest first; ours. [m] */
const WIDTHS_M = [2.4, 2.0, 1.7, 1.4, NARROWEST_M] as const;
const TRAVEL_M = 0.6;
/** Least distance of a window or vent from the edge of a slide's outer wall; ours. [m] */
const EDGE_M = 0.1;
const LEAST_HEIGHT_M = 1.0;
/** Top of a slide's opening below the wall top, as in the typical layouts. [m] */
const BELOW_WALL_TOP_M = 0.34;
/** Clear wall kept beside a slide's flange; ours. [m] */
const BESIDE_M = 0.12;

/** What a slide-out may never be cut through or set against. */
const FIXED = /^(entry-door|cab-door|cab-window|van-sliding-door|teardrop-door|slide-flange|mirror-foot)/;
const ARCH = /^(wheel-arch-trim|fender)$/;

const flange = (s: Slide): Shape => rect(s.x_m - FLANGE_M, s.y_m - FLANGE_M, s.w_m + 2 * FLANGE_M, s.h_m + 2 * FLANGE_M);

/** Slides of the typical layout, at the rig's own size. Both ends move on their own, so that a slide grows with its rig. */
const kept = (base: BaseLayout, s: Stretch, face: string, count: number): readonly Slide[] =>
  base.slides
    .filter((b) => b.face === face)
    .toSorted((a, b) => b.w - a.w)
    .slice(0, count)
    .map((b) => ({ id: b.id, face, x_m: s.x(b.x), y_m: b.y, w_m: s.x(b.x + b.w) - s.x(b.x), h_m: s.y(b.y + b.h) - b.y, travel_m: b.travel }));

/** A slide with its flange and the rail above it: what must find room on the wall. */
const withRail = (s: Slide): Shape => rect(s.x_m - FLANGE_M, s.y_m - FLANGE_M, s.w_m + 2 * FLANGE_M, s.h_m + 2 * FLANGE_M + RAIL_ABOVE_M - FLANGE_M + 0.01);

type Wall = { readonly outline: readonly FacePoint[]; readonly pieces: readonly Piece[]; readonly low: number; readonly top: number };

const clear = (slide: Slide, wall: Wall, taken: readonly Slide[]): boolean => {
  const edge = box(flange(slide));
  const wide = { ...edge, x0: edge.x0 - BESIDE_M, x1: edge.x1 + BESIDE_M };
  const blocks = [...wall.pieces.filter((p) => FIXED.test(p.part)).map((p) => box(p.shape)), ...taken.map((t) => box(flange(t)))];
  const arches = wall.pieces.filter((p) => ARCH.test(p.part)).map((p) => box(p.shape));
  return shapeInside(withRail(slide), wall.outline) && !blocks.some((b) => overlaps(wide, b)) && !arches.some((b) => overlaps(edge, b));
};

/** Doors and appliances in the way weigh most, then how far the slide moves from where it is wanted, then standing above the wheels. */
const cost = (slide: Slide, wall: Wall, wanted: Slide | undefined): number => {
  const edge = box(flange(slide));
  const inTheWay = wall.pieces.filter((p) => p.shape.form !== 'lines' && !ARCH.test(p.part) && overlaps(edge, box(p.shape))).length;
  return inTheWay + (wanted ? Math.abs(slide.x_m - wanted.x_m) : 0) + (slide.y_m > wall.low ? 1 : 0);
};

/** Finds room on a wall for a slide-out: clear of doors and other slides, above the wheels, with as little in the way as can be. */
const roomFor = (wall: Wall, taken: readonly Slide[], face: string, wanted?: Slide): Slide | undefined => {
  const [x0, x1] = [Math.min(...wall.outline.map((p) => p[0])), Math.max(...wall.outline.map((p) => p[0]))];
  const arches = wall.pieces.filter((p) => ARCH.test(p.part)).map((p) => box(p.shape));
  const widths = wanted ? [wanted.w_m, ...WIDTHS_M.filter((w) => w < wanted.w_m)] : WIDTHS_M;
  for (const w of widths) {
    let best: { readonly slide: Slide; readonly cost: number } | undefined;
    for (let x = Math.ceil(x0 * 20) / 20; x + w <= x1; x += 0.05) {
      const over = arches.filter((a) => a.x1 > x - FLANGE_M && a.x0 < x + w + FLANGE_M);
      const y = Math.max(wall.low, ...over.map((a) => a.y1 + FLANGE_M + 0.03));
      const slide: Slide = { id: wanted?.id ?? 'new', face, x_m: x, y_m: y, w_m: w, h_m: wall.top - y, travel_m: wanted?.travel_m ?? TRAVEL_M };
      if (slide.h_m < LEAST_HEIGHT_M || !clear(slide, wall, taken)) continue;
      const c = cost(slide, wall, wanted);
      if (!best || c < best.cost) best = { slide, cost: c };
    }
    if (best) return best.slide;
  }
  return undefined;
};

export type SlidePlan = {
  readonly slides: readonly Slide[] /** New id of every slide that was kept, by its id in the typical layout. */;
  readonly renamed: ReadonlyMap<string, string>;
  readonly added: readonly string[];
};

/** Which slides the rig has: those of the typical layout as far as asked for, then new ones where there is room, or a refusal that says why. */
export const slidesFor = (base: BaseLayout, answers: Answers, sizes: Sizes, s: Stretch, outline: readonly FacePoint[], pieces: readonly Piece[]): Result<SlidePlan> => {
  const slides: Slide[] = [];
  const renamed = new Map<string, string>();
  const added: string[] = [];
  const lowest = base.slides.find((b) => b.y < base.levels.floor + 0.3)?.y ?? Math.max(base.levels.floor, base.levels.skirt) + 0.1;
  for (const [i, face] of (['road', 'curb'] as const).entries()) {
    const wanted = sizes.slides[i] ?? 0;
    const wall: Wall = { outline, pieces: pieces.filter((p) => p.face === face), low: lowest, top: base.levels.wall_top + s.rise - BELOW_WALL_TOP_M };
    const here: Slide[] = [];
    for (const own of kept(base, s, face, wanted)) {
      if (own.w_m < NARROWEST_M) continue;
      const at = clear(own, wall, here) ? own : roomFor(wall, here, face, own);
      if (at) here.push(at);
    }
    while (here.length < wanted) {
      const more = roomFor(wall, here, face);
      if (!more && !sizes.slides_said[i]) break;
      if (!more)
        return refuse({
          code: 'no-room',
          path: `slides_${face}`,
          expected: `a free stretch of wall of at least ${NARROWEST_M} m, clear of doors, wheels and other slide-outs`,
          received: String(wanted),
          sentence: `Slide-out ${here.length + 1} does not fit on the ${face} side of a ${kindLimits(answers.kind).word} of this length: doors, wheels and other slide-outs leave less than ${NARROWEST_M} m of free wall. Choose fewer, and add the rest as openings and seams.`,
        });
      here.push(more);
    }
    for (const slide of here.toSorted((a, b) => a.x_m - b.x_m)) {
      const id = `s${slides.length + 1}`;
      if (slide.id === 'new') added.push(id);
      else renamed.set(slide.id, id);
      slides.push({ ...slide, id });
    }
  }
  return accept({ slides, renamed, added });
};

/** What every slide-out has: flange, seals, edges, topper, and the mechanism under the floor. */
const furniture = (s: Slide, width: number, floor: number): readonly Omit<Piece, 'id'>[] => {
  const [x, y, x1, y1] = [s.x_m, s.y_m, s.x_m + s.w_m, s.y_m + s.h_m];
  const d = s.travel_m;
  const ring: Shape = {
    form: 'lines',
    lines_m: [
      [
        [x, y],
        [x1, y],
        [x1, y1],
        [x, y1],
        [x, y],
      ],
    ],
  };
  const lines = (...lines_m: readonly (readonly FacePoint[])[]): Shape => ({ form: 'lines', lines_m });
  const outer = `${s.id}-outer`;
  const half = Math.min(1.3, width / 2 - 0.55);
  const gear = (at: number): Omit<Piece, 'id'> => ({ part: 'slide-gear', face: 'under', shape: rect(at, s.face === 'road' ? 0.5 : width - 0.5 - half, 0.25, half), slide: s.id });
  const gears = s.y_m > floor + 0.5 ? [] : s.w_m < 1.6 ? [gear((x + x1) / 2 - 0.125)] : [gear(x + 0.3), gear(x1 - 0.55)];
  return [
    { part: 'slide-flange', face: s.face, shape: flange(s), slide: s.id },
    { part: 'slide-wiper-seal', face: s.face, shape: ring, slide: s.id },
    { part: 'slide-bulb-seal', face: s.face, shape: ring, slide: s.id },
    {
      part: 'slide-topper-rail',
      face: s.face,
      shape: lines([
        [x - FLANGE_M, y1 + RAIL_ABOVE_M],
        [x1 + FLANGE_M, y1 + RAIL_ABOVE_M],
      ]),
      slide: s.id,
    },
    {
      part: 'slide-corner-moulding',
      face: outer,
      shape: lines(
        [
          [x, y],
          [x, y1],
        ],
        [
          [x1, y],
          [x1, y1],
        ],
      ),
      slide: s.id,
    },
    {
      part: 'slide-floor-edge',
      face: outer,
      shape: lines([
        [x, y],
        [x1, y],
      ]),
      slide: s.id,
    },
    { part: 'slide-topper-bracket', face: outer, shape: rect(x + 0.03, y1 - 0.16, 0.05, 0.13), slide: s.id },
    { part: 'slide-topper-bracket', face: outer, shape: rect(x1 - 0.08, y1 - 0.16, 0.05, 0.13), slide: s.id },
    {
      part: 'slide-roof-edge',
      face: `${s.id}-top`,
      shape: lines(
        [
          [x, 0],
          [x, d],
        ],
        [
          [x, d],
          [x1, d],
        ],
        [
          [x1, 0],
          [x1, d],
        ],
      ),
      slide: s.id,
    },
    ...gears,
  ];
};

/** The largest window that suits a slide's outer wall. */
const windowFor = (s: Slide): Unnamed => {
  const [part, w, h] =
    s.w_m > 1.9 ? (['window-48x24', 1.257, 0.648] as const) : s.w_m > 1.3 ? (['window-36x22', 0.952, 0.597] as const) : (['window-24x22', 0.648, 0.597] as const);
  return { part, face: `${s.id}-outer`, shape: onWall(s, w, h), slide: s.id };
};

const onWall = (s: Slide, w: number, h: number): Shape => rect(s.x_m + (s.w_m - w) / 2, Math.min(s.y_m + 0.6, s.y_m + s.h_m - h - 0.2), w, h);

/** What can stand on a slide's outer wall as well as on the body wall behind it. */
const ON_A_SLIDE = /^(window-|fridge-vent|range-hood)/;

/** Windows and vents that a slide-out would cut away are drawn on the slide's outer wall instead, at the same place along the rig. */
export const takenAlong = (slides: readonly Slide[], pieces: readonly Piece[]): ReadonlyMap<string, Unnamed> =>
  new Map(
    pieces
      .filter((p) => ON_A_SLIDE.test(p.part) && p.within === undefined)
      .flatMap((p) => {
        const b = box(p.shape);
        const slide = slides.find((s) => s.face === p.face && overlaps(box(flange(s)), b));
        if (!slide) return [];
        const [w, h] = [b.x1 - b.x0, b.y1 - b.y0];
        const x = Math.max(slide.x_m + EDGE_M, Math.min(b.x0, slide.x_m + slide.w_m - w - EDGE_M));
        const y = Math.max(slide.y_m + EDGE_M, Math.min(b.y0, slide.y_m + slide.h_m - h - EDGE_M));
        return [[p.id, { ...p, face: `${slide.id}-outer`, shape: rect(x, y, w, h), slide: slide.id }] as const];
      }),
  );

export type Unnamed = Omit<Piece, 'id'>;

/**
 * Pieces on and round the slide-outs. What stood on the outer wall of a slide that this rig does not have moves to the
 * body wall behind it; a refrigerator that stood in such a slide gets a roof vent above its lower wall vent.
 */
export const slidePieces = (base: BaseLayout, plan: SlidePlan, onSlides: readonly Piece[], s: Stretch, taken: ReadonlySet<string>): readonly Unnamed[] => {
  const made = plan.slides.flatMap((slide) => [
    ...furniture(slide, s.width, base.levels.floor),
    ...(plan.added.includes(slide.id) && !taken.has(slide.id) ? [windowFor(slide)] : []),
  ]);
  const rest = onSlides.flatMap((piece): readonly Unnamed[] => {
    const [was, wall = ''] = piece.face.split('-');
    const from = base.slides.find((b) => b.id === was);
    if (!from) return [];
    const b = box(piece.shape);
    const to = plan.slides.find((x) => x.id === plan.renamed.get(from.id));
    const y = s.y((b.y0 + b.y1) / 2) - (b.y1 - b.y0) / 2;
    if (to && wall !== 'outer') return [{ ...piece, face: `${to.id}-${wall}`, shape: rect(b.x0, y, b.x1 - b.x0, b.y1 - b.y0), slide: to.id }];
    if (to) {
      const share = ((b.x0 + b.x1) / 2 - from.x) / from.w;
      return [{ ...piece, face: `${to.id}-outer`, shape: rect(to.x_m + share * to.w_m - (b.x1 - b.x0) / 2, y, b.x1 - b.x0, b.y1 - b.y0), slide: to.id }];
    }
    if (wall !== 'outer') return [];
    const x = s.x((b.x0 + b.x1) / 2) - (b.x1 - b.x0) / 2;
    if (piece.part === 'fridge-vent-upper') return [{ part: 'fridge-roof-vent', face: 'roof', shape: rect(x, from.face === 'road' ? 0.2 : s.width - 0.42, 0.68, 0.22) }];
    return [{ ...piece, face: from.face, shape: rect(x, y, b.x1 - b.x0, b.y1 - b.y0) }];
  });
  return [...made, ...rest];
};

/** Faces of a slide-out: outer wall, both end walls, roof. */
export const slideFaces = (s: Slide): readonly { readonly id: string; readonly outline_m: readonly FacePoint[] }[] => {
  const at = (x0: number, y0: number, x1: number, y1: number): readonly FacePoint[] => [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  const [x0, y0, x1, y1, d] = [s.x_m, s.y_m, s.x_m + s.w_m, s.y_m + s.h_m, s.travel_m];
  return [
    { id: `${s.id}-outer`, outline_m: at(x0, y0, x1, y1) },
    { id: `${s.id}-front`, outline_m: at(0, y0, d, y1) },
    { id: `${s.id}-rear`, outline_m: at(0, y0, d, y1) },
    { id: `${s.id}-top`, outline_m: at(x0, 0, x1, d) },
  ];
};
