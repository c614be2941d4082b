import type { Point } from '../path';
import type { Primitive } from '../primitives';
import { along, type PartBox, type PartDrawing, slats } from './part-drawing';

type Draw = (b: PartBox) => readonly Primitive[];

const upperBracket: Draw = ({ p, w, h }) => [
  p.poly(
    'fitting',
    [
      [0, h],
      [w, h],
      [w, h * 0.35],
      [w * 0.6, 0],
      [w * 0.4, 0],
      [0, h * 0.35],
    ],
    0.008,
  ),
  p.dots('mark', [[w / 2, h * 0.72]], 0.009),
];
const lowerBracket: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h, 0.012),
  p.dots(
    'mark',
    [
      [w / 2, h * 0.25],
      [w / 2, h * 0.75],
    ],
    0.007,
  ),
];
const arm: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h, 0.008),
  p.line('detail', [w / 2, h * 0.04], [w / 2, h * 0.96]),
  p.box('fitting', -w * 0.2, h * 0.5, w * 1.4, 0.05, 0.01),
];
const box: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h, h * 0.4),
  p.strokes('detail', [
    [
      [h * 0.6, 0],
      [h * 0.6, h],
    ],
    [
      [w - h * 0.6, 0],
      [w - h * 0.6, h],
    ],
    [
      [h * 0.6, h * 0.3],
      [w - h * 0.6, h * 0.3],
    ],
  ]),
];
const handle: Draw = ({ p, w, h }) => [p.box('fitting', w * 0.2, 0, w * 0.6, h, w * 0.3), p.box('fitting', 0, -0.01, w, 0.06, 0.01), p.box('fitting', 0, h - 0.05, w, 0.06, 0.01)];

const lock: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h, 0.02),
  p.box('detail', w * 0.18, h * 0.5, w * 0.64, h * 0.32, 0.01),
  p.disc('detail', w / 2, h * 0.24, w * 0.15),
  p.line('opening', [w / 2, h * 0.18], [w / 2, h * 0.3]),
];
const hinge: Draw = ({ p, w, h }) => [
  p.line('fitting', [w / 2, 0], [w / 2, h]),
  ...along([w / 2, 0], [w / 2, h], 3).map(([x, y]) => p.box('fitting', x - w / 2, y - 0.05, w, 0.1, 0.006)),
];
const holdback: Draw = ({ p, w, h }) => [p.disc('fitting', w / 2, h / 2, w * 0.5), p.arc('opening', w / 2, h / 2, w * 0.24, w * 0.24, Math.PI, 2.5 * Math.PI)];
const latch: Draw = ({ p, w, h }) => [
  p.disc('fitting', w / 2, h / 2, w * 0.48),
  p.line('opening', [w * 0.24, h / 2], [w * 0.76, h / 2]),
  p.line('detail', [w / 2, h / 2], [w / 2, h * 0.24]),
];
const longHinge: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h),
  p.strokes(
    'detail',
    along([0, 0], [w, 0], Math.max(4, Math.round(w / 0.09))).map(([x]): readonly Point[] => [
      [x, 0],
      [x, h],
    ]),
  ),
];
const hatchHinge: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h, 0.01),
  p.line('seam', [0.03, h / 2], [w - 0.03, h / 2]),
  p.line('stitch', [0.03, h / 2], [w - 0.03, h / 2]),
];

/** Rails, rungs a foot apart, feet on the wall. */
const ladder: Draw = ({ p, w, h }) => {
  const rungs = Math.max(2, Math.round(h / 0.305));
  return [
    p.box('fitting', 0, 0, 0.035, h, 0.015),
    p.box('fitting', w - 0.035, 0, 0.035, h, 0.015),
    ...along([0, 0], [0, h], rungs).map(([, y]) => p.box('fitting', 0.035, y - 0.014, w - 0.07, 0.028)),
    p.dots(
      'mark',
      [
        [0.0175, h * 0.16],
        [w - 0.0175, h * 0.16],
        [0.0175, h * 0.84],
        [w - 0.0175, h * 0.84],
      ],
      0.016,
    ),
  ];
};

const rod = (lugs: number, cx: number, cy: number, r: number): readonly Point[] =>
  Array.from({ length: lugs }, (_, i): Point => [cx + r * Math.cos((i * 2 * Math.PI) / lugs), cy + r * Math.sin((i * 2 * Math.PI) / lugs)]);

