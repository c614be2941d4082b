import type { Point } from '../path';
import type { Primitive } from '../primitives';
import { along, type PartBox, type PartDrawing } from './part-drawing';

/** Flange, and a lid creased to its corners. */
const vent = ({ p, w, h }: PartBox): readonly Primitive[] => {
  const i = w * 0.2;
  return [
    p.box('opening', 0, 0, w, h, 0.025),
    p.box('fitting', w * 0.1, h * 0.1, w * 0.8, h * 0.8, 0.035),
    p.box('detail', i + w * 0.1, i + h * 0.1, w * 0.8 - 2 * i, h * 0.8 - 2 * i, 0.02),
    p.strokes('detail', [
      [
        [w * 0.12, h * 0.12],
        [w * 0.3, h * 0.3],
      ],
      [
        [w * 0.88, h * 0.12],
        [w * 0.7, h * 0.3],
      ],
      [
        [w * 0.12, h * 0.88],
        [w * 0.3, h * 0.7],
      ],
      [
        [w * 0.88, h * 0.88],
        [w * 0.7, h * 0.7],
      ],
    ]),
  ];
};

const fan = ({ p, w, h }: PartBox): readonly Primitive[] => {
  const r = w * 0.3;
  const blades = [0, 1, 2, 3].map((k): readonly Point[] => {
    const a = Math.PI / 4 + (k * Math.PI) / 2;
    return [
      [w / 2 + r * 0.22 * Math.cos(a), h / 2 + r * 0.22 * Math.sin(a)],
      [w / 2 + r * Math.cos(a - 0.35), h / 2 + r * Math.sin(a - 0.35)],
      [w / 2 + r * Math.cos(a + 0.35), h / 2 + r * Math.sin(a + 0.35)],
      [w / 2 + r * 0.22 * Math.cos(a), h / 2 + r * 0.22 * Math.sin(a)],
    ];
  });
  return [
    p.box('opening', 0, 0, w, h, 0.025),
    p.box('fitting', w * 0.1, h * 0.1, w * 0.8, h * 0.8, 0.035),
    p.disc('detail', w / 2, h / 2, r),
    p.strokes('detail', blades),
    p.disc('detail', w / 2, h / 2, r * 0.2),
  ];
};

/** Dome in a flange, with the glint of its crown. */
const skylight = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.06),
  p.box('fitting', w * 0.09, h * 0.11, w * 0.82, h * 0.78, h * 0.34),
  p.box('detail', w * 0.18, h * 0.24, w * 0.64, h * 0.52, h * 0.24),
];

/** Shroud, rounded towards the nose, with the fins of the coil behind. */
const airConditioner = ({ p, w, h }: PartBox): readonly Primitive[] => {
  const shell: readonly Point[] = [
    [0, h * 0.12],
    [0, h * 0.88],
    [w * 0.12, h],
    [w, h * 0.96],
    [w, h * 0.04],
    [w * 0.12, 0],
  ];
  return [
    p.poly('opening', shell, 0.09),
    p.box('detail', w * 0.1, h * 0.16, w * 0.52, h * 0.68, 0.07),
    p.strokes(
      'detail',
      along([w * 0.7, 0], [w * 0.96, 0], 6).map(([x]): readonly Point[] => [
        [x, h * 0.14],
        [x, h * 0.86],
      ]),
    ),
  ];
};

const gasketUnder = ({ p, w, h }: PartBox): readonly Primitive[] => [p.box('ghost', 0, 0, w, h, 0.02)];

const cap = ({ p, w, h }: PartBox): readonly Primitive[] => {
  const r = Math.min(w, h) / 2;
  return [p.disc('opening', w / 2, h / 2, r), p.disc('fitting', w / 2, h / 2, r * 0.56), p.dots('mark', [[w / 2, h / 2]], r * 0.22)];
};

/** Base plate with the mast laid down. */
const antenna = ({ p, w, h }: PartBox): readonly Primitive[] => {
  const r = Math.min(w, h) / 2;
  return [
    p.disc('opening', w / 2, h / 2, r * 0.62),
    p.line('fitting', [w / 2, h / 2], [w * 1.1, h / 2]),
    p.line('face', [w * 1.1, h * 0.12], [w * 1.1, h * 0.88]),
    p.line('fitting', [w * 0.94, h * 0.24], [w * 0.94, h * 0.76]),
    p.dots('mark', [[w / 2, h / 2]], r * 0.14),
  ];
};

