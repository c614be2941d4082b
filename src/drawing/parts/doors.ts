import type { Point } from '../path';
import type { Primitive } from '../primitives';
import { along, hingeLine, type PartBox, type PartDrawing, slats } from './part-drawing';

/** Three knuckles on the hinge edge. */
const knuckles = ({ p, w, h, hinge }: PartBox, inset: number): Primitive => {
  const [a, b] = hingeLine(hinge, w, h, inset);
  const flatwise = a[1] === b[1];
  const marks = along(a, b, 3).map(([x, y]): readonly Point[] =>
    flatwise
      ? [
          [x - 0.035, y],
          [x + 0.035, y],
        ]
      : [
          [x, y - 0.05],
          [x, y + 0.05],
        ],
  );
  return p.strokes('face', marks);
};

/** x of the edge opposite the hinge, a little inside the leaf. */
const free = ({ w, hinge }: PartBox, inset: number): number => (hinge === 'rear' || hinge === 'right' ? inset : w - inset);

const entry = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  const x = free(b, 0.075);
  return [
    p.box('opening', 0, 0, w, h, 0.07),
    p.box('opening', 0.03, 0.03, w - 0.06, h - 0.06, 0.05),
    p.box('fitting', w * 0.24, h * 0.6, w * 0.52, h * 0.27, 0.05),
    p.box('detail', w * 0.24 + 0.03, h * 0.6 + 0.03, w * 0.52 - 0.06, h * 0.27 - 0.06, 0.03),
    p.box('fitting', x - 0.035, h * 0.42, 0.07, 0.15, 0.02),
    p.disc('detail', x, h * 0.42 + 0.045, 0.014),
    knuckles(b, 0.018),
  ];
};

const half = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [p.box('opening', 0, 0, w, h, 0.04), p.line('detail', [0, h * 0.5], [w, h * 0.5]), p.box('fitting', free(b, 0.09) - 0.03, h * 0.62, 0.06, 0.1, 0.02), knuckles(b, 0.016)];
};

/** Its upper rear corner follows the body's curve. */
const teardrop = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  const outline: readonly Point[] = [
    [0, 0],
    [w, 0],
    [w, h],
    [0, h],
  ];
  const leaf: readonly Point[] = [
    [0.03, 0.03],
    [w - 0.03, 0.03],
    [w - 0.03, h - 0.03],
    [0.03, h - 0.03],
  ];
  return [
    p.poly('opening', outline, [0.06, 0.06, w * 0.34, w * 0.34]),
    p.poly('opening', leaf, [0.04, 0.04, w * 0.31, w * 0.31]),
    p.box('fitting', w * 0.24, h * 0.52, w * 0.52, h * 0.32, 0.1),
    p.box('fitting', free(b, 0.09) - 0.03, h * 0.36, 0.06, 0.1, 0.02),
    knuckles(b, 0.018),
  ];
};

const cab = (b: PartBox): readonly Primitive[] => {
  const { p, w, h, runs } = b;
  const outline = runs[0] ?? [
    [0, 0],
    [w, 0],
    [w, h],
    [w * 0.35, h],
    [0, h * 0.7],
  ];
  return [p.poly('opening', outline, 0.07), p.line('detail', [0.03, h * 0.52], [w - 0.03, h * 0.52]), p.box('fitting', free(b, 0.14) - 0.06, h * 0.44, 0.13, 0.04, 0.02)];
};

/** Slides back along its rail, so the rail is drawn, not a hinge. */
const slidingDoor = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.09),
  p.line('seam', [w * 0.1, h * 0.5], [w, h * 0.5]),
  p.line('stitch', [w * 0.1, h * 0.5], [w, h * 0.5]),
  p.box('fitting', w * 0.05, h * 0.4, 0.05, 0.16, 0.02),
  p.line('detail', [0.03, h * 0.1], [w - 0.03, h * 0.1]),
];

const rearDoor = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [
    p.box('opening', 0, 0, w, h, 0.08),
    p.box('fitting', w * 0.14, h * 0.52, w * 0.72, h * 0.38, 0.07),
    p.line('detail', [0.03, h * 0.46], [w - 0.03, h * 0.46]),
    p.box('fitting', free(b, 0.09) - 0.03, h * 0.28, 0.06, 0.12, 0.02),
    knuckles(b, 0.016),
  ];
};

