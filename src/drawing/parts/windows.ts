import type { Primitive } from '../primitives';
import { along, CORNER_M, type PartBox, type PartDrawing } from './part-drawing';

const radius = ({ w, h }: PartBox): number => Math.min(CORNER_M + 0.02, w * 0.24, h * 0.24);

/** Flange, frame and glass, one inside the other. */
const framed = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  const r = radius(b);
  return [p.box('opening', 0, 0, w, h, r), p.box('detail', 0.03, 0.03, w - 0.06, h - 0.06, r - 0.025)];
};

/** Screws of the inner ring and weep slots: seen only when the window is drawn alone. */
const small = ({ p, w, h, fine }: PartBox): readonly Primitive[] => {
  if (!fine) return [];
  const across = Math.max(2, Math.round(w / 0.22));
  const up = Math.max(1, Math.round(h / 0.22));
  const screws = [...along([0.06, 0.015], [w - 0.06, 0.015], across), ...along([0.015, 0.08], [0.015, h - 0.08], up), ...along([w - 0.015, 0.08], [w - 0.015, h - 0.08], up)];
  const weeps = along([0.08, 0.015], [w - 0.08, 0.015], Math.max(2, Math.round(w / 0.3)));
  return [p.dots('detail', screws, 0.0035), ...weeps.map(([x]) => p.box('fitting', x + 0.03, 0.0105, 0.04, 0.009, 0.0045))];
};

const sliding = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  const panes =
    w >= 0.5
      ? [
          p.box('detail', 0.055, 0.055, w / 2 - 0.065, h - 0.11, 0.035),
          p.box('detail', w / 2 + 0.01, 0.055, w / 2 - 0.065, h - 0.11, 0.035),
          p.line('detail', [w / 2, 0.03], [w / 2, h - 0.03]),
        ]
      : [
          p.box('detail', 0.055, 0.055, w - 0.11, h * 0.56 - 0.065, 0.03),
          p.box('detail', 0.055, h * 0.56 + 0.01, w - 0.11, h * 0.44 - 0.065, 0.03),
          p.line('detail', [0.03, h * 0.56], [w - 0.03, h * 0.56]),
        ];
  return [...framed(b), ...panes, ...small(b)];
};

/** One big pane that swings out, with the two levers that open it. */
const egress = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [
    ...framed(b),
    p.box('detail', 0.055, 0.055, w - 0.11, h - 0.11, 0.05),
    p.line('opening', [0.1, h - 0.075], [w - 0.1, h - 0.075]),
    p.strokes('opening', [
      [
        [w * 0.22, 0.1],
        [w * 0.22 + 0.09, 0.1],
        [w * 0.22 + 0.09, 0.17],
      ],
      [
        [w * 0.78, 0.1],
        [w * 0.78 - 0.09, 0.1],
        [w * 0.78 - 0.09, 0.17],
      ],
    ]),
    ...small(b),
  ];
};

const front = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [
    ...framed(b),
    p.box('detail', 0.07, 0.07, w - 0.14, h - 0.14, 0.06),
    p.strokes('detail', [
      [
        [w * 0.3, h * 0.25],
        [w * 0.42, h * 0.75],
      ],
      [
        [w * 0.36, h * 0.25],
        [w * 0.48, h * 0.75],
      ],
    ]),
    ...small(b),
  ];
};

/** Bonded glass: no flange, a dark border band seen through the pane. */
const bonded = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.04),
  p.box('ghost', 0.05, 0.05, w - 0.1, h - 0.1, 0.03),
  p.strokes('detail', [
    [
      [w * 0.2, h * 0.3],
      [w * 0.34, h * 0.7],
    ],
    [
      [w * 0.28, h * 0.3],
      [w * 0.42, h * 0.7],
    ],
  ]),
];

/** Acrylic pane hung from its top edge on two stays. */
const hung = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.08),
  p.box('detail', 0.025, 0.025, w - 0.05, h - 0.05, 0.06),
  p.line('seam', [0.08, h - 0.012], [w - 0.08, h - 0.012]),
  p.strokes('detail', [
    [
      [0.05, h * 0.2],
      [0.05, h * 0.6],
    ],
    [
      [w - 0.05, h * 0.2],
      [w - 0.05, h * 0.6],
    ],
  ]),
  p.dots(
    'detail',
    [
      [w * 0.3, 0.06],
      [w * 0.7, 0.06],
    ],
    0.018,
  ),
];

const shaped = ({ p, w, h, runs }: PartBox): readonly Primitive[] => {
  const points = runs[0] ?? [
    [0, 0],
    [w, 0],
    [w, h],
    [w * 0.3, h],
    [0, h * 0.4],
  ];
  const inner = points.map(([x, y]) => [w / 2 + (x - w / 2) * 0.86, h / 2 + (y - h / 2) * 0.84] as const);
  return [p.poly('opening', points, 0.05), p.poly('detail', inner, 0.04)];
};

const windshield = ({ p, w, h }: PartBox): readonly Primitive[] => {
  const outer = [
    [0, 0],
    [w, 0],
    [w * 0.95, h],
    [w * 0.05, h],
  ] as const;
  const inner = [
    [0.06, 0.06],
    [w - 0.06, 0.06],
    [w * 0.95 - 0.05, h - 0.06],
    [w * 0.05 + 0.05, h - 0.06],
  ] as const;
  return [
    p.poly('opening', outer, 0.12),
    p.poly('detail', inner, 0.09),
    p.strokes('detail', [
      [
        [w * 0.25, h * 0.35],
        [w * 0.4, h * 0.8],
      ],
      [
        [w * 0.32, h * 0.35],
        [w * 0.47, h * 0.8],
      ],
    ]),
  ];
};

export const windows: readonly PartDrawing[] = [
  { parts: ['window-*'], draw: sliding },
  { parts: ['window-egress-*'], draw: egress },
  { parts: ['window-cabover-front'], draw: front },
  { parts: ['window-frameless-bonded'], draw: bonded },
  { parts: ['window-acrylic-hung'], draw: hung },
  { parts: ['cab-window'], draw: shaped },
  { parts: ['windshield'], draw: windshield },
];