const satellite = ({ p, w, h }: PartBox): readonly Primitive[] => {
  const r = Math.min(w, h) / 2;
  return [
    p.disc('fitting', w / 2, h / 2, r),
    p.disc('detail', w / 2, h / 2, r * 0.78),
    p.arc('detail', w / 2, h / 2, r * 0.5, r * 0.5, 0.3, 2.2),
    p.line('detail', [w / 2, h / 2], [w / 2 + r * 0.5, h / 2 - r * 0.5]),
  ];
};

const gland = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, h * 0.3),
  p.disc('detail', w * 0.34, h / 2, h * 0.2),
  p.line('fitting', [w * 0.34 + h * 0.2, h / 2], [w * 1.5, h / 2]),
];

const solar = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('fitting', 0, 0, w, h, 0.01),
  p.strokes(
    'detail',
    along([0, 0], [w, 0], 6)
      .slice(1)
      .map(([x]): readonly Point[] => [
        [x - w / 12, 0],
        [x - w / 12, h],
      ]),
  ),
  p.line('detail', [0, h / 2], [w, h / 2]),
];

const capsule = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, h * 0.45),
  p.box('fitting', w * 0.08, h * 0.2, w * 0.84, h * 0.6, h * 0.28),
  p.strokes(
    'detail',
    along([w * 0.14, 0], [w * 0.86, 0], 7).map(([x]): readonly Point[] => [
      [x, h * 0.24],
      [x, h * 0.76],
    ]),
  ),
];

const foot = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('fitting', 0, 0, w, h, h * 0.25),
  p.dots(
    'detail',
    [
      [w * 0.22, h / 2],
      [w * 0.78, h / 2],
    ],
    Math.min(w, h) * 0.12,
  ),
  p.box('detail', w * 0.38, h * 0.2, w * 0.24, h * 0.6, 0.005),
];

/** The two rails come over the edge and end in plates. */
const ladderFoot = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.strokes('fitting', [
    [
      [0, h * 0.08],
      [w * 1.4, h * 0.08],
    ],
    [
      [0, h * 0.92],
      [w * 1.4, h * 0.92],
    ],
  ]),
  p.box('fitting', 0, 0, w * 0.3, h * 0.16, 0.01),
  p.box('fitting', 0, h * 0.84, w * 0.3, h * 0.16, 0.01),
  p.strokes('fitting', [
    [
      [w * 0.6, h * 0.08],
      [w * 0.6, h * 0.92],
    ],
    [
      [w * 1.15, h * 0.08],
      [w * 1.15, h * 0.92],
    ],
  ]),
];

const horn = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.poly(
    'fitting',
    [
      [0, 0],
      [w * 0.3, h * 0.3],
      [w, h * 0.36],
      [w, h * 0.64],
      [w * 0.3, h * 0.7],
      [0, h],
    ],
    0.01,
  ),
  p.line('detail', [w * 0.05, h * 0.1], [w * 0.05, h * 0.9]),
];

export const roof: readonly PartDrawing[] = [
  { parts: ['roof-vent-14'], draw: vent },
  { parts: ['roof-vent-fan-14'], draw: fan },
  { parts: ['skylight'], draw: skylight },
  { parts: ['ac-unit'], draw: airConditioner },
  { parts: ['ac-opening-gasket'], draw: gasketUnder },
  { parts: ['plumbing-vent-cap'], draw: cap },
  { parts: ['antenna-base'], draw: antenna },
  { parts: ['satellite-base'], draw: satellite },
  { parts: ['solar-cable-gland'], draw: gland },
  { parts: ['solar-panel'], draw: solar },
  { parts: ['fridge-roof-vent'], draw: capsule },
  { parts: ['roof-rack-foot'], draw: foot },
  { parts: ['ladder-roof-foot'], draw: ladderFoot },
  { parts: ['roof-horn-or-lamp'], draw: horn },
];