/** Tyre, rim, hub and nuts. */
export const wheel = ({ p, w, h }: PartBox, r = Math.min(w, h) / 2): readonly Primitive[] => {
  const [cx, cy] = [w / 2, h / 2];
  return [
    p.disc('tyre', cx, cy, r),
    p.disc('hub', cx, cy, r * 0.56),
    p.disc('detail', cx, cy, r * 0.46),
    p.disc('hub', cx, cy, r * 0.17),
    p.dots('mark', rod(6, cx, cy, r * 0.31), r * 0.045),
  ];
};

/** From above or below a tyre is its tread; from the side a wheel. */
const tread: Draw = ({ p, w, h }) => {
  const long = w >= h;
  const grooves = [0.28, 0.5, 0.72].map((t): readonly Point[] =>
    long
      ? [
          [w * 0.06, h * t],
          [w * 0.94, h * t],
        ]
      : [
          [w * t, h * 0.06],
          [w * t, h * 0.94],
        ],
  );
  return [p.box('tyre', 0, 0, w, h, Math.min(w, h) * 0.28), p.strokes('trim-core', grooves)];
};
const tyre: Draw = (b) => (Math.abs(b.w - b.h) > 0.2 * Math.max(b.w, b.h) ? tread(b) : wheel(b));
const fasteners: Draw = ({ p, w, h }) => [p.dots('mark', rod(6, w / 2, h / 2, Math.min(w, h) * 0.4), Math.min(w, h) * 0.06)];
const hub: Draw = ({ p, w, h }) => [p.disc('hub', w / 2, h / 2, Math.min(w, h) / 2)];

const spare: Draw = (b) => [
  b.p.strokes('fitting', [
    [
      [b.w * 0.42, -0.12],
      [b.w * 0.42, b.h * 0.2],
    ],
    [
      [b.w * 0.58, -0.12],
      [b.w * 0.58, b.h * 0.2],
    ],
  ]),
  ...wheel(b),
];
const spareUnder: Draw = (b) => [
  b.p.disc('fitting', b.w / 2, b.h / 2, Math.min(b.w, b.h) / 2),
  b.p.disc('fitting', b.w / 2, b.h / 2, Math.min(b.w, b.h) * 0.29),
  b.p.strokes('detail', [
    [
      [0, b.h / 2],
      [b.w, b.h / 2],
    ],
    [
      [b.w / 2, 0],
      [b.w / 2, b.h],
    ],
  ]),
];

const bumper: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h, 0.015),
  p.strokes('detail', [
    [
      [h, 0],
      [h, h],
    ],
    [
      [w - h, 0],
      [w - h, h],
    ],
  ]),
];
const frontBumper: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h, h * 0.35),
  p.box('detail', w * 0.3, h * 0.25, w * 0.4, h * 0.4, 0.02),
  p.strokes('detail', slats(w * 0.3, h * 0.25, w * 0.4, h * 0.4, 2)),
];
const receiver: Draw = ({ p, w, h }) => [p.box('fitting', 0, 0, w, h, 0.01), p.box('opening', w * 0.25, h * 0.25, w * 0.5, h * 0.5)];
const flap: Draw = ({ p, w, h }) => [p.box('fitting', 0, 0, w, h, 0.01), p.dots('mark', along([0, h * 0.85], [w, h * 0.85], 4), 0.012)];
const mirror: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w * 0.3, h, 0.02),
  p.bent(
    'fitting',
    [
      [w * 0.3, h * 0.5],
      [w * 0.7, h * 0.5],
    ],
    0.02,
  ),
  p.box('fitting', w * 0.66, h * 0.05, w * 0.34, h * 0.9, 0.05),
];
const wiper: Draw = ({ p, w, h }) => [
  p.disc('fitting', w / 2, h / 2, w / 2),
  p.line('fitting', [w / 2, h / 2], [w * 5, h * 7]),
  p.line('opening', [w * 3, h * 3.4], [w * 6.4, h * 9.4]),
];
const jackBracket: Draw = ({ p, w, h }) => [
  p.box('opening', 0, 0, w, h, 0.015),
  p.dots(
    'mark',
    [
      [w / 2, h * 0.08],
      [w / 2, h * 0.92],
    ],
    0.01,
  ),
  p.box('fitting', w * 0.3, -h * 0.6, w * 0.4, h * 1.4, 0.01),
];
const tieDown: Draw = ({ p, w, h }) => [p.box('fitting', 0, h * 0.4, w, h * 0.6, 0.006), p.arc('fitting', w / 2, h * 0.4, w * 0.22, h * 0.42, Math.PI, 2 * Math.PI)];

