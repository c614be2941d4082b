import type { Point } from '../path';
import type { Primitive } from '../primitives';
import { along, type PartBox, type PartDrawing, slats } from './part-drawing';

type Draw = (b: PartBox) => readonly Primitive[];

const tread =
  (count: number): Draw =>
  ({ p, w, h }) => [p.box('fitting', 0, 0, w, h, 0.015), p.strokes('detail', slats(w * 0.06, h * 0.1, w * 0.88, h * 0.8, count))];
const foldStep: Draw = (b) => [
  ...tread(3)(b),
  b.p.strokes('fitting', [
    [
      [0, 0],
      [b.w * 0.12, b.h * 0.5],
    ],
    [
      [b.w, 0],
      [b.w * 0.88, b.h * 0.5],
    ],
  ]),
];
const electricStep: Draw = (b) => [...tread(3)(b), b.p.box('fitting', b.w * 0.4, b.h * 0.3, b.w * 0.2, b.h * 0.4, 0.01), b.p.disc('detail', b.w * 0.5, b.h * 0.5, b.h * 0.12)];
const solidStep: Draw = (b) => [
  b.p.poly(
    'fitting',
    [
      [b.w * 0.04, 0],
      [b.w * 0.96, 0],
      [b.w, b.h],
      [0, b.h],
    ],
    0.01,
  ),
  b.p.line('detail', [0, b.h * 0.5], [b.w, b.h * 0.5]),
  b.p.dots('mark', along([b.w * 0.08, b.h * 0.25], [b.w * 0.92, b.h * 0.25], 6), 0.008),
];
const stepBumper: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h, 0.02),
  p.strokes(
    'detail',
    along([0, 0], [w, 0], 12).map(([x]): readonly Point[] => [
      [x - 0.02, h * 0.2],
      [x + 0.02, h * 0.8],
    ]),
  ),
];

/** Legs that fold along their longer side. */
const stabiliser: Draw = ({ p, w, h }) => {
  const tall = h >= w;
  const foot = tall ? p.box('fitting', -w * 0.1, h * 0.82, w * 1.2, h * 0.18, 0.01) : p.box('fitting', w * 0.82, -h * 0.1, w * 0.18, h * 1.2, 0.01);
  const legs: readonly (readonly Point[])[] = tall
    ? [
        [
          [w * 0.15, 0],
          [w * 0.85, h * 0.82],
        ],
        [
          [w * 0.85, 0],
          [w * 0.15, h * 0.82],
        ],
      ]
    : [
        [
          [0, h * 0.15],
          [w * 0.82, h * 0.85],
        ],
        [
          [0, h * 0.85],
          [w * 0.82, h * 0.15],
        ],
      ];
  return [p.box('fitting', 0, 0, w, h, 0.01), p.strokes('fitting', legs), foot];
};
const levelling: Draw = ({ p, w, h }) => [p.box('fitting', 0, 0, w, h, 0.02), p.disc('fitting', w / 2, h / 2, w * 0.34), p.disc('detail', w / 2, h / 2, w * 0.16)];
const landing: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h),
  p.box('fitting', w * 0.22, h * 0.22, w * 0.56, h * 0.56),
  p.strokes('detail', [
    [
      [0, 0],
      [w * 0.22, h * 0.22],
    ],
    [
      [w, h],
      [w * 0.78, h * 0.78],
    ],
  ]),
];
const pinBox: Draw = ({ p, w, h }) => [
  p.poly(
    'fitting',
    [
      [0, h * 0.3],
      [w * 0.4, 0],
      [w, 0],
      [w, h],
      [w * 0.4, h],
      [0, h * 0.7],
    ],
    0.03,
  ),
  p.disc('fitting', w * 0.24, h / 2, w * 0.12),
  p.dots('mark', [[w * 0.24, h / 2]], w * 0.05),
];

/** Two beams that meet in the coupler. */
const aFrame: Draw = ({ p, w, h }) => [
  p.poly(
    'fitting',
    [
      [w * 0.1, h * 0.46],
      [w, h * 0.02],
      [w, h * 0.1],
      [w * 0.16, h * 0.5],
      [w, h * 0.9],
      [w, h * 0.98],
      [w * 0.1, h * 0.54],
    ],
    0.01,
  ),
  p.box('fitting', 0, h * 0.465, w * 0.14, h * 0.07, h * 0.03),
];
const tongueJack: Draw = ({ p, w, h }) => [
  p.disc('fitting', w / 2, h / 2, w * 0.5),
  p.disc('detail', w / 2, h / 2, w * 0.28),
  p.line('fitting', [w / 2, h / 2], [w * 0.5, h * 1.5]),
];
/** Two bottles lie side by side across the frame, or one where there is no room. */
const cylinders: Draw = ({ p, w, h }) => {
  const two = h > w * 1.3;
  const r = two ? Math.min(w, h / 2) * 0.48 : Math.min(w, h) * 0.48;
  const at: readonly Point[] = two
    ? [
        [w / 2, h * 0.25],
        [w / 2, h * 0.75],
      ]
    : [[w / 2, h / 2]];
  return at.flatMap(([x, y]) => [p.disc('fitting', x, y, r), p.disc('detail', x, y, r * 0.62), p.dots('mark', [[x, y]], r * 0.14)]);
};
const batteryBox: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h, 0.02),
  p.line('detail', [0, h / 2], [w, h / 2]),
  p.strokes('opening', [
    [
      [w * 0.34, h * 0.24],
      [w * 0.66, h * 0.24],
    ],
    [
      [w * 0.34, h * 0.76],
      [w * 0.66, h * 0.76],
    ],
    [
      [w * 0.5, h * 0.68],
      [w * 0.5, h * 0.84],
    ],
  ]),
];

