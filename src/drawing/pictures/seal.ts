import { flat, type Point } from '../path';
import { penOn } from '../pen';
import type { Primitive } from '../primitives';

/**
 * The seal grades S0 to S5 as pictures of one bead under a flange: screws above, sealant between, the surface below.
 * The steps differ in outline, not only in tone, so that they survive glare, grey paper and a scratched screen.
 */
export const PICTURE_W = 104;
export const PICTURE_H = 56;

const p = penOn(flat);

const FLANGE = 17;

type Lower = readonly Point[];

/** Where the bead ends on the surface, from left to right. */
const EVEN: Lower = [
  [0, 41],
  [18, 42.5],
  [40, 40.5],
  [62, 42.5],
  [84, 40.5],
  [104, 42],
];

const body = (lower: Lower): readonly Primitive[] => [p.poly('sealant', [[0, FLANGE], [PICTURE_W, FLANGE], ...[...lower].reverse()]), p.bent('picture-line', lower, 12)];

/** Surface hatch, and the flange with its three screws. */
const ground: readonly Primitive[] = [
  p.strokes(
    'picture-thin',
    Array.from({ length: 11 }, (_, i): readonly Point[] => [
      [i * 10 - 2, 56],
      [i * 10 + 7, 46],
    ]),
  ),
];

const flange: readonly Primitive[] = [
  p.box('picture-paper', 0, -2, PICTURE_W, FLANGE + 2),
  ...[16, 52, 88].flatMap((x): readonly Primitive[] => [p.disc('picture-paper', x, 8, 5.2), p.line('picture-line', [x - 2.6, 10], [x + 2.6, 6])]),
  p.line('picture-line', [0, FLANGE], [PICTURE_W, FLANGE]),
];

const asNew: readonly Primitive[] = [...body(EVEN), p.line('picture-line', [8, 26], [50, 26]), p.line('picture-line', [60, 26], [92, 26])];

const dull: readonly Primitive[] = [
  ...body(EVEN),
  p.dots(
    'picture-fill',
    [
      [8, 24],
      [17, 34],
      [26, 27],
      [33, 37],
      [43, 22],
      [49, 33],
      [58, 26],
      [66, 37],
      [73, 24],
      [80, 33],
      [90, 26],
      [97, 36],
    ],
    1.6,
  ),
];

const star = (x: number, y: number, flip: 1 | -1): readonly (readonly Point[])[] => [
  [
    [x, y],
    [x + 6 * flip, y - 6],
  ],
  [
    [x, y],
    [x - 6 * flip, y - 4],
  ],
  [
    [x, y],
    [x + 1 * flip, y + 8],
  ],
];

const crazed: readonly Primitive[] = [
  ...body(EVEN),
  p.strokes('picture-thin', [...star(12, 29, 1), ...star(28, 32, -1), ...star(45, 28, 1), ...star(61, 32, -1), ...star(77, 29, 1), ...star(93, 31, -1)]),
];

/** A crack that ends inside the bead. */
const part = (x: number, from: number, to: number): Primitive => {
  const h = (to - from) / 3;
  return p.line('picture-line', [x, from], [x + 4, from + h], [x - 1, from + 2 * h], [x + 3, to]);
};

const cracked: readonly Primitive[] = [
  ...body([
    [0, 41],
    [30, 42],
    [52, 41],
    [66, 36],
    [82, 41],
    [104, 42],
  ]),
  p.poly('picture-fill', [
    [52, 42],
    [66, 36.6],
    [82, 42],
    [66, 43.5],
  ]),
  part(12, 20, 34),
  part(32, 22, 38),
  part(90, 20, 35),
  p.dots(
    'picture-fill',
    [
      [22, 30],
      [46, 27],
      [58, 26],
      [76, 28],
    ],
    2.4,
  ),
];

const open: readonly Primitive[] = [
  ...body([
    [0, 41],
    [30, 42],
    [60, 41],
    [74, 36],
    [88, 32],
    [104, 30],
  ]),
  p.poly('picture-fill', [
    [60, 42],
    [74, 37],
    [88, 33],
    [104, 31],
    [104, 43],
    [80, 44],
  ]),
  p.poly('picture-fill', [
    [36, FLANGE],
    [47, FLANGE],
    [44, 24],
    [50, 31],
    [44, 37],
    [47, 43],
    [37, 43],
    [40, 36],
    [34, 30],
    [39, 24],
  ]),
  part(14, 20, 33),
];

const failed: readonly Primitive[] = [
  p.poly('sealant', [
    [0, FLANGE],
    [30, FLANGE],
    [26, 24],
    [33, 31],
    [27, 37],
    [30, 43],
    [0, 41],
  ]),
  p.poly('sealant', [
    [76, FLANGE],
    [104, FLANGE],
    [104, 33],
    [90, 38],
    [72, 40],
    [78, 33],
    [71, 26],
  ]),
  p.bent(
    'picture-line',
    [
      [0, 41],
      [30, 43],
      [27, 37],
      [33, 31],
      [26, 24],
      [30, FLANGE],
    ],
    1,
  ),
  p.bent(
    'picture-line',
    [
      [76, FLANGE],
      [71, 26],
      [78, 33],
      [72, 40],
      [90, 38],
      [104, 33],
    ],
    1,
  ),
  p.poly('picture-fill', [
    [30, FLANGE],
    [76, FLANGE],
    [71, 26],
    [78, 33],
    [72, 40],
    [78, 44],
    [30, 44],
    [27, 37],
    [33, 31],
    [26, 24],
  ]),
  p.strokes(
    'stitch',
    [40, 50, 60].map((x): readonly Point[] => [
      [x, 38],
      [x + 8, 24],
    ]),
  ),
  p.poly('picture-paper', [
    [48, 53],
    [60, 48],
    [74, 51],
    [62, 55],
  ]),
];

export const sealSteps: Readonly<Record<string, readonly Primitive[]>> = {
  S0: [...ground, ...asNew, ...flange],
  S1: [...ground, ...dull, ...flange],
  S2: [...ground, ...crazed, ...flange],
  S3: [...ground, ...cracked, ...flange],
  S4: [...ground, ...open, ...flange],
  S5: [...ground, ...failed, ...flange],
};