const fender: Draw = ({ p, w, h }) => [
  p.poly(
    'fitting',
    [
      [0, 0],
      [w * 0.16, h],
      [w * 0.84, h],
      [w, 0],
      [w * 0.92, 0],
      [w * 0.78, h * 0.8],
      [w * 0.22, h * 0.8],
      [w * 0.08, 0],
    ],
    0.1,
  ),
];
const arch: Draw = ({ p, w, h }) => [
  p.poly(
    'plate',
    [
      [0, 0],
      [0, h],
      [w, h],
      [w, 0],
    ],
    [0, h * 0.5, h * 0.5, 0],
  ),
  p.bent(
    'fitting',
    [
      [0, 0],
      [0, h],
      [w, h],
      [w, 0],
    ],
    h * 0.5,
  ),
  p.bent(
    'opening',
    [
      [0.035, 0],
      [0.035, h - 0.035],
      [w - 0.035, h - 0.035],
      [w - 0.035, 0],
    ],
    h * 0.46,
  ),
];
const lifter: Draw = ({ p, w, h }) => [p.box('fitting', 0, 0, w, h, 0.004), p.box('detail', w * 0.28, h * 0.28, w * 0.44, h * 0.44)];
const roofLatch: Draw = ({ p, w, h }) => [
  p.box('fitting', w * 0.1, 0, w * 0.8, h * 0.6, 0.01),
  p.bent(
    'opening',
    [
      [w * 0.3, h * 0.3],
      [w * 0.3, h],
      [w * 0.7, h],
      [w * 0.7, h * 0.3],
    ],
    0.012,
  ),
];
const decal: Draw = ({ p, w, h }) => [
  p.bent(
    'decal',
    [
      [0, h * 0.1],
      [w * 0.35, h * 0.2],
      [w, h * 0.95],
    ],
    h * 0.6,
  ),
  p.bent(
    'decal',
    [
      [w * 0.05, 0],
      [w * 0.4, h * 0.05],
      [w, h * 0.7],
    ],
    h * 0.6,
  ),
];
const spout: Draw = ({ p, w, h }) => [
  p.poly(
    'fitting',
    [
      [0, h],
      [w * 0.6, h],
      [w, h * 0.3],
      [w * 0.8, 0],
      [0, h * 0.55],
    ],
    0.004,
  ),
];

export const fittings: readonly PartDrawing[] = [
  { parts: ['awning-upper-bracket'], draw: upperBracket },
  { parts: ['awning-lower-bracket', 'slide-topper-bracket'], draw: lowerBracket },
  { parts: ['awning-arm'], draw: arm },
  { parts: ['awning-box'], draw: box },
  { parts: ['entry-handle'], draw: handle },
  { parts: ['door-lock'], draw: lock },
  { parts: ['door-hinge'], draw: hinge },
  { parts: ['door-holdback'], draw: holdback },
  { parts: ['compartment-latch'], draw: latch },
  { parts: ['compartment-hinge'], draw: longHinge },
  { parts: ['hatch-hinge'], draw: hatchHinge },
  { parts: ['ladder-standoff'], draw: ladder },
  { parts: ['tyre'], draw: tyre },
  { parts: ['wheel-fasteners'], draw: fasteners },
  { parts: ['hub'], draw: hub },
  { parts: ['spare-carrier'], draw: spare },
  { parts: ['spare-under'], draw: spareUnder },
  { parts: ['rear-bumper'], draw: bumper },
  { parts: ['front-bumper'], draw: frontBumper },
  { parts: ['receiver-hitch'], draw: receiver },
  { parts: ['mud-flap'], draw: flap },
  { parts: ['mirror-foot'], draw: mirror },
  { parts: ['wiper'], draw: wiper },
  { parts: ['jack-bracket'], draw: jackBracket },
  { parts: ['tie-down-bracket'], draw: tieDown },
  { parts: ['fender'], draw: fender },
  { parts: ['wheel-arch-trim'], draw: arch },
  { parts: ['lifter-post'], draw: lifter },
  { parts: ['roof-latch'], draw: roofLatch },
  { parts: ['decal'], draw: decal },
  { parts: ['gutter-spout'], draw: spout },
];