const outlet: Draw = ({ p, w, h }) => [
  p.disc('fitting', w / 2, h / 2, w * 0.5),
  p.disc('fitting', w / 2, h / 2, w * 0.3),
  p.strokes('opening', [
    [
      [-w * 0.1, h / 2],
      [w * 0.1, h / 2],
    ],
    [
      [w * 0.9, h / 2],
      [w * 1.1, h / 2],
    ],
  ]),
];
const drain: Draw = ({ p, w, h }) => [
  p.disc('fitting', w / 2, h / 2, w * 0.5),
  p.strokes('detail', [
    [
      [w * 0.2, h * 0.2],
      [w * 0.8, h * 0.8],
    ],
    [
      [w * 0.8, h * 0.2],
      [w * 0.2, h * 0.8],
    ],
  ]),
];
const belly: Draw = ({ p, w, h }) => [
  p.box('ghost', 0, 0, w, h, 0.05),
  p.dots('mark', [...along([0.1, 0.05], [w - 0.1, 0.05], Math.round(w / 0.4)), ...along([0.1, h - 0.05], [w - 0.1, h - 0.05], Math.round(w / 0.4))], 0.01),
];
const entry: Draw = ({ p, w, h }) => [
  p.disc('opening', w / 2, h / 2, w * 0.5),
  p.strokes('detail', [
    [
      [w / 2, h * 0.1],
      [w / 2, h * 0.9],
    ],
    [
      [w * 0.1, h / 2],
      [w * 0.9, h / 2],
    ],
  ]),
  p.dots('mark', [[w / 2, h / 2]], w * 0.16),
];
/** Rack and the shaft that drives it. */
const gear: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, 0, w, h, 0.01),
  p.strokes(
    'detail',
    along([0, 0], [0, h], Math.max(6, Math.round(h / 0.06))).map(([, y]): readonly Point[] => [
      [w * 0.2, y],
      [w * 0.55, y],
    ]),
  ),
  p.line('fitting', [w * 0.75, 0], [w * 0.75, h]),
];
const exhaust: Draw = ({ p, w, h }) => [
  p.poly(
    'fitting',
    [
      [0, h * 0.2],
      [w, 0],
      [w, h],
      [0, h * 0.8],
    ],
    0.005,
  ),
  p.line('opening', [w, h * 0.05], [w, h * 0.95]),
];
/** The two long edges of a box, a little way in. */
const longEdges = (w: number, h: number): readonly (readonly Point[])[] =>
  w >= h
    ? [0.03, h - 0.03].map((y) => [
        [0.03, y],
        [w - 0.03, y],
      ])
    : [0.03, w - 0.03].map((x) => [
        [x, 0.03],
        [x, h - 0.03],
      ]);

const wing: Draw = ({ p, w, h }) => [p.box('ghost', 0, 0, w, h), p.strokes('seam', longEdges(w, h)), p.strokes('stitch', longEdges(w, h))];

/** Links of a chain, a lead with its plug, a pin on its cable. */
const chains: Draw = ({ p, w, h }) =>
  along([0, h / 2], [w, h / 2], Math.max(3, Math.round(w / Math.max(h, 0.03)))).map(([x, y], i) =>
    p.box('fitting', x - w * 0.08, y - h * (i % 2 === 0 ? 0.28 : 0.12), w * 0.16, h * (i % 2 === 0 ? 0.56 : 0.24), h * 0.12),
  );
const plug: Draw = ({ p, w, h }) => [
  p.disc('fitting', w / 2, h / 2, Math.min(w, h) / 2),
  p.dots(
    'mark',
    [
      [w * 0.34, h * 0.4],
      [w * 0.66, h * 0.4],
      [w * 0.5, h * 0.68],
    ],
    Math.min(w, h) * 0.07,
  ),
];
const pin: Draw = ({ p, w, h }) => [
  p.box('fitting', 0, h * 0.2, w * 0.6, h * 0.6, 0.01),
  p.bent(
    'opening',
    [
      [w * 0.6, h * 0.5],
      [w, h * 0.5],
      [w, h],
    ],
    h * 0.3,
  ),
];

export const underside: readonly PartDrawing[] = [
  { parts: ['entry-step-fold'], draw: foldStep },
  { parts: ['entry-step-electric'], draw: electricStep },
  { parts: ['entry-step-solid'], draw: solidStep },
  { parts: ['step-bumper'], draw: stepBumper },
  { parts: ['stabiliser-jack'], draw: stabiliser },
  { parts: ['leveling-jack'], draw: levelling },
  { parts: ['landing-gear'], draw: landing },
  { parts: ['pin-box'], draw: pinBox },
  { parts: ['a-frame'], draw: aFrame },
  { parts: ['tongue-jack'], draw: tongueJack },
  { parts: ['lp-cylinders'], draw: cylinders },
  { parts: ['battery-box'], draw: batteryBox },
  { parts: ['sewer-outlet'], draw: outlet },
  { parts: ['tank-drain'], draw: drain },
  { parts: ['underbelly-cover'], draw: belly },
  { parts: ['floor-penetration'], draw: entry },
  { parts: ['slide-gear'], draw: gear },
  { parts: ['exhaust-tip'], draw: exhaust },
  { parts: ['wing-underside'], draw: wing },
  { parts: ['safety-chains'], draw: chains },
  { parts: ['trailer-plug'], draw: plug },
  { parts: ['breakaway-switch'], draw: pin },
];