const hood = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.poly(
    'opening',
    [
      [w * 0.04, 0],
      [w * 0.96, 0],
      [w, h],
      [0, h],
    ],
    0.07,
  ),
  p.strokes('detail', [
    [
      [w * 0.26, h * 0.12],
      [w * 0.22, h * 0.9],
    ],
    [
      [w * 0.74, h * 0.12],
      [w * 0.78, h * 0.9],
    ],
  ]),
  p.box('fitting', w * 0.46, h * 0.06, w * 0.08, 0.05, 0.02),
];

/** A compartment door: frame, leaf, hinge edge; its latches are stations of their own or parts of it. */
const leaf = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [p.box('opening', 0, 0, w, h, 0.035), p.box('fitting', 0.025, 0.025, w - 0.05, h - 0.05, 0.025), knuckles(b, 0.012)];
};

const withSlots =
  (share: number, count: number) =>
  (b: PartBox): readonly Primitive[] => [...leaf(b), b.p.strokes('detail', slats(b.w * 0.2, b.h * 0.12, b.w * 0.6, b.h * share, count))];

const generator = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  const columns = along([w * 0.16, h * 0.5], [w * 0.84, h * 0.5], 4).map(([x]) => x);
  return [...leaf(b), ...columns.flatMap((x) => [p.strokes('detail', slats(x - w * 0.06, h * 0.2, w * 0.12, h * 0.6, 5))])];
};

/** The two poles stand for the battery behind it. */
const battery = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  const s = Math.min(w, h) * 0.09;
  const [l, r, y] = [w * 0.32, w * 0.68, h * 0.44];
  return [
    ...leaf(b),
    p.strokes('detail', slats(w * 0.2, h * 0.66, w * 0.6, h * 0.16, 2)),
    p.strokes('opening', [
      [
        [l - s, y],
        [l + s, y],
      ],
      [
        [r - s, y],
        [r + s, y],
      ],
      [
        [r, y - s],
        [r, y + s],
      ],
    ]),
  ];
};

const trunk = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.06),
  p.line('detail', [0.03, h - 0.06], [w - 0.03, h - 0.06]),
  p.strokes('fitting', [
    [
      [w * 0.12, h * 0.2],
      [w * 0.2, h * 0.72],
    ],
    [
      [w * 0.88, h * 0.2],
      [w * 0.8, h * 0.72],
    ],
  ]),
  p.box('fitting', w * 0.46, 0.03, w * 0.08, 0.05, 0.02),
];

const galley = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.1),
  p.line('face', [0.1, h - 0.02], [w - 0.1, h - 0.02]),
  p.bent(
    'detail',
    [
      [w * 0.08, h * 0.1],
      [w * 0.08, h * 0.86],
      [w * 0.92, h * 0.86],
      [w * 0.92, h * 0.1],
    ],
    0.12,
  ),
  p.box('fitting', w * 0.44, h * 0.07, w * 0.12, 0.06, 0.03),
];

const roofHatch = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.06),
  p.box('opening', 0.05, 0.05, w - 0.1, h - 0.1, 0.05),
  p.strokes('detail', [
    [
      [0.1, 0.1],
      [w * 0.32, h * 0.32],
    ],
    [
      [w - 0.1, 0.1],
      [w * 0.68, h * 0.32],
    ],
    [
      [0.1, h - 0.1],
      [w * 0.32, h * 0.68],
    ],
    [
      [w - 0.1, h - 0.1],
      [w * 0.68, h * 0.68],
    ],
  ]),
  p.box('detail', w * 0.32, h * 0.32, w * 0.36, h * 0.36, 0.03),
  p.box('fitting', w * 0.42, 0.015, w * 0.16, 0.04, 0.015),
];

export const doors: readonly PartDrawing[] = [
  { parts: ['entry-door-*'], draw: entry },
  { parts: ['entry-door-half'], draw: half },
  { parts: ['teardrop-door'], draw: teardrop },
  { parts: ['cab-door'], draw: cab },
  { parts: ['van-sliding-door'], draw: slidingDoor },
  { parts: ['van-rear-door'], draw: rearDoor },
  { parts: ['hood'], draw: hood },
  { parts: ['baggage-door-*'], draw: leaf },
  { parts: ['utility-compartment'], draw: withSlots(0.24, 2) },
  { parts: ['lp-compartment-door'], draw: withSlots(0.34, 4) },
  { parts: ['generator-compartment-door'], draw: generator },
  { parts: ['battery-compartment-door'], draw: battery },
  { parts: ['front-storage-trunk'], draw: trunk },
  { parts: ['galley-hatch'], draw: galley },
  { parts: ['pass-through-hatch-roof'], draw: roofHatch },
];
